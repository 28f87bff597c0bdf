/** What draws charts, in a file of its own that is loaded with the first chart. */
export { legendOf } from '../../session/charts/drawing/legend.ts';
export { drawPanel } from '../../session/charts/drawing/panel.ts';

import type { ChartData } from '../../session/charts/data.ts';
import { safe } from '../../session/csv.ts';
import { savePng, saveSvg } from '../figure/export.ts';
import { drawPanel } from './draw.ts';
import { acrossOf } from './points.ts';

/** Saves each panel as a file. Everything stands in it, also the points that a canvas shows on the page. */
export async function savePanels(
  data: ChartData,
  shown: readonly SVGSVGElement[],
  as: 'svg' | 'png',
): Promise<void> {
  const save = as === 'svg' ? saveSvg : savePng;
  for (const [index, svg] of shown.entries()) {
    const panel = data.panels[index]!;
    const [width, height] = [svg.width.baseVal.value, svg.height.baseVal.value];
    const { svg: whole } = drawPanel(data, panel, width, height, true);
    // Looks are read from the style sheets, so the drawing must stand in the page for a moment.
    const box = document.createElement('div');
    box.className = 'chart-box chart-aside';
    box.append(whole);
    svg.closest('.chart-view')?.append(box);
    try {
      await save(whole, [data.title, panel.title].filter(Boolean).join(' '));
    } finally {
      box.remove();
    }
  }
}

/** What is drawn, point by point, as CSV (RFC 4180). */
export function csvOfChart(data: ChartData): string {
  const grouped = data.groups.length > 0;
  const across = data.x.is === 'groups' ? [] : [data.x.label];
  const heading = ['Name', ...(grouped ? ['Group'] : []), ...across, data.y.label, 'More'];
  const rows = data.panels.flatMap(({ points }) =>
    points.map((point) => [
      safe(point.name),
      ...(grouped ? [safe(data.groups[point.group] ?? '')] : []),
      ...(data.x.is === 'groups' ? [] : [data.x.is === 'date' ? acrossOf(data, point) : String(point.x)]),
      String(point.y),
      point.note ?? '',
    ]),
  );
  const quoted = (cell: string): string => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  return [heading.map(safe), ...rows].map((row) => `${row.map(quoted).join(',')}\r\n`).join('');
}

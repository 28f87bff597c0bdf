/** Where the columns of a file go, and the cells that they become. */
export { differingTotals, doubtfulRows, repeatedRows } from './checks.ts';
export { type Chosen, chooseColumns, newSheet } from './choose.ts';
export { columnNotes } from './column-notes.ts';
export { mapByHeadings, recipeCovers, recipeFits } from './map.ts';
export { Placing } from './place.ts';
export type { Placed } from './placed.ts';
export { type Preview, type PreviewRow, previewOf } from './preview.ts';
export { unreadableOf } from './unreadable.ts';

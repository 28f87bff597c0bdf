/** Joining the rows of a file with those of a sheet. */
export { type Differing, differencesInWords, type OfDiffering } from './differing.ts';
export type { Filled } from './filled.ts';
export { type CellChange, type Mode, type Plan, planning } from './plan.ts';
export { mendedRows } from './release.ts';
export { cellAt, cellWords, rowHashes, sameRow } from './rows-of-sheet.ts';

import type { Range } from '../core/value.ts';
import { pairsOf } from './columns.ts';
import { type Line, lineThrough } from './line.ts';
import { onceForTwo } from './memo.ts';

/** The least-squares line through two columns, fitted once for each pair of columns. */
export const fittedLine: (x: Range, y: Range) => Line = onceForTwo((x: Range, y: Range) =>
  lineThrough(pairsOf(x, y)),
);

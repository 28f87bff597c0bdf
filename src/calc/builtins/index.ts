import type { Builtin } from './builtin.ts';
import { convert } from './convert.ts';
import { leastSquares } from './least-squares.ts';
import { lineFunctions } from './line.ts';
import { overRanges } from './over-ranges.ts';
import { percentRanks } from './percent-rank.ts';
import { ranks } from './rank.ts';
import { sequence } from './sequence.ts';
import { spreads } from './spread.ts';
import { texts } from './texts.ts';

export type { Builtin, Size } from './builtin.ts';

/** Built-in functions that the cell engine lacks, and those that stand in for one of its own. */
export const builtins: ReadonlyMap<string, Builtin> = new Map(
  [
    ...ranks,
    ...percentRanks,
    ...lineFunctions,
    ...leastSquares,
    ...spreads,
    ...texts,
    ...overRanges,
    convert,
    sequence,
  ].map((builtin) => [builtin.name, builtin]),
);

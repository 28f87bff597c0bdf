/** The kind of bodies that work on whole ranges of typed arrays and remember indexes of them. */
import type { Issue } from '../../../functions/core/issue.ts';
import type { Matrix, Range } from '../../../functions/core/value.ts';
import type { Inner } from '../cell-engine/values.ts';
import type { CellOf } from './range-lookup.ts';

/** What a function over ranges answers. */
export type RangeAnswer = Inner | Issue | CellOf | Matrix | Range;

/** Arguments are those of the cell engine's own function of that name, coerced alike; ranges come as ranges. */
export type RangeBody = (...args: never[]) => RangeAnswer;

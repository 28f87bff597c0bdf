import type { Issue } from '../../../functions/core/issue.ts';
import type { Matrix, Range } from '../../../functions/core/value.ts';
import type { Inner } from '../cell-engine/values.ts';
import { conditional } from './conditional.ts';
import { filtered } from './filter.ts';
import { type CellOf, lookups } from './lookup.ts';
import { ordered } from './order.ts';
import { sumOfProducts } from './products.ts';

/** What a function over ranges answers. */
export type RangeAnswer = Inner | Issue | CellOf | Matrix | Range;
export type RangeBody = (...args: never[]) => RangeAnswer;

/**
 * Bodies of built-in functions that work on whole ranges of typed arrays and remember indexes of them. Arguments are
 * those of the cell engine's own function of that name, coerced alike; ranges come as ranges.
 */
const bodies: ReadonlyMap<string, RangeBody> = new Map<string, RangeBody>([
  ...Object.entries(conditional),
  ...Object.entries(lookups),
  ...Object.entries(ordered),
  ['SUMPRODUCT', sumOfProducts],
  ['FILTER', filtered],
]);
const aliases: Readonly<Record<string, string>> = {
  PERCENTILE: 'PERCENTILE.INC',
  QUARTILE: 'QUARTILE.INC',
};

export const rangeBody = (name: string): RangeBody | undefined => bodies.get(aliases[name] ?? name);

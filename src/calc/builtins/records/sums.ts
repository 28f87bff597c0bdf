/** Sums and counts, with and without conditions: OpenFormula 1.3, part 4, 6.13, 6.16 and 6.18. */

import { type Aggregate, aggregates } from '../../plan/aggregate.ts';
import { subtotalNode } from '../../plan/aggregate-nodes.ts';
import { conditional } from '../../ranges/conditional.ts';
import { lists } from '../../ranges/lists.ts';
import { sumOfProducts } from '../../ranges/products.ts';
import { type BuiltIn, builtIn, file, type Implementation, searching } from '../builtin.ts';
import { averageIfs } from '../own/over-ranges.ts';

const indexed = true;
const adding = (
  aggregate: Aggregate,
): { readonly implementation: Implementation; readonly indexed: true } => ({
  implementation: { aggregate, engine: true },
  indexed,
});
const where = (name: keyof typeof conditional): { implementation: Implementation; indexed: true } => ({
  implementation: { ranges: { run: conditional[name] }, engine: true },
  indexed,
});
const first = { same: [0] } as const;
const firstOrDate = { same: [0], dates: true } as const;

/** What SUBTOTAL does by the number that it is given first, from 1 on. */
const bySubtotalNumber: readonly (readonly [name: string, aggregate: Aggregate])[] = [
  ['AVERAGE', aggregates.mean],
  ['COUNT', aggregates.count],
  ['COUNTA', aggregates.countFilled],
  ['MAX', aggregates.largest],
  ['MIN', aggregates.smallest],
  ['PRODUCT', aggregates.product],
  ['STDEV.S', aggregates.sd],
  ['STDEV.P', aggregates.sdPopulation],
  ['SUM', aggregates.sum],
  ['VAR.S', aggregates.variance],
  ['VAR.P', aggregates.variancePopulation],
];

export const sums: readonly BuiltIn[] = [
  builtIn('SUM', { same: 'all' }, file('a+'), adding(aggregates.sum)),
  builtIn('SUMIF', { same: [2] }, searching('rvr?'), where('sumIf')),
  builtIn('SUMIFS', first, searching('r(rv)+'), where('sumIfs')),
  builtIn('SUMPRODUCT', 'unknown', file('a+'), {
    implementation: { ranges: { run: sumOfProducts }, engine: true },
  }),
  builtIn('SUMSQ', { of: 0, power: 2 }, file('a+'), adding(aggregates.sumOfSquares)),
  builtIn('PRODUCT', 'unknown', null, adding(aggregates.product)),
  builtIn('COUNT', 'plain', file('a+'), { ...adding(aggregates.count), asksForValue: true }),
  builtIn('COUNTA', 'plain', file('a+'), { ...adding(aggregates.countFilled), asksForValue: true }),
  builtIn('COUNTBLANK', 'plain', file('r'), {
    implementation: { engine: true, overList: lists.countBlanks },
    asksForValue: true,
  }),
  builtIn('COUNTUNIQUE', 'plain', null, { implementation: { engine: true, overList: lists.countDifferent } }),
  builtIn('COUNTIF', 'plain', searching('rv'), where('countIf')),
  builtIn('COUNTIFS', 'plain', searching('(rv)+'), where('countIfs')),
  builtIn('AVERAGEIF', { same: [2], dates: true }, searching('rvr?'), where('averageIf')),
  builtIn('AVERAGEIFS', firstOrDate, searching('r(rv)+'), {
    implementation: { ranges: { run: conditional.averageIfs }, own: averageIfs },
    indexed,
  }),
  builtIn('MAXIFS', firstOrDate, searching('r(rv)+', '_xlfn.MAXIFS'), where('maxIfs')),
  builtIn('MINIFS', firstOrDate, searching('r(rv)+', '_xlfn.MINIFS'), where('minIfs')),
  builtIn('SUBTOTAL', 'unknown', null, {
    implementation: { operator: (args) => subtotalNode(bySubtotalNumber, args), engine: true },
  }),
  builtIn('SUMX2MY2', 'unknown', file('aa')),
  builtIn('SUMX2PY2', 'unknown', file('aa')),
  builtIn('SUMXMY2', 'unknown', file('aa')),
  builtIn('SERIESSUM', 'unknown', null),
];

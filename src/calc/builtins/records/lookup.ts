/** Finding values and places: OpenFormula 1.3, part 4, 6.14. */
import { sizeNode } from '../../plan/calls.ts';
import type { PlanNode } from '../../plan/plan-nodes.ts';
import { lookups } from '../../ranges/range-lookup.ts';
import { type BuiltIn, builtIn, file, searching } from '../builtin.ts';
import { hlookup, match, vlookup, xlookup, xmatch } from '../own/over-ranges.ts';

/** A value sought in a column, for an answer out of a column. */
const inOneColumn = ([key, lookup, answers]: readonly PlanNode[]): boolean =>
  key?.is === 'scalar' &&
  lookup?.is === 'area' &&
  answers?.is === 'area' &&
  lookup.columns === 1 &&
  answers.columns === 1;

const language = { implementation: { language: true, engine: true } } as const;

export const lookup: readonly BuiltIn[] = [
  builtIn(
    'XLOOKUP',
    { same: [2, 3], dates: true },
    { takes: 'vrr', as: [], searches: true, asIndexMatch: true },
    {
      implementation: { ranges: { run: lookups.xlookup, oneCell: inOneColumn }, own: xlookup, engine: true },
      indexed: true,
      hands: { cellFor: { single: [0], column: [1, 2] } },
    },
  ),
  builtIn('INDEX', { same: [0], dates: true }, file('rvv?'), {
    implementation: { ranges: { run: lookups.index }, engine: true },
    indexed: true,
    hands: { cellFor: { single: 'all but the first' } },
  }),
  builtIn('MATCH', 'plain', searching('vrv'), {
    implementation: { ranges: { run: lookups.match }, own: match, engine: true },
    indexed: true,
  }),
  builtIn('XMATCH', 'plain', null, { implementation: { own: xmatch }, indexed: true }),
  builtIn('VLOOKUP', 'unknown', searching('vrvv?'), {
    implementation: { ranges: { run: lookups.vlookup }, own: vlookup, engine: true },
    indexed: true,
    hands: { cellFor: { single: [0] } },
  }),
  builtIn('HLOOKUP', 'unknown', null, {
    implementation: { ranges: { run: lookups.hlookup }, own: hlookup, engine: true },
    indexed: true,
    hands: { cellFor: { single: [0] } },
  }),
  builtIn('ROW', 'plain', null, { implementation: { language: true } }),
  builtIn('ROWS', 'plain', null, {
    implementation: { operator: (args) => sizeNode('rows', args), engine: true },
    indexed: true,
  }),
  builtIn('COLUMN', 'plain', null, language),
  builtIn('COLUMNS', 'plain', null, {
    implementation: { operator: (args) => sizeNode('columns', args), engine: true },
    indexed: true,
  }),
  builtIn('OFFSET', 'unknown', null, { implementation: { language: true } }),
  builtIn('ADDRESS', 'text', null),
];

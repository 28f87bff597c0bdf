/** What a value is: OpenFormula 1.3, part 4, 6.13. */
import { missingNode } from '../../plan/calls.ts';
import { type BuiltIn, builtIn, file } from '../builtin.ts';

const asking = { implementation: { engine: true }, asksForValue: true } as const;

export const information: readonly BuiltIn[] = [
  builtIn('ISBLANK', 'yes-no', file('v'), asking),
  builtIn('ISNUMBER', 'yes-no', file('v'), asking),
  builtIn('ISTEXT', 'yes-no', file('v'), asking),
  builtIn('ISNONTEXT', 'yes-no', file('v'), asking),
  builtIn('ISLOGICAL', 'yes-no', file('v'), asking),
  builtIn('ISERROR', 'yes-no', file('v'), asking),
  builtIn('ISERR', 'yes-no', file('v'), asking),
  builtIn('ISNA', 'yes-no', file('v'), asking),
  builtIn('ISEVEN', 'yes-no', null),
  builtIn('ISODD', 'yes-no', null),
  builtIn('ISREF', 'yes-no', null),
  builtIn('ISBINARY', 'yes-no', null),
  builtIn('NA', 'unknown', file(''), { implementation: { operator: missingNode, engine: true } }),
  builtIn('N', { same: [0] }, null),
];

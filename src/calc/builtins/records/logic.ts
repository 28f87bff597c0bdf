/** Conditions and choices: OpenFormula 1.3, part 4, 6.15. */

import { choices } from '../../plan/branches.ts';
import { junctions } from '../../plan/junctions.ts';
import { type BuiltIn, builtIn, file, type Implementation } from '../builtin.ts';

const engine = true;
const choosing = (choice: NonNullable<Implementation['choice']>): Implementation => ({ choice, engine });
const joining = (junction: NonNullable<Implementation['junction']>): Implementation => ({ junction, engine });
const places = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);

const first = { decidedBy: () => [0] };
const everyOther = { decidedBy: (n: number) => places(n).filter((i) => i % 2 === 0) };
const valueAndCases = {
  decidedBy: (n: number) => [0, ...places(n).filter((i) => i % 2 === 1 && i < n - 1)],
};

export const logic: readonly BuiltIn[] = [
  builtIn('IF', { same: [1, 2], dates: true }, file('vvv?'), {
    implementation: choosing(choices.byCondition),
    hands: first,
  }),
  builtIn('IFS', { same: 'every second', dates: true }, file('(vv)+', '_xlfn.IFS'), {
    implementation: choosing(choices.byConditions),
    hands: everyOther,
  }),
  builtIn('SWITCH', 'unknown', null, { implementation: choosing(choices.byValue), hands: valueAndCases }),
  builtIn('CHOOSE', { same: 'all but the first', dates: true }, file('vv+'), {
    implementation: choosing(choices.byNumber),
    hands: first,
  }),
  builtIn('IFERROR', { same: 'all', dates: true }, null, {
    implementation: choosing(choices.unlessError),
    hands: { unless: 'ISERROR' },
    asksForValue: true,
  }),
  builtIn('IFNA', { same: 'all', dates: true }, file('vv', '_xlfn.IFNA'), {
    implementation: choosing(choices.unlessMissing),
    hands: { unless: 'ISNA' },
    asksForValue: true,
  }),
  builtIn('AND', 'yes-no', file('w+'), { implementation: joining(junctions.and), indexed: true }),
  builtIn('OR', 'yes-no', file('w+'), { implementation: joining(junctions.or), indexed: true }),
  builtIn('XOR', 'yes-no', null, { implementation: joining(junctions.xor), indexed: true }),
  builtIn('NOT', 'yes-no', file('v')),
  builtIn('TRUE', 'yes-no', file('')),
  builtIn('FALSE', 'yes-no', file('')),
  builtIn('LET', 'unknown', null, { implementation: { language: true } }),
];

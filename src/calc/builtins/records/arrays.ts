/** Tables out of tables: OpenFormula 1.3, part 4, 6.4, and what later practice added. */
import { filtered } from '../../ranges/filter.ts';
import { type BuiltIn, builtIn } from '../builtin.ts';
import { sequence } from '../own/sequence.ts';
import { frequency } from '../own/spread.ts';

export const arrays: readonly BuiltIn[] = [
  builtIn('FILTER', 'unknown', null, { implementation: { ranges: { run: filtered }, engine: true } }),
  builtIn('SORT', { same: [0], dates: true }, null),
  builtIn('UNIQUE', { same: [0], dates: true }, null),
  builtIn('SEQUENCE', 'plain', null, { implementation: { own: sequence, engine: true } }),
  builtIn('FREQUENCY', 'plain', null, { implementation: { own: frequency } }),
  builtIn('TRANSPOSE', 'unknown', null),
  builtIn('HSTACK', 'unknown', null),
  builtIn('VSTACK', 'unknown', null),
  builtIn('MMULT', 'unknown', null),
  builtIn('MAXPOOL', 'unknown', null),
  builtIn('MEDIANPOOL', 'unknown', null),
  builtIn('ARRAYFORMULA', 'unknown', null),
  builtIn('ARRAY_CONSTRAIN', 'unknown', null),
];

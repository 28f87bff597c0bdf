/** Numbers: OpenFormula 1.3, part 4, 6.16 (mathematical functions) and 6.17 (rounding). */
import { type BuiltIn, builtIn, file } from '../builtin.ts';
import { convert } from '../own/convert.ts';
import { permut } from '../own/spread.ts';

const first = { same: [0] } as const;
const firstOrDate = { same: [0], dates: true } as const;
const all = { same: 'all' } as const;
const allOrDate = { same: 'all', dates: true } as const;
const plainOfOne = (name: string): BuiltIn => builtIn(name, 'plain', file('v'));
const plainNotInFiles = (name: string): BuiltIn => builtIn(name, 'plain', null);

export const numbers: readonly BuiltIn[] = [
  builtIn('ROUND', firstOrDate, file('vv')),
  builtIn('ROUNDUP', firstOrDate, file('vv')),
  builtIn('ROUNDDOWN', firstOrDate, file('vv')),
  builtIn('TRUNC', firstOrDate, file('vv?')),
  builtIn('INT', firstOrDate, file('v')),
  builtIn('MROUND', first, file('vv')),
  builtIn('CEILING', allOrDate, file('vv')),
  builtIn('CEILING.MATH', allOrDate, null),
  builtIn('CEILING.PRECISE ISO.CEILING', all, null),
  builtIn('FLOOR', allOrDate, file('vv')),
  builtIn('FLOOR.MATH', allOrDate, null),
  builtIn('FLOOR.PRECISE', all, null),
  builtIn('EVEN', first, file('v')),
  builtIn('ODD', first, file('v')),
  builtIn('ABS', first, file('v')),
  builtIn('SIGN', 'plain', file('v')),
  builtIn('MOD', all, file('vv')),
  builtIn('QUOTIENT', 'unknown', file('vv')),
  builtIn('POWER', 'unknown', file('vv')),
  builtIn('SQRT', { of: 0, power: 0.5 }, file('v')),
  builtIn('EXP', 'plain', file('v')),
  builtIn('LN', 'plain', file('v')),
  builtIn('LOG', 'plain', file('vv?')),
  builtIn('LOG10', 'plain', file('v')),
  builtIn('PI', 'plain', file('')),
  builtIn('RAND', 'plain', null, { implementation: { engine: true }, volatile: 'random' }),
  builtIn('RANDBETWEEN', all, null, { implementation: { engine: true }, volatile: 'random' }),
  builtIn('DEGREES', 'unknown', file('v')),
  plainOfOne('RADIANS'),
  ...['SIN', 'COS', 'TAN', 'ASIN', 'ACOS', 'ATAN', 'SINH', 'COSH', 'TANH', 'ASINH', 'ACOSH', 'ATANH'].map(
    plainOfOne,
  ),
  builtIn('ATAN2', 'plain', file('vv')),
  ...['COT', 'SEC', 'CSC', 'COTH', 'SECH', 'CSCH', 'ACOT', 'ACOTH'].map(plainNotInFiles),
  builtIn('CONVERT', 'unknown', null, { implementation: { own: convert } }),
  builtIn('SQRTPI', 'unknown', file('v')),
  plainOfOne('FACT'),
  plainNotInFiles('FACTDOUBLE'),
  builtIn('COMBIN', 'plain', file('vv')),
  plainNotInFiles('COMBINA'),
  builtIn('PERMUT', 'plain', null, { implementation: { own: permut } }),
  plainNotInFiles('MULTINOMIAL'),
  plainNotInFiles('GCD'),
  plainNotInFiles('LCM'),
  plainNotInFiles('DELTA'),
  plainNotInFiles('GAMMA'),
  builtIn('GAMMALN GAMMALN.PRECISE', 'plain', file('v')),
  plainNotInFiles('ERF'),
  plainOfOne('ERFC'),
  ...['BESSELI', 'BESSELJ', 'BESSELK', 'BESSELY'].map(plainNotInFiles),
  ...['BITAND', 'BITOR', 'BITXOR', 'BITLSHIFT', 'BITRSHIFT'].map(plainNotInFiles),
];

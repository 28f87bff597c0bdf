/**
 * Elementary functions for what the cell engine computes itself. It calls the platform’s, whose last digits differ between
 * browsers; while it computes, ours stand in their place, so that a formula gives the same digits everywhere.
 */
import { acos, asin, atan, atan2 } from '../../../functions/core/elementary/arc.ts';
import { cos, sin, tan } from '../../../functions/core/elementary/circle.ts';
import { exp } from '../../../functions/core/elementary/exp.ts';
import { expm1, tanh } from '../../../functions/core/elementary/expm1.ts';
import { acosh, asinh, cosh, sinh } from '../../../functions/core/elementary/hyperbolic.ts';
import { log, log2, log10 } from '../../../functions/core/elementary/log.ts';
import { atanh, log1p } from '../../../functions/core/elementary/log1p.ts';
import { pow } from '../../../functions/core/elementary/pow.ts';

const ofOne = {
  ...{ acos, asin, atan, cos, sin, tan, acosh, asinh, atanh, cosh, sinh, tanh },
  ...{ exp, expm1, log, log1p, log2, log10 },
};
/** The engine hands on what is missing as undefined, which the platform’s functions read as no number. */
const own = {
  ...Object.fromEntries(Object.entries(ofOne).map(([name, f]) => [name, (x: unknown) => f(Number(x))])),
  atan2: (y: unknown, x: unknown) => atan2(Number(y), Number(x)),
  pow: (x: unknown, y: unknown) => pow(Number(x), Number(y)),
};
const names = Object.keys(own) as (keyof typeof ofOne | keyof typeof own)[];

let isIn = false;

/** Lets the engine compute with our elementary functions; whatever happens, the platform’s are back afterwards. */
export function withOwnMath<T>(compute: () => T): T {
  if (isIn) return compute();
  const platform = Object.fromEntries(names.map((name) => [name, Math[name]]));
  Object.assign(Math, own);
  isIn = true;
  try {
    return compute();
  } finally {
    isIn = false;
    Object.assign(Math, platform);
  }
}

/** Bodies of the engine that are nothing but one of these functions: called as they are, they run as fast as a loop. */
export const elementaryBodies: readonly (readonly [method: string, body: (...args: never[]) => number])[] = [
  ...Object.entries({ acos, asin, atan, cos, sin, tan, acosh, asinh, atanh, cosh, sinh, tanh }),
  ...Object.entries({ exp, ln: log, log10, power: pow }),
  ['log', (x: number, base: number) => (base === 10 ? log10(x) : base === 2 ? log2(x) : log(x) / log(base))],
];

/** Other methods of the engine that call the platform’s functions; tests/calc/own-math.test.ts finds one that is missing. */
export const usesMath: ReadonlySet<string> = new Set([
  ...['acot', 'acoth', 'atan2', 'cot', 'coth', 'csc', 'csch', 'sec', 'sech'],
  ...[
    'imargument',
    'imcos',
    'imcosh',
    'imcot',
    'imcsc',
    'imcsch',
    'imdiv',
    'imexp',
    'imln',
    'imlog10',
    'imlog2',
  ],
  ...['impower', 'imsec', 'imsech', 'imsin', 'imsinh', 'imsqrt', 'imtan'],
  ...[
    'db',
    'ddb',
    'effect',
    'fv',
    'ipmt',
    'irr',
    'mirr',
    'nominal',
    'nper',
    'npv',
    'pduration',
    'pmt',
    'ppmt',
    'pv',
  ],
  ...['rate', 'rri', 'xirr', 'xnpv'],
  ...[
    'besselifn',
    'besseljfn',
    'besselkfn',
    'besselyfn',
    'combin',
    'combina',
    'erf',
    'erfc',
    'expondist',
    'fisher',
  ],
  ...['fisherinv', 'gamma', 'gammaln', 'geomean', 'rsq', 'skew', 'skewp', 'weibulldist'],
  ...[
    'avedev',
    'correl',
    'covariancep',
    'covariances',
    'devsq',
    'slope',
    'steyx',
    'seriessum',
    'sumx2my2',
    'sumx2py2',
    'sumxmy2',
  ],
  ...[
    'base',
    'bin2dec',
    'bin2hex',
    'bin2oct',
    'bitlshift',
    'bitrshift',
    'dec2bin',
    'dec2hex',
    'dec2oct',
    'decimal',
  ],
  ...['hex2bin', 'hex2dec', 'hex2oct', 'oct2bin', 'oct2dec', 'oct2hex'],
]);

import { Bench, bookOf, plainly } from '../../calc/book-for-test.ts';
import { bitsOf, drawing } from './drawn.ts';

/** Formulas of the language whose values come from exp, logarithms, powers and angles, over x above 0, y of either sign and s from −1 to 1. */
const formulas = [
  ...[
    'EXP(y)',
    'LN(x)',
    'LOG(x)',
    'LOG(x, 3)',
    'LOG10(x)',
    'POWER(x, y)',
    'x ^ y',
    'y ^ 3',
    'y ^ -2',
    '1.1 ^ y',
  ],
  ...[
    'SIN(y)',
    'COS(y)',
    'TAN(y)',
    'ASIN(s)',
    'ACOS(s)',
    'ATAN(y)',
    'ATAN2(x, y)',
    'COT(y)',
    'SEC(y)',
    'CSC(y)',
  ],
  ...[
    'SINH(s)',
    'COSH(y)',
    'TANH(s)',
    'ASINH(y)',
    'ACOSH(1 + x)',
    'ATANH(s)',
    'SIN(y * 1E6)',
    'COS(y * 1E200)',
  ],
  ...[
    'FISHER(s)',
    'FISHERINV(y)',
    'ERF(s)',
    'GAMMALN(x)',
    'WEIBULL.DIST(x, 2, 30, TRUE)',
    'PMT(x / 1000, 12, 100)',
  ],
  ...['SQRT(x) ^ 1.5', 'EFFECT(x / 100, 12)', 'IMABS(IMEXP(COMPLEX(s, y)))', 'TEXT(x, "0.000E+00")'],
  ...['SUMXMY2({1,2,3}, s * {3,4,5})', 'GEOMEAN(x, 2 * x, 3.3)'],
];

/** Bits of the values of all formulas, in columns and, for the first rows, one by one as free cells are computed. */
export function outcomesOfFormulas(count: number): string[] {
  const draw = drawing(20251129);
  const rows = Math.ceil(count / formulas.length);
  const drawn = (make: () => number): number[] => Array.from({ length: rows }, make);
  const columns = {
    x: drawn(() => 60 * draw()),
    y: drawn(() => 40 * draw() - 20),
    s: drawn(() => 2 * draw() - 1),
  };
  const made = Object.fromEntries(formulas.map((formula, i) => [`f_${i}`, formula]));
  const bench = new Bench(bookOf({ t: { ...columns, ...made } }));
  const bits = (value: unknown): string => (typeof value === 'number' ? bitsOf(value) : String(value));
  return formulas.flatMap((formula, i) => [
    ...bench.values('t', `f_${i}`).map((value, row) => `${formula} row ${row} ${bits(value)}`),
    ...Array.from({ length: 20 }, (_, row) => {
      const written = formula.replace(/\b[xys]\b/g, (name) => `(${columns[name as 'x'][row]})`);
      return `${written} ${bits(plainly(bench.calculation.evaluate(written) as never))}`;
    }),
  ]);
}

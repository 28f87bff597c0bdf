import { exp } from '../core/elementary/exp.ts';
import { log } from '../core/elementary/log.ts';
import { pow } from '../core/elementary/pow.ts';
import { type Constant, constant, definition, practice, type Source, secondary } from '../core/source.ts';
import { loadCaution } from './sources.ts';

/** One equation between a set and the one-repetition maximum; n = repetitions + repetitions in reserve. */
interface Equation {
  readonly source: Source;
  readonly rule: string;
  /** Maximum / load for n. */
  readonly factor: (n: number) => number;
  /** n for maximum / load; NaN where there is none. */
  readonly inverse: (ratio: number) => number;
  readonly constants: readonly Constant[];
}

const agree = 'coefficients as secondary pages agree on them';
const of = (source: Source, ...values: readonly [string, number][]): readonly Constant[] =>
  values.map(([name, value]) => constant(name, value, '', source));

const epley = secondary(`Epley 1985, Boyd Epley workout; ${agree}`);
const brzycki = secondary(`Brzycki 1993, JOPERD 64(1):88–90; ${agree}`);
const lander = secondary(`Lander 1985, NSCA J 6(6):60–61; ${agree}`);
const lombardi = secondary(`Lombardi 1989, Beginning Weight Training; ${agree}`);
const mayhew = secondary(`Mayhew et al. 1992, J Appl Sport Sci Res 6:200–206; ${agree}`);
const oconner = secondary(`O'Conner et al. 1989, Weight Training Today; ${agree}`);
const wathan = secondary(`Wathan 1994, in Essentials of Strength Training and Conditioning; ${agree}`);

export const equations = {
  epley: {
    source: epley,
    rule: 'w (1 + n/30)',
    factor: (n) => 1 + n / 30,
    inverse: (r) => 30 * (r - 1),
    constants: of(epley, ['epley divisor', 30]),
  },
  brzycki: {
    source: brzycki,
    rule: 'w · 36/(37 − n)',
    factor: (n) => 36 / (37 - n),
    inverse: (r) => 37 - 36 / r,
    constants: of(brzycki, ['brzycki numerator', 36], ['brzycki pole', 37]),
  },
  lander: {
    source: lander,
    rule: '100 w/(101.3 − 2.67123 n)',
    factor: (n) => 100 / (101.3 - 2.67123 * n),
    inverse: (r) => (101.3 - 100 / r) / 2.67123,
    constants: of(lander, ['lander intercept', 101.3], ['lander slope', 2.67123]),
  },
  lombardi: {
    source: lombardi,
    rule: 'w n^0.10',
    factor: (n) => pow(n, 0.1),
    inverse: (r) => pow(r, 10),
    constants: of(lombardi, ['lombardi exponent', 0.1]),
  },
  mayhew: {
    source: mayhew,
    rule: '100 w/(52.2 + 41.9 e^(−0.055 n))',
    factor: (n) => 100 / (52.2 + 41.9 * exp(-0.055 * n)),
    inverse: (r) => -log((100 / r - 52.2) / 41.9) / 0.055,
    constants: of(mayhew, ['mayhew floor', 52.2], ['mayhew span', 41.9], ['mayhew rate', 0.055]),
  },
  oconner: {
    source: oconner,
    rule: 'w (1 + 0.025 n)',
    factor: (n) => 1 + 0.025 * n,
    inverse: (r) => (r - 1) / 0.025,
    constants: of(oconner, ['oconner slope', 0.025]),
  },
  wathan: {
    source: wathan,
    rule: '100 w/(48.8 + 53.8 e^(−0.075 n))',
    factor: (n) => 100 / (48.8 + 53.8 * exp(-0.075 * n)),
    inverse: (r) => -log((100 / r - 48.8) / 53.8) / 0.075,
    constants: of(wathan, ['wathan floor', 48.8], ['wathan span', 53.8], ['wathan rate', 0.075]),
  },
} as const satisfies Record<string, Equation>;

export type EquationName = keyof typeof equations;
export type Method = EquationName | 'mean';
export const equationNames = Object.keys(equations) as EquationName[];
export const methods = [
  'epley',
  'brzycki',
  'lander',
  'lombardi',
  'mayhew',
  'oconner',
  'wathan',
  'mean',
] as const satisfies readonly Method[];

export const equationSources: readonly Source[] = [
  ...equationNames.map((name) => equations[name].source),
  practice('Repetitions in reserve are added to the repetitions done before an equation is used'),
  definition(
    'At one repetition with none in reserve the load is the maximum: every method returns it unchanged',
  ),
];
export const equationConstants: readonly Constant[] = equationNames.flatMap((name) => [
  ...equations[name].constants,
]);
export const equationRule: string = [
  'n = reps + rir; w = load; at n = 1 the maximum is w',
  ...equationNames.map((name) => `${name}: ${equations[name].rule}`),
  'mean: mean of the seven',
].join('\n');

/** The equation's own line, without the rule for one repetition. */
function lineOf(method: Method, n: number): number {
  if (method !== 'mean') return equations[method].factor(n);
  return equationNames.reduce((sum, name) => sum + equations[name].factor(n), 0) / equationNames.length;
}

/** Maximum / load at n repetitions to failure. */
export const maximumFactor = (method: Method, n: number): number => (n === 1 ? 1 : lineOf(method, n));

/** n on the equation's own line for maximum / load; NaN where there is none up to 36. */
export function repetitionsFor(method: Method, ratio: number): number {
  if (method !== 'mean') return equations[method].inverse(ratio);
  if (ratio > lineOf('mean', 36)) return Number.NaN;
  let low = 1;
  let high = 36;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (lineOf('mean', middle) < ratio) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export const repetitionCautions: readonly string[] = [
  'The equations were fitted to sets of about 2 to 10 repetitions to failure. Above 10 repetitions they diverge from each other and from lifters: treat the answer as a rough guess.',
  'An equation of a group is not one lifter: the seven differ by several per cent on one set.',
  loadCaution,
];

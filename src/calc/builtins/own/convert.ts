import { square } from '../../../../functions/core/elementary/pow.ts';
import { type Issue, isIssue } from '../../../../functions/core/issue.ts';
import type { Outcome } from '../../../../functions/core/value.ts';
import type { Own } from '../builtin.ts';
import { notFound, numberOf } from './reading.ts';

/**
 * OpenFormula, mathematical functions, CONVERT: units by the symbols that it lists. Factors to the first unit of each
 * group. Inch, foot, yard, mile, pound and what follows from them are exact (international yard and pound agreement
 * 1959); the others as in NIST SP 811 (2008), appendix B.
 */
const G = 9.80665;
const cube = (x: number): number => x * square(x);
const INCH = 0.0254;
const FOOT = 12 * INCH;
const POUND = 0.45359237;
const GALLON = 231 * cube(INCH);

const groups: readonly Readonly<Record<string, number>>[] = [
  // metres
  {
    m: 1,
    in: INCH,
    ft: FOOT,
    yd: 3 * FOOT,
    mi: 5280 * FOOT,
    Nmi: 1852,
    ang: 1e-10,
    Pica: INCH / 72,
    pica: INCH / 6,
    ell: 45 * INCH,
    ly: 9460730472580800,
    parsec: 3.085677581491367e16,
    survey_mi: 5280 * (1200 / 3937),
  },
  // kilograms
  {
    kg: 1,
    g: 1e-3,
    u: 1.6605390666e-27,
    grain: POUND / 7000,
    ozm: POUND / 16,
    lbm: POUND,
    stone: 14 * POUND,
    cwt: 100 * POUND,
    uk_cwt: 112 * POUND,
    ton: 2000 * POUND,
    uk_ton: 2240 * POUND,
    sg: (POUND * G) / FOOT,
  },
  // seconds
  { sec: 1, s: 1, mn: 60, min: 60, hr: 3600, day: 86400, d: 86400, yr: 31557600 },
  // newtons
  { N: 1, dyn: 1e-5, dy: 1e-5, lbf: POUND * G, pond: G / 1000 },
  // pascals
  {
    Pa: 1,
    p: 1,
    atm: 101325,
    at: 101325,
    mmHg: 133.322387415,
    Torr: 101325 / 760,
    psi: (POUND * G) / square(INCH),
  },
  // joules
  {
    J: 1,
    e: 1e-7,
    cal: 4.1868,
    c: 4.184,
    eV: 1.602176634e-19,
    ev: 1.602176634e-19,
    Wh: 3600,
    wh: 3600,
    HPh: 550 * FOOT * POUND * G * 3600,
    flb: FOOT * POUND * G,
    BTU: 1055.05585262,
    btu: 1055.05585262,
  },
  // watts
  { W: 1, w: 1, HP: 550 * FOOT * POUND * G, h: 550 * FOOT * POUND * G, PS: 75 * G },
  // teslas
  { T: 1, ga: 1e-4 },
  // metres a second
  { 'm/s': 1, 'm/sec': 1, 'm/h': 1 / 3600, 'm/hr': 1 / 3600, mph: (5280 * FOOT) / 3600, kn: 1852 / 3600 },
  // square metres
  {
    m2: 1,
    'm^2': 1,
    in2: square(INCH),
    'in^2': square(INCH),
    ft2: square(FOOT),
    'ft^2': square(FOOT),
    yd2: square(3 * FOOT),
    mi2: square(5280 * FOOT),
    ha: 1e4,
    ar: 100,
    uk_acre: 4840 * square(3 * FOOT),
  },
  // cubic metres
  {
    m3: 1,
    'm^3': 1,
    l: 1e-3,
    L: 1e-3,
    lt: 1e-3,
    in3: cube(INCH),
    ft3: cube(FOOT),
    yd3: cube(3 * FOOT),
    gal: GALLON,
    qt: GALLON / 4,
    pt: GALLON / 8,
    cup: GALLON / 16,
    oz: GALLON / 128,
    tbs: GALLON / 256,
    tsp: GALLON / 768,
    uk_gal: 4.54609e-3,
    uk_pt: 4.54609e-3 / 8,
  },
  // bits
  { bit: 1, byte: 8 },
];

/** Units that take a prefix for a power of ten. */
const prefixed = new Set([
  'm',
  'g',
  'u',
  's',
  'sec',
  'N',
  'dyn',
  'dy',
  'Pa',
  'p',
  'J',
  'e',
  'cal',
  'c',
  'eV',
  'ev',
  'Wh',
  'wh',
  'W',
  'w',
  'T',
  'ga',
  'l',
  'L',
  'lt',
  'm/s',
  'm/sec',
  'm2',
  'm^2',
  'm3',
  'm^3',
  'bit',
  'byte',
  'ang',
  'ly',
  'parsec',
  'atm',
  'at',
  'mmHg',
  'pond',
]);
const prefixes: Readonly<Record<string, number>> = {
  Y: 24,
  Z: 21,
  E: 18,
  P: 15,
  T: 12,
  G: 9,
  M: 6,
  k: 3,
  h: 2,
  da: 1,
  e: 1,
  d: -1,
  c: -2,
  m: -3,
  u: -6,
  n: -9,
  p: -12,
  f: -15,
  a: -18,
  z: -21,
  y: -24,
};

interface Unit {
  readonly group: number;
  readonly factor: number;
}

function unitOf(symbol: string): Unit | undefined {
  const whole = plainUnit(symbol);
  if (whole) return whole;
  for (const length of [1, 2]) {
    const power = prefixes[symbol.slice(0, length)];
    const rest = symbol.slice(length);
    if (power === undefined || !prefixed.has(rest)) continue;
    const unit = plainUnit(rest)!;
    const dimension = /\^?2$/.test(rest) ? 2 : /\^?3$/.test(rest) ? 3 : 1;
    return { group: unit.group, factor: unit.factor * Number(`1e${power * dimension}`) };
  }
  return undefined;
}

function plainUnit(symbol: string): Unit | undefined {
  const group = groups.findIndex((units) => Object.hasOwn(units, symbol));
  return group < 0 ? undefined : { group, factor: groups[group]![symbol]! };
}

/** Temperatures in kelvin: factor and offset. */
const temperatures: Readonly<Record<string, readonly [factor: number, offset: number]>> = {
  K: [1, 0],
  kel: [1, 0],
  C: [1, 273.15],
  cel: [1, 273.15],
  F: [5 / 9, 459.67],
  fah: [5 / 9, 459.67],
  Rank: [5 / 9, 0],
  Reau: [1.25, 273.15 / 1.25],
};

function converted(value: number, from: string, to: string): number | Issue {
  const [warm, other] = [temperatures[from], temperatures[to]];
  if (warm && other) {
    if (from === to) return value;
    const kelvin = warm[0] === 1 ? value + warm[1] : (value + warm[1]) * warm[0];
    return other[0] === 1 ? kelvin - other[1] : kelvin / other[0] - other[1];
  }
  const [a, b] = [unitOf(from), unitOf(to)];
  if (!a || !b || a.group !== b.group) return notFound('CONVERT');
  return from === to ? value : (value * a.factor) / b.factor;
}

export const convert: Own = {
  minArgs: 3,
  maxArgs: 3,
  compute([given, from, to]): Outcome {
    const value = numberOf('CONVERT', given);
    if (isIssue(value)) return value;
    if (isIssue(from)) return from;
    if (isIssue(to)) return to;
    return converted(value, String(from ?? ''), String(to ?? ''));
  },
};

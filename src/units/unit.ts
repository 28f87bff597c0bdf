import { type Dimension, dimensions } from './dimension.ts';

/**
 * A display unit. One of it is `per / of` base units, both whole or exact, so that one division or multiplication is
 * rounded once: 412 mm are 412 × 1 / 10 cm, not 412 × 0.1.
 */
export interface DisplayUnit {
  readonly unit: string;
  readonly dimension: Dimension;
  readonly per: number;
  readonly of: number;
  /** In full, for lists and help. */
  readonly name: string;
  /** How people write it; compared in lower case, without a dot at the end. */
  readonly words: readonly string[];
  readonly source?: string;
}

const YARD_AND_POUND =
  'International yard and pound agreement of 1 July 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg (Federal Register 24:5348)';
const SI = 'BIPM, The International System of Units, 9th edition, 2019';

const row = (
  dimension: Dimension,
  unit: string,
  per: number,
  of: number,
  name: string,
  words: readonly string[],
  source = SI,
): DisplayUnit => ({ unit, dimension, per, of, name, words: [unit.toLowerCase(), ...words], source });

/** All display units; the first of a dimension is the base unit, in which values are stored. */
export const displayUnits: readonly DisplayUnit[] = [
  row('length', 'cm', 1, 1, 'centimetre', ['cms', 'centimetre', 'centimetres', 'centimeter', 'centimeters']),
  row('length', 'mm', 1, 10, 'millimetre', ['mms', 'millimetre', 'millimetres', 'millimeter', 'millimeters']),
  row('length', 'm', 100, 1, 'metre', ['metre', 'metres', 'meter', 'meters', 'mtr']),
  row('length', 'in', 254, 100, 'inch', ['inch', 'inches', 'ins', '"', '″', '”', "''"], YARD_AND_POUND),
  row('length', 'ft', 3048, 100, 'foot', ['foot', 'feet', "'", '′', '’'], YARD_AND_POUND),
  row('mass', 'kg', 1, 1, 'kilogram', ['kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme']),
  row('mass', 'g', 1, 1000, 'gram', ['gr', 'gram', 'grams', 'gramme', 'grammes']),
  row('mass', 'lb', 45359237, 1e8, 'pound', ['lbs', 'pound', 'pounds', '#'], YARD_AND_POUND),
  row('mass', 'st', 635029318, 1e8, 'stone (14 lb)', ['stone', 'stones'], YARD_AND_POUND),
  row('angle', 'deg', 1, 1, 'degree', ['°', 'degs', 'degree', 'degrees']),
  row('angle', 'rad', 180, Math.PI, 'radian', ['radian', 'radians']),
  row('force', 'N', 1, 1, 'newton', ['newton', 'newtons']),
  row('force', 'kN', 1000, 1, 'kilonewton', ['kilonewton', 'kilonewtons']),
  row('moment', 'N·m', 1, 1, 'newton metre', [
    'nm',
    'n m',
    'n*m',
    'n.m',
    'newton metre',
    'newton metres',
    'newton meters',
  ]),
  row('velocity', 'm/s', 1, 1, 'metre per second', ['mps', 'm·s⁻¹']),
  row('velocity', 'km/h', 10, 36, 'kilometre per hour', ['kmh', 'kph', 'kmph']),
  row('duration', 'min', 1, 1, 'minute', ['mins', 'minute', 'minutes']),
  row('duration', 's', 1, 60, 'second', ['sec', 'secs', 'second', 'seconds']),
  row('duration', 'h', 60, 1, 'hour', ['hr', 'hrs', 'hour', 'hours']),
];

const byUnit = new Map(displayUnits.map((u) => [u.unit, u]));
const byWord = new Map(displayUnits.flatMap((u) => u.words.map((word) => [word, u] as const)));

/** The display unit of this exact sign, or undefined. */
export const unitOf = (unit: string): DisplayUnit | undefined => byUnit.get(unit);

/** The display unit that a written word means (`lbs`, `Inches`, `°`), or undefined. */
export function unitFromWord(word: string): DisplayUnit | undefined {
  const key = word.trim().toLowerCase().replace(/\s+/g, ' ');
  return byWord.get(key) ?? byWord.get(key.replace(/\.$/, ''));
}

export const unitsOf = (dimension: Dimension): readonly DisplayUnit[] =>
  displayUnits.filter((u) => u.dimension === dimension);

/** The display unit of a column: its own, or the base unit of its dimension; undefined for a plain number. */
export function displayUnitOf(column: {
  readonly dimension?: Dimension;
  readonly unit?: string;
}): DisplayUnit | undefined {
  if (!column.dimension) return undefined;
  const own = column.unit === undefined ? undefined : unitOf(column.unit);
  return own?.dimension === column.dimension ? own : unitOf(dimensions[column.dimension]);
}

export const toBase = (value: number, unit: DisplayUnit | undefined): number =>
  unit ? (value * unit.per) / unit.of : value;

export const fromBase = (value: number, unit: DisplayUnit | undefined): number =>
  unit ? (value * unit.of) / unit.per : value;

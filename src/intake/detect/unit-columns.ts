/** Columns that hold nothing but units beside a number: each row's number is in the unit of its row. */
import type { Dimension } from '../../units/dimension.ts';
import { unitFromWord } from '../../units/unit.ts';
import type { Choices, ColumnFinding, Finding } from '../api.ts';
import { listed } from '../listed.ts';
import { note } from '../sentences/index.ts';
import { missingWords } from '../words.ts';
import { headingKey, synonymIndex, synonyms } from './synonyms.ts';

/** Share of the filled cells that must be units; the others make their row's number unreadable. */
const MOST = 0.9;
/** Different texts that a column of units has at most. */
const DISTINCT = 30;
/** Units that are also ordinary codes (m for male): believed only under a heading that says "unit". */
const CODES = new Set(['m', 'g', 'h', 's', 'N', 'st', 'in', 'ft', 'min', 'rad']);
const SAYS_UNIT = /\b(units?|uom|einheit|unite|unidad)\b/;

const lines = synonymIndex(synonyms);
const linesOf = (...words: readonly string[]): ReadonlySet<number> =>
  new Set(words.map((word) => lines.get(word)!));
/** What measures of the trade are in, as far as their names say it; null is a plain number. */
const known: readonly (readonly [Dimension | null, ReadonlySet<number>])[] = [
  ['mass', linesOf('body mass', 'load', 'one rep max')],
  [
    'length',
    linesOf(
      ...['stature', 'sitting height', 'femur', 'tibia', 'trunk', 'foot', 'trochanter height', 'knee height'],
      ...['ankle height', 'shoulder height', 'knee to wall', 'knee to wall left', 'knee to wall right'],
      ...['lift', 'jump height'],
    ),
  ],
  ['angle', linesOf('ankle', 'ankle left', 'ankle right', 'stance', 'lean', 'depth')],
  ['velocity', linesOf('velocity')],
  ['duration', linesOf('minutes')],
  [null, linesOf('id', 'age', 'set', 'sets', 'reps', 'rpe', 'rir', 'trial')],
];

interface Units {
  readonly dimension: Dimension;
  /** Counts by unit, the most frequent first. */
  readonly counts: readonly (readonly [unit: string, count: number])[];
}

/** The units that the texts of a column are; null where they are anything else. */
function unitsOf(texts: ReadonlyMap<string, number>, label: string): Units | null {
  if (texts.size > DISTINCT) return null;
  const counts = new Map<string, number>();
  const dimensions = new Set<Dimension>();
  let filled = 0;
  let units = 0;
  for (const [text, count] of texts) {
    const word = text.trim();
    if (word === '' || missingWords.includes(word.toLowerCase())) continue;
    filled += count;
    const unit = unitFromWord(word);
    if (!unit) continue;
    units += count;
    dimensions.add(unit.dimension);
    counts.set(unit.unit, (counts.get(unit.unit) ?? 0) + count);
  }
  if (filled === 0 || units < MOST * filled || dimensions.size !== 1) return null;
  if ([...counts.keys()].every((unit) => CODES.has(unit)) && !SAYS_UNIT.test(headingKey(label))) return null;
  return { dimension: [...dimensions][0]!, counts: [...counts].sort((a, b) => b[1] - a[1]) };
}

/** Gives numbers the column of their units, where one stands in the file; which numbers it is for is asked where open. */
export function withUnitColumns(
  columns: readonly ColumnFinding[],
  texts: readonly ReadonlyMap<string, number>[],
  choices: Choices,
): ColumnFinding[] {
  const out = [...columns];
  columns.forEach((column, i) => {
    if (column.kind.value === 'number' || choices.columns?.[i]?.kind !== undefined) return;
    const units = unitsOf(texts[i]!, column.label);
    if (!units) return;
    const chosen = choices.columns?.[i]?.unitsOf;
    const free = out.filter((c) => isFree(c, units.dimension, choices));
    const found: Finding<readonly number[]> | null = chosen
      ? { value: chosen, certainty: 'sure', because: note('chosen') }
      : partnersOf(column, units.dimension, free);
    if (!found) return;
    const words = units.counts.map(([unit, count]) => `${count} ${unit}`).join(', ');
    out[i] = { ...column, unitsOf: { ...found, others: free.map(({ index }) => [index]) } };
    for (const at of found.value)
      out[at] = {
        ...out[at]!,
        unitsAt: i,
        dimension: units.dimension,
        unit: {
          value: units.counts[0]![0],
          certainty: found.certainty,
          because: note('units-in-column', { heading: column.heading || column.label, units: words }),
        },
      };
  });
  return out;
}

const knownAs = (label: string): Dimension | null | undefined => {
  const line = lines.get(headingKey(label));
  return line === undefined ? undefined : known.find(([, of]) => of.has(line))?.[0];
};

/** A number without a unit of its own, which may be in this dimension. */
function isFree(column: ColumnFinding, dimension: Dimension, { columns }: Choices): boolean {
  if (column.kind.value !== 'number' || column.unit.value !== null || column.unitsAt !== null) return false;
  if (columns?.[column.index]?.unit !== undefined) return false;
  const is = knownAs(column.label);
  return is === undefined || is === dimension;
}

/** The numbers that a column of units is for: those its heading names, those that measure this, or the only one. */
function partnersOf(
  column: ColumnFinding,
  dimension: Dimension,
  free: readonly ColumnFinding[],
): Finding<readonly number[]> | null {
  const all = (of: readonly ColumnFinding[]) => of.map(({ index }) => index);
  const bare = headingKey(column.label)
    .replace(SAYS_UNIT, '')
    .replace(/\b(of|for|in)\b/g, '')
    .replace(/\s+/g, ' ')
    .trim();
  const named = free.filter(
    ({ label }) =>
      bare !== '' &&
      (headingKey(label) === bare ||
        (lines.get(bare) !== undefined && lines.get(headingKey(label)) === lines.get(bare))),
  );
  if (named.length > 0)
    return {
      value: all(named),
      certainty: 'sure',
      because: note('unit-column-named', { word: column.heading }),
    };
  const fitting = free.filter(({ label }) => knownAs(label) === dimension);
  const some = fitting.length > 0 ? fitting : free;
  if (some.length === 0) return null;
  const names = listed(some.map(({ heading, label }) => heading || label));
  return some.length === 1
    ? { value: all(some), certainty: 'likely', because: note('unit-column-alone', { columns: names }) }
    : { value: all(some), certainty: 'doubtful', because: note('unit-column-open', { columns: names }) };
}

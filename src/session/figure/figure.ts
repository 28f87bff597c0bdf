/** The figure of a row: the lifter, with and without the lift, and what stands beside. */
import { columnOf, sheetOf } from '../../book/book.ts';
import type { Sheet } from '../../book/model.ts';
import { goneName } from '../../book/references/gone.ts';
import { refuse } from '../../book/refusal.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { writeNumber } from '../../units/number.ts';
import type { ReadContext } from '../open-book.ts';
import { typedText } from '../text/typed.ts';
import { explainedLean } from './explained.ts';
import type { Beside, Figure, FigureControl, KeepLift, PostureFigure } from './figure-answers.ts';
import {
  absentFrom,
  chosenColumns,
  columnFor,
  dateOf,
  type FigureOptions,
  figureOptions,
  type Known,
  knownOf,
  type Measure,
  type NEEDED,
  titleOf,
} from './figure-lifter.ts';
import { partsOf } from './figure-parts.ts';
import { descentOf, numbersOf, standOf } from './figure-stand.ts';
import { asTested, otherTests } from './figure-tests.ts';
import { headlineOf } from './headline.ts';
import { heelOrAnkle } from './heel-or-ankle.ts';
import { lifterPlace } from './lifter-place.ts';
import { figureLoads } from './loads.ts';

export { type FigureOptions, figureOptions };

/**
 * The lifter of a row: flat and, with a lift, lifted, with the figures beside the drawing. What is tried out goes before
 * what the row and the named cells hold. Nothing is changed.
 */
export function figureOf(
  context: ReadContext,
  sheetId: string,
  at: number,
  given: FigureOptions = {},
): Figure {
  const chosen = sheetWithRow(context, sheetId, at);
  const { sheet, row } = lifterPlace(context, chosen, at) ?? { sheet: chosen, row: at };
  const known = knownOf(context, sheet, row, given);
  const depth = known.number('depth') ?? 0;
  const lift = known.number('lift') ?? 0;
  const lifted = lift > 0 ? standOf(context, known, lift, depth) : null;
  const flat = standOf(context, known, 0, depth);
  const numbers = {
    flat: numbersOf(context, known, flat, 0),
    lifted: lifted && numbersOf(context, known, lifted, lift),
  };
  const error = numbers.flat.leanError.value;
  return {
    sheet: sheet.id,
    row,
    title: known.title,
    of: sheet.id === chosen.id ? null : sheet.label,
    headline: headlineOf({ flat, lifted, lift: liftInWords(context, lift), numbers }),
    leanColumn: columnInRole(sheet, 'lean')?.id ?? null,
    flat,
    lifted,
    leanError: typeof error === 'number' ? error : null,
    missing: known.missing,
    absent: absentFrom(context.book, sheet),
    elsewhere:
      context.book.sheets.find((one) => one.id !== sheet.id && absentFrom(context.book, one).length === 0)
        ?.label ?? null,
    numbers,
    parts: partsOf(context, known),
    explained: explainedLean(context, knownOf(context, sheet, row, {})),
    loads: figureLoads(context, known),
    controls: controlsOf(known),
    keep: keepOf(context, sheet, row, lift),
    lifters: liftersOf(context, sheet, row),
    tests: otherTests(context, known),
    beside:
      given.test !== undefined
        ? testedOf(context, known, given.test, lift, depth)
        : given.beside === undefined
          ? null
          : besideOf(context, known, given, given.beside, lift, depth),
  };
}

/** Heel lift or more ankle range, for the lifter of a row as tried out. */
export const figureHeel = (context: ReadContext, sheetId: string, row: number, given: FigureOptions = {}) =>
  heelOrAnkle(context, knownOf(context, sheetWithRow(context, sheetId, row), row, given));

/** Millimetres are shown where the lift has some: 3 cm, 2.5 cm. */
const liftInWords = ({ locale }: ReadContext, lift: number): string =>
  `${writeNumber(Math.round(lift * 10) / 10, {}, locale)}\u00a0cm`;

/** The descent of a row's lifter, on the lift where there is one: posture by posture, from the top. */
export function figureDescent(
  context: ReadContext,
  sheetId: string,
  row: number,
  given: FigureOptions = {},
): readonly PostureFigure[] {
  const known = knownOf(context, sheetWithRow(context, sheetId, row), row, given);
  return descentOf(context, known, Math.max(0, known.number('lift') ?? 0));
}

function sheetWithRow({ book }: ReadContext, sheetId: string, row: number): Sheet {
  const sheet = sheetOf(book, sheetId);
  if (!(row >= 0 && row < sheet.rows)) refuse(`The sheet "${sheet.name}" has no row ${row + 1}.`);
  return sheet;
}

interface Range {
  readonly measure: Exclude<Measure, 'placement' | 'stature' | (typeof NEEDED)[0 | 1 | 2] | 'foot'>;
  readonly label: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly fallback: number | null;
}

/** What can be tried out, and within which limits: those of training, narrower than what the functions accept. */
const RANGES: readonly Range[] = [
  { measure: 'lift', label: 'Heel lift', unit: 'cm', least: 0, most: 5, step: 0.1, fallback: 0 },
  {
    measure: 'depth',
    label: 'Depth (° above parallel)',
    unit: '°',
    least: -40,
    most: 60,
    step: 1,
    fallback: 0,
  },
  { measure: 'ankle', label: 'Ankle range', unit: '°', least: 5, most: 60, step: 0.5, fallback: null },
  { measure: 'stance', label: 'Toe-out angle', unit: '°', least: 0, most: 45, step: 1, fallback: 0 },
  { measure: 'bar', label: 'Bar load', unit: 'kg', least: 0, most: 300, step: 2.5, fallback: null },
  { measure: 'mass', label: 'Body mass', unit: 'kg', least: 30, most: 200, step: 0.5, fallback: null },
];

const controlsOf = (known: Known): readonly FigureControl[] => [
  ...RANGES.map(({ fallback, ...range }) => {
    const value = known.number(range.measure) ?? fallback;
    return {
      ...range,
      least: Math.min(range.least, value ?? range.least),
      most: Math.max(range.most, value ?? range.most),
      value,
      from: known.origin(range.measure),
    };
  }),
  {
    measure: 'placement',
    label: 'Bar placement',
    words: ['high-bar', 'low-bar', 'front', 'arms-forward'],
    value: typeof known.value('placement') === 'string' ? String(known.value('placement')) : 'high-bar',
    from: known.origin('placement'),
  },
];

/** Where a lift that was tried out can be written, and the text that would be; or why it cannot. */
function keepOf(
  { book, calculation, locale }: ReadContext,
  sheet: Sheet,
  row: number,
  lift: number,
): KeepLift {
  const chosen = chosenColumns(book);
  const name = goneName(chosen.lift ?? 'lift');
  const found = columnFor(sheet, 'lift', chosen);
  if (!found)
    return {
      sentence: `The sheet ${sheet.label} has no column "${name}". Add one in cm to save a heel lift.`,
    };
  const column = columnOf(sheet, found.id);
  if (column.kind !== 'number' || (column.dimension !== undefined && column.dimension !== 'length'))
    return {
      sentence: `The column ${column.label} is not a column of lengths: a heel lift cannot be saved there.`,
    };
  const now = calculation.value(sheet.id, column.id, row);
  return {
    column: column.id,
    label: column.label,
    text: typedText(lift, column, locale),
    changes: !(typeof now === 'number' && Math.abs(now - lift) < 1e-9) && !(now === null && lift === 0),
    overFormula: column.formula !== undefined,
  };
}

/** A list to choose from holds so many rows; a longer sheet is filtered first. */
const LIFTERS = 300;

function liftersOf(context: ReadContext, sheet: Sheet, row: number): Figure['lifters'] {
  const rows = Array.from({ length: Math.min(sheet.rows, LIFTERS) }, (_, i) => i).filter((i) => i !== row);
  const own = titleOf(context, sheet, row).trim().toLowerCase();
  return rows.map((i) => {
    const date = dateOf(context, sheet, i);
    const title = titleOf(context, sheet, i);
    return {
      row: i,
      title: `${title}${date ? `, ${date}` : ''}`,
      ...(title.trim().toLowerCase() === own ? { same: true as const } : {}),
    };
  });
}

/** Another lifter in this one's set-up, with all lengths scaled so that both are of one stature. */
function besideOf(
  context: ReadContext,
  known: Known,
  given: FigureOptions,
  row: number,
  lift: number,
  depth: number,
): Beside {
  const { sheet } = known;
  if (row >= sheet.rows) refuse(`The sheet "${sheet.name}" has no row ${row + 1}.`);
  const { ankle: _, ...shared } = given;
  const other = knownOf(context, sheet, row, { ...shared, lift, depth });
  const [mine, theirs] = [known.number('stature'), other.number('stature')];
  const byStature = mine !== undefined && theirs !== undefined && theirs > 0;
  const sum = (of: Known): number =>
    (of.number('femur') ?? 0) + (of.number('tibia') ?? 0) + (of.number('trunk') ?? 0);
  const same = other.title.trim().toLowerCase() === known.title.trim().toLowerCase();
  const scale = same ? 1 : byStature ? mine / theirs : sum(other) > 0 ? sum(known) / sum(other) : 1;
  const lengths: readonly Measure[] = ['femur', 'tibia', 'trunk', 'foot'];
  const number = (measure: Measure): number | undefined => {
    if (['placement', 'stance', 'mass', 'bar'].includes(measure)) return known.number(measure);
    const value = other.number(measure);
    return value !== undefined && lengths.includes(measure) ? value * scale : value;
  };
  const value: Known['value'] = (measure) =>
    number(measure) ?? (measure === 'placement' ? known.value(measure) : undefined);
  const date = dateOf(context, sheet, row);
  return {
    row,
    title: `${other.title}${date && other.title === known.title ? `, ${date}` : ''}`,
    scale,
    by: same ? 'same lifter' : byStature ? 'stature' : 'femur + tibia + trunk',
    stand: standOf(context, { ...other, number, value }, lift, depth),
  };
}

/** This lifter at another test, in the same set-up: before and after, as measured. */
function testedOf(
  context: ReadContext,
  known: Known,
  test: NonNullable<FigureOptions['test']>,
  lift: number,
  depth: number,
): Beside {
  const sheet = sheetWithRow(context, test.sheet, test.row);
  const date = dateOf(context, sheet, test.row);
  return {
    row: test.row,
    title: date ?? sheet.label,
    scale: 1,
    by: 'same lifter',
    stand: standOf(context, asTested(context, known, test), lift, depth),
  };
}

import { columnOf, sheetOf } from '../../book/book.ts';
import type { Sheet } from '../../book/model.ts';
import { goneName } from '../../book/references/gone.ts';
import { refuse } from '../../book/refusal.ts';
import { columnInRole } from '../../book/roles.ts';
import { writeNumber } from '../../units/number.ts';
import type { Viewed } from '../open-book.ts';
import { typedText } from '../text/typed.ts';
import type { Beside, Figure, FigureControl, KeepLift, PostureFigure } from './answer.ts';
import { explainedLean } from './explained.ts';
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
import { figureLoads } from './loads.ts';

export { type FigureOptions, figureOptions };

/**
 * The lifter of a row: flat and, with a lift, lifted, with the figures beside the drawing. What is tried out goes before
 * what the row and the named cells hold. Nothing is changed.
 */
export function figureOf(viewed: Viewed, sheetId: string, row: number, given: FigureOptions = {}): Figure {
  const sheet = sheetWithRow(viewed, sheetId, row);
  const known = knownOf(viewed, sheet, row, given);
  const depth = known.number('depth') ?? 0;
  const lift = known.number('lift') ?? 0;
  const lifted = lift > 0 ? standOf(viewed, known, lift, depth) : null;
  const flat = standOf(viewed, known, 0, depth);
  const numbers = {
    flat: numbersOf(viewed, known, flat, 0),
    lifted: lifted && numbersOf(viewed, known, lifted, lift),
  };
  const error = numbers.flat.leanError.value;
  return {
    sheet: sheet.id,
    row,
    title: known.title,
    headline: headlineOf({ flat, lifted, lift: liftInWords(viewed, lift), numbers }),
    leanColumn: columnInRole(sheet, 'lean')?.id ?? null,
    flat,
    lifted,
    leanError: typeof error === 'number' ? error : null,
    missing: known.missing,
    absent: absentFrom(viewed.book, sheet),
    elsewhere:
      viewed.book.sheets.find((one) => one.id !== sheet.id && absentFrom(viewed.book, one).length === 0)
        ?.label ?? null,
    numbers,
    parts: partsOf(viewed, known),
    explained: explainedLean(viewed, knownOf(viewed, sheet, row, {})),
    loads: figureLoads(viewed, known),
    controls: controlsOf(known),
    keep: keepOf(viewed, sheet, row, lift),
    lifters: liftersOf(viewed, sheet, row),
    tests: otherTests(viewed, known),
    beside:
      given.test !== undefined
        ? testedOf(viewed, known, given.test, lift, depth)
        : given.beside === undefined
          ? null
          : besideOf(viewed, known, given, given.beside, lift, depth),
  };
}

/** Heel lift or more ankle range, for the lifter of a row as tried out. */
export const figureHeel = (viewed: Viewed, sheetId: string, row: number, given: FigureOptions = {}) =>
  heelOrAnkle(viewed, knownOf(viewed, sheetWithRow(viewed, sheetId, row), row, given));

/** Millimetres are shown where the lift has some: 3 cm, 2.5 cm. */
const liftInWords = ({ locale }: Viewed, lift: number): string =>
  `${writeNumber(Math.round(lift * 10) / 10, {}, locale)}\u00a0cm`;

/** The descent of a row's lifter, on the lift where there is one: posture by posture, from the top. */
export function figureDescent(
  viewed: Viewed,
  sheetId: string,
  row: number,
  given: FigureOptions = {},
): readonly PostureFigure[] {
  const known = knownOf(viewed, sheetWithRow(viewed, sheetId, row), row, given);
  return descentOf(viewed, known, Math.max(0, known.number('lift') ?? 0));
}

function sheetWithRow({ book }: Viewed, sheetId: string, row: number): Sheet {
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
function keepOf({ book, calculation, locale }: Viewed, sheet: Sheet, row: number, lift: number): KeepLift {
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

function liftersOf(viewed: Viewed, sheet: Sheet, row: number): Figure['lifters'] {
  const rows = Array.from({ length: Math.min(sheet.rows, LIFTERS) }, (_, i) => i).filter((i) => i !== row);
  const own = titleOf(viewed, sheet, row).trim().toLowerCase();
  return rows.map((i) => {
    const date = dateOf(viewed, sheet, i);
    const title = titleOf(viewed, sheet, i);
    return {
      row: i,
      title: `${title}${date ? `, ${date}` : ''}`,
      ...(title.trim().toLowerCase() === own ? { same: true as const } : {}),
    };
  });
}

/** Another lifter in this one's set-up, with all lengths scaled so that both are of one stature. */
function besideOf(
  viewed: Viewed,
  known: Known,
  given: FigureOptions,
  row: number,
  lift: number,
  depth: number,
): Beside {
  const { sheet } = known;
  if (row >= sheet.rows) refuse(`The sheet "${sheet.name}" has no row ${row + 1}.`);
  const { ankle: _, ...shared } = given;
  const other = knownOf(viewed, sheet, row, { ...shared, lift, depth });
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
  const date = dateOf(viewed, sheet, row);
  return {
    row,
    title: `${other.title}${date && other.title === known.title ? `, ${date}` : ''}`,
    scale,
    by: same ? 'same lifter' : byStature ? 'stature' : 'femur + tibia + trunk',
    stand: standOf(viewed, { ...other, number, value }, lift, depth),
  };
}

/** This lifter at another test, in the same set-up: before and after, as measured. */
function testedOf(
  viewed: Viewed,
  known: Known,
  test: NonNullable<FigureOptions['test']>,
  lift: number,
  depth: number,
): Beside {
  const sheet = sheetWithRow(viewed, test.sheet, test.row);
  const date = dateOf(viewed, sheet, test.row);
  return {
    row: test.row,
    title: date ?? sheet.label,
    scale: 1,
    by: 'same lifter',
    stand: standOf(viewed, asTested(viewed, known, test), lift, depth),
  };
}

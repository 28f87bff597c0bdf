import { isIssue } from '../../../functions/core/issue.ts';
import { Kind, type Range, valueAt } from '../../../functions/core/value.ts';
import { columnNamed, sheetOf } from '../../book/book.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { goneName, isGone } from '../../book/references/gone.ts';
import { refuse } from '../../book/refusal.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { signOf } from '../../units/sign.ts';
import { type DisplayUnit, displayUnitOf, fromBase } from '../../units/unit.ts';
import type { ReadContext } from '../open-book.ts';
import { rowsInView } from '../sheet/row-view.ts';
import { sheetViewOf } from '../sheet/sheet-view.ts';
import { displayOf } from '../text/display.ts';
import { type ChartRecord, chartRoles } from './chart-record.ts';
import { type ChartPerson, peopleIn } from './person.ts';

/** A measure of a chart: its values by sheet row in the unit shown, NaN where a row has none. */
export interface Measure {
  readonly column: Column;
  /** With the unit. */
  readonly label: string;
  readonly values: Float64Array;
  /** True where a formula answers with a text, as with "" for the rows of a log that it is not about. */
  isAside(row: number): boolean;
}

export interface Read {
  readonly sheet: Sheet;
  /** The rows that the sheet's filter shows. */
  readonly rows: Int32Array;
  /** How many rows that is of everybody, where the sheet has a filter; null without one. */
  readonly filtered: number | null;
  readonly measures: readonly Measure[];
  /** Group of each sheet row, −1 for none; all 0 where nothing tells rows apart. */
  readonly groupOf: Int32Array;
  readonly groups: readonly string[];
  /** The standard error of measurement that the chart is given, in the unit shown. */
  readonly sem: number | null;
  nameOf(row: number): string;
  /** Everybody whom the rows name, and who alone is drawn. */
  readonly people: readonly string[];
  readonly person: string | null;
}

/** Reads what a chart is drawn from. @throws Refusal with what is missing */
export function readChart(context: ReadContext, record: ChartRecord, wanted?: ChartPerson): Read {
  const { book } = context;
  const sheet = book.sheets.some(({ id }) => id === record.sheet)
    ? sheetOf(book, record.sheet)
    : refuse(
        isGone(record.sheet)
          ? `The sheet "${goneName(record.sheet)}" of this chart is no longer in the book. Change or remove the chart.`
          : 'The sheet of this chart is no longer in the book. Change or remove the chart.',
      );
  const { roles, name } = chartRoles[record.kind];
  if (record.columns.length !== roles.length)
    refuse(`The chart "${name}" takes ${roles.length} columns; this one has ${record.columns.length}.`);
  const column = (wanted: string): Column =>
    columnNamed(sheet, wanted) ??
    refuse(`The sheet ${sheet.label} has no column "${goneName(wanted)}" any more. Change the chart.`);
  const measures = record.columns.map((wanted, index) =>
    measureOf(context, sheet, column(wanted), roles[index]!),
  );
  const view = sheetViewOf(book, sheet.id)?.rows;
  const shown = rowsInView(context, sheet.id, view?.where ? { where: view.where } : {});
  const { rows, ...who } = peopleIn(context, sheet, record, shown, wanted);
  const by = record.by === undefined ? undefined : column(record.by);
  return {
    sheet,
    rows,
    filtered: view?.where?.length ? shown.length : null,
    measures,
    ...grouped(context, sheet, by, who.person === null ? undefined : rows),
    sem: semOf(context, sheet, measures.at(-1)!, record.sem),
    nameOf: namer(context, sheet),
    ...who,
  };
}

/** A formula's error comes in the unit of calculation, like everything that formulas give. */
function semOf(
  context: ReadContext,
  sheet: Sheet,
  { column }: Measure,
  sem: ChartRecord['sem'],
): number | null {
  if (sem === undefined || typeof sem === 'number') return sem ?? null;
  const { calculation } = context;
  const value = calculation.evaluate(sem, { sheet: sheet.id, column: column.id, row: 0 });
  if (isIssue(value))
    refuse(`The standard error of this chart, ${sem}, is ${value.code}: ${calculation.sentence(value)}`);
  if (typeof value !== 'number' || value < 0)
    refuse(`The standard error of this chart, ${sem}, must be a number of 0 or more. Change the chart.`);
  const unit = displayUnitOf(column);
  return fromBase(value, unit) - fromBase(0, unit);
}

function measureOf(context: ReadContext, sheet: Sheet, column: Column, role: 'number' | 'date'): Measure {
  if (role === 'date' ? column.kind !== 'date' : column.kind !== 'number')
    refuse(
      `The column ${column.label} is not a column of ${role === 'date' ? 'dates' : 'numbers'}. Select another.`,
    );
  const unit = role === 'date' ? undefined : displayUnitOf(column);
  const label = unit ? `${column.label} (${signOf(column)})` : column.label;
  const range = context.calculation.column(sheet.id, column.id);
  return {
    column,
    label,
    values: shownValues(range, unit),
    isAside: (row) => range.kinds[row] === Kind.text,
  };
}

function shownValues({ kinds, numbers }: Range, unit: DisplayUnit | undefined): Float64Array {
  const values = new Float64Array(kinds.length).fill(Number.NaN);
  for (let row = 0; row < kinds.length; row++)
    if (kinds[row] === Kind.number || kinds[row] === Kind.date) values[row] = fromBase(numbers[row]!, unit);
  return values;
}

function grouped(
  context: ReadContext,
  sheet: Sheet,
  by: Column | undefined,
  only: Int32Array | undefined,
): { groupOf: Int32Array; groups: readonly string[] } {
  const groupOf = new Int32Array(sheet.rows);
  if (!by) return { groupOf, groups: [] };
  const range = context.calculation.column(sheet.id, by.id);
  const groups: string[] = [];
  const known = new Map<string, number>();
  groupOf.fill(-1);
  for (const row of only ?? Int32Array.from({ length: sheet.rows }, (_, i) => i)) {
    const text =
      range.kinds[row] === Kind.error ? '' : displayOf(valueAt(range, row), by, context.locale).trim();
    let group = text === '' ? -1 : known.get(text.toLowerCase());
    if (group === undefined) {
      group = groups.push(text) - 1;
      known.set(text.toLowerCase(), group);
    }
    groupOf[row] = group;
  }
  return { groupOf, groups };
}

/** Rows are called by their athlete, else by the first column of texts. */
function namer({ calculation }: ReadContext, sheet: Sheet): Read['nameOf'] {
  const first =
    columnInRole(sheet, 'athlete') ?? sheet.columns.find(({ kind }) => kind === 'text' || kind === 'choice');
  return (row) => {
    const value = first ? calculation.value(sheet.id, first.id, row) : null;
    return typeof value === 'string' && value.trim() !== '' ? value : `row ${row + 1}`;
  };
}

/** A column of numbers as functions take it; NaN is a blank. */
export function rangeFrom(values: ArrayLike<number>): Range {
  const kinds = Uint8Array.from(values, (value) => (Number.isNaN(value) ? Kind.blank : Kind.number));
  const numbers = Float64Array.from(values, (value) => (Number.isNaN(value) ? 0 : value));
  return { rows: kinds.length, columns: 1, kinds, numbers, texts: null, errors: null };
}

import { isIssue, isPending } from '../../../functions/core/issue.ts';
import { isMatrix, Kind } from '../../../functions/core/value.ts';
import { columnOf, sheetOf } from '../../book/book.ts';
import { CellKind } from '../../book/cells.ts';
import type { Book, NamedCell, Sheet } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { columnAt } from '../../book/setting-unit.ts';
import type { Place } from '../../calc/api.ts';
import { lettersOf } from '../../calc/language/index.ts';
import { offeredExercises } from '../exercise-settings.ts';
import { markedInWords } from '../marks/cell.ts';
import { drawingsOf } from '../marks/drawings.ts';
import { marksOfSheet } from '../marks/mark-record.ts';
import { marksOutline } from '../marks/mark-words.ts';
import type { ReadContext } from '../open-book.ts';
import { barely, cellText, cellWriter } from '../text/cell-text.ts';
import { headingUnit } from '../text/column-unit.ts';
import { shownWith, wayOf } from '../text/display.ts';
import { typedText } from '../text/typed.ts';
import { CellMark, marksOf } from './cell-mark.ts';
import { settingWords } from './setting-words.ts';
import type { CellInfo, CellOffer, NameOutline, SheetOutline, Tile } from './sheet-answers.ts';
import { sheetViewOf } from './sheet-view.ts';

/** What a cell shows whose result waits for a measure. */
const PENDING = 'pending';
/** Cells that a tile may have at most; a grid asks for a few thousand. */
const LARGEST_TILE = 200_000;

export function sheetOutline(sheet: Sheet, context: ReadContext): SheetOutline {
  const { book, locale } = context;
  const { id, name, label, purpose, note, rows } = sheet;
  const marks = new Map(marksOfSheet(book, id).map((one) => [one.column, one]));
  const columns = sheet.columns.map((column, c) => {
    const own = marks.get(column.id);
    const sign = headingUnit(context, id, column);
    return {
      ...column,
      ...(sign ? { sign } : {}),
      address: lettersOf(c),
      ...(own ? { marks: marksOutline(own, column, locale) } : {}),
    };
  });
  const view = sheetViewOf(book, id);
  return {
    id,
    name,
    label,
    purpose,
    ...(note === undefined ? {} : { note }),
    rows,
    columns,
    ...(view === undefined ? {} : { view }),
  };
}

export function namesOutline(context: ReadContext): readonly NameOutline[] {
  const { book } = context;
  return [...book.names.values()]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((named) => {
      const column = columnOf(sheetOf(book, named.sheet), named.column);
      const { dimension: _, unit: __, per: ___, ...target } = named;
      return { ...target, ...settingWords(book, named), display: cellText(context, column, named) };
    });
}

/**
 * A block of a sheet as the grid shows it; the part of it that exists. With `picked` its rows are those, one by one, and
 * `row` counts in them; a row past the end is blank.
 */
export function tileOf(
  context: ReadContext,
  version: number,
  block: { sheet: string; row: number; rows: number; column: number; columns: number },
  picked?: ArrayLike<number>,
): Tile {
  const sheet = sheetOf(context.book, block.sheet);
  const { row, rows, column, columns } = within(block, picked?.length ?? sheet.rows, sheet.columns.length);
  if (rows * columns > LARGEST_TILE)
    refuse(
      `A tile has at most ${LARGEST_TILE} cells; ${rows} × ${columns} were asked for. Ask for smaller ones.`,
    );
  const texts = new Array<string>(rows * columns);
  const marks = new Uint16Array(rows * columns);
  const bare: Record<number, string> = {};
  const offers: CellOffer[] = [];
  const offered = offeredExercises(context, sheet.id);
  const names = new Set(
    [...context.book.names.values()].filter((n) => n.sheet === sheet.id).map((n) => `${n.row} ${n.column}`),
  );
  for (let c = 0; c < columns; c++) {
    const of = sheet.columns[column + c]!;
    const cells = sheet.cells.get(of.id)!;
    const range = context.calculation.column(sheet.id, of.id);
    const write = cellWriter(context, sheet, of);
    for (let r = 0; r < rows; r++) {
      const at = picked?.[row + r] ?? row + r;
      // The row after the last is the blank one into which a new row is typed.
      if (at >= sheet.rows) {
        texts[r * columns + c] = '';
        continue;
      }
      const named = names.size > 0 && names.has(`${at} ${of.id}`);
      const text = write(at);
      texts[r * columns + c] = text;
      const dated = of.kind === 'date' || range.kinds[at] === Kind.date;
      if (cells.kinds[at] === CellKind.formula || (dated && !cells.held.has(at))) {
        const figure = barely(context, of, { sheet: sheet.id, row: at });
        if (figure !== text) bare[r * columns + c] = figure;
      }
      marks[r * columns + c] = marksOf(of, cells, range, at, named);
      if (marks[r * columns + c]! & CellMark.pending) texts[r * columns + c] = PENDING;
      const offer = offered.find((one) => one.row === at && one.column === of.id);
      if (!offer) continue;
      offers.push({ row: r, column: column + c, choices: offer.choices });
      if (offer.sentence !== undefined) marks[r * columns + c]! |= CellMark.unmatched;
    }
  }
  const drawings = drawingsOf(context, sheet, { column, columns, rows }, (r) => picked?.[row + r] ?? row + r);
  return {
    sheet: sheet.id,
    version,
    row,
    rows,
    column,
    columns,
    texts,
    marks,
    ...(Object.keys(bare).length ? { bare } : {}),
    ...(offers.length ? { offers } : {}),
    ...(drawings.length ? { drawings } : {}),
  };
}

/** The part of a block that lies in a table of so many rows and columns. */
function within(
  block: { row: number; rows: number; column: number; columns: number },
  rows: number,
  columns: number,
): { row: number; rows: number; column: number; columns: number } {
  const row = Math.max(0, Math.min(block.row, rows));
  const column = Math.max(0, Math.min(block.column, columns));
  return {
    row,
    rows: Math.max(0, Math.min(block.rows, rows - row)),
    column,
    columns: Math.max(0, Math.min(block.columns, columns - column)),
  };
}

export function cellInfoOf(context: ReadContext, place: Required<Place>): CellInfo {
  const sheet = sheetOf(context.book, place.sheet);
  const column = columnOf(sheet, place.column);
  if (place.row < 0 || place.row >= sheet.rows)
    refuse(`The sheet "${sheet.name}" has no row ${place.row + 1}.`);
  const cells = sheet.cells.get(column.id)!;
  const kind = cells.kinds[place.row];
  const value = context.calculation.value(sheet.id, column.id, place.row);
  const cell = cells.get(place.row);
  const computed = kind === CellKind.blank && column.formula !== undefined;
  const held = cells.held.get(place.row);
  const offer = offeredExercises(context, sheet.id).find(
    (one) => one.row === place.row && one.column === place.column,
  );
  const sentence = held
    ? held.reason
    : isIssue(value)
      ? context.calculation.sentence(value)
      : offer?.sentence;
  const pending = !held && isIssue(value) && isPending(value);
  const name = nameOf(context.book, place);
  const marked = markedInWords(context, sheet, place);
  return {
    place,
    display: held ? held.held : pending ? PENDING : cellText(context, column, place),
    editText: computed
      ? `=${column.formula}`
      : typedText(cell, columnAt(context.book, place, column), context.locale),
    from: computed
      ? 'column formula'
      : kind === CellKind.held
        ? 'held'
        : kind === CellKind.formula
          ? 'own formula'
          : kind === CellKind.blank
            ? 'blank'
            : 'value',
    override: column.formula !== undefined && kind !== CellKind.blank,
    ...(column.formula === undefined ? {} : { columnFormula: column.formula }),
    ...(sentence === undefined ? {} : { sentence }),
    ...(pending ? { pending } : {}),
    ...(name === undefined ? {} : { name }),
    ...(marked.length ? { marked } : {}),
  };
}

const nameOf = (book: Book, place: Required<Place>): string | undefined =>
  [...book.names.values()].find(
    (n: NamedCell) => n.sheet === place.sheet && n.column === place.column && n.row === place.row,
  )?.name;

/** A formula's result before it is put anywhere. */
export interface Preview {
  readonly display: string;
  readonly error: boolean;
}

/** What a formula would show in a place, in the column's unit and digits; an error with its sentence. */
export function previewOf(
  { book, calculation, locale }: ReadContext,
  formula: string,
  place: Place,
): Preview {
  const column = columnOf(sheetOf(book, place.sheet), place.column);
  const value = calculation.evaluate(formula, place);
  if (isMatrix(value)) return { display: `a table of ${value.rows} × ${value.columns}`, error: false };
  if (isIssue(value)) return { display: `${value.code} ${calculation.sentence(value)}`, error: true };
  if (value === null) return { display: 'blank', error: false };
  const way = wayOf(column, column.dimension ? undefined : calculation.check(formula, place).meaning);
  return { display: shownWith(value, way, locale), error: false };
}

import { isMatrix, Kind, type Range } from '../../../functions/core/value.ts';
import { CellKind, type Cells } from '../../book/cells.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { a1Translator, isA1, type NoA1 } from '../../calc/a1/api.ts';
import type { A1Formula } from '../../calc/a1/index.ts';
import type { Progress } from '../../calc/api.ts';
import { lettersOf } from '../../calc/index.ts';
import { isoFromSerial } from '../../units/date.ts';
import { editText } from '../../units/quantity.ts';
import { displayUnitOf } from '../../units/unit.ts';
import type { ReadContext } from '../open-book.ts';
import { sheetViewOf } from '../sheet/sheet-view.ts';
import { columnUnit } from '../text/column-unit.ts';
import { heading } from '../text/csv.ts';
import { aboutRows } from './about.ts';
import type { Fate } from './fate.ts';
import { mayBeDefined, sheetNames, sheetPrefix } from './names.ts';
import { ABOVE, type ColumnContent, most, type SheetContent, type WorkbookContent } from './shape.ts';

/** Collects what goes into the workbook file of a book. @throws Refusal for what such a file cannot hold */
export function* workbookContent(context: ReadContext, now: Date): Generator<Progress, WorkbookContent> {
  const { book } = context;
  const total = book.sheets.reduce((sum, { rows, columns }) => sum + rows * columns.length, 0);
  if (book.sheets.length === 0) refuse('The book has no sheet yet. Add one, then save it as XLSX.');
  if (total > most.cells)
    refuse(
      `The book has ${total.toLocaleString('en')} cells; up to ${most.cells.toLocaleString('en')} can be written as XLSX. Save its sheets as CSV, or split the book.`,
    );
  const names = sheetNames([...book.sheets.map(({ label, name }) => label || name), 'About']);
  const named = new Map(book.sheets.map(({ id }, i) => [id, names[i]!]));
  const defined = [...book.names.values()].filter(({ name }) => mayBeDefined(name));
  const definedNames = new Set(defined.map(({ name }) => name));
  const lettersIn = (sheet: string, column: string): string => {
    const columns = book.sheets.find(({ id }) => id === sheet)?.columns ?? [];
    return lettersOf(columns.findIndex(({ id }) => id === column));
  };
  const translate = a1Translator(book, {
    above: ABOVE,
    sheet: (id) => sheetPrefix(named.get(id)!),
    rows: (id) => book.sheets.find((sheet) => sheet.id === id)?.rows ?? 0,
    name: (name) => (definedNames.has(name) ? name : undefined),
    column(sheet, column) {
      const of = book.sheets.find(({ id }) => id === sheet)?.columns.find(({ id }) => id === column);
      return of && inBase(of) ? lettersIn(sheet, column) : undefined;
    },
  });

  const fates: Fate[] = [];
  const held: { readonly sheet: Sheet; readonly count: number }[] = [];
  const sheets: SheetContent[] = [];
  let done = 0;
  for (const sheet of book.sheets) {
    if (sheet.rows + ABOVE > most.rows || sheet.columns.length > most.columns)
      refuse(
        `The sheet ${sheet.label} has ${sheet.rows.toLocaleString('en')} rows; an XLSX sheet has room for ${(most.rows - ABOVE).toLocaleString('en')} below its headings. Save it as CSV, or split it.`,
      );
    const columns: ColumnContent[] = [];
    let heldHere = 0;
    for (const column of sheet.columns) {
      yield { about: `Collecting ${sheet.label}`, done, total };
      const cells = sheet.cells.get(column.id)!;
      columns.push(columnContent(context, sheet, column, cells, translate, fates));
      heldHere += cells.held.size;
      done += sheet.rows;
    }
    if (heldHere > 0) held.push({ sheet, count: heldHere });
    sheets.push({
      name: named.get(sheet.id)!,
      rows: sheet.rows,
      frozen: sheetViewOf(book, sheet.id)?.frozen ?? 0,
      columns,
    });
  }
  return {
    title: book.title,
    sheets,
    names: defined.map(({ name, sheet, column, row }) => ({
      name,
      range: `${sheetPrefix(named.get(sheet)!)}$${lettersIn(sheet, column)}$${row + ABOVE + 1}`,
    })),
    about: { name: names.at(-1)!, rows: aboutRows({ book, named, fates, held, defined: definedNames, now }) },
  };
}

/** True where cells show the very numbers that formulas compute with. */
function inBase(column: Column): boolean {
  const unit = column.kind === 'number' ? displayUnitOf(column) : undefined;
  return !unit || unit.per === unit.of;
}

type Translate = ReturnType<typeof a1Translator>;

function columnContent(
  context: ReadContext,
  sheet: Sheet,
  column: Column,
  cells: Cells,
  translate: Translate,
  fates: Fate[],
): ColumnContent {
  const range = context.calculation.column(sheet.id, column.id);
  const values = valuesOf(range, sheet, column, cells);
  const translated = (formula: string, row: number | undefined): A1Formula | undefined => {
    const at = { sheet, column, formula, ...(row === undefined ? {} : { row }) };
    if (!inBase(column)) {
      fates.push({ ...at, no: { why: 'shown in unit', what: displayUnitOf(column)?.unit ?? '' } });
      return undefined;
    }
    const made = translate(formula, { sheet: sheet.id, column: row === undefined });
    fates.push(isA1(made) ? at : { ...at, no: made });
    return isA1(made) ? made : undefined;
  };
  const formula = column.formula === undefined ? undefined : translated(column.formula, undefined);
  const own = new Set<number>();
  if (formula && !cells.blank)
    for (let row = 0; row < sheet.rows; row++) if (cells.kinds[row] !== CellKind.blank) own.add(row);
  const formulas = new Map<number, A1Formula>();
  for (const [row, text] of cells.formulas) {
    const place = { sheet: sheet.id, column: column.id, row };
    const spills = range.kinds[row] !== Kind.error && isMatrix(context.calculation.evaluate(text, place));
    if (spills) fates.push({ sheet, column, row, formula: text, no: { why: 'spills', what: '' } });
    const made = spills ? undefined : translated(text, row);
    if (made) formulas.set(row, made);
  }
  const digits = column.format?.digits;
  const unit = columnUnit(context, sheet, column);
  return {
    heading: heading(column, unit.all),
    ...(unit.each ? { unitOf: unit.each } : {}),
    hidden: column.hidden ?? false,
    ...(column.width === undefined ? {} : { width: column.width }),
    numbers:
      column.kind === 'date'
        ? 'date'
        : column.format?.percent || digits !== undefined
          ? { percent: column.format?.percent ?? false, ...(digits === undefined ? {} : { digits }) }
          : 'plain',
    ...values,
    ...(formula ? { formula } : {}),
    own,
    formulas,
  };
}

/** The first day that a workbook file counts as people do: before it, it counts a leap day that never was. */
const MARCH_1900 = 61;

/** The values of a column as it shows them: numbers in its unit, dates as days, held cells as they came. */
function valuesOf(
  range: Range,
  sheet: Sheet,
  column: Column,
  cells: Cells,
): Pick<ColumnContent, 'kinds' | 'values' | 'texts'> {
  const kinds = new Uint8Array(sheet.rows);
  const values = new Float64Array(sheet.rows);
  const texts: (string | undefined)[] = [];
  const unit = column.kind === 'number' ? displayUnitOf(column) : undefined;
  const same = !unit || unit.per === unit.of;
  const put = (row: number, kind: Kind, text: string): void => {
    if (text.length > most.text)
      refuse(
        `${sheet.label}, ${column.label || column.name}, row ${row + 1} has a text of ${text.length.toLocaleString('en')} characters; an XLSX cell has room for ${most.text.toLocaleString('en')}. Shorten it, or save the sheet as CSV.`,
      );
    kinds[row] = kind;
    texts[row] = text;
  };
  for (let row = 0; row < sheet.rows; row++) {
    if (cells.kinds[row] === CellKind.held) {
      put(row, Kind.text, cells.held.get(row)!.held);
      continue;
    }
    const number = range.numbers[row]!;
    switch (range.kinds[row]) {
      case Kind.number:
      case Kind.date:
        if (range.kinds[row] === Kind.date || column.kind === 'date') {
          if (number < MARCH_1900) put(row, Kind.text, isoFromSerial(number) ?? String(number));
          else {
            kinds[row] = Kind.date;
            values[row] = number;
          }
          break;
        }
        kinds[row] = Kind.number;
        values[row] = same ? number : Number(editText(number, unit, { decimal: '.' }));
        break;
      case Kind.yesNo:
        kinds[row] = Kind.yesNo;
        values[row] = number;
        break;
      case Kind.text:
        if (range.texts?.[row]) put(row, Kind.text, range.texts[row]!);
        break;
      case Kind.error:
        put(row, Kind.error, range.errors?.[row]?.code ?? '#ERROR!');
        break;
      default:
    }
  }
  return { kinds, values, texts };
}

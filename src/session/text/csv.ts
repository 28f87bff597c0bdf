/** A sheet as CSV. */
import { Kind, type Range } from '../../../functions/core/value.ts';
import { sheetOf } from '../../book/book.ts';
import { CellKind } from '../../book/cells.ts';
import type { Column, Sheet } from '../../book/model.ts';
import type { Calculation } from '../../calc/api.ts';
import { isoFromSerial } from '../../units/date.ts';
import { editText } from '../../units/quantity.ts';
import { type DisplayUnit, displayUnitOf } from '../../units/unit.ts';
import { writeYesNo } from '../../units/yes-no.ts';
import type { ReadContext } from '../open-book.ts';
import { columnUnit } from './column-unit.ts';

export interface CsvOptions {
  readonly delimiter?: ',' | ';' | '\t';
  readonly decimal?: '.' | ',';
}

/**
 * A sheet as CSV: RFC 4180, lines end in CRLF, headings with their unit, dates in ISO 8601, numbers in the column's
 * display unit with all the figures it takes to read them back. A text that a spreadsheet could take for a formula gets
 * an apostrophe in front (OWASP, CSV Injection); numbers stay numbers, negative ones too.
 */
export function csvOf(context: ReadContext, sheetId: string, options: CsvOptions = {}): string {
  const { delimiter = ',', decimal = '.' } = options;
  const sheet = sheetOf(context.book, sheetId);
  const quote = quoter(delimiter);
  const fields = fieldsOf(context, sheet, decimal, quote);
  const lines = [fields.map((field) => quote(safe(field.heading))).join(delimiter)];
  for (let row = 0; row < sheet.rows; row++)
    lines.push(fields.map(({ write }) => write(row)).join(delimiter));
  return `${lines.join('\r\n')}\r\n`;
}

/** "Femur (cm)"; a plain number has no unit, and a label that says it says it once. */
export function heading({ label, name }: Column, unit: string): string {
  return unit && !label?.endsWith(`(${unit})`) ? `${label || name} (${unit})` : label || name;
}

/** A column of a sheet, and beside cells that measure this and that their units. */
function fieldsOf(context: ReadContext, sheet: Sheet, decimal: '.' | ',', quote: (text: string) => string) {
  return sheet.columns.flatMap((column) => {
    const unit = columnUnit(context, sheet, column);
    const own = {
      heading: heading(column, unit.all),
      write: writerFor(sheet, column, context.calculation, decimal, quote),
    };
    return unit.each
      ? [
          own,
          {
            heading: `${column.label || column.name}: unit`,
            write: (row: number) => quote(unit.each?.get(row) ?? ''),
          },
        ]
      : [own];
  });
}

function quoter(delimiter: string): (text: string) => string {
  // A program that guesses the delimiter meets each of the usual ones inside quotes alone.
  const special = new RegExp(`["\\r\\n\\t;|${delimiter}]|^\\s|\\s$`);
  return (text) => (special.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
}

/** OWASP: a cell that begins with one of these could be run as a formula by the program that opens the file. A sign alone computes nothing. */
const DANGEROUS = /^(?![+\-＋－]$)[=+\-@\t\r\n＝＋－＠]/;
/** An apostrophe that stands before one already would be taken for ours on the way back: it gets one more. */
const ESCAPED = /^'+[=+\-@\t\r\n＝＋－＠]/;

export const safe = (text: string): string =>
  DANGEROUS.test(text) || ESCAPED.test(text) ? `'${text}` : text;

function writerFor(
  sheet: Sheet,
  column: Column,
  calculation: Calculation,
  decimal: '.' | ',',
  quote: (text: string) => string,
): (row: number) => string {
  const cells = sheet.cells.get(column.id)!;
  const range = calculation.column(sheet.id, column.id);
  const unit = column.kind === 'number' ? displayUnitOf(column) : undefined;
  const locale = { decimal };
  const text = (value: string): string => quote(safe(value));
  return (row) =>
    cells.kinds[row] === CellKind.held
      ? text(cells.held.get(row)!.held)
      : written(range, row, column, unit, locale, text);
}

function written(
  range: Range,
  row: number,
  column: Column,
  unit: DisplayUnit | undefined,
  locale: { decimal: '.' | ',' },
  text: (value: string) => string,
): string {
  switch (range.kinds[row]) {
    case Kind.number:
      if (column.kind === 'date') return isoFromSerial(range.numbers[row]!) ?? String(range.numbers[row]);
      // A number with a decimal comma may hold the delimiter: it is quoted like a text, but never escaped.
      return quoteNumber(editText(range.numbers[row]!, unit, locale), text);
    case Kind.date:
      return isoFromSerial(range.numbers[row]!) ?? String(range.numbers[row]);
    case Kind.yesNo:
      return writeYesNo(range.numbers[row] !== 0);
    case Kind.text:
      return text(range.texts?.[row] ?? '');
    case Kind.error:
      return range.errors?.[row]?.code ?? '#ERROR!';
    default:
      return '';
  }
}

const quoteNumber = (number: string, text: (value: string) => string): string =>
  number.startsWith('-') ? text(number.slice(1)).replace(/^("?)/, '$1-') : text(number);

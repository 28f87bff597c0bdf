/** Reads what was typed into a cell of a column. */
import { type Cell, type CellFormula, CellKind, type Held } from '../../book/cells.ts';
import { choiceMeant } from '../../book/choices.ts';
import type { Column } from '../../book/model.ts';
import { dateToType, readDate } from '../../units/date.ts';
import type { Locale } from '../../units/locale.ts';
import { readMeasured } from '../../units/measured.ts';
import { readNumber } from '../../units/number.ts';
import { editText, type Reading, readQuantity } from '../../units/quantity.ts';
import { splitRate } from '../../units/rate.ts';
import { displayUnitOf } from '../../units/unit.ts';
import { readYesNo, writeYesNo } from '../../units/yes-no.ts';

type Typed = Pick<Column, 'kind' | 'dimension' | 'unit' | 'per' | 'choices' | 'format'>;

const ORDER: Readonly<Record<Locale['dateOrder'], string>> = {
  ymd: 'year, month, day (2025-03-01)',
  dmy: 'day, month, year (01.03.2025)',
  mdy: 'month, day, year (03/01/2025)',
};

/**
 * The cell that a typed or pasted text makes in a column. What does not fit is held with the reason, never refused. A
 * text that begins with "=" is a formula where `formulas` allows it; with an apostrophe before the "=" it is a text.
 * With `setting` a column of plain numbers takes dates, too.
 */
export function readTyped(
  text: string,
  column: Typed,
  locale: Locale,
  formulas = true,
  setting = false,
): Cell {
  const cell = readCell(text, column, locale, formulas);
  // A setting or a free cell may be anything that its column has no unit for: a date is one there.
  if (!setting || !isPlain(column) || cell === null || typeof cell !== 'object' || !('held' in cell))
    return cell;
  const date = readDate(cell.held.trim(), locale);
  if (date !== undefined) return { date };
  return readMeasured(cell.held, locale)
    ? { ...cell, reason: `"${brief(cell.held.trim())}" has a unit. Name the cell, and the unit is read.` }
    : cell;
}

const isPlain = ({ kind, dimension, per, format }: Typed): boolean =>
  kind === 'number' && dimension === undefined && per === undefined && !format?.percent;

function readCell(text: string, column: Typed, locale: Locale, formulas: boolean): Cell {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (!formulas) return readPlain(text, column, locale);
  if (trimmed.startsWith('=') && trimmed.length > 1) return { formula: trimmed.slice(1).trim() };
  return readPlain(ESCAPED.test(text) ? text.slice(1) : text, column, locale);
}

/** An apostrophe before "=", or before another apostrophe, says that a text is meant. */
const ESCAPED = /^'[\s'"]*=/;
const NEEDS_ESCAPE = /^[\s'"]*=/;

function readPlain(text: string, column: Typed, locale: Locale): Cell {
  const trimmed = text.trim();
  switch (column.kind) {
    case 'number': {
      const read = column.format?.percent
        ? readPercent(trimmed, locale)
        : readAmount(trimmed, column, locale);
      return 'value' in read ? read.value : { held: text, reason: read.reason };
    }
    case 'date': {
      const date = readDate(trimmed, locale);
      return date === undefined
        ? {
            held: text,
            reason: `"${brief(trimmed)}" is not a date. Dates are read as ${ORDER[locale.dateOrder]}.`,
          }
        : { date };
    }
    case 'yes-no':
      return readYesNo(trimmed) ?? { held: text, reason: `"${brief(trimmed)}" is neither yes nor no.` };
    case 'choice': {
      return (
        choiceMeant(column.choices ?? [], trimmed) ?? {
          held: text,
          reason: `"${brief(trimmed)}" is none of the choices ${listed(column.choices ?? [])}.`,
        }
      );
    }
    case 'text':
      return text;
  }
}

/** A number with or without its unit; of a column of rates, with or without the time that they are per. */
function readAmount(typed: string, column: Typed, locale: Locale): Reading {
  const { text, per } = splitRate(typed);
  if (column.per === undefined || per === undefined)
    return readQuantity(typed, displayUnitOf(column), locale);
  if (per === column.per) return readQuantity(text, displayUnitOf(column), locale);
  return { reason: `"${brief(typed)}" is a rate per ${per}; this column has rates per ${column.per}.` };
}

/** In a column written in per cent a plain number is meant in per cent too. */
function readPercent(text: string, locale: Locale): { value: number } | { reason: string } {
  const value = readNumber(text.replace(/\s*%$/, ''), locale);
  return value === undefined
    ? { reason: `"${brief(text)}" is not a number.` }
    : { value: Number(`${value}e-2`) };
}

/** What an editor starts with for a cell: reads back as the same cell in the same column and locale. */
export function typedText(cell: Cell, column: Typed, locale: Locale): string {
  if (cell === null) return '';
  if (typeof cell === 'number') {
    if (column.kind !== 'number') return editText(cell, undefined, locale);
    if (column.format?.percent) return `${editText(Number(`${cell}e2`), undefined, locale)} %`;
    return editText(cell, displayUnitOf(column), locale);
  }
  if (typeof cell === 'boolean') return writeYesNo(cell);
  if (typeof cell === 'object' && 'date' in cell) return dateToType(cell.date, locale);
  if (typeof cell === 'object' && 'formula' in cell) return `=${cell.formula}`;
  const text = plainText(cell);
  return NEEDS_ESCAPE.test(text) ? `'${text}` : text;
}

/** A text or held text as it is. */
const plainText = (cell: string | Held): string => (typeof cell === 'string' ? cell : cell.held);

/** A cell's own value as text, to be read again without making formulas: a text that begins with "=" stays one. */
export function valueText(cell: Exclude<Cell, CellFormula>, column: Typed, locale: Locale): string {
  return typeof cell === 'string' || (cell !== null && typeof cell === 'object' && 'held' in cell)
    ? plainText(cell)
    : typedText(cell, column, locale);
}

/** True when a typed text is what the editor started with: the cell then stays as it is to the last bit. */
export function isUnchanged(text: string, cell: Cell, kind: number, column: Typed, locale: Locale): boolean {
  return (kind === CellKind.number || kind === CellKind.date) && text === typedText(cell, column, locale);
}

const brief = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);

const listed = (words: readonly string[]): string =>
  words.length > 8 ? `${words.slice(0, 8).join(', ')} …` : words.join(', ');

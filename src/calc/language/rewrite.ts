import type { Book, Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import type { Span } from '../api.ts';
import type { Address, Node } from '../ast.ts';
import { limits } from '../limits.ts';
import { addressText } from './address.ts';
import { parse } from './parse.ts';
import { childrenOf } from './walk.ts';

/*
 * Formulas as texts, rewritten where something they name has changed; all else stays as it was typed. Every function
 * here answers the formula itself when nothing in it changes, and leaves a formula alone that cannot be read. They look
 * at the book as it is BEFORE the change. `home` is the id of the sheet in which the formula stands.
 *
 * What was deleted leaves its old name behind the error value, as in `#REF!femur/tibia`: the formula still says what it
 * wanted, and the message can tell.
 */

interface Piece extends Span {
  readonly text: string;
}
/** A name that stands for something in the book, or a reference to cells. */
type Mention = Extract<Node, { type: 'name' | 'qualified' | 'cell' | 'cells' }>;

/** Replaces pieces of the formula: what `replace` answers for each mention, or for none. */
function rewrite(formula: string, replace: (mention: Mention) => Piece | undefined): string {
  const parsed = parse(formula);
  if (!parsed.ok) return formula;
  const pieces: Piece[] = [];
  const visit = (node: Node, locals: ReadonlySet<string>): void => {
    if (node.type === 'call' && node.name === 'LET') {
      const known = new Set(locals);
      node.args.forEach((arg, i) => {
        const names = i % 2 === 0 && i + 1 < node.args.length && arg.type === 'name';
        if (names) known.add(nameKey((arg as { name: string }).name));
        else visit(arg, i % 2 === 1 ? without(known, node.args[i - 1]) : known);
      });
      return;
    }
    if (node.type === 'name' && locals.has(nameKey(node.name))) return;
    if (node.type === 'name' || node.type === 'qualified' || node.type === 'cell' || node.type === 'cells') {
      const piece = replace(node);
      if (piece) pieces.push(piece);
      return;
    }
    for (const child of childrenOf(node)) visit(child, locals);
  };
  visit(parsed.node, new Set());
  let text = formula;
  for (const { from, to, text: piece } of pieces.reverse())
    text = text.slice(0, from) + piece + text.slice(to);
  return text;
}

/** A value of LET does not know its own name yet. */
function without(known: ReadonlySet<string>, name: Node | undefined): ReadonlySet<string> {
  if (name?.type !== 'name') return known;
  const fewer = new Set(known);
  fewer.delete(nameKey(name.name));
  return fewer;
}

const same = (a: string, b: string): boolean => nameKey(a) === nameKey(b);
const sheetOf = (book: Book, id: string): Sheet | undefined => book.sheets.find((s) => s.id === id);
const columnOf = (book: Book, sheet: string, id: string): Column | undefined =>
  sheetOf(book, sheet)?.columns.find((c) => c.id === id);

/** Where the name of the column stands in a mention of it, or undefined when it is another. */
function columnSpan(node: Mention, home: string, sheet: Sheet, column: Column): Span | undefined {
  if (node.type === 'name' && home === sheet.id && same(node.name, column.name)) return node.span;
  if (node.type === 'qualified' && same(node.sheet, sheet.name) && same(node.name, column.name))
    return { from: node.span.to - node.name.length, to: node.span.to };
  return undefined;
}

const sheetNameIn = (node: Mention): string | undefined => (node.type === 'name' ? undefined : node.sheet);

/** True when the mention leads to cells or columns of the sheet, said or understood. */
const isOn = (node: Mention, home: string, sheet: Sheet): boolean => {
  const said = sheetNameIn(node);
  return said === undefined ? home === sheet.id : same(said, sheet.name);
};

export function renameColumn(
  formula: string,
  book: Book,
  home: string,
  sheetId: string,
  columnId: string,
  to: string,
): string {
  const sheet = sheetOf(book, sheetId);
  const column = columnOf(book, sheetId, columnId);
  if (!sheet || !column) return formula;
  return rewrite(formula, (node) => {
    const span = columnSpan(node, home, sheet, column);
    return span && { ...span, text: to };
  });
}

export function renameSheet(formula: string, book: Book, _home: string, sheetId: string, to: string): string {
  const sheet = sheetOf(book, sheetId);
  if (!sheet) return formula;
  return rewrite(formula, (node) => {
    const said = sheetNameIn(node);
    if (said === undefined || !same(said, sheet.name)) return undefined;
    return { from: node.span.from, to: node.span.from + said.length, text: to };
  });
}

/** True for a mention of a named cell: a column of the formula's own sheet would come first. */
const isNamed = (node: Mention, book: Book, home: string, name: string): boolean =>
  node.type === 'name' &&
  same(node.name, name) &&
  !sheetOf(book, home)?.columns.some((c) => same(c.name, name));

export function renameNamed(formula: string, book: Book, home: string, name: string, to: string): string {
  return rewrite(formula, (node) =>
    isNamed(node, book, home, name) ? { ...node.span, text: to } : undefined,
  );
}

/** What is left of a mention whose target goes. */
const lost = (formula: string, span: Span): Piece => ({
  ...span,
  text: `#REF!${formula.slice(span.from, span.to).replaceAll(/\s/g, '')}`,
});

export function loseColumn(
  formula: string,
  book: Book,
  home: string,
  sheetId: string,
  columnId: string,
): string {
  const sheet = sheetOf(book, sheetId);
  const column = columnOf(book, sheetId, columnId);
  if (!sheet || !column) return formula;
  return rewrite(formula, (node) =>
    columnSpan(node, home, sheet, column) ? lost(formula, node.span) : undefined,
  );
}

export function loseSheet(formula: string, book: Book, _home: string, sheetId: string): string {
  const sheet = sheetOf(book, sheetId);
  if (!sheet) return formula;
  return rewrite(formula, (node) => {
    const said = sheetNameIn(node);
    return said !== undefined && same(said, sheet.name) ? lost(formula, node.span) : undefined;
  });
}

export function loseNamed(formula: string, book: Book, home: string, name: string): string {
  return rewrite(formula, (node) => (isNamed(node, book, home, name) ? lost(formula, node.span) : undefined));
}

/** New place of a row or column that counts from 0; undefined when it goes. */
export type Moved = (at: number) => number | undefined;

/**
 * Addresses after rows of a sheet came, went or changed places: a cell follows its row; a range shrinks and grows with
 * its rows, and stays where it is when they are only mixed with others. In a column's formula, rows without `$` are
 * counted from the row itself and stay as written.
 */
export function moveRows(
  formula: string,
  book: Book,
  home: string,
  sheetId: string,
  to: Moved,
  ofColumn = false,
): string {
  const sheet = sheetOf(book, sheetId);
  if (!sheet) return formula;
  const rowOf = ({ row, rowFixed }: Address): number | undefined => (ofColumn && !rowFixed ? row : to(row));
  return rewrite(formula, (node) => {
    if ((node.type !== 'cell' && node.type !== 'cells') || !isOn(node, home, sheet)) return undefined;
    if (node.type === 'cell')
      return cellPiece(formula, node, { row: rowOf(node.at), column: node.at.column });
    const moving = ofColumn && !(node.from.rowFixed && node.to.rowFixed);
    const rows = moving
      ? ends(rowOf(node.from), rowOf(node.to))
      : rangeAfter(node.from.row, node.to.row, to, sheet.rows);
    return rangePiece(formula, node, rows, [node.from.column, node.to.column]);
  });
}

/** Addresses after columns of a sheet came, went or changed places. */
export function moveColumns(formula: string, book: Book, home: string, sheetId: string, to: Moved): string {
  const sheet = sheetOf(book, sheetId);
  if (!sheet) return formula;
  return rewrite(formula, (node) => {
    if ((node.type !== 'cell' && node.type !== 'cells') || !isOn(node, home, sheet)) return undefined;
    if (node.type === 'cell')
      return cellPiece(formula, node, { row: node.at.row, column: to(node.at.column) });
    const columns = rangeAfter(node.from.column, node.to.column, to, sheet.columns.length);
    return rangePiece(formula, node, [node.from.row, node.to.row], columns);
  });
}

/** What becomes of a formula that is filled or copied so many rows down and columns to the right. */
export function shiftRelative(formula: string, rows: number, columns: number): string {
  const shift = (at: Address): Address | undefined => {
    const row = at.rowFixed ? at.row : at.row + rows;
    const column = at.columnFixed ? at.column : at.column + columns;
    if (row < 0 || column < 0 || row >= limits.rows || column >= limits.columns) return undefined;
    return { ...at, row, column };
  };
  return rewrite(formula, (node) => {
    if (node.type === 'cell') {
      const at = shift(node.at);
      return at ? cellPiece(formula, node, at) : lost(formula, node.span);
    }
    if (node.type !== 'cells') return undefined;
    const from = shift(node.from);
    const to = shift(node.to);
    if (!from || !to) return lost(formula, node.span);
    return rangePiece(formula, node, [from.row, to.row], [from.column, to.column]);
  });
}

type CellMention = Extract<Node, { type: 'cell' }>;
type RangeMention = Extract<Node, { type: 'cells' }>;
type Ends = readonly [first: number, last: number] | undefined;

const ends = (first: number | undefined, last: number | undefined): Ends =>
  first === undefined || last === undefined ? undefined : [first, last];

/** First and last place of a range after the change, or undefined when none of it is left. */
function rangeAfter(from: number, to: number, moved: Moved, size: number): Ends {
  const inside: number[] = [];
  for (let at = from; at <= Math.min(to, Math.max(size - 1, from)); at++) {
    const now = moved(at);
    if (now !== undefined) inside.push(now);
  }
  if (inside.length === 0) return undefined;
  let low = inside[0]!;
  let high = low;
  for (const now of inside) {
    low = Math.min(low, now);
    high = Math.max(high, now);
  }
  // Others among them now: the places were mixed, and the range stays where it is.
  if (high - low + 1 > inside.length)
    for (let at = 0; at < size; at++) {
      if (at >= from && at <= to) continue;
      const now = moved(at);
      if (now !== undefined && now > low && now < high) return [from, to];
    }
  // Beyond the last row nothing is mixed: the range keeps its reach there.
  if (to >= size && from < size) return [low, Math.max(high, moved(to) ?? high)];
  return [low, high];
}

function cellPiece(
  formula: string,
  node: CellMention,
  { row, column }: { readonly row: number | undefined; readonly column: number | undefined },
): Piece | undefined {
  if (row === undefined || column === undefined) return lost(formula, node.span);
  if (row === node.at.row && column === node.at.column) return undefined;
  return { ...node.span, text: `${onSheet(node)}${addressText({ ...node.at, row, column })}` };
}

function rangePiece(formula: string, node: RangeMention, rows: Ends, columns: Ends): Piece | undefined {
  if (!rows || !columns) return lost(formula, node.span);
  const from = { ...node.from, row: rows[0], column: columns[0] };
  const to = { ...node.to, row: rows[1], column: columns[1] };
  if (addressText(from) === addressText(node.from) && addressText(to) === addressText(node.to))
    return undefined;
  return { ...node.span, text: `${onSheet(node)}${addressText(from)}:${addressText(to)}` };
}

const onSheet = (node: Mention): string => {
  const said = sheetNameIn(node);
  return said === undefined ? '' : `${said}!`;
};

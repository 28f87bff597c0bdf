import type { Book } from '../../book/model.ts';
import type { Address, Node } from '../ast.ts';
import { limits } from '../limits.ts';
import { addressText } from './address.ts';
import { isOn, lost, type Mention, type Piece, rewrite, sheetNameIn, sheetOf } from './rewrite.ts';

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

import type { Book, Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import type { Span } from '../api.ts';
import type { Node } from '../ast.ts';
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

export interface Piece extends Span {
  readonly text: string;
}
/** A name that stands for something in the book, or a reference to cells. */
export type Mention = Extract<Node, { type: 'name' | 'qualified' | 'cell' | 'cells' }>;

/** Replaces pieces of the formula: what `replace` answers for each mention, or for none. */
export function rewrite(formula: string, replace: (mention: Mention) => Piece | undefined): string {
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
export const sheetOf = (book: Book, id: string): Sheet | undefined => book.sheets.find((s) => s.id === id);
const columnOf = (book: Book, sheet: string, id: string): Column | undefined =>
  sheetOf(book, sheet)?.columns.find((c) => c.id === id);

/** Where the name of the column stands in a mention of it, or undefined when it is another. */
function columnSpan(node: Mention, home: string, sheet: Sheet, column: Column): Span | undefined {
  if (node.type === 'name' && home === sheet.id && same(node.name, column.name)) return node.span;
  if (node.type === 'qualified' && same(node.sheet, sheet.name) && same(node.name, column.name))
    return { from: node.span.to - node.name.length, to: node.span.to };
  return undefined;
}

export const sheetNameIn = (node: Mention): string | undefined =>
  node.type === 'name' ? undefined : node.sheet;

/** True when the mention leads to cells or columns of the sheet, said or understood. */
export const isOn = (node: Mention, home: string, sheet: Sheet): boolean => {
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

/** Names that stand alone, each in the place of another: by the key of the name that it replaces. */
export const renameNames = (formula: string, to: ReadonlyMap<string, string>): string =>
  rewrite(formula, (node) => {
    const name = node.type === 'name' ? to.get(nameKey(node.name)) : undefined;
    return name === undefined ? undefined : { ...node.span, text: name };
  });

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
export const lost = (formula: string, span: Span): Piece => ({
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

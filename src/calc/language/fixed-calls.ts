import { type Issue, issue } from '../../../functions/core/issue.ts';
import { nameKey } from '../../book/names.ts';
import type { CallNode, Node } from '../ast.ts';
import { limits } from '../limits.ts';
import type { BookIndex, SheetIndex } from './book-index.ts';

/*
 * Calls about which the written formula alone tells all there is to know.
 */

/** COLUMN, COLUMNS and ROWS of what is written as an address: told by the formula alone. */
export function counted(
  { name, args }: CallNode<Node>,
  book: BookIndex,
  own: SheetIndex | undefined,
): number | Issue | undefined {
  const [of] = args;
  if (name === 'COLUMN') {
    if (args.length !== 1) return issue('#N/A', 'column-of-what', { function: name });
    if (of!.type === 'cell') return of!.at.column + 1;
    if (of!.type === 'cells') return of!.from.column + 1;
    const sheet = of!.type === 'qualified' ? book.sheets.get(nameKey(of!.sheet)) : own;
    const key = of!.type === 'name' || of!.type === 'qualified' ? nameKey(of!.name) : undefined;
    const at = sheet?.sheet.columns.findIndex((c) => nameKey(c.name) === key) ?? -1;
    return at < 0 ? issue('#N/A', 'column-of-what', { function: name }) : at + 1;
  }
  if (of?.type !== 'cells' || args.length > 1) return undefined;
  if (name === 'COLUMNS') return of.to.column - of.from.column + 1;
  if (name === 'ROWS' && of.from.rowFixed === of.to.rowFixed) return of.to.row - of.from.row + 1;
  return undefined;
}

/** Calls whose written arguments alone tell that the cell engine would be at it for minutes. */
export function tooWild({ name, args }: CallNode<Node>): Issue | undefined {
  if (name === 'SEQUENCE') {
    const size = args.slice(0, 2).map((arg) => (arg.type === 'number' ? arg.value : 1));
    if (size.reduce((a, b) => a * b, 1) > limits.arrayCells)
      return issue('#NUM!', 'array-too-large', { function: name, details: { most: limits.arrayCells } });
  }
  return undefined;
}

import { isIssue } from '../../../functions/core/issue.ts';
import type { Value } from '../../../functions/core/value.ts';
import { columnNamed, sheetOf } from '../../book/book.ts';
import type { Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import type { Node } from '../../calc/ast.ts';
import { builtIns } from '../../calc/builtins/index.ts';
import { parse, walk } from '../../calc/language/index.ts';
import { titleOf } from '../figure/figure-lifter.ts';
import type { ReadContext } from '../open-book.ts';
import type { HandoutRule } from './handout-settings.ts';
import { filled, placesOf, valueIn } from './texts.ts';

/**
 * Whether a rule's sentence appears on a lifter's page. A rule that nothing can be said of, because a value is missing
 * or an error, is neither true nor false: it has a reason.
 */
export type Decided =
  | { readonly is: 'said'; readonly text: string }
  | { readonly is: 'not said' }
  | { readonly is: 'open'; readonly reason: string };

export function decide(context: ReadContext, rule: HandoutRule, sheet: Sheet, row: number): Decided {
  const empty = readIn(rule.when).find((name) => isEmpty(context, name, sheet, row));
  if (empty !== undefined) return { is: 'open', reason: `${labelOf(context, empty, sheet)} is empty.` };
  const value = valueIn(context, rule.when, sheet, row);
  if (isIssue(value)) return { is: 'open', reason: context.calculation.sentence(value) };
  if (typeof value !== 'boolean')
    return { is: 'open', reason: `The formula ${rule.when} is neither true nor false.` };
  if (!value) return { is: 'not said' };
  const text = filled(context, rule.say, sheet, row);
  if (text !== null) return { is: 'said', text };
  const place = placesOf(rule.say).find((name) => !hasWords(context, name, sheet, row));
  return {
    is: 'open',
    reason: `${place === undefined ? 'A value' : labelOf(context, place, sheet)} is empty.`,
  };
}

/** What asks by itself whether there is a value: a name inside one of these may be empty. */
const asks = (name: string): boolean => builtIns.get(name)?.asksForValue === true;
const isNothing = (node: Node): boolean => node.type === 'text' && node.value === '';

/** The names that a formula needs a value of; those whose absence it asks about are left out. */
function readIn(formula: string): readonly string[] {
  const parsed = parse(formula);
  if (!parsed.ok) return [];
  const asked = new Set<string>();
  const namesOf = (node: Node, found: Set<string>): void =>
    walk<Node>(node, (inner) => {
      if (inner.type === 'name') found.add(nameKey(inner.name));
      return undefined;
    });
  walk<Node>(parsed.node, (node) => {
    if (node.type === 'call' && asks(node.name)) for (const arg of node.args) namesOf(arg, asked);
    if (node.type === 'binary' && (isNothing(node.left) || isNothing(node.right))) {
      namesOf(node.left, asked);
      namesOf(node.right, asked);
    }
    return undefined;
  });
  const all = new Set<string>();
  namesOf(parsed.node, all);
  return [...all].filter((name) => !asked.has(name));
}

/** The value of a column in the row or of a setting; undefined for a name that is neither. */
function named(
  { book, calculation }: ReadContext,
  name: string,
  sheet: Sheet,
  row: number,
): Value | undefined {
  const column = columnNamed(sheet, name);
  if (column) return calculation.value(sheet.id, column.id, row);
  const cell = book.names.get(nameKey(name));
  return cell && calculation.value(cell.sheet, cell.column, cell.row);
}

const isEmpty = (context: ReadContext, name: string, sheet: Sheet, row: number): boolean => {
  const value = named(context, name, sheet, row);
  return value === null || (typeof value === 'string' && value.trim() === '');
};
const hasWords = (context: ReadContext, name: string, sheet: Sheet, row: number): boolean => {
  const value = named(context, name, sheet, row);
  return value !== undefined && !isIssue(value) && !isEmpty(context, name, sheet, row);
};

function labelOf(context: ReadContext, name: string, sheet: Sheet): string {
  const column = columnNamed(sheet, name);
  if (column) return column.label || column.name;
  const cell = context.book.names.get(nameKey(name));
  if (!cell) return name;
  const own = sheetOf(context.book, cell.sheet);
  return `The setting ${titleOf(context, own, cell.row)} (${cell.name})`;
}

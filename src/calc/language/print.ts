import type { BinaryOperator, Node } from '../ast.ts';
import { addressText } from './address.ts';
import { PERCENT, SIGN, strength, WHOLE } from './operator-order.ts';

/** How tightly the outermost part of a tree holds together. */
function strengthOf(node: { readonly type: string; readonly operator?: string }): number {
  if (node.type === 'binary') return strength[node.operator as BinaryOperator];
  if (node.type === 'percent') return PERCENT;
  if (node.type === 'unary') return SIGN;
  return WHOLE;
}

/** A number as a formula writes it: shortest digits that read back as the same double. */
export const numberText = (value: number): string => String(value).replace('e+', 'e');

export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** The tree as text, with the parentheses it needs and no others; `parse(print(node))` is the same tree. */
export function print(node: Node): string {
  const within = (child: Node, least: number): string =>
    strengthOf(child) < least ? `(${print(child)})` : print(child);
  switch (node.type) {
    case 'number':
      return numberText(node.value);
    case 'text':
      return quoted(node.value);
    case 'yes-no':
      return node.value ? 'TRUE' : 'FALSE';
    case 'error':
      return `${node.code}${node.lost ?? ''}`;
    case 'empty':
      return '';
    case 'array':
      return `{${node.rows.map((row) => row.map(print).join(',')).join(';')}}`;
    case 'unary':
      return `${node.operator}${within(node.operand, SIGN)}`;
    case 'percent':
      return `${within(node.operand, PERCENT)}%`;
    case 'binary': {
      const own = strength[node.operator];
      return `${within(node.left, own)}${node.operator}${within(node.right, own + 1)}`;
    }
    case 'call':
      return `${node.name}(${node.args.map(print).join(', ')})`;
    case 'name':
      return node.name;
    case 'qualified':
      return `${node.sheet}.${node.name}`;
    case 'cell':
      return `${onSheet(node.sheet)}${addressText(node.at)}`;
    case 'cells':
      return `${onSheet(node.sheet)}${addressText(node.from)}:${addressText(node.to)}`;
  }
}

const onSheet = (sheet: string | undefined): string => (sheet === undefined ? '' : `${sheet}!`);

import { type Issue, issue } from '../../../functions/core/issue.ts';
import type { Address, CallNode, Node } from '../ast.ts';
import { limits } from '../limits.ts';

/** The whole number that an argument is written as, or undefined. */
function written(node: Node | undefined): number | undefined {
  if (node?.type === 'unary') {
    const value = written(node.operand);
    return value === undefined ? undefined : node.operator === '-' ? -value : value;
  }
  if (node?.type === 'empty') return 0;
  return node?.type === 'number' && Number.isInteger(node.value) ? node.value : undefined;
}

/**
 * OFFSET(cell or range, rows, columns, [height], [width]) as the cell or range it leads to. Its numbers must be written
 * out: then the cells a formula reads are known before it runs, and nothing has to be computed again for nothing.
 */
export function offsetTarget(call: CallNode<Node>): Node | Issue {
  const fixed = issue('#VALUE!', 'offset-fixed', { function: 'OFFSET' });
  const [start, ...rest] = call.args;
  if (!start || (start.type !== 'cell' && start.type !== 'cells') || rest.length < 2 || rest.length > 4)
    return fixed;
  const [rows, columns, height, width] = [0, 1, 2, 3].map((i) => (i < rest.length ? written(rest[i]) : null));
  if (rows === undefined || columns === undefined || height === undefined || width === undefined)
    return fixed;
  const from = start.type === 'cell' ? start.at : start.from;
  const to = start.type === 'cell' ? start.at : start.to;
  const high = height ?? to.row - from.row + 1;
  const wide = width ?? to.column - from.column + 1;
  const first: Address = { ...from, row: from.row + rows!, column: from.column + columns! };
  const last: Address = { ...first, row: first.row + high - 1, column: first.column + wide - 1 };
  const outside =
    high < 1 ||
    wide < 1 ||
    first.row < 0 ||
    first.column < 0 ||
    last.row >= limits.rows ||
    last.column >= limits.columns;
  if (outside) return issue('#REF!', 'offset-outside', { function: 'OFFSET' });
  const on = start.sheet === undefined ? {} : { sheet: start.sheet };
  return high === 1 && wide === 1
    ? { type: 'cell', ...on, at: first, span: call.span }
    : { type: 'cells', ...on, from: first, to: last, span: call.span };
}

/** A bound formula as the tree that the cell engine evaluates. */
import { CellError, type SimpleRangeValue } from 'hyperformula';
import { invoke } from '../../../functions/core/invoke.ts';
import { type Issue, issue } from '../../../functions/core/issue.ts';
import { registry } from '../../../functions/registry.ts';
import type { BinaryOperator, Bound, CallNode } from '../ast.ts';
import { builtIns } from '../builtins/index.ts';
import { type BinaryTree, cellEngine, type Tree } from '../cell-engine/engine.ts';
import { errorOf, type Inner, issueOfError } from '../cell-engine/values.ts';
import { issueOf } from '../sentences.ts';
import { argumentOf, copied, innerOf, innerOfOutcome, rangeInside } from './inner-values.ts';
import type { Place, Spot } from './place.ts';
import { wholeOf } from './whole.ts';

const operators: Readonly<Record<BinaryOperator, BinaryTree>> = {
  '+': 'PLUS_OP',
  '-': 'MINUS_OP',
  '*': 'TIMES_OP',
  '/': 'DIV_OP',
  '^': 'POWER_OP',
  '&': 'CONCATENATE_OP',
  '=': 'EQUALS_OP',
  '<>': 'NOT_EQUAL_OP',
  '<': 'LESS_THAN_OP',
  '<=': 'LESS_THAN_OR_EQUAL_OP',
  '>': 'GREATER_THAN_OP',
  '>=': 'GREATER_THAN_OR_EQUAL_OP',
};

/** A value that is read or computed when the cell engine comes to it. */
const lazy = (read: () => Inner | SimpleRangeValue): Tree => ({
  type: 'NUMBER',
  get value() {
    return read();
  },
});

/** A reference to one cell. */
const reference = (read: () => Inner): Tree => {
  const held = { sheet: 0, col: 0, row: 0, read } as const;
  return { type: 'CELL_REFERENCE', reference: { sheet: undefined, toSimpleCellAddress: () => held } };
};

/** A range of cells. The engine takes an array of one cell for a computed value; a cell must stay a reference. */
const range = (whole: () => Inner | SimpleRangeValue, isOne: () => boolean, one: () => Inner): Tree => {
  const cell = reference(one);
  return {
    ...cell,
    get type() {
      return isOne() ? 'CELL_REFERENCE' : 'NUMBER';
    },
    get value() {
      return whole();
    },
  } as Tree;
};

/** Names that LET gives, with the tree that stands for each. */
type Locals = ReadonlyMap<string, Tree>;

/**
 * Makes the tree that the cell engine's interpreter evaluates: operators and its own functions are its nodes; cells,
 * columns and our functions are values that it fetches when it comes to them. `place` says where the formula stands at
 * that moment, so one tree serves every cell with the same formula.
 */
export function treeOf(bound: Bound, place: Place, locals: Locals = new Map()): Tree {
  const whole = wholeOf(bound, place);
  if (whole) return lazy(whole);
  const of = (node: Bound): Tree => treeOf(node, place, locals);
  switch (bound.type) {
    case 'number':
    case 'text':
    case 'yes-no':
      return { type: 'NUMBER', value: bound.value };
    case 'error':
      return { type: 'NUMBER', value: errorOf(issueOf(bound)) };
    case 'empty':
      return { type: 'EMPTY' };
    case 'array':
      return { type: 'ARRAY', args: bound.rows.map((row) => row.map(of)) };
    case 'unary':
      return {
        type: bound.operator === '-' ? 'MINUS_UNARY_OP' : 'PLUS_UNARY_OP',
        value: of(bound.operand),
      };
    case 'percent':
      return { type: 'PERCENT_OP', value: of(bound.operand) };
    case 'binary':
      return { type: operators[bound.operator], left: of(bound.left), right: of(bound.right) };
    case 'row-of':
      return reference(() => innerOf(place.spot(bound.sheet, bound.column, place.row)));
    case 'named':
      return reference(() => innerOf(place.spot(bound.sheet, bound.column, bound.row)));
    case 'cell-of':
      return reference(() => {
        const row = bound.rowMoves ? bound.row + place.row : bound.row;
        return innerOf(place.spot(bound.sheet, bound.column, row));
      });
    case 'column-of':
      return range(
        () => rangeInside([place.source.column(bound.sheet, bound.column)]),
        () => place.source.column(bound.sheet, bound.column).rows <= 1,
        () => innerOf(place.spot(bound.sheet, bound.column, 0)),
      );
    case 'cells-of': {
      const from = (): number => (bound.fromMoves ? bound.from + place.row : bound.from);
      const to = (): number => (bound.toMoves ? bound.to + place.row : bound.to);
      return range(
        () => {
          const columns = bound.columns.map((column) => place.source.column(bound.sheet, column));
          return rangeInside(columns, Math.min(from(), to()), Math.max(from(), to()) + 1);
        },
        () => bound.columns.length === 1 && from() === to(),
        () => innerOf(place.spot(bound.sheet, bound.columns[0]!, from())),
      );
    }
    case 'local':
      return locals.get(bound.name)!;
    case 'call':
      return callTree(bound, place, locals);
  }
}

function callTree(call: CallNode<Bound>, place: Place, locals: Locals): Tree {
  const of = (node: Bound): Tree => treeOf(node, place, locals);
  if (call.name === 'LET') return letTree(call, place, locals);
  if (call.name === 'ROW') return rowTree(call, place) ?? plainCall(call, of);
  const definition = registry.get(call.name);
  // Built-ins of ours come first: some stand in for one of the engine's that needs cells with addresses.
  const own = builtIns.get(call.name)?.implementation.own;
  if (!definition && !own) return plainCall(call, of);
  if (own && (call.args.length < own.minArgs || call.args.length > own.maxArgs))
    return { type: 'NUMBER', value: errorOf(wrongCount(call.name)) };
  const args = call.args.map((arg) => (arg.type === 'empty' ? undefined : of(arg)));
  return lazy(() => {
    const given = args.map((arg) => (arg ? argumentOf(cellEngine().evaluate(arg)) : undefined));
    return innerOfOutcome(definition ? invoke(definition, given) : own!.compute(given, call.name));
  });
}

const wrongCount = (name: string): Issue =>
  issue('#N/A', 'built-in', { function: name, details: { message: 'Wrong number of arguments.' } });

/** A function of the cell engine; an error that it makes itself gets its name. */
function plainCall(call: CallNode<Bound>, of: (node: Bound) => Tree): Tree {
  const tree: Tree = { type: 'FUNCTION_CALL', procedureName: call.name, args: call.args.map(of) };
  return lazy(() => {
    const value = cellEngine().evaluate(tree);
    return value instanceof CellError && isOwnMessage(value.message)
      ? errorOf(issueOfError(value, call.name))
      : value;
  });
}

/** Messages that operators give too: the error may have come from inside the call. */
const fromOperators = new Set([
  '',
  'Value cannot be coerced to number.',
  'NaN or infinite value encountered.',
]);
const isOwnMessage = (message: string | undefined): boolean => !fromOperators.has(message ?? '');

/** Each value of LET is computed once for each evaluation, at its first use. */
function letTree(call: CallNode<Bound>, place: Place, locals: Locals): Tree {
  const known = new Map(locals);
  for (let i = 0; i + 1 < call.args.length; i += 2) {
    const name = call.args[i] as Extract<Bound, { type: 'local' }>;
    const tree = treeOf(call.args[i + 1]!, place, known);
    let value: Inner | SimpleRangeValue;
    let computedIn = -1;
    known.set(
      name.name,
      lazy(() => {
        if (computedIn !== place.evaluation) {
          value = cellEngine().evaluate(tree);
          computedIn = place.evaluation;
        }
        return copied(value);
      }),
    );
  }
  return treeOf(call.args.at(-1)!, place, known);
}

/** ROW() and ROW(cell): the row's number, from 1. */
function rowTree(call: CallNode<Bound>, place: Place): Tree | undefined {
  const [of] = call.args;
  if (call.args.length > 1) return undefined;
  if (!of || of.type === 'row-of') return lazy(() => place.row + 1);
  if (of.type === 'cell-of') return lazy(() => of.row + (of.rowMoves ? place.row : 0) + 1);
  if (of.type === 'cells-of') return lazy(() => of.from + (of.fromMoves ? place.row : 0) + 1);
  if (of.type === 'named') return lazy(() => of.row + 1);
  if (of.type === 'column-of') return lazy(() => 1);
  return undefined;
}

export type { Place, Spot };

import { type Issue, issue } from '../../../functions/core/issue.ts';
import type { Matrix, Value } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import type { Bound, CallNode } from '../ast.ts';
import { type BuiltIn, builtIns } from '../builtins/index.ts';
import { childrenOf } from '../language/walk.ts';
import { issueOf } from '../sentences.ts';
import { aggregateNode } from './aggregate-nodes.ts';
import type { Compile, Plan, Results, Source } from './api.ts';
import { kindOfTag } from './areas.ts';
import { bodyNode } from './body.ts';
import { arrayNode, ownNode, rowNode } from './calls.ts';
import { arrayInOneCell, domainNode } from './domain.ts';
import { elementwise } from './elementwise.ts';
import { junctionNode } from './junctions.ts';
import { binaryKernels, negate, percent } from './operators.ts';
import {
  type Area,
  BLOCK,
  constantNode,
  fixedScalar,
  frameOfRun,
  localNode,
  newRun,
  nextId,
  type PlanNode,
  type ScalarNode,
  varyingScalar,
} from './plan-nodes.ts';
import { cellNode, cellsNode, columnNode, wholeColumnNode } from './references.ts';
import { shared } from './shared.ts';
import { Tag, type Vector } from './vector.ts';

/** Compiles a bound formula into a plan over columns. */
export const compile: Compile = (formula) => {
  const slow = new Set<string>();
  const root = asRow(nodeOf(formula, { locals: new Map(), slow }));
  return {
    formula,
    slow: [...slow],
    run: (source, rows, out) => runPlan(root, source, rows, out),
  } satisfies Plan;
};

interface Compiling {
  readonly locals: ReadonlyMap<string, PlanNode>;
  readonly slow: Set<string>;
}

/** A piece of a formula; what works on whole columns is shared with all formulas that have the same piece. */
function nodeOf(formula: Bound, compiling: Compiling): PlanNode {
  const node = ownNodeOf(formula, compiling);
  return childrenOf(formula).length > 0 ? shared(formula, node) : node;
}

function ownNodeOf(formula: Bound, compiling: Compiling): PlanNode {
  switch (formula.type) {
    case 'number':
    case 'text':
    case 'yes-no':
      return constantNode(formula.value);
    case 'empty':
      return constantNode(null, 'empty');
    case 'error':
      return constantNode(issueOf(formula));
    case 'row-of':
      return columnNode(formula.sheet, formula.column);
    case 'named':
      return cellNode(formula.sheet, formula.column, formula.row);
    case 'cell-of':
      return formula.rowMoves
        ? columnNode(formula.sheet, formula.column, formula.row)
        : cellNode(formula.sheet, formula.column, formula.row);
    case 'column-of':
      return wholeColumnNode(formula.sheet, formula.column);
    case 'cells-of':
      return cellsNode(
        formula.sheet,
        formula.columns,
        formula.from,
        formula.to,
        formula.fromMoves,
        formula.toMoves,
      );
    case 'local':
      return compiling.locals.get(formula.name) ?? constantNode(issue('#NAME?', 'written-error'));
    case 'unary': {
      const operand = nodeOf(formula.operand, compiling);
      return formula.operator === '-' ? elementwise(negate, [operand]) : elementwise(keep, [operand]);
    }
    case 'percent':
      return elementwise(percent, [nodeOf(formula.operand, compiling)]);
    case 'binary':
      return elementwise(binaryKernels[formula.operator], [
        nodeOf(formula.left, compiling),
        nodeOf(formula.right, compiling),
      ]);
    case 'array':
      return arrayNode(formula.rows.map((row) => row.map((cell) => nodeOf(cell, compiling))));
    case 'call':
      return callNode(formula, compiling);
  }
}

function callNode(call: CallNode<Bound>, compiling: Compiling): PlanNode {
  const { name } = call;
  if (name === 'LET') return letNode(call.args, compiling);
  if (name === 'ROW') {
    const row = rowNode(call.args);
    if (row) return row;
  }
  const args = call.args.map((arg) => nodeOf(arg, compiling));
  const definition = registry.get(name);
  if (definition) return domainNode(definition, args);
  const builtIn = builtIns.get(name);
  const node = builtIn && builtInNode(name, builtIn, args);
  if (!node) return constantNode(unanswered(name, args.length));
  if (node.varies && args.some((arg) => arg.is === 'area') && !builtIn.indexed) compiling.slow.add(name);
  return node;
}

/** Why a call cannot be compiled: a reference is missing, or nobody knows it. */
function unanswered(name: string, count: number): Issue {
  if (name !== 'ROW') return issue('#NAME?', 'unknown-function', { received: name });
  const message = count === 1 ? 'Cell reference expected.' : 'Wrong number of arguments.';
  return issue('#N/A', 'built-in', { function: name, details: { message } });
}

/** A call of a built-in function, by the first of its implementations that takes the arguments. */
function builtInNode(name: string, builtIn: BuiltIn, args: readonly PlanNode[]): PlanNode | undefined {
  const { ranges, own, operator, choice, junction, aggregate } = builtIn.implementation;
  // A body over ranges goes before one of our own, if the cell engine knows how to read its arguments.
  const indexed = ranges && bodyNode(name, builtIn, args);
  if (indexed) return indexed;
  if (own) return ownNode(name, own, args);
  if (operator) return operator(args);
  const scalars = args.filter((arg) => arg.is === 'scalar');
  if (choice && scalars.length === args.length) return choice(scalars);
  if (junction) return junctionNode(junction, args);
  return aggregate ? aggregateNode(name, aggregate, args) : bodyNode(name, builtIn, args);
}

/** LET(name, value, …, body): each value may use the names before it. */
function letNode(args: readonly Bound[], compiling: Compiling): PlanNode {
  const locals = new Map(compiling.locals);
  const inside: Compiling = { ...compiling, locals };
  for (let i = 0; i + 1 < args.length; i += 2) {
    const name = args[i]!;
    if (name.type !== 'local') return constantNode(issue('#NAME?', 'written-error'));
    const value = nodeOf(args[i + 1]!, inside);
    locals.set(name.name, value.is === 'scalar' ? localNode(value) : value);
  }
  return nodeOf(args[args.length - 1]!, inside);
}

/** `+x` is x, whatever it is. */
const keep = (args: readonly Vector[], n: number, out: Vector): void => {
  const a = args[0]!;
  out.mixed();
  for (let k = 0; k < n; k++) out.copy(k, a, a.single ? 0 : k);
};

/** The value of a formula in a row: an array of one cell is its value, a larger one has no room. */
function asRow(node: PlanNode): ScalarNode {
  if (node.is === 'scalar') return node;
  const put = (area: Area, out: Vector, i: number): void => {
    if (area.rows * area.columns === 1) out.copy(i, area.vector, 0);
    else out.setError(i, arrayInOneCell(area.rows, area.columns));
  };
  if (!node.varies) return fixedScalar((frame, out) => put(node.area(frame, 0), out, 0));
  return varyingScalar((frame, out) => {
    out.mixed();
    for (let i = 0; i < frame.count; i++) put(node.area(frame, i), out, i);
  });
}

function runPlan(root: ScalarNode, source: Source, rows: Int32Array | undefined, out: Results): void {
  const run = newRun(source);
  const total = rows ? rows.length : out.kinds.length;
  if (total === 0) return;
  const once = root.varies ? null : root.vector(frameOfRun(run));
  // rows one after the other are taken as a stretch of the columns, without copying
  const first = rows ? rows[0]! : 0;
  const list = rows && rows[total - 1]! - first === total - 1 && isRising(rows) ? undefined : rows;
  for (let done = 0, count: number; done < total; done += count) {
    // blocks begin at multiples of their size, so that what is known of a block of a column is known of this one
    count = Math.min(list ? BLOCK : BLOCK - ((first + done) % BLOCK), total - done);
    const start = list ? 0 : first + done;
    const listed = list ? list.subarray(done, done + count) : null;
    const vector =
      once ??
      root.vector({
        run,
        id: nextId(),
        start,
        rows: listed,
        count,
        outer: null,
        indicesInOuter: null,
      });
    write(vector, start, listed, count, out);
  }
}

function isRising(rows: Int32Array): boolean {
  for (let i = 1; i < rows.length; i++) if (rows[i]! !== rows[i - 1]! + 1) return false;
  return true;
}

function write(vector: Vector, start: number, rows: Int32Array | null, count: number, out: Results): void {
  if (vector.plain && !vector.single && !rows) {
    out.kinds.fill(Tag.number, start, start + count);
    out.numbers.set(vector.numbers.subarray(0, count), start);
    return;
  }
  for (let i = 0; i < count; i++) {
    const row = rows ? rows[i]! : start + i;
    const from = vector.single ? 0 : i;
    const tag = vector.tags[from]!;
    if (tag === Tag.text || tag === Tag.error) out.set(row, vector.valueAt(from));
    else {
      out.kinds[row] = kindOfTag(tag);
      out.numbers[row] = vector.numbers[from]!;
    }
  }
}

/** Compiles a formula of a single cell, which may give an array: the answer is an area, of one cell for one value. */
export function compileFree(formula: Bound): (source: Source, row: number) => Area {
  const node = nodeOf(formula, { locals: new Map(), slow: new Set() });
  return (source, row) => {
    const run = newRun(source);
    const frame = node.varies ? { ...frameOfRun(run), id: nextId(), start: row } : frameOfRun(run);
    if (node.is === 'area') return node.area(frame, 0);
    return { rows: 1, columns: 1, vector: node.vector(frame), range: null };
  };
}

/** Computes a formula that does not depend on a row: one value, or an array. */
export function evaluateOnce(formula: Bound, source: Source): Value | Matrix {
  const node = nodeOf(formula, { locals: new Map(), slow: new Set() });
  const frame = frameOfRun(newRun(source));
  if (node.is === 'scalar') return node.vector(frame).valueAt(0);
  const area = node.area(frame, 0);
  const size = area.rows * area.columns;
  if (size === 1) return area.vector.valueAt(0);
  const values: Value[] = [];
  for (let i = 0; i < size; i++) values.push(area.vector.valueAt(i));
  return { rows: area.rows, columns: area.columns, values };
}

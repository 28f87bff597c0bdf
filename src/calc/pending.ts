/** Results that wait for a measure: a blank cell is named once, however many results need it. */
import type { AnyDefinition } from '../../functions/core/define.ts';
import { parametersFor } from '../../functions/core/invoke.ts';
import { type Issue, isIssue, isPending } from '../../functions/core/issue.ts';
import { Kind } from '../../functions/core/value.ts';
import { registry } from '../../functions/registry.ts';
import type { CalcDoubt } from './api.ts';
import type { Bound, CallNode } from './ast.ts';
import type { Formula } from './graph/formula.ts';
import type { ColumnNode } from './graph/graph-nodes.ts';
import { columnKey } from './graph/reads.ts';
import type { State } from './graph/state.ts';
import { walk } from './language/walk.ts';
import { sentenceOf } from './sentences.ts';

/** Rows of a column that are traced; what a page can show ends long before. */
const TRACED = 2_000;
/** Blank cells of a column that are named one by one. Where there are more, the column has not been measured yet. */
const NAMED = 20;
/** Formulas that are followed back from one blank text to the cell that it comes from. */
const DEEP = 5;

/** A blank cell, by column and row. */
interface Blank {
  readonly column: ColumnNode;
  readonly row: number;
  results: number;
}
type Blanks = Map<string, Blank>;

/** Every blank that results wait for, once, with how many wait. */
export function pendingDoubts(state: State): readonly CalcDoubt[] {
  const blanks: Blanks = new Map();
  const others: CalcDoubt[] = [];
  for (const column of state.graph.columns.values()) {
    let unexplained = 0;
    let first: { row: number; issue: Issue } | undefined;
    for (const { row, issue } of pendingRows(column)) {
      const found = causesOf(state, column, row, 0);
      for (const { key, blank } of found) {
        const known = blanks.get(key) ?? blank;
        known.results++;
        blanks.set(key, known);
      }
      if (found.length > 0 || fromElsewhere(state, column, row, issue)) continue;
      unexplained++;
      first ??= { row, issue };
    }
    if (!first) continue;
    const { row, issue } = first;
    others.push({
      place: { sheet: column.sheet, column: column.column.id, row },
      about: 'pending',
      sentence: `${sentenceOf(issue)}${unexplained > 1 ? ` (${unexplained.toLocaleString('en')} rows)` : ''}`,
      results: unexplained,
    });
  }
  return [...told(blanks), ...others];
}

/** The blanks cell by cell, or a column at a time where most of it is blank. */
function told(blanks: Blanks): readonly CalcDoubt[] {
  const columns = new Map<ColumnNode, Blank[]>();
  for (const blank of blanks.values())
    columns.set(blank.column, [...(columns.get(blank.column) ?? []), blank]);
  return [...columns].flatMap(([{ sheet, column }, list]) => {
    const what = column.label || column.name;
    if (list.length <= NAMED)
      return list.map(({ row, results }): CalcDoubt => {
        const sentence = `${what} is blank; ${waiting(results)}.`;
        return { place: { sheet, column: column.id, row }, about: 'pending', sentence, results };
      });
    const results = list.reduce((sum, one) => sum + one.results, 0);
    const count =
      list.length >= TRACED ? `${TRACED.toLocaleString('en')} rows or more` : `${list.length} rows`;
    const sentence = `${what} is blank in ${count}; ${waiting(results)}.`;
    return [{ place: { sheet, column: column.id }, about: 'pending', sentence, results }];
  });
}

const waiting = (n: number): string =>
  n === 1 ? '1 result is pending' : `${n.toLocaleString('en')} results are pending`;

function* pendingRows(column: ColumnNode): Iterable<{ readonly row: number; readonly issue: Issue }> {
  const { kinds, errors } = column.range();
  if (!errors) return;
  let traced = 0;
  for (
    let row = kinds.indexOf(Kind.error);
    row >= 0 && traced < TRACED;
    row = kinds.indexOf(Kind.error, row + 1)
  ) {
    const of = errors[row];
    const formula = formulaAt(column, row);
    if (!of || !isPending(of) || !formula || omits(formula)) continue;
    traced++;
    yield { row, issue: of };
  }
}

const formulaAt = (column: ColumnNode, row: number): Formula | undefined =>
  column.own.get(row)?.formula ?? column.formula;

interface Cause {
  readonly key: string;
  readonly blank: Blank;
}

/** The blank cells that a pending result waits for. */
function causesOf(state: State, column: ColumnNode, row: number, depth: number): readonly Cause[] {
  const formula = formulaAt(column, row);
  if (!formula || depth > DEEP) return [];
  const found = new Map<string, Cause>();
  const add = (more: readonly Cause[]): void => {
    for (const one of more) found.set(one.key, one);
  };
  const look = (key: string, at: number, wanted: boolean): void => {
    const other = state.graph.columns.get(key);
    if (!other || (other === column && at === row)) return;
    const { kinds, texts, errors } = other.range();
    const kind = kinds[at];
    if (kind === Kind.error) {
      if (isPending(errors?.[at] ?? undefined)) add(causesOf(state, other, at, depth + 1));
    } else if (wanted && (kind === Kind.blank || (kind === Kind.text && !texts?.[at])))
      add(blankAt(state, other, at, depth + 1));
  };
  for (const node of neededBy(formula)) {
    if (node.type === 'row-of') look(columnKey(node.sheet, node.column), row, true);
    else if (node.type === 'named') look(columnKey(node.sheet, node.column), node.row, true);
    else if (node.type === 'cell-of')
      look(columnKey(node.sheet, node.column), node.row + (node.rowMoves ? row : 0), true);
  }
  for (const key of formula.reads.rows) look(key, row, false);
  return [...found.values()];
}

/** A blank cell, or the blank cells that its formula's blank text comes from. */
function blankAt(state: State, column: ColumnNode, row: number, depth: number): readonly Cause[] {
  const formula = formulaAt(column, row);
  if (formula && depth <= DEEP) {
    const deeper = [...formula.reads.rows].flatMap((key) => {
      const other = state.graph.columns.get(key);
      if (!other || other === column) return [];
      const { kinds, texts } = other.range();
      const blank = kinds[row] === Kind.blank || (kinds[row] === Kind.text && !texts?.[row]);
      return blank ? blankAt(state, other, row, depth + 1) : [];
    });
    if (deeper.length > 0) return deeper;
  }
  return [{ key: `${column.key} ${row}`, blank: { column, row, results: 0 } }];
}

/** Calls of domain functions in a formula, each with the arguments that it cannot do without. */
function callsOf(formula: Formula): readonly (readonly Bound[])[] {
  const known = calls.get(formula);
  if (known) return known;
  const found: (readonly Bound[])[] = [];
  walk<Bound>(formula.bound, (node) => {
    if (node.type === 'call' && registry.has(node.name)) found.push(requiredOf(node));
    return undefined;
  });
  calls.set(formula, found);
  return found;
}
const calls = new WeakMap<Formula, readonly (readonly Bound[])[]>();

function requiredOf({ name, args }: CallNode<Bound>): readonly Bound[] {
  const parameters = parametersFor(registry.get(name) as AnyDefinition, args.length);
  return isIssue(parameters) ? [] : args.filter((_, i) => parameters[i] && !parameters[i]!.optional);
}

/** What the formula reads of single cells for arguments that it cannot do without. */
function neededBy(formula: Formula): readonly Bound[] {
  const known = needed.get(formula);
  if (known) return known;
  const found: Bound[] = [];
  for (const argument of callsOf(formula).flat())
    walk<Bound>(argument, (node) => {
      // A call inside is looked at by itself: what it can do without is not missed.
      if (node.type === 'call' && registry.has(node.name)) return false;
      found.push(node);
      return undefined;
    });
  needed.set(formula, found);
  return found;
}
const needed = new WeakMap<Formula, readonly Bound[]>();

/** True where the formula itself leaves an argument out that is needed: that is a mistake of the formula. */
export const omits = (formula: Formula): boolean =>
  callsOf(formula).some((args) => args.some(({ type }) => type === 'empty'));

/** The result comes from a pending one of another sheet or row, which is told there. */
function fromElsewhere(state: State, column: ColumnNode, row: number, of: Issue): boolean {
  const { whole = new Set<string>(), cells = [], ranges = [] } = formulaAt(column, row)?.reads ?? {};
  const key = JSON.stringify(of);
  return [...whole, ...cells.map((c) => c.key), ...ranges.map((r) => r.key)].some((at) => {
    const other = state.graph.columns.get(at);
    return other !== undefined && other !== column && hasError(other, key);
  });
}

function hasError(column: ColumnNode, key: string): boolean {
  const { errors } = column.range();
  return errors?.some((one) => one && JSON.stringify(one) === key) ?? false;
}

import { type Issue, isPending, issue } from '../../functions/core/issue.ts';
import { Kind } from '../../functions/core/value.ts';
import type { CalcDoubt, Place } from './api.ts';
import { blankDoubts } from './blank-doubts.ts';
import { columnMeasures, settingMeasures } from './dimensions/dimension-of.ts';
import { infer } from './dimensions/infer.ts';
import { declaredMeasure, equal, inWords, isKnown } from './dimensions/measure.ts';
import type { Computed } from './graph/graph.ts';
import type { ColumnNode } from './graph/graph-nodes.ts';
import { placeKey, placeOf, type State } from './graph/state.ts';
import { omits, pendingDoubts } from './pending.ts';
import { sentenceOf } from './sentences.ts';

/** From so many rows on it matters that a column is computed row by row. */
const MANY = 1000;

/** Everything about the formulas that somebody should look at. */
export function doubtsOf(state: State): readonly CalcDoubt[] {
  return [
    ...circleDoubts(state),
    ...hungDoubts(state),
    ...byCause(errorDoubts(state)),
    ...pendingDoubts(state),
    ...dimensionDoubts(state),
    ...blankDoubts(state),
    ...slowDoubts(state),
  ];
}

function* circleDoubts(state: State): Iterable<CalcDoubt> {
  const told = new Set<Issue>();
  for (const node of state.graph.order) {
    if (!node.cycle || told.has(node.cycle)) continue;
    told.add(node.cycle);
    yield { place: placeOf(node), about: 'cycle', sentence: sentenceOf(node.cycle) };
  }
}

function* hungDoubts(state: State): Iterable<CalcDoubt> {
  for (const node of state.graph.order)
    if (state.hung.get(placeKey(placeOf(node))) === node.formula!.text)
      yield { place: placeOf(node), about: 'hung', sentence: sentenceOf(issue('#ERROR!', 'hung')) };
}

function* dimensionDoubts(state: State): Iterable<CalcDoubt> {
  const measureOf = columnMeasures(state);
  const settings = settingMeasures(state);
  const seen = new Set<unknown>();
  for (const node of state.graph.order) {
    const formula = node.formula!;
    if (seen.has(formula)) continue;
    seen.add(formula);
    const place = placeOf(node);
    const { measure, mixed } = infer(formula.bound, formula.text, measureOf, settings);
    for (const { issue: of } of mixed) yield { place, about: 'dimension', sentence: sentenceOf(of) };
    const column = node.is === 'cell' ? node.column : node;
    const declared = declaredMeasure(column.column);
    if (!declared || !isKnown(measure) || equal(measure, declared)) continue;
    const details = { wanted: inWords(declared), got: inWords(measure) };
    const of = issue('#VALUE!', 'column-dimension', { received: column.column.name, details });
    yield { place, about: 'dimension', sentence: sentenceOf(of) };
  }
}

function* slowDoubts(state: State): Iterable<CalcDoubt> {
  for (const node of state.graph.order) {
    if (node.is === 'cell' || node.cells.length < MANY) continue;
    const { slow } = node.formula!.plan();
    if (slow.length === 0) continue;
    const details = { rows: node.cells.length };
    const of = issue('#VALUE!', 'slow-column', {
      received: node.column.name,
      function: slow.join(', '),
      details,
    });
    yield { place: placeOf(node), about: 'slow', sentence: sentenceOf(of) };
  }
  for (const node of state.graph.columns.values()) {
    if (!node.cellByCell || node.cells.length < MANY) continue;
    const of = issue('#VALUE!', 'cell-by-cell', {
      received: node.column.name,
      details: { rows: node.cells.length },
    });
    yield { place: placeOf(node), about: 'slow', sentence: sentenceOf(of) };
  }
}

interface Errors {
  readonly issue: Issue;
  /** The first row that has it for another reason than a held value; undefined while there is none. */
  first: number | undefined;
  /** How many rows have it for another reason. */
  count: number;
}

/**
 * Errors of a column by cause; those that come from what the formula reads are told there, and those that come from a held
 * value of the row are that value's, which is doubted itself.
 */
function* errorDoubts(state: State): Iterable<ErrorDoubt> {
  const found = new Map<ColumnNode, ReadonlyMap<string, Errors>>();
  const errorsOf = (column: ColumnNode): ReadonlyMap<string, Errors> => {
    const known = found.get(column) ?? collect(state, column);
    found.set(column, known);
    return known;
  };
  const told = new Set<string>();
  for (const node of state.graph.order) {
    const column = node.is === 'cell' ? node.column : node;
    for (const [key, { issue: of, first, count }] of errorsOf(column)) {
      if (
        first === undefined ||
        told.has(`${column.key} ${key}`) ||
        of.reason === 'cycle' ||
        of.reason === 'hung'
      )
        continue;
      // What only waits for a measure is told of that measure.
      if (isPending(of) && !omits(node.formula!)) continue;
      if (comesFromElsewhere(state, node, key, errorsOf)) continue;
      if (node.is === 'cell' && !sameAs(node.value, key)) continue;
      told.add(`${column.key} ${key}`);
      const place: Place = { ...placeOf(column), row: node.is === 'cell' ? node.row : first };
      const more = node.is === 'column' && count > 1 ? ` (${count.toLocaleString('en')} rows)` : '';
      yield {
        doubt: { place, about: 'error', sentence: `${sentenceOf(of)}${more}` },
        of,
        count: node.is === 'column' ? count : 1,
      };
    }
  }
}

interface ErrorDoubt {
  readonly doubt: CalcDoubt;
  readonly of: Issue;
  readonly count: number;
}

/** Errors that several functions have of the same value, told once: at the first, with how many results it spoils. */
function byCause(found: Iterable<ErrorDoubt>): readonly CalcDoubt[] {
  const causes = new Map<string, { doubt: CalcDoubt; results: number; columns: number }>();
  for (const { doubt, of, count } of found) {
    const { sheet, column, row } = doubt.place;
    const same = of.function !== undefined && of.received !== undefined;
    const { function: _, expected: __, ...cause } = of;
    const key = JSON.stringify(same ? [sheet, row, cause] : [sheet, column, row, of]);
    const known = causes.get(key);
    if (known) {
      known.results += count;
      known.columns++;
    } else causes.set(key, { doubt, results: count, columns: 1 });
  }
  return [...causes.values()].map(({ doubt, results, columns }) =>
    columns > 1 ? { ...doubt, results } : doubt,
  );
}

function comesFromElsewhere(
  state: State,
  node: Computed,
  key: string,
  errorsOf: (column: ColumnNode) => ReadonlyMap<string, Errors>,
): boolean {
  const { rows, whole, cells, ranges } = node.formula!.reads;
  for (const other of [...rows, ...whole, ...cells.map((c) => c.key), ...ranges.map((r) => r.key)]) {
    const column = state.graph.columns.get(other);
    if (!column || column === node) continue;
    if (node.is === 'cell' && column === node.column) {
      const reads = [...column.own.values()].some((cell) => cell !== node && sameAs(cell.value, key));
      if (reads) return true;
    } else if (errorsOf(column).has(key)) return true;
  }
  return false;
}

const sameAs = (value: unknown, key: string): boolean => keyOf(value) === key;
const keys = new WeakMap<object, string>();
function keyOf(value: unknown): string {
  if (typeof value !== 'object' || value === null) return '';
  let key = keys.get(value);
  if (key === undefined) {
    key = JSON.stringify(value);
    keys.set(value, key);
  }
  return key;
}

/** Most different causes that are told of one column. */
const CAUSES = 50;

function collect(state: State, column: ColumnNode): ReadonlyMap<string, Errors> {
  const errors = new Map<string, Errors>();
  const range = column.range();
  if (!range.errors) return errors;
  for (let row = range.kinds.indexOf(Kind.error); row >= 0; row = range.kinds.indexOf(Kind.error, row + 1)) {
    const of = range.errors[row];
    if (!of) continue;
    const key = keyOf(of);
    const seen = errors.get(key) ?? { issue: of, first: undefined, count: 0 };
    if (seen.count === 0 && errors.size < CAUSES) errors.set(key, seen);
    if (readsHeld(state, column, row)) continue;
    seen.first ??= row;
    seen.count++;
  }
  return errors;
}

/** Whether the formula of a row reads a value of that row which does not fit its column. */
function readsHeld(state: State, column: ColumnNode, row: number): boolean {
  const formula = column.own.get(row)?.formula ?? column.formula;
  if (!formula) return false;
  for (const key of formula.reads.rows) if (state.graph.columns.get(key)?.cells.held.has(row)) return true;
  return false;
}

/** Doubts about blanks that arithmetic takes for 0: which cell computes with one, and which part of its formula is blank. */
import { issue } from '../../functions/core/issue.ts';
import { Kind, type Range } from '../../functions/core/value.ts';
import type { CalcDoubt } from './api.ts';
import type { Bound } from './ast.ts';
import { type BlankFinder, blankFinder } from './blank-as-zero.ts';
import { type FreeFormula, freeFormula, isArray } from './cells/free-formula.ts';
import type { Formula } from './graph/formula.ts';
import type { CellNode, ColumnNode } from './graph/graph-nodes.ts';
import { readsOf } from './graph/reads.ts';
import { placeKey, placeOf, type State } from './graph/state.ts';
import type { Plan } from './plan/api.ts';
import { compile } from './plan/compile.ts';
import { natureOf } from './plan/nature.ts';
import { sentenceOf } from './sentences.ts';
import { ColumnValues } from './values/column-values.ts';

/** A formula's finder, ready to be asked. */
interface Finder extends BlankFinder {
  readonly reads: readonly { readonly key: string; readonly ofRow: boolean; readonly ahead: boolean }[];
  plan(): Plan;
  free(state: State): FreeFormula;
}

const finders = new WeakMap<Formula, Finder | { readonly nothing: true }>();

function finderOf(formula: Formula): Finder | undefined {
  let known = finders.get(formula);
  if (!known) {
    const finder = blankFinder(formula.bound);
    known = finder ? readied(finder) : { nothing: true };
    finders.set(formula, known);
  }
  return 'nothing' in known ? undefined : known;
}

function readied(finder: BlankFinder): Finder {
  let plan: Plan | undefined;
  let free: FreeFormula | undefined;
  // what LET names is read somewhere else in the formula
  const named = finder.operands.some((operand) => natureOf(operand).locals.size > 0);
  const all = { type: 'array', rows: [finder.operands], span: { from: 0, to: 0 } } as const satisfies Bound;
  const { rows, whole, cells, ranges } = readsOf(named ? finder.formula : all);
  return {
    ...finder,
    reads: [
      ...[...rows].map((key) => ({ key, ofRow: true, ahead: false })),
      ...[...whole, ...ranges.map((read) => read.key)].map((key) => ({ key, ofRow: false, ahead: false })),
      ...cells.map(({ key, moves, row }) => ({ key, ofRow: false, ahead: moves && row > 0 })),
    ],
    plan: () => (plan ??= compile(finder.formula)),
    free: (state) => (free ??= freeFormula(finder.formula, state.place)),
  };
}

/** What was found of one operand in a column. */
interface Found {
  first: number;
  count: number;
}

/** Blanks that formulas count as 0, one doubt for each part of a formula. */
export function* blankDoubts(state: State): Iterable<CalcDoubt> {
  const told = new Map<string, { readonly column: ColumnNode; readonly words: string } & Found>();
  const tell = (column: ColumnNode, { text }: Formula, operand: Bound, { first, count }: Found): void => {
    const words = text.slice(operand.span.from, operand.span.to);
    const key = `${column.key} ${words}`;
    const before = told.get(key);
    if (!before) told.set(key, { column, words, first, count });
    else {
      before.first = Math.min(before.first, first);
      before.count += count;
    }
  };
  for (const node of state.graph.order) {
    const formula = node.formula!;
    const finder = finderOf(formula);
    if (
      !finder ||
      node.cycle ||
      state.hung.has(placeKey(placeOf(node))) ||
      !mayMeetBlank(state, node, finder)
    )
      continue;
    const found = node.is === 'cell' ? inCell(state, node, finder) : inColumn(state, node, finder);
    const column = node.is === 'cell' ? node.column : node;
    for (const [k, of] of found.entries()) if (of) tell(column, formula, finder.operands[k]!, of);
  }
  for (const { column, words, first, count } of told.values()) {
    const received = words.length > 60 ? `${words.slice(0, 59)}…` : words;
    const sentence = sentenceOf(issue('#VALUE!', 'zero-from-blank', { received }));
    const more = count > 1 ? ` (${count.toLocaleString('en')} rows)` : '';
    yield { place: { ...placeOf(column), row: first }, about: 'blank', sentence: `${sentence}${more}` };
  }
}

/** Most columns are filled from top to bottom: then nothing has to be computed. */
function mayMeetBlank(state: State, node: CellNode | ColumnNode, { reads }: Finder): boolean {
  return reads.some(({ key, ofRow, ahead }) => {
    const column = state.graph.columns.get(key);
    if (!column || ahead) return true;
    const { kinds, rows } = column.range();
    if (ofRow && node.is === 'cell') return node.row >= rows || kinds[node.row] === Kind.blank;
    return kinds.indexOf(Kind.blank) >= 0;
  });
}

function inCell(state: State, cell: CellNode, finder: Finder): readonly (Found | undefined)[] {
  if (cell.kind === Kind.error) return [];
  const result = finder.free(state).evaluate(cell.row);
  if (isArray(result) || typeof result.value !== 'number') return [];
  const mask = result.value;
  return finder.operands.map((_, k) => (has(mask, k) ? { first: cell.row, count: 1 } : undefined));
}

interface Scanned {
  readonly inputs: readonly (Range | undefined)[];
  readonly found: readonly (Found | undefined)[];
}
const scanned = new WeakMap<ColumnNode, Scanned>();

/** Looks through a column; again only when it or something that it reads has changed. */
function inColumn(state: State, column: ColumnNode, finder: Finder): readonly (Found | undefined)[] {
  const { rows, whole, cells, ranges } = column.formula!.reads;
  const keys = [...rows, ...whole, ...cells.map((read) => read.key), ...ranges.map((read) => read.key)];
  const inputs = [column.range(), ...keys.map((key) => state.graph.columns.get(key)?.range())];
  const known = scanned.get(column);
  if (known && known.inputs.length === inputs.length && known.inputs.every((input, i) => input === inputs[i]))
    return known.found;
  const found = scan(state, column, finder);
  scanned.set(column, { inputs, found });
  return found;
}

function scan(state: State, column: ColumnNode, finder: Finder): readonly (Found | undefined)[] {
  const found: (Found | undefined)[] = [];
  const { kinds } = column.range();
  const masks = new ColumnValues(column.cells.length);
  finder.plan().run(state.place.source, undefined, masks);
  for (let row = 0; row < masks.rows; row++) {
    const mask = masks.kinds[row] === Kind.number ? masks.numbers[row]! : 0;
    if (mask === 0 || kinds[row] === Kind.error || !column.computes(row)) continue;
    for (let k = 0; k < finder.operands.length; k++) {
      if (!has(mask, k)) continue;
      const before = found[k];
      if (before) before.count++;
      else found[k] = { first: row, count: 1 };
    }
  }
  return found;
}

/** Whether operand k is among those that make up the sum of powers of two. */
const has = (mask: number, k: number): boolean => Math.floor(mask / 2 ** k) % 2 === 1;

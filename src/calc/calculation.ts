/** The calculation of one open book: follows its changes and answers for every value. */
import { type Matrix, type Range, type Value, valueAt } from '../../functions/core/value.ts';
import type { Change } from '../book/edit.ts';
import type { Book } from '../book/model.ts';
import type { CalcDoubt, Calculation, FormulaCheck, Fresh, Place, Progress } from './api.ts';
import { isArray } from './cells/free-formula.ts';
import { checkFormula } from './check.ts';
import { Meanings } from './dimensions/meanings.ts';
import { doubtsOf } from './doubts.ts';
import { compute } from './graph/compute.ts';
import { Detached } from './graph/detached.ts';
import { follow, followStructure, invalidateAll } from './graph/follow.ts';
import { makeFormula } from './graph/formula.ts';
import { dependentsOf, precedentsOf } from './graph/relatives.ts';
import { Selection } from './graph/selection.ts';
import { nothing } from './graph/source.ts';
import { invalidate, placeKey, State } from './graph/state.ts';
import { sentenceOf } from './sentences.ts';

export interface CalculationOptions {
  /** Tell each formula before it is computed, so that a watcher knows which one never came back. */
  readonly careful?: boolean;
}

/** The values of a book. The object of the book must stay the same; edits change it in place. */
export function createCalculation(book: Book, { careful = false }: CalculationOptions = {}): Calculation {
  const state = new State(book);
  followStructure(state);
  const detached = new Detached(state);
  const selection = new Selection(state);
  let turn = 0;
  let meanings: { readonly turn: number; readonly of: Meanings } | undefined;
  const meaningsNow = (): Meanings => {
    if (meanings?.turn !== turn) meanings = { turn, of: new Meanings(state) };
    return meanings.of;
  };
  const scopeOf = (place: Place | undefined) => ({ sheet: place?.sheet, column: place?.row === undefined });

  return {
    update(changes: readonly Change[]): Generator<Progress, readonly Fresh[]> {
      turn++;
      follow(state, changes);
      invalidateVolatile(state);
      return compute(state, { careful });
    },
    all(): Generator<Progress, readonly Fresh[]> {
      turn++;
      invalidateAll(state);
      return compute(state, { careful });
    },
    column: (sheet, column): Range => state.graph.column(sheet, column)?.range() ?? nothing,
    value: (sheet, column, row): Value => state.place.spot(sheet, column, row).value,
    meaning: (sheet, column, row) => meaningsNow().of(sheet, column, row),
    columnMeaning: (sheet, column) => meaningsNow().ofColumn(sheet, column),
    sentence: sentenceOf,
    check(formula: string, place: Place): FormulaCheck {
      const meaning = meaningsNow().ofFormula(formula, scopeOf(place));
      return { ...checkFormula(formula, state.index, scopeOf(place)), ...(meaning ? { meaning } : {}) };
    },
    evaluate(formula: string, place?: Place): Value | Matrix {
      const made = makeFormula(formula, state.index, scopeOf(place), state.place);
      const result = made.free().evaluate(place?.row ?? 0);
      return isArray(result) ? matrixOf(result) : result.value;
    },
    rows: (formula, sheet): Range => detached.rows(formula, sheet, turn),
    ofSelection: (formula, sheet, rows): Value => selection.value(formula, sheet, rows),
    doubts: (): readonly CalcDoubt[] => doubtsOf(state),
    precedents: (place) => precedentsOf(state, place),
    dependents: (place) => dependentsOf(state, place),
    current: () => state.current,
    stop(place: Place): void {
      const column = state.graph.column(place.sheet, place.column);
      const node = place.row === undefined ? column : column?.own.get(place.row);
      if (!node?.formula) return;
      state.hung.set(placeKey(place), node.formula.text);
      invalidate(node);
    },
  };
}

/** RAND, NOW and their kin have a new value at every recalculation. */
function invalidateVolatile(state: State): void {
  for (const node of state.graph.order) if (node.formula?.reads.volatile) invalidate(node);
}

function matrixOf(range: Range): Matrix {
  const values = Array.from({ length: range.rows * range.columns }, (_, i) => valueAt(range, i));
  return { rows: range.rows, columns: range.columns, values };
}

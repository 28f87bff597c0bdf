import { SimpleRangeValue } from 'hyperformula';
import { isRange, Kind, type Range } from '../../../functions/core/value.ts';
import type { Bound } from '../ast.ts';
import { cellEngine, type Tree } from '../cell-engine/engine.ts';
import { faultOf } from '../plan/problems.ts';
import { isDate, rangeOfResult, valueFrom } from './inner-values.ts';
import type { Place, Spot } from './place.ts';
import { treeOf } from './tree.ts';
import { wholeFormula } from './whole.ts';

/** A formula of a single cell, ready to be evaluated in any row. */
export interface FreeFormula {
  /** One value, or an array that wants to spill. */
  evaluate(row: number): Spot | Range;
}

/** Makes a free formula; never throws, and neither does its evaluation. */
export function freeFormula(bound: Bound, place: Place): FreeFormula {
  const whole = wholeFormula(bound, place);
  let tree: Tree | undefined;
  return {
    evaluate(row) {
      place.row = row;
      place.evaluation++;
      try {
        if (whole) return whole();
        tree ??= treeOf(bound, place);
        const result = cellEngine().evaluate(tree);
        if (result instanceof SimpleRangeValue) return rangeOfResult(result);
        const value = valueFrom(result);
        return { value, kind: isDate(result) ? Kind.date : kindOf(value) };
      } catch (error) {
        return { kind: Kind.error, value: faultOf(error, 'failed') };
      }
    },
  };
}

function kindOf(value: Spot['value']): Kind {
  if (value === null) return Kind.blank;
  if (typeof value === 'number') return Kind.number;
  if (typeof value === 'string') return Kind.text;
  return typeof value === 'boolean' ? Kind.yesNo : Kind.error;
}

export const isArray = (result: Spot | Range): result is Range => isRange(result);

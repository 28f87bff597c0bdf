import type { SimpleRangeValue } from 'hyperformula';
import { isIssue } from '../../../functions/core/issue.ts';
import type { Kind } from '../../../functions/core/value.ts';
import type { Bound } from '../ast.ts';
import type { Inner } from '../cell-engine/values.ts';
import { childrenOf } from '../language/walk.ts';
import { compile, evaluateOnce } from '../plan/compile.ts';
import { ColumnValues } from '../values/column-values.ts';
import { innerOf, innerOfOutcome } from './convert.ts';
import type { Place } from './place.ts';

/** From so many cells on a range is worth the column engine. */
const LARGE = 500;

interface Nature {
  /** Reads a whole column or a large range. */
  readonly large: boolean;
  /** Has the same value wherever in the sheet the formula stands, and can be computed apart from its surroundings. */
  readonly alone: boolean;
}

const natures = new WeakMap<Bound, Nature>();

function natureOf(bound: Bound): Nature {
  const known = natures.get(bound);
  if (known) return known;
  const parts = childrenOf(bound).map(natureOf);
  const nature = {
    large: isLarge(bound) || parts.some((p) => p.large),
    alone: !depends(bound) && parts.every((p) => p.alone),
  };
  natures.set(bound, nature);
  return nature;
}

function isLarge(bound: Bound): boolean {
  if (bound.type === 'column-of') return true;
  return bound.type === 'cells-of' && (bound.to - bound.from + 1) * bound.columns.length >= LARGE;
}

function depends(bound: Bound): boolean {
  switch (bound.type) {
    case 'row-of':
    case 'local':
      return true;
    case 'cell-of':
      return bound.rowMoves;
    case 'cells-of':
      return bound.fromMoves || bound.toMoves;
    case 'call':
      return bound.name === 'ROW' && bound.args.length === 0;
    default:
      return false;
  }
}

/** True for a formula that has the same value in every row. */
export const isAlone = (bound: Bound): boolean => natureOf(bound).alone;

/**
 * A part of a free formula that boils whole columns down to one value, such as AVERAGE(roster.femur), is computed by a
 * column plan straight from the columns' arrays; undefined when this part is no such thing.
 */
export function wholeOf(bound: Bound, place: Place): (() => Inner | SimpleRangeValue) | undefined {
  if (childrenOf(bound).length === 0) return undefined;
  const { large, alone } = natureOf(bound);
  if (!large || !alone) return undefined;
  const plan = compile(bound);
  if (plan.slow.length > 0) return undefined;
  const out = new ColumnValues(1);
  const here = Int32Array.of(0);
  return () => {
    plan.run(place.source, here, out);
    const value = out.at(0);
    if (isIssue(value) && value.reason === 'array-in-row')
      return innerOfOutcome(evaluateOnce(bound, place.source));
    return innerOf({ kind: out.kinds[0] as Kind, value });
  };
}

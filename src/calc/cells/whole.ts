import type { SimpleRangeValue } from 'hyperformula';
import { Kind, type Range } from '../../../functions/core/value.ts';
import type { Bound } from '../ast.ts';
import type { Inner } from '../cell-engine/values.ts';
import { childrenOf } from '../language/walk.ts';
import { engineRange, kindOfTag, rangeOfArea } from '../plan/areas.ts';
import { compileFree } from '../plan/compile.ts';
import { natureOf } from '../plan/nature.ts';
import type { Area } from '../plan/plan-nodes.ts';
import { innerOf } from './inner-values.ts';
import type { Place, Spot } from './place.ts';

/**
 * A part of a free formula that works on whole columns, such as AVERAGE(FILTER(roster.femur, roster.age > 30)), is
 * computed by a column plan straight from the columns' arrays; undefined when this part is no such thing. Random numbers
 * are left to the cell engine: a plan would draw one for each row.
 */
function areaOf(bound: Bound, place: Place): (() => Area) | undefined {
  const { large, locals, random } = natureOf(bound);
  if (!large || random || locals.size > 0) return undefined;
  let compute: ReturnType<typeof compileFree> | undefined;
  return () => {
    compute ??= compileFree(bound);
    return compute(place.source, place.row);
  };
}

/** The whole formula at once, its arrays never leaving typed arrays; undefined when it has to be taken apart. */
export function wholeFormula(bound: Bound, place: Place): (() => Spot | Range) | undefined {
  const compute = areaOf(bound, place);
  if (!compute) return undefined;
  return () => {
    const area = compute();
    if (area.rows * area.columns <= 1) return spotOf(area);
    const range = rangeOfArea(area);
    // The arrays of a column change in place; a result stays as it is until it is computed again.
    return childrenOf(bound).length > 0 ? range : copyOf(range);
  };
}

/** The same for a part of a formula, as the cell engine takes it. */
export function wholeOf(bound: Bound, place: Place): (() => Inner | SimpleRangeValue) | undefined {
  const compute = childrenOf(bound).length > 0 ? areaOf(bound, place) : undefined;
  if (!compute) return undefined;
  return () => {
    const area = compute();
    return area.rows * area.columns <= 1 ? innerOf(spotOf(area)) : engineRange(area);
  };
}

function spotOf({ rows, columns, vector }: Area): Spot {
  if (rows * columns === 0) return { kind: Kind.blank, value: null };
  return { kind: kindOfTag(vector.tags[0]!) as Kind, value: vector.valueAt(0) };
}

const copyOf = (range: Range): Range => ({
  ...range,
  kinds: range.kinds.slice(),
  numbers: range.numbers.slice(),
  texts: range.texts && [...range.texts],
  errors: range.errors && [...range.errors],
});

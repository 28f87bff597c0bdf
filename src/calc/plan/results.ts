import { SimpleRangeValue } from 'hyperformula';
import { isIssue } from '../../../functions/core/issue.ts';
import { isMatrix, isRange } from '../../../functions/core/value.ts';
import { type Inner, isRich } from '../cell-engine/values.ts';
import { isCellOf } from '../ranges/range-lookup.ts';
import { areaOfEngineRange, areaOfMatrix } from './areas.ts';
import type { Callee } from './arguments.ts';
import { arrayInOneCell } from './domain.ts';
import type { Area } from './plan-nodes.ts';
import { faultOf } from './problems.ts';
import { areaOfRange } from './references.ts';
import { Tag, Vector } from './vector.ts';

/** Calls the body; a call that overflows the stack or meets a fault of the engine is an error value. */
export function call(callee: Callee, handed: readonly unknown[]): unknown {
  try {
    return callee.run(...handed);
  } catch (error) {
    return faultOf(error, 'fault', callee.name);
  }
}

const tagOfResult: Readonly<Record<string, number>> = {
  NUMBER_DATE: Tag.date,
  NUMBER_TIME: Tag.time,
  NUMBER_DATETIME: Tag.dateTime,
  NUMBER_PERCENT: Tag.percent,
  NUMBER_CURRENCY: Tag.currency,
};

export function put(out: Vector, i: number, callee: Callee, result: unknown): void {
  const sort = callee.metadata.returnNumberType;
  if (typeof result === 'number')
    out.setNumber(i, result, sort ? (tagOfResult[sort] ?? Tag.number) : Tag.number);
  else if (isCellOf(result)) {
    const tag = result.range.kinds[result.at]!;
    if (tag === Tag.text) out.setText(i, result.range.texts![result.at]!);
    else if (tag === Tag.error) out.setError(i, result.range.errors![result.at]!);
    else {
      out.tags[i] = tag;
      out.numbers[i] = result.range.numbers[result.at]!;
    }
  } else if (isIssue(result)) out.setError(i, result);
  else if (result instanceof SimpleRangeValue || isMatrix(result) || isRange(result)) {
    const area = areaOf(callee, result);
    if (area.rows * area.columns === 1) out.copy(i, area.vector, 0);
    else out.setError(i, arrayInOneCell(area.rows, area.columns));
  } else if (sort && isRich(result)) out.setNumber(i, result.val, tagOfResult[sort] ?? Tag.number);
  else out.setInner(i, result as Inner | undefined, callee.name);
}

export function areaOf(callee: Callee, result: unknown): Area {
  if (result instanceof SimpleRangeValue) return areaOfEngineRange(result, callee.name);
  if (isMatrix(result)) return areaOfMatrix(result);
  if (isRange(result)) return areaOfRange(result);
  const vector = new Vector(1);
  vector.mixed();
  put(vector, 0, callee, result);
  return { rows: 1, columns: 1, vector, range: null };
}

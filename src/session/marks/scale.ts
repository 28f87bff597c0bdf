import { Kind, type Range } from '../../../functions/core/value.ts';
import type { ReadContext } from '../open-book.ts';
import type { Operand, Scale } from './mark-record.ts';
import { remembered } from './remembered.ts';

/** The ends of a column's scale, in the unit of calculation, or why it has none. */
export type Ends = { readonly from: number; readonly to: number } | { readonly sentence: string };

/** @throws nothing: a scale that cannot be drawn says why */
export function endsOf(context: ReadContext, sheet: string, column: string, scale: Scale): Ends {
  const { calculation } = context;
  const range = calculation.column(sheet, column);
  const [least, most] = remembered(calculation, `span ${sheet}\u0000${column}`, [range], () => spanOf(range));
  const from = endOf(context, sheet, scale.from, least);
  const to = endOf(context, sheet, scale.to, most);
  if (typeof from === 'string') return { sentence: from };
  if (typeof to === 'string') return { sentence: to };
  if (!(from < to))
    return {
      sentence:
        least > most
          ? 'The column has no number yet.'
          : 'The lower end of the scale must be below its upper end.',
    };
  return { from, to };
}

function endOf(
  { calculation }: ReadContext,
  sheet: string,
  operand: Operand | undefined,
  otherwise: number,
): number | string {
  if (!operand) return otherwise;
  if ('number' in operand) return operand.number;
  if ('text' in operand) return 'An end of the scale is a text; it must be a number.';
  // An end is one value for the whole column: that of the first row.
  const { kinds, numbers, errors } = calculation.rows(operand.formula, sheet);
  if (kinds[0] === Kind.number || kinds[0] === Kind.date) return numbers[0]!;
  const error = kinds[0] === Kind.error ? errors?.[0] : undefined;
  return error
    ? calculation.sentence(error)
    : `The end "${operand.formula}" of the scale returns no number in the first row.`;
}

/** The least and the maximum of a range's numbers; from above to below where it has none. */
export function spanOf({ kinds, numbers }: Range): readonly [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let row = 0; row < kinds.length; row++) {
    if (kinds[row] !== Kind.number && kinds[row] !== Kind.date) continue;
    const value = numbers[row]!;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return [least, most];
}

/** Where a value stands on a scale, 0 to 1; what lies beyond an end stands at it. */
export const shareOf = (value: number, { from, to }: { from: number; to: number }): number =>
  Math.min(1, Math.max(0, (value - from) / (to - from)));

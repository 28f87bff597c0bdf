/** FILTER: the rows that meet conditions. */
import { CellError, ErrorType } from 'hyperformula';
import type { Issue } from '../../../functions/core/issue.ts';
import { Kind, type Range } from '../../../functions/core/value.ts';
import { notANumber } from '../plan/problems.ts';

const unequal = new CellError(ErrorType.NA, 'Ranges need to be of equal length.');
const twoWays = new CellError(ErrorType.NA, 'Wrong range dimension.');
const none = new CellError(ErrorType.NA, 'Empty range not allowed.');

/** FILTER on typed arrays: the cells of a row or column where every condition holds, in their order. */
export function filtered(values: Range, ...conditions: readonly Range[]): Range | CellError {
  for (const { rows, columns } of conditions)
    if (rows !== values.rows || columns !== values.columns) return unequal;
  if (values.rows > 1 && values.columns > 1) return twoWays;
  const at = placesWhere(conditions, values.rows * values.columns);
  const n = at.length;
  if (n === 0) return none;
  const kinds = new Uint8Array(n);
  const numbers = new Float64Array(n);
  let texts: (string | undefined)[] | null = null;
  let errors: (Issue | undefined)[] | null = null;
  for (let k = 0; k < n; k++) {
    const i = at[k]!;
    const kind = values.kinds[i]!;
    kinds[k] = kind;
    if (kind === Kind.text) {
      texts ??= new Array<string | undefined>(n);
      texts[k] = values.texts?.[i];
    } else if (kind === Kind.error) {
      errors ??= new Array<Issue | undefined>(n);
      errors[k] = values.errors?.[i];
    } else {
      const number = values.numbers[i]!;
      numbers[k] = number;
      if (kind !== Kind.number || number - number === 0) continue;
      // A computed array may hold what is no number until single values come out of it.
      errors ??= new Array<Issue | undefined>(n);
      kinds[k] = Kind.error;
      errors[k] = notANumber;
    }
  }
  const [rows, columns] = values.columns === 1 ? [n, 1] : [1, n];
  return { rows, columns, kinds, numbers, texts, errors };
}

/** Places at which every condition is true; an error, a blank and any other text are not. */
function placesWhere(conditions: readonly Range[], size: number): Int32Array {
  const at = new Int32Array(size);
  for (let i = 0; i < size; i++) at[i] = i;
  let n = size;
  for (const { kinds, numbers, texts } of conditions) {
    let met = 0;
    for (let k = 0; k < n; k++) {
      const i = at[k]!;
      const kind = kinds[i];
      const holds =
        kind === Kind.text
          ? texts?.[i]?.toUpperCase() === 'TRUE'
          : kind !== Kind.blank && kind !== Kind.error && numbers[i] !== 0;
      if (holds) at[met++] = i;
    }
    n = met;
  }
  return at.subarray(0, n);
}

import type { Issue } from './issue.ts';
import { Kind, numberFromText, type Range, valueAt } from './value.ts';

const errorCache = new WeakMap<Range, Issue | null>();

/** The first error value in a range, or undefined. */
export function firstError(range: Range): Issue | undefined {
  let found = errorCache.get(range);
  if (found === undefined) {
    found = null;
    if (range.errors) {
      const at = range.kinds.indexOf(Kind.error);
      if (at >= 0) found = valueAt(range, at) as Issue;
    }
    errorCache.set(range, found);
  }
  return found ?? undefined;
}

/** The numbers of a range: value of each cell that has one, and where they stand. */
export interface Numbers {
  /** Values in order, blanks and `""` left out. */
  readonly values: Float64Array;
  /** Place in the range of each value. */
  readonly at: Int32Array;
  /** Place of the first cell that is neither a number nor blank, −1 if none. */
  readonly stranger: number;
  /** The same, where text that reads as a number is a stranger too (dates). */
  readonly strangerToDates: number;
}

const numbersCache = new WeakMap<Range, Numbers>();

/** Reads a range as numbers, once for each range. */
export function numbersIn(range: Range): Numbers {
  const cached = numbersCache.get(range);
  if (cached) return cached;
  const size = range.kinds.length;
  const values = new Float64Array(size);
  const at = new Int32Array(size);
  let n = 0;
  let stranger = -1;
  let strangerToDates = -1;
  for (let i = 0; i < size; i++) {
    const kind = range.kinds[i];
    if (kind === Kind.number || kind === Kind.date) {
      values[n] = range.numbers[i]!;
      at[n++] = i;
    } else if (kind === Kind.text) {
      const text = range.texts?.[i] ?? '';
      if (text === '') continue;
      if (strangerToDates < 0) strangerToDates = i;
      const read = numberFromText(text);
      if (read === undefined) {
        if (stranger < 0) stranger = i;
      } else {
        values[n] = read;
        at[n++] = i;
      }
    } else if (kind !== Kind.blank) {
      if (stranger < 0) stranger = i;
      if (strangerToDates < 0) strangerToDates = i;
    }
  }
  const result = { values: values.subarray(0, n), at: at.subarray(0, n), stranger, strangerToDates };
  numbersCache.set(range, result);
  return result;
}

/**
 * UNIQUE in the time of a sort. The cell engine compares each row with every different one before it, and reads texts as dates each
 * time: 20,000 different names took minutes. Equal here is what the engine's `=` calls equal: texts in any case, a text that reads as a
 * date is that date, a blank equals 0, "" and FALSE.
 */
import { CellError, ErrorType, SimpleRangeValue } from 'hyperformula';
import { type Inner, isRich } from './values.ts';

/** How the engine reads and orders texts. */
export interface Reading {
  numberOfText(text: string): number | undefined;
  /** The number that a text stands for in a comparison: dates and times only. */
  dateOfText(text: string): number | undefined;
  compareTexts(left: string, right: string): number;
}

/** Rows with blanks beside zeros in more than one column are compared in pairs; more of them than these are refused. */
const MOST_IN_PAIRS = 2_000;

const BLANK = 'blank';
/** What a blank equals, besides a blank. */
const likeBlank: ReadonlySet<string> = new Set(['n0', 't', 'bfalse']);

type Kept = (range: SimpleRangeValue, byColumn: boolean, once: boolean) => SimpleRangeValue | CellError;

/** The body of UNIQUE; `inPairs` is the engine's own. */
export const distinctBody =
  (reading: Reading, inPairs: Kept): Kept =>
  (range, byColumn, once) => {
    const data = range.data as Inner[][];
    const error = data.flat().find((value) => value instanceof CellError);
    if (error instanceof CellError) return error;
    const rows = byColumn ? transposed(data) : data;
    const keys = keysOf(rows, reading);
    const width = rows[0]?.length ?? 0;
    if (width > 1 && mixesBlanks(keys, width))
      return rows.length > MOST_IN_PAIRS
        ? new CellError(ErrorType.NUM, 'Too large to compute.')
        : inPairs(range, byColumn, once);
    const kept = firstOfEach(keys, once).map((row) => rows[row]!);
    if (kept.length === 0) return new CellError(ErrorType.NA, 'Nothing occurs exactly once.');
    return SimpleRangeValue.onlyValues((byColumn ? transposed(kept) : kept) as never);
  };

/** Rows that are first of their kind, in order; with `once` those without another. */
function firstOfEach(keys: readonly (readonly string[])[], once: boolean): number[] {
  const found = new Map<string, { readonly row: number; count: number }>();
  for (const [row, cells] of keys.entries()) {
    const key = cells.join('\u0000');
    const equal = [key, ...equals(key)].flatMap((one) => found.get(one) ?? []);
    const first = equal.reduce((a, b) => (b.row < a.row ? b : a), equal[0] ?? { row, count: 0 });
    first.count++;
    if (first.row === row) found.set(key, first);
  }
  return [...found.values()].filter(({ count }) => !once || count === 1).map(({ row }) => row);
}

/** Other keys that a single value equals. */
const equals = (key: string): readonly string[] =>
  key === BLANK ? [...likeBlank] : likeBlank.has(key) ? [BLANK] : [];

/** For each cell a text that is the same for what is equal, blanks apart. */
function keysOf(rows: readonly (readonly Inner[])[], reading: Reading): readonly (readonly string[])[] {
  const texts = new Set<string>();
  for (const row of rows) for (const value of row) if (typeof value === 'string') texts.add(value);
  const keyOf = new Map<string, string>();
  let group = '';
  let last: string | undefined;
  for (const text of [...texts].sort((a, b) => reading.compareTexts(a, b))) {
    const date = reading.dateOfText(text);
    if (date !== undefined) {
      keyOf.set(text, `n${date}`);
      continue;
    }
    if (last === undefined || reading.compareTexts(last, text) !== 0) group = text === '' ? 't' : `t${text}`;
    last = text;
    keyOf.set(text, group);
  }
  const number = (value: number): string => `n${value === 0 ? 0 : value}`;
  return rows.map((row) =>
    row.map((value) => {
      if (typeof value === 'string') return keyOf.get(value)!;
      if (typeof value === 'number') return number(value);
      if (typeof value === 'boolean') return `b${value}`;
      return isRich(value) ? number(value.val) : BLANK;
    }),
  );
}

/** Whether a column has blanks and what they equal: then equality of rows is not that of their keys. */
function mixesBlanks(keys: readonly (readonly string[])[], width: number): boolean {
  for (let column = 0; column < width; column++)
    if (keys.some((row) => row[column] === BLANK) && keys.some((row) => likeBlank.has(row[column]!)))
      return true;
  return false;
}

const transposed = (data: readonly (readonly Inner[])[]): Inner[][] =>
  (data[0] ?? []).map((_, column) => data.map((row) => row[column]!));

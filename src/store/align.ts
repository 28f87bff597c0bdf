/** Which rows of two sheets belong together. −1: has no partner. */
export interface Alignment {
  /** For each row of the later sheet, its row in the earlier one. */
  readonly before: Int32Array;
  /** Every earlier row is there again, with the same content, in another order. */
  readonly reordered: boolean;
}

/**
 * Aligns rows by their keys, equal keys meaning equal content: the rows that occur once on both sides hold their order
 * (longest increasing run, as in a patience comparison); between two of them rows belong together one by one, and what is
 * over on a side came or went. Time n log n.
 */
export function alignRows(earlier: readonly string[], later: readonly string[]): Alignment {
  const before = new Int32Array(later.length).fill(-1);
  let start = 0;
  const shorter = Math.min(earlier.length, later.length);
  while (start < shorter && earlier[start] === later[start]) before[start] = start++;
  let end = 0;
  while (end < shorter - start && earlier[earlier.length - 1 - end] === later[later.length - 1 - end]) {
    before[later.length - 1 - end] = earlier.length - 1 - end;
    end++;
  }
  const middle = { a: start, aEnd: earlier.length - end, b: start, bEnd: later.length - end };
  if (middle.a < middle.aEnd && isReordered(earlier, later, middle)) {
    pairEqual(earlier, later, middle, before);
    return { before, reordered: true };
  }
  let { a, b } = middle;
  for (const [x, y] of [...anchors(earlier, later, middle), [middle.aEnd, middle.bEnd] as const]) {
    for (let i = 0; a + i < x && b + i < y; i++) before[b + i] = a + i;
    if (y < middle.bEnd) before[y] = x;
    a = x + 1;
    b = y + 1;
  }
  return { before, reordered: false };
}

interface Span {
  readonly a: number;
  readonly aEnd: number;
  readonly b: number;
  readonly bEnd: number;
}

function isReordered(
  earlier: readonly string[],
  later: readonly string[],
  { a, aEnd, b, bEnd }: Span,
): boolean {
  if (aEnd - a !== bEnd - b) return false;
  const x = earlier.slice(a, aEnd).sort();
  const y = later.slice(b, bEnd).sort();
  return x.every((key, i) => key === y[i]);
}

function pairEqual(
  earlier: readonly string[],
  later: readonly string[],
  { a, aEnd, b, bEnd }: Span,
  before: Int32Array,
): void {
  const places = new Map<string, number[]>();
  for (let i = aEnd - 1; i >= a; i--) {
    const list = places.get(earlier[i]!);
    if (list) list.push(i);
    else places.set(earlier[i]!, [i]);
  }
  for (let j = b; j < bEnd; j++) before[j] = places.get(later[j]!)!.pop()!;
}

/** Pairs of rows whose key occurs once on either side, as many as keep their order. */
function anchors(
  earlier: readonly string[],
  later: readonly string[],
  { a, aEnd, b, bEnd }: Span,
): (readonly [number, number])[] {
  const once = places(earlier, a, aEnd);
  const other = places(later, b, bEnd);
  const pairs: [number, number][] = [];
  for (const [key, i] of once) {
    const j = other.get(key) ?? -1;
    if (i >= 0 && j >= 0) pairs.push([i, j]);
  }
  return longestIncreasing(pairs);
}

/** The only place of each key; −1 for a key that occurs again. In order of first occurrence. */
function places(keys: readonly string[], from: number, to: number): Map<string, number> {
  const found = new Map<string, number>();
  for (let i = from; i < to; i++) found.set(keys[i]!, found.has(keys[i]!) ? -1 : i);
  return found;
}

/** The longest selection of pairs, given in order of their first members, in which the second members increase too. */
function longestIncreasing(pairs: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const tails: number[] = [];
  const previous = new Int32Array(pairs.length);
  pairs.forEach(([, y], n) => {
    let low = 0;
    for (let high = tails.length; low < high; ) {
      const half = (low + high) >> 1;
      if (pairs[tails[half]!]![1] < y) low = half + 1;
      else high = half;
    }
    previous[n] = low > 0 ? tails[low - 1]! : -1;
    tails[low] = n;
  });
  const out: (readonly [number, number])[] = [];
  for (let n = tails.at(-1) ?? -1; n >= 0; n = previous[n]!) out.push(pairs[n]!);
  return out.reverse();
}

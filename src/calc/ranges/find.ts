import { CellError, EmptyValue } from 'hyperformula';
import { Kind, type Range } from '../../../functions/core/value.ts';
import { errorOf, type Inner } from '../cell-engine/values.ts';
import { type Pattern, patternOf } from '../wildcards.ts';

/** Texts are looked up in any case and without their accents. */
const normalized = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '');

/** A key or a cell as the search compares them. */
export type Sought = number | string | boolean | CellError | typeof EmptyValue;

/** What is in a cell, texts normalized. */
function soughtAt(range: Range, i: number): Sought {
  switch (range.kinds[i]) {
    case Kind.number:
    case Kind.date:
      return range.numbers[i]!;
    case Kind.text:
      return normalized(range.texts![i]!);
    case Kind.yesNo:
      return range.numbers[i] !== 0;
    case Kind.error:
      return errorOf(range.errors![i]!);
    default:
      return EmptyValue;
  }
}

/** First and last place of each key in a range. */
interface Places {
  readonly first: ReadonlyMap<Sought, number>;
  readonly last: ReadonlyMap<Sought, number>;
  /** Texts as they were asked, so that a repeated key is not normalized again. */
  readonly asked: Map<string, number>;
  readonly askedLast: Map<string, number>;
}
const places = new WeakMap<Range, Places>();
const REMEMBERED = 50_000;

function placesOf(range: Range): Places {
  let known = places.get(range);
  if (!known) {
    const first = new Map<Sought, number>();
    const last = new Map<Sought, number>();
    const size = range.rows * range.columns;
    for (let i = 0; i < size; i++) {
      const key = soughtAt(range, i);
      if (!first.has(key)) first.set(key, i);
      last.set(key, i);
    }
    known = { first, last, asked: new Map(), askedLast: new Map() };
    places.set(range, known);
  }
  return known;
}

/** Place of the first (or last) cell that equals the key; −1 when there is none. */
export function findEqual(key: Inner, range: Range, from: 'first' | 'last' = 'first'): number {
  const known = placesOf(range);
  const places = from === 'first' ? known.first : known.last;
  if (typeof key !== 'string') return places.get(key as Sought) ?? -1;
  const asked = from === 'first' ? known.asked : known.askedLast;
  let place = asked.get(key);
  if (place === undefined) {
    place = places.get(normalized(key)) ?? -1;
    if (asked.size >= REMEMBERED) asked.clear();
    asked.set(key, place);
  }
  return place;
}

/** Patterns that were looked for in a range, with the places that they were found at. */
const matched = new WeakMap<Range, Map<string, number>>();

/** Place of the first (or last) text that a text with wildcards matches; any other key is looked for as it is. */
export function findMatching(key: Inner, range: Range, from: 'first' | 'last' = 'first'): number {
  const pattern = typeof key === 'string' ? patternOf(normalized(key)) : undefined;
  if (!pattern) return findEqual(key, range, from);
  if (pattern.literal !== undefined) return findEqual(pattern.literal, range, from);
  const known = matched.get(range) ?? new Map<string, number>();
  matched.set(range, known);
  const asked = `${from} ${String(key)}`;
  let place = known.get(asked);
  if (place === undefined) {
    place = placeOf(pattern, range, from);
    if (known.size >= REMEMBERED) known.clear();
    known.set(asked, place);
  }
  return place;
}

function placeOf(pattern: Pattern, range: Range, from: 'first' | 'last'): number {
  const size = range.rows * range.columns;
  for (let k = 0; k < size; k++) {
    const i = from === 'first' ? k : size - 1 - k;
    if (range.kinds[i] === Kind.text && pattern.matches(normalized(range.texts![i]!))) return i;
  }
  return -1;
}

/** Order of a sorted range: numbers, texts, FALSE, TRUE; blanks before all. */
function compareSought(left: Sought, right: Sought): number {
  if (left === EmptyValue) return right === EmptyValue ? 0 : -1;
  if (right === EmptyValue) return 1;
  if (typeof left === typeof right) return left < right ? -1 : left > right ? 1 : 0;
  if (right instanceof CellError) return -1;
  if (typeof left === 'number' && (typeof right === 'string' || typeof right === 'boolean')) return -1;
  if (typeof left === 'string' && typeof right === 'number') return 1;
  if (typeof left === 'string' && typeof right === 'boolean') return -1;
  return 1;
}

export type Bound = 'none' | 'lower' | 'upper';

/**
 * Place in a sorted range of the last cell that equals the key, or of its neighbour below or above; −1 when there is
 * none. Blank cells are passed over.
 */
export function findSorted(key: Inner, range: Range, order: 'up' | 'down', ifNone: Bound): number {
  const sought: Sought = typeof key === 'string' ? normalized(key) : (key as Sought);
  const compare = order === 'up' ? compareSought : (a: Sought, b: Sought) => -compareSought(a, b);
  const size = range.rows * range.columns;
  const nextFilled = (from: number): number => {
    for (let i = from; i < size; i++) if (range.kinds[i] !== Kind.blank) return i;
    return -1;
  };
  let metBlank = false;
  let at = lastThat(size, (i) => {
    const value = soughtAt(range, i);
    if (value === EmptyValue) metBlank = true;
    return compare(sought, value) >= 0;
  });
  if (metBlank) {
    if (ifNone === 'none' && at >= 0 && soughtAt(range, at) === sought) return at;
    const filled = filledCells(range);
    const k = lastThat(filled.length, (i) => compare(sought, soughtAt(range, filled[i]!)) >= 0);
    at = k < 0 ? -1 : filled[k]!;
  }
  const value = at < 0 ? EmptyValue : soughtAt(range, at);
  if (value === sought) return at;
  if (ifNone === 'none') return -1;
  const wantsNext = (ifNone === 'lower') === (order === 'down');
  if (at < 0) return wantsNext ? nextFilled(0) : -1;
  if (typeof value !== typeof sought) return -1;
  return wantsNext ? nextFilled(at + 1) : at;
}

/** The last of n places for which `holds`, where those for which it does come first. */
function lastThat(n: number, holds: (i: number) => boolean): number {
  let start = 0;
  let end = n - 1;
  while (start < end) {
    const pivot = Math.ceil((start + end) / 2);
    if (holds(pivot)) start = pivot;
    else end = pivot - 1;
  }
  return start === end && holds(start) ? start : -1;
}

const filled = new WeakMap<Range, Int32Array>();
function filledCells(range: Range): Int32Array {
  let cells = filled.get(range);
  if (!cells) {
    const all: number[] = [];
    for (let i = 0; i < range.rows * range.columns; i++) if (range.kinds[i] !== Kind.blank) all.push(i);
    cells = Int32Array.from(all);
    filled.set(range, cells);
  }
  return cells;
}

/** Place of the key in an unsorted range, or of the value next below or above it. */
export function findNearest(
  key: Inner,
  range: Range,
  ifNone: 'lower' | 'upper',
  from: 'first' | 'last',
): number {
  const sought: Sought = typeof key === 'string' ? normalized(key) : (key as Sought);
  const compare = ifNone === 'lower' ? compareSought : (a: Sought, b: Sought): number => -compareSought(a, b);
  const size = range.rows * range.columns;
  let best: Sought = ifNone === 'lower' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  let at = -1;
  for (let k = 0; k < size; k++) {
    const i = from === 'first' ? k : size - 1 - k;
    const value = soughtAt(range, i);
    if (value === sought) return i;
    if (value === EmptyValue || compare(value, sought) > 0) continue;
    if (compare(best, value) < 0) {
      best = value;
      at = i;
    }
  }
  return at;
}

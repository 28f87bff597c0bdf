import type { Issue } from '../../../functions/core/issue.ts';
import { cellEngine } from '../cell-engine/engine.ts';
import { notCoercible } from './problems.ts';
import { Tag, tagOfRich, type Vector } from './vector.ts';

/** Most distinct texts that are remembered before starting over. */
const REMEMBERED = 50_000;

function remembered<T>(read: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    let value = known.get(text);
    if (value === undefined && !known.has(text)) {
      if (known.size >= REMEMBERED) known.clear();
      value = read(text);
      known.set(text, value);
    }
    return value as T;
  };
}

interface TextNumber {
  readonly value: number;
  readonly tag: number;
}
const numberOfText = remembered((text: string): TextNumber | null => {
  const read = cellEngine().numberOfText(text);
  if (read === undefined) return null;
  return typeof read === 'number'
    ? { value: read, tag: Tag.number }
    : { value: read.val, tag: tagOfRich(read) };
});

/** What `readNumber` found: the number with its tag, or the error. */
export const found = { value: 0, tag: 1, error: notCoercible as Issue };

/** Reads an element as an operand: blank 0, yes/no 1 or 0, text the number it stands for. False: `found.error`. */
export function readNumber(vector: Vector, i: number): boolean {
  const tag = vector.tags[i]!;
  switch (tag) {
    case Tag.blank:
      found.value = 0;
      found.tag = Tag.number;
      return true;
    case Tag.yesNo:
      found.value = vector.numbers[i]!;
      found.tag = Tag.number;
      return true;
    case Tag.text: {
      const read = numberOfText(vector.textAt(i));
      if (!read) {
        found.error = notCoercible;
        return false;
      }
      found.value = read.value;
      found.tag = read.tag;
      return true;
    }
    case Tag.error:
      found.error = vector.errorAt(i);
      return false;
    default:
      found.value = vector.numbers[i]!;
      found.tag = tag;
      return true;
  }
}

/** Reads an element as text. An error has none: look first. */
export function textOf(vector: Vector, i: number): string {
  switch (vector.tags[i]) {
    case Tag.text:
      return vector.textAt(i);
    case Tag.blank:
      return '';
    case Tag.yesNo:
      return vector.numbers[i] !== 0 ? 'TRUE' : 'FALSE';
    default:
      return String(vector.numbers[i]);
  }
}

/** Reads an element as a condition: 1, 0, −1 when it is no condition, −2 for an error. */
export function truthOf(vector: Vector, i: number): number {
  switch (vector.tags[i]) {
    case Tag.blank:
      return 0;
    case Tag.text:
      return truthOfText(vector.textAt(i));
    case Tag.error:
      return -2;
    default:
      return vector.numbers[i] !== 0 ? 1 : 0;
  }
}

function truthOfText(text: string): number {
  if (text === '') return 0;
  if (text.length > 5) return -1;
  const upper = text.toUpperCase();
  return upper === 'TRUE' ? 1 : upper === 'FALSE' ? 0 : -1;
}

const dateOfText = remembered((text: string): number | null => cellEngine().dateOfText(text) ?? null);

/** The date or time that a text compares as, null for none. Most texts are told by their first character. */
function comparedAs(text: string): number | null {
  const first = text.charCodeAt(0);
  if (
    (first >= 48 && first <= 57) ||
    (first >= 45 && first <= 47) ||
    first === 58 ||
    first <= 32 ||
    first > 126
  )
    return dateOfText(text);
  return null;
}

const order = (left: number, right: number): number => (left > right ? 1 : left < right ? -1 : 0);
/** The cell engine calls two numbers equal only when they are; NaN cannot occur. */
const orderOfNumbers = (left: number, right: number): number => (left === right ? 0 : left > right ? 1 : -1);

const rankOfTag = [0, 1, 1, 2, 3, 4, 1, 1, 1, 1];

/** Order of two elements that hold no error, as the operators `=`, `<`, … see it. */
export function compareAt(a: Vector, i: number, b: Vector, j: number): number {
  const left = a.tags[i]!;
  const right = b.tags[j]!;
  const leftRank = rankOfTag[left]!;
  const rightRank = rankOfTag[right]!;
  if (leftRank === 1 && rightRank === 1) return orderOfNumbers(a.numbers[i]!, b.numbers[j]!);
  if (left === Tag.text || right === Tag.text) {
    const leftNumber = leftRank === 1 ? a.numbers[i]! : left === Tag.text ? comparedAs(a.textAt(i)) : null;
    if (leftNumber !== null) {
      const rightNumber =
        rightRank === 1 ? b.numbers[j]! : right === Tag.text ? comparedAs(b.textAt(j)) : null;
      if (rightNumber !== null) return orderOfNumbers(leftNumber, rightNumber);
    }
    if (left === Tag.text && right === Tag.text) return compareTexts(a.textAt(i), b.textAt(j));
    if (left === Tag.blank) return compareTexts('', b.textAt(j));
    if (right === Tag.blank) return compareTexts(a.textAt(i), '');
  }
  if (left === Tag.blank) {
    if (right === Tag.blank) return 0;
    return right === Tag.yesNo ? order(0, b.numbers[j]!) : orderOfNumbers(0, b.numbers[j]!);
  }
  if (right === Tag.blank)
    return left === Tag.yesNo ? order(a.numbers[i]!, 0) : orderOfNumbers(a.numbers[i]!, 0);
  if (left === Tag.yesNo && right === Tag.yesNo) return order(a.numbers[i]!, b.numbers[j]!);
  return order(leftRank, rightRank);
}

function compareTexts(left: string, right: string): number {
  if (left === right) return 0;
  return cellEngine().compareTexts(left, right);
}

/** Whether two texts are equal to `=`: any case. Printable ASCII is decided without the collator. */
function equalTexts(left: string, right: string): boolean {
  if (left === right) return true;
  const n = left.length;
  if (n !== right.length)
    return plainAscii(left) && plainAscii(right) ? false : compareTexts(left, right) === 0;
  for (let k = 0; k < n; k++) {
    const c = left.charCodeAt(k);
    const d = right.charCodeAt(k);
    if (c > 126 || d > 126 || c < 32 || d < 32) return compareTexts(left, right) === 0;
    if (c === d) continue;
    const lower = c | 32;
    if (lower !== (d | 32) || lower < 97 || lower > 122)
      return plainAscii(left) && plainAscii(right) ? false : compareTexts(left, right) === 0;
  }
  return true;
}

function plainAscii(text: string): boolean {
  for (let k = 0; k < text.length; k++) {
    const c = text.charCodeAt(k);
    if (c > 126 || c < 32) return false;
  }
  return true;
}

/** Whether two elements that hold no error are equal to `=`. */
export function equalAt(a: Vector, i: number, b: Vector, j: number): boolean {
  if (a.tags[i] === Tag.text && b.tags[j] === Tag.text) {
    const left = a.textAt(i);
    const right = b.textAt(j);
    if (comparedAs(left) === null || comparedAs(right) === null) return equalTexts(left, right);
  }
  return compareAt(a, i, b, j) === 0;
}

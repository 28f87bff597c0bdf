import type { BinaryOperator } from '../ast.ts';
import { add, divide, type Loops, multiply, power, subtract } from './arithmetic-loops.ts';
import { compareAt, equalAt, found, readNumber, textOf } from './coerce.ts';
import { divisionByZero } from './problems.ts';
import { Tag, type Vector } from './vector.ts';

/** Computes n elements of `out` from those of its arguments; a single argument stands for every element. */
export type Kernel = (args: readonly Vector[], n: number, out: Vector) => void;

/** The sort of number that a sum or difference is. */
function sumTag(left: number, right: number): number {
  if (left === Tag.number) return right;
  if (right === Tag.number) return left;
  const leftDay = left === Tag.date || left === Tag.dateTime;
  const rightDay = right === Tag.date || right === Tag.dateTime;
  if (leftDay && rightDay) return Tag.number;
  if ((left === Tag.time && rightDay) || (right === Tag.time && leftDay)) return Tag.dateTime;
  return left;
}

/** The sort of number that a product or quotient is. */
function productTag(left: number, right: number): number {
  const a = left === Tag.percent ? Tag.number : left;
  const b = right === Tag.percent ? Tag.number : right;
  if (a === Tag.number) return b;
  return b === Tag.number ? a : Tag.number;
}

function arithmetic(
  { both, rightSingle, leftSingle, one }: Loops,
  tagOf: (left: number, right: number) => number,
  division = false,
): Kernel {
  return (args, n, out) => {
    const a = args[0]!;
    const b = args[1]!;
    if (a.plain && b.plain) {
      const loop = b.single ? rightSingle : a.single ? leftSingle : both;
      if (loop(a.numbers, b.numbers, out.numbers, n) === 0) {
        out.allNumbers(n);
        return;
      }
    }
    out.mixed();
    for (let k = 0; k < n; k++) {
      const i = a.single ? 0 : k;
      const j = b.single ? 0 : k;
      if (a.tags[i] === Tag.error) out.setError(k, a.errorAt(i));
      else if (b.tags[j] === Tag.error) out.setError(k, b.errorAt(j));
      else if (!readNumber(a, i)) out.setError(k, found.error);
      else {
        const left = found.value;
        const leftTag = found.tag;
        if (!readNumber(b, j)) out.setError(k, found.error);
        else if (division && found.value === 0) out.setError(k, divisionByZero);
        else out.setNumber(k, one(left, found.value), tagOf(leftTag, found.tag));
      }
    }
  };
}

type Test = (a: Float64Array, b: Float64Array, out: Float64Array, n: number, s: 0 | 1, t: 0 | 1) => void;

function comparison(test: Test, holds: (order: number) => boolean, equality = false): Kernel {
  return (args, n, out) => {
    const a = args[0]!;
    const b = args[1]!;
    if (a.plain && b.plain) {
      test(a.numbers, b.numbers, out.numbers, n, a.single ? 0 : 1, b.single ? 0 : 1);
      out.all(Tag.yesNo, n);
      return;
    }
    out.mixed();
    for (let k = 0; k < n; k++) {
      const i = a.single ? 0 : k;
      const j = b.single ? 0 : k;
      if (a.tags[i] === Tag.error) out.setError(k, a.errorAt(i));
      else if (b.tags[j] === Tag.error) out.setError(k, b.errorAt(j));
      else out.setYesNo(k, equality ? holds(equalAt(a, i, b, j) ? 0 : 1) : holds(compareAt(a, i, b, j)));
    }
  };
}

const concatenate: Kernel = (args, n, out) => {
  const a = args[0]!;
  const b = args[1]!;
  out.mixed();
  for (let k = 0; k < n; k++) {
    const i = a.single ? 0 : k;
    const j = b.single ? 0 : k;
    if (a.tags[i] === Tag.error) out.setError(k, a.errorAt(i));
    else if (b.tags[j] === Tag.error) out.setError(k, b.errorAt(j));
    else out.setText(k, textOf(a, i) + textOf(b, j));
  }
};

export const binaryKernels: Readonly<Record<BinaryOperator, Kernel>> = {
  '+': arithmetic(add, sumTag),
  '-': arithmetic(subtract, sumTag),
  '*': arithmetic(multiply, productTag),
  '/': arithmetic(divide, productTag, true),
  '^': arithmetic(power, () => Tag.number),
  '&': concatenate,
  '=': comparison(
    (a, b, out, n, s, t) => {
      for (let i = 0; i < n; i++) out[i] = a[i * s]! === b[i * t]! ? 1 : 0;
    },
    (o) => o === 0,
    true,
  ),
  '<>': comparison(
    (a, b, out, n, s, t) => {
      for (let i = 0; i < n; i++) out[i] = a[i * s]! === b[i * t]! ? 0 : 1;
    },
    (o) => o !== 0,
    true,
  ),
  '<': comparison(
    (a, b, out, n, s, t) => {
      for (let i = 0; i < n; i++) out[i] = a[i * s]! < b[i * t]! ? 1 : 0;
    },
    (o) => o < 0,
  ),
  '<=': comparison(
    (a, b, out, n, s, t) => {
      for (let i = 0; i < n; i++) out[i] = a[i * s]! <= b[i * t]! ? 1 : 0;
    },
    (o) => o <= 0,
  ),
  '>': comparison(
    (a, b, out, n, s, t) => {
      for (let i = 0; i < n; i++) out[i] = a[i * s]! > b[i * t]! ? 1 : 0;
    },
    (o) => o > 0,
  ),
  '>=': comparison(
    (a, b, out, n, s, t) => {
      for (let i = 0; i < n; i++) out[i] = a[i * s]! >= b[i * t]! ? 1 : 0;
    },
    (o) => o >= 0,
  ),
};

export const negate: Kernel = (args, n, out) => {
  const a = args[0]!;
  if (a.plain && !a.single) {
    for (let i = 0; i < n; i++) out.numbers[i] = 0 - a.numbers[i]!;
    out.allNumbers(n);
    return;
  }
  out.mixed();
  for (let k = 0; k < n; k++) {
    if (readNumber(a, a.single ? 0 : k)) out.setNumber(k, -found.value, found.tag);
    else out.setError(k, found.error);
  }
};

export const percent: Kernel = (args, n, out) => {
  const a = args[0]!;
  out.mixed();
  for (let k = 0; k < n; k++) {
    if (readNumber(a, a.single ? 0 : k)) out.setNumber(k, found.value / 100, Tag.percent);
    else out.setError(k, found.error);
  }
};

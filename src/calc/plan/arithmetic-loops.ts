/** The four operations over typed arrays, in loops that engines make fast. */
import { pow } from '../../../functions/core/elementary/pow.ts';

type Loop = (a: Float64Array, b: Float64Array, out: Float64Array, n: number) => number;
/** The loops of one operator over plain numbers; each answers 0 when every result is finite. */
export interface Loops {
  readonly both: Loop;
  readonly rightSingle: Loop;
  readonly leftSingle: Loop;
  readonly one: (a: number, b: number) => number;
}

// Each loop adds up r − r, which is 0 unless some r is not finite; + 0 turns −0 into 0, as the cell engine does.
export const add: Loops = {
  both: (a, b, out, n) => {
    let odd = 0;
    for (let i = 0; i < n; i++) {
      const r = a[i]! + b[i]! + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  rightSingle: (a, b, out, n) => {
    let odd = 0;
    const right = b[0]!;
    for (let i = 0; i < n; i++) {
      const r = a[i]! + right + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  leftSingle: (a, b, out, n) => add.rightSingle(b, a, out, n),
  one: (a, b) => a + b,
};
export const subtract: Loops = {
  both: (a, b, out, n) => {
    let odd = 0;
    for (let i = 0; i < n; i++) {
      const r = a[i]! - b[i]! + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  rightSingle: (a, b, out, n) => {
    let odd = 0;
    const right = b[0]!;
    for (let i = 0; i < n; i++) {
      const r = a[i]! - right + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  leftSingle: (a, b, out, n) => {
    let odd = 0;
    const left = a[0]!;
    for (let i = 0; i < n; i++) {
      const r = left - b[i]! + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  one: (a, b) => a - b,
};
export const multiply: Loops = {
  both: (a, b, out, n) => {
    let odd = 0;
    for (let i = 0; i < n; i++) {
      const r = a[i]! * b[i]! + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  rightSingle: (a, b, out, n) => {
    let odd = 0;
    const right = b[0]!;
    for (let i = 0; i < n; i++) {
      const r = a[i]! * right + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  leftSingle: (a, b, out, n) => multiply.rightSingle(b, a, out, n),
  one: (a, b) => a * b,
};
// A zero divisor makes r infinite or NaN, so it is found as "not finite" and looked at one by one.
export const divide: Loops = {
  both: (a, b, out, n) => {
    let odd = 0;
    for (let i = 0; i < n; i++) {
      const r = a[i]! / b[i]! + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  rightSingle: (a, b, out, n) => {
    let odd = 0;
    const right = b[0]!;
    for (let i = 0; i < n; i++) {
      const r = a[i]! / right + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  leftSingle: (a, b, out, n) => {
    let odd = 0;
    const left = a[0]!;
    for (let i = 0; i < n; i++) {
      const r = left / b[i]! + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  one: (a, b) => a / b,
};
export const power: Loops = {
  both: (a, b, out, n) => {
    let odd = 0;
    for (let i = 0; i < n; i++) {
      const r = pow(a[i]!, b[i]!) + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  rightSingle: (a, b, out, n) => {
    let odd = 0;
    const right = b[0]!;
    if (right === 2) return multiply.both(a, a, out, n);
    for (let i = 0; i < n; i++) {
      const r = pow(a[i]!, right) + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  leftSingle: (a, b, out, n) => {
    let odd = 0;
    const left = a[0]!;
    for (let i = 0; i < n; i++) {
      const r = pow(left, b[i]!) + 0;
      out[i] = r;
      odd += r - r;
    }
    return odd;
  },
  one: pow,
};

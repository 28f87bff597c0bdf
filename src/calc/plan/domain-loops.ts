import type { Outcome } from '../../../functions/core/value.ts';

/**
 * A loop for a few numbers of arguments, so that a call in it is a plain call: no list of arguments is built. Place k is
 * taken from the column `x[k]` or, where there is none, is the constant `c[k]`; places beyond the last argument are
 * undefined, as when they are not given. Rows marked in `odd` are left out. A finite number goes to `out`; anything else
 * goes to `rest` and marks its row with 2. True when a row was marked.
 */
export type DomainLoop = (
  call: (...args: never[]) => Outcome,
  x: readonly (ArrayLike<unknown> | null)[],
  c: readonly unknown[],
  odd: Uint8Array,
  out: Float64Array,
  rest: unknown[],
  n: number,
) => boolean;

type Call = (...args: unknown[]) => Outcome;

const loops: readonly DomainLoop[] = [
  (call, x, c, odd, out, rest, n) => {
    const f = call as Call;
    let marked = false;
    const [x0] = x;
    const [c0] = c;
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f(x0 ? x0[i] : c0);
      if (typeof r === 'number' && r - r === 0) out[i] = r + 0;
      else {
        rest[i] = r;
        odd[i] = 2;
        marked = true;
      }
    }
    return marked;
  },
  (call, x, c, odd, out, rest, n) => {
    const f = call as Call;
    let marked = false;
    const [x0, x1] = x;
    const [c0, c1] = c;
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f(x0 ? x0[i] : c0, x1 ? x1[i] : c1);
      if (typeof r === 'number' && r - r === 0) out[i] = r + 0;
      else {
        rest[i] = r;
        odd[i] = 2;
        marked = true;
      }
    }
    return marked;
  },
  (call, x, c, odd, out, rest, n) => {
    const f = call as Call;
    let marked = false;
    const [x0, x1, x2, x3] = x;
    const [c0, c1, c2, c3] = c;
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f(x0 ? x0[i] : c0, x1 ? x1[i] : c1, x2 ? x2[i] : c2, x3 ? x3[i] : c3);
      if (typeof r === 'number' && r - r === 0) out[i] = r + 0;
      else {
        rest[i] = r;
        odd[i] = 2;
        marked = true;
      }
    }
    return marked;
  },
  (call, x, c, odd, out, rest, n) => {
    const f = call as Call;
    let marked = false;
    const [x0, x1, x2, x3, x4, x5, x6, x7] = x;
    const [c0, c1, c2, c3, c4, c5, c6, c7] = c;
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f(
        x0 ? x0[i] : c0,
        x1 ? x1[i] : c1,
        x2 ? x2[i] : c2,
        x3 ? x3[i] : c3,
        x4 ? x4[i] : c4,
        x5 ? x5[i] : c5,
        x6 ? x6[i] : c6,
        x7 ? x7[i] : c7,
      );
      if (typeof r === 'number' && r - r === 0) out[i] = r + 0;
      else {
        rest[i] = r;
        odd[i] = 2;
        marked = true;
      }
    }
    return marked;
  },
  (call, x, c, odd, out, rest, n) => {
    const f = call as Call;
    let marked = false;
    const [x0, x1, x2, x3, x4, x5, x6, x7, x8, x9, x10, x11, x12, x13] = x;
    const [c0, c1, c2, c3, c4, c5, c6, c7, c8, c9, c10, c11, c12, c13] = c;
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f(
        x0 ? x0[i] : c0,
        x1 ? x1[i] : c1,
        x2 ? x2[i] : c2,
        x3 ? x3[i] : c3,
        x4 ? x4[i] : c4,
        x5 ? x5[i] : c5,
        x6 ? x6[i] : c6,
        x7 ? x7[i] : c7,
        x8 ? x8[i] : c8,
        x9 ? x9[i] : c9,
        x10 ? x10[i] : c10,
        x11 ? x11[i] : c11,
        x12 ? x12[i] : c12,
        x13 ? x13[i] : c13,
      );
      if (typeof r === 'number' && r - r === 0) out[i] = r + 0;
      else {
        rest[i] = r;
        odd[i] = 2;
        marked = true;
      }
    }
    return marked;
  },
];

const widths = [1, 2, 4, 8, 14];

/**
 * The loop for so many arguments.
 * @param exactly for a function that counts its arguments: none is added
 */
export function domainLoop(count: number, exactly: boolean): DomainLoop {
  const at = widths.findIndex((width) => (exactly ? width === count : width >= count));
  return loops[at] ?? manyArguments;
}

const manyArguments: DomainLoop = (call, x, c, odd, out, rest, n) => {
  let marked = false;
  for (let i = 0; i < n; i++) {
    if (odd[i] !== 0) continue;
    const r = (call as Call)(...x.map((column, k) => (column ? column[i] : c[k])));
    if (typeof r === 'number' && r - r === 0) out[i] = r + 0;
    else {
      rest[i] = r;
      odd[i] = 2;
      marked = true;
    }
  }
  return marked;
};

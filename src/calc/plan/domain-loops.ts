import type { Outcome } from '../../../functions/core/value.ts';

/**
 * One loop for each number of arguments, so that a call in it is a plain call: no list of arguments is built. Place k is
 * taken from the column `x[k]` or, where there is none, is the constant `c[k]`. Rows marked in `odd` are left out. A
 * finite number goes to `out`; anything else goes to `rest` and marks its row with 2. True when a row was marked.
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
  (call, _x, _c, odd, out, rest, n) => {
    const f = call as Call;
    let marked = false;
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f();
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
    const x0 = x[0];
    const c0 = c[0];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f(x0 ? x0[i] : c0, x1 ? x1[i] : c1, x2 ? x2[i] : c2);
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f(x0 ? x0[i] : c0, x1 ? x1[i] : c1, x2 ? x2[i] : c2, x3 ? x3[i] : c3, x4 ? x4[i] : c4);
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    for (let i = 0; i < n; i++) {
      if (odd[i] !== 0) continue;
      const r = f(
        x0 ? x0[i] : c0,
        x1 ? x1[i] : c1,
        x2 ? x2[i] : c2,
        x3 ? x3[i] : c3,
        x4 ? x4[i] : c4,
        x5 ? x5[i] : c5,
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    const x6 = x[6];
    const c6 = c[6];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    const x6 = x[6];
    const c6 = c[6];
    const x7 = x[7];
    const c7 = c[7];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    const x6 = x[6];
    const c6 = c[6];
    const x7 = x[7];
    const c7 = c[7];
    const x8 = x[8];
    const c8 = c[8];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    const x6 = x[6];
    const c6 = c[6];
    const x7 = x[7];
    const c7 = c[7];
    const x8 = x[8];
    const c8 = c[8];
    const x9 = x[9];
    const c9 = c[9];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    const x6 = x[6];
    const c6 = c[6];
    const x7 = x[7];
    const c7 = c[7];
    const x8 = x[8];
    const c8 = c[8];
    const x9 = x[9];
    const c9 = c[9];
    const x10 = x[10];
    const c10 = c[10];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    const x6 = x[6];
    const c6 = c[6];
    const x7 = x[7];
    const c7 = c[7];
    const x8 = x[8];
    const c8 = c[8];
    const x9 = x[9];
    const c9 = c[9];
    const x10 = x[10];
    const c10 = c[10];
    const x11 = x[11];
    const c11 = c[11];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    const x6 = x[6];
    const c6 = c[6];
    const x7 = x[7];
    const c7 = c[7];
    const x8 = x[8];
    const c8 = c[8];
    const x9 = x[9];
    const c9 = c[9];
    const x10 = x[10];
    const c10 = c[10];
    const x11 = x[11];
    const c11 = c[11];
    const x12 = x[12];
    const c12 = c[12];
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
    const x0 = x[0];
    const c0 = c[0];
    const x1 = x[1];
    const c1 = c[1];
    const x2 = x[2];
    const c2 = c[2];
    const x3 = x[3];
    const c3 = c[3];
    const x4 = x[4];
    const c4 = c[4];
    const x5 = x[5];
    const c5 = c[5];
    const x6 = x[6];
    const c6 = c[6];
    const x7 = x[7];
    const c7 = c[7];
    const x8 = x[8];
    const c8 = c[8];
    const x9 = x[9];
    const c9 = c[9];
    const x10 = x[10];
    const c10 = c[10];
    const x11 = x[11];
    const c11 = c[11];
    const x12 = x[12];
    const c12 = c[12];
    const x13 = x[13];
    const c13 = c[13];
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

/** The loop for so many arguments. */
export function domainLoop(count: number): DomainLoop {
  return loops[count] ?? manyArguments;
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

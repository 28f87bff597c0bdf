import { describe, expect, test } from 'vitest';
import type { Cell } from '../../src/book/cell.ts';
import { Bench, bookOf, f } from './book-for-test.ts';

/*
 * UNIQUE (common practice, no published source: OpenFormula 1.3 does not have it): the different rows of an array, each where it
 * stands first, equal as the language's `=` has it: texts in any case, an ISO date in a text is that date, a blank is 0, "" and FALSE.
 * Expected by hand.
 */
function unique(x: readonly Cell[], formula = 'UNIQUE(s.x)'): unknown[] {
  const rows = x.length + 2;
  const blank = Array.from({ length: rows }, () => null);
  const b = new Bench(bookOf({ s: { x: [...x] }, out: { v: [f(formula), ...blank] } }));
  return b.values('out', 'v');
}
/** Without the blanks below what spilled. */
const shown = (x: readonly Cell[], formula?: string) => unique(x, formula).filter((value) => value !== null);

describe('different values', () => {
  test('keep the order of their first, in whatever case they are written', () => {
    expect(shown(['Squat', 'press', 'SQUAT', 'Press', 'row'])).toEqual(['Squat', 'press', 'row']);
    expect(shown(['é', 'e', 'É'])).toEqual(['é', 'e']);
  });

  test('are compared as `=` compares them: a text that is a date, and a blank', () => {
    expect(shown([3, 3.5, 3, '3'])).toEqual([3, 3.5, '3']);
    expect(shown(['2026-01-01', 46023])).toEqual(['2026-01-01']);
    expect(shown([0, null, 5])).toEqual([0, 5]);
    expect(shown([7, null, 0, false, 7]).slice(0, 1)).toEqual([7]);
  });

  test('that occur once', () => {
    expect(shown(['a', 'b', 'A', 'c'], 'UNIQUE(s.x, FALSE, TRUE)')).toEqual(['b', 'c']);
    expect(unique(['a', 'a'], 'UNIQUE(s.x, FALSE, TRUE)')[0]).toBe('#N/A');
  });

  test('of rows with more than one column, blanks beside zeros included', () => {
    expect(shown([1], 'ROWS(UNIQUE({1,"a";2,"b";1,"A";2,"c"}))')).toEqual([3]);
    expect(shown([1], 'COLUMNS(UNIQUE({1,2,1;"a","b","A"}, TRUE))')).toEqual([2]);
    const b = new Bench(
      bookOf({
        s: { x: [1, null, 0, 1], y: ['a', 'a', 'A', 'b'] },
        out: { v: [f('ROWS(UNIQUE(s!A1:B4))')] },
      }),
    );
    expect(b.values('out', 'v')).toEqual([3]);
  });
});

test('20,000 different names take no longer than a breath, and are all there', () => {
  const names = Array.from({ length: 20_000 }, (_, i) => `name ${(i * 7919) % 20_000}`);
  const b = new Bench(
    bookOf({ s: { x: names }, out: { v: [f('ROWS(UNIQUE(s.x))'), f('INDEX(UNIQUE(s.x), 2)')] } }),
  );
  expect(b.values('out', 'v')).toEqual([20_000, 'name 7919']);
});

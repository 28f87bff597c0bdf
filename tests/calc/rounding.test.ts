import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { Bench, bookOf, f } from './book-for-test.ts';

/* Decimal arithmetic in Python: tests/reference/rounding.py. */
const lines = readFileSync('tests/reference/rounding.csv', 'utf8').trim().split('\n').slice(1);
const cases = lines.map((line) => {
  const [name, ...numbers] = line.split(',');
  const [x, by, result] = numbers.map(Number) as [number, number, number];
  return { name: name!, x, by, result };
});

describe('rounding', () => {
  test('of single cells and of columns agrees with decimal arithmetic to the last bit', () => {
    const names = [...new Set(cases.map(({ name }) => name))];
    const by = new Map(names.map((name) => [name, cases.filter((one) => one.name === name)]));
    const columns = Object.fromEntries(
      [...by].map(([name, of]) => [
        `s${name.replace('.', '_')}`,
        {
          x: of.map(({ x }) => x),
          places: of.map((one) => one.by),
          z: `${name}(x, places)`,
          free: of.map(() => f(`${name}(x, places)`)),
        },
      ]),
    );
    const b = new Bench(bookOf(columns));
    for (const [name, of] of by) {
      const expected = of.map(({ x, by: places, result }) => [name, x, places, result + 0]);
      const shown = (column: string) =>
        b.values(`s${name.replace('.', '_')}`, column).map((value, i) => [name, of[i]!.x, of[i]!.by, value]);
      expect(shown('z')).toEqual(expected);
      expect(shown('free')).toEqual(expected);
    }
  });
  /* OpenFormula 1.3, part 4, 6.17 (rounding functions): INT goes down to the next whole number, TRUNC towards zero. */
  test.each([
    ['INT(-1.2)', -2],
    ['INT(1.9)', 1],
    ['TRUNC(-1.9)', -1],
    ['TRUNC(28.499999999999996, 1)', 28.5],
    ['ROUND(1.005, 2)', 1.01],
    ['ROUND(2.675, 2)', 2.68],
    ['ROUND(-2.5, 0)', -3],
    ['ROUND(2.5)', 3],
    ['ROUND(1.26, 1.9)', 1.3],
    ['MROUND(-7, 2)', '#NUM!'],
    ['MROUND(7, 0)', 0],
    ['MROUND(1E300, 1E-300)', '#NUM!'],
    ['CEILING(7.31, 0.1)', 7.4],
    ['CEILING(7.31, 0)', '#DIV/0!'],
    ['CEILING(7.31, -0.1)', '#NUM!'],
    ['FLOOR(0, 0)', 0],
    ['CEILING.MATH(-7.35, 0.1)', -7.3],
    ['CEILING.MATH(-7.35, 0.1, 1)', -7.4],
    ['FLOOR.MATH(-7.35, 0.1, 1)', -7.3],
    ['FLOOR.MATH(7.35, 0)', 0],
  ])('%s is %s', (formula, result) => {
    const b = new Bench(bookOf({ s: { a: [f(formula)], z: { cells: [null], formula } } }));
    expect([b.value('s', 'a', 0), b.value('s', 'z', 0)]).toEqual([result, result]);
  });
});

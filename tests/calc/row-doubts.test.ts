import { expect, test } from 'vitest';
import { Bench, bookOf } from './book-for-test.ts';

const { calculation } = new Bench(
  bookOf({
    log: { tonnage: [1, 2], left: [1, 2], right: [3, 4], on_day: { kind: 'date', cells: [1, 2] }, y: [0, 0] },
  }),
);
const doubted = (formula: string): readonly string[] =>
  calculation.check(formula, { sheet: 'log', column: 'y' }).doubts.map(({ instead }) => instead);

test.each([
  ['SUM(tonnage)', ['log.tonnage']],
  ['tonnage / MAX(tonnage)', ['log.tonnage']],
  ['CORREL(left, right)', ['log.left', 'log.right']],
  ['TRAIN.SUM(on_day, tonnage, on_day, 7)', ['log.on_day', 'log.tonnage']],
  ['SUM(log.tonnage)', []],
  ['MIN(left, right)', []],
  ['IF(COUNT(tonnage) = 0, "", tonnage)', []],
  ['tonnage * 2', []],
])('a bare column name where a range is meant is doubted, in %s: %j', (formula, expected) =>
  expect(doubted(formula)).toEqual(expected),
);

test('the doubt says what is meant, where it is, and what to write instead; the formula works all the same', () => {
  const { ok, doubts } = calculation.check('2 * SUM(tonnage)', { sheet: 'log', column: 'y' });
  expect(ok).toBe(true);
  const sentence = 'tonnage is this row only; log.tonnage is the whole column.';
  expect(doubts).toEqual([{ from: 8, to: 15, sentence, instead: 'log.tonnage' }]);
});

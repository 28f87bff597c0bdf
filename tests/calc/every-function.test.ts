import { expect, test } from 'vitest';
import { isIssue } from '../../functions/core/issue.ts';
import { isMatrix, type Value } from '../../functions/core/value.ts';
import { functionNames } from '../../src/calc/catalogue.ts';
import { Bench, bookOf } from './book-for-test.ts';

/*
 * Whatever the values: a function that the language knows must be known wherever a formula may call it, over single
 * values, over whole columns (column plans) and in a column's formula, and must never come to a fault.
 */
const b = new Bench(bookOf({ s: { x: [1, 2, 3, 4], k: ['a', 'b', 'a', 'b'] } }));
const reasonOf = (value: Value): string => (isIssue(value) ? value.reason : '');
const faults = new Set(['unknown-function', 'failed', 'fault', 'unknown']);

test.each([...functionNames()])('%s is known everywhere', (name) => {
  for (const args of [
    '',
    's.x',
    's.x, s.x',
    's.x, s.k, "a"',
    '2',
    '2, 3',
    '2, 3, 4',
    'x',
    'x, s.x',
    's!A1:A4, 2',
  ]) {
    const formula = `${name}(${args})`;
    const free = b.calculation.evaluate(formula, { sheet: 's', column: 'x', row: 0 });
    if (!isMatrix(free))
      expect([formula, faults.has(reasonOf(free)) && reasonOf(free)]).toEqual([formula, false]);
    const column = new Bench(bookOf({ s: { x: [1, 2], k: ['a', 'b'], y: formula } }));
    const [value] = column.column('s', 'y');
    expect([formula, faults.has(reasonOf(value!)) && reasonOf(value!)]).toEqual([formula, false]);
  }
});

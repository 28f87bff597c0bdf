import { expect, test } from 'vitest';
import { type Argument, isMatrix, isRange, rangeOf } from '../../../functions/core/value.ts';
import { type Extra, evaluate } from '../../functions/formula.ts';
import { agrees, readReference } from '../../functions/reference.ts';
import { owns } from './own.ts';

const calls: Readonly<Record<string, Extra>> = {
  ...Object.fromEntries(
    [...owns].map(([name, own]) => [name, (...args: Argument[]) => own.compute(args, name) as Argument]),
  ),
  // x and x², side by side
  squares: (x) => {
    if (!isRange(x)) throw new Error('squares of a column');
    return rangeOf(
      x.rows,
      2,
      Array.from(x.numbers).flatMap((v) => [v, v * v]),
    );
  },
};

// Expected values: tests/reference/builtins.py (scipy, numpy, counting) and NIST's certified ones; see the last column.
test.each(readReference('builtins.csv'))(
  '$formula gives $expected ($by)',
  ({ formula, expected, tolerance }) => {
    const [call, at] = formula!.split('@');
    const answer = evaluate(call!, calls);
    const value = isMatrix(answer) ? answer.values[Number(at ?? 1) - 1] : answer;
    expect(typeof value).toBe('number');
    if (!agrees(value as number, Number(expected), tolerance!))
      expect.fail(`${formula} gave ${value}, expected ${expected} (${tolerance})`);
  },
);

import { describe, expect, test } from 'vitest';
import { evaluate, plainly } from '../formula.ts';
import { agrees, readReference } from '../reference.ts';

describe('random data, against scipy and numpy', () => {
  const lines = readReference('random_statistics.csv');
  test('there are many', () => expect(lines.length).toBeGreaterThan(200));
  const named = lines.map((line, i) => ({
    name: `${i + 2}: ${line.formula!.replace(/\{[^}]*\}/g, '{…}')}`,
    line,
  }));
  test.each(named)('line $name', ({ line: { formula, expected, tolerance } }) => {
    const value = plainly(evaluate(formula!));
    if (!agrees(value as number, Number(expected), tolerance!))
      expect.fail(`${formula} gave ${value}, not ${expected} (${tolerance})`);
  });
});

import { describe, expect, test } from 'vitest';
import { evaluate, plainly } from '../formula.ts';
import { readReference } from '../reference.ts';

// Expectations of a second transcription of the rules: posture_model.py beside the file wrote them.
const rows = readReference('posture.csv').map(({ formula, expected, tolerance }) => ({
  formula: formula!,
  name: /^=([A-Z.]+)\(/.exec(formula!)![1]!,
  expected: expected!,
  tolerance: Number(tolerance),
}));
const names = [...new Set(rows.map(({ name }) => name))];

describe('a second transcription of the rules, in Python', () => {
  test.each(names)('%s agrees on every row', (name) => {
    const lines = rows.filter((row) => row.name === name);
    expect(lines.length).toBeGreaterThan(0);
    const wrong = lines.flatMap(({ formula, expected, tolerance }) => {
      const got = plainly(evaluate(formula));
      const number = Number(expected);
      const agrees =
        Number.isNaN(number) || typeof got !== 'number'
          ? String(got) === expected
          : // closed forms agree to their size, searched values to what the search promises
            Math.abs(got - number) <= tolerance * (tolerance < 1e-8 ? Math.max(1, Math.abs(number)) : 1);
      return agrees ? [] : [`${formula} gave ${String(got)}, not ${expected}`];
    });
    expect(wrong).toEqual([]);
  });
});

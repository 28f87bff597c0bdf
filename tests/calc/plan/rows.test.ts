import { describe, expect, test } from 'vitest';
import { isIssue } from '../../../functions/core/issue.ts';
import { compile } from '../../../src/calc/plan/compile.ts';
import { randomSheet } from './data.ts';
import { binary, call, formulaMaker, lettings, literal, local, rowOf } from './formulas.ts';
import { chance } from './random.ts';
import { Filled, runFormula, sourceOf } from './run.ts';

const plain = (out: Filled, row: number): unknown => {
  const value = out.at(row);
  return [out.kinds[row], isIssue(value) ? value.code : value];
};

describe('a plan', () => {
  // 1,300 rows are a whole block and a rest; each row alone is a block of its own, so masks and views differ
  test('gives the same values for all rows at once, for stretches, and for single rows in any order', () => {
    const c = chance(7);
    const sheet = randomSheet(c, 1300);
    const make = formulaMaker(c, 40);
    for (let f = 0; f < 40; f++) {
      const { bound, text } = make(2);
      if (/RAND|CONCATENATE|TEXTJOIN|SUMPRODUCT|\{/.test(text(0))) continue;
      const plan = compile(bound);
      const all = runFormula(bound, sheet);
      const parts = new Filled(1300);
      const stretch = Int32Array.from({ length: 600 }, (_, i) => 650 + i);
      plan.run(sourceOf(sheet), stretch, parts);
      const scattered = Int32Array.from({ length: 50 }, () => c.below(650));
      plan.run(sourceOf(sheet), scattered, parts);
      for (const row of [...stretch, ...scattered])
        expect(plain(parts, row), `row ${row + 1} of ${text(row)}`).toEqual(plain(all, row));
      expect(parts.kinds.subarray(1250).every((kind) => kind === 0)).toBe(true);
    }
  });

  test('computes a name of LET once for each row and hands it to every place, branches included', () => {
    const sheet = randomSheet(chance(3), 2600);
    const square = binary('*', local('x'), local('x'));
    const formula = lettings(
      ['x', binary('+', rowOf('plain'), literal(1))],
      call(
        'IF',
        binary('>', local('x'), literal(0)),
        call('IF', binary('>', local('x'), literal(50)), binary('-', square, local('x')), square),
        binary('+', local('x'), call('IF', binary('<', local('x'), literal(-50)), local('x'), literal(0))),
      ),
    );
    const out = runFormula(formula, sheet);
    for (let row = 0; row < sheet.rows; row++) {
      const x = sheet.ranges.plain!.numbers[row]! + 1;
      const expected = x > 0 ? (x > 50 ? x * x - x : x * x) : x + (x < -50 ? x : 0);
      expect(out.at(row), `row ${row + 1}, x = ${x}`).toBe(expected === 0 ? 0 : expected);
    }
  });
});

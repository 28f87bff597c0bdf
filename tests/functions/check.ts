import { expect, test } from 'vitest';
import { evaluate, plainly } from './formula.ts';
import { expectIssue } from './sentence.ts';

/** A formula of literals with what it must give: a number (to 1e-9 of its size), a word, or an error code and argument. */
export type Check = readonly [formula: string, gives: number | string, parameter?: string];

export function check([formula, gives, parameter]: Check): void {
  const outcome = evaluate(formula);
  if (typeof gives === 'string' && gives.startsWith('#')) {
    expectIssue(outcome, gives, parameter);
  } else if (typeof gives === 'number') {
    if (typeof outcome !== 'number') expect.fail(`${formula} gave ${JSON.stringify(plainly(outcome))}`);
    if (Math.abs(outcome - gives) > 1e-9 * Math.max(1, Math.abs(gives)))
      expect.fail(`${formula} gave ${outcome}, not ${gives}`);
  } else expect(outcome).toBe(gives);
}

/** A test for each line. */
export const checks = (lines: readonly Check[]): void =>
  test.each(lines.map((line) => ({ formula: line[0], gives: line[1], line })))(
    '$formula gives $gives',
    ({ line }) => check(line),
  );

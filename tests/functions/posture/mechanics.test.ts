import { describe, expect, test } from 'vitest';
import type { Argument } from '../../../functions/core/value.ts';
import { type Extra, evaluate } from '../formula.ts';
import { agrees, readReference } from '../reference.ts';

const number = (arg: Argument): number => {
  if (typeof arg !== 'number') throw new Error(`${JSON.stringify(arg)} is no number.`);
  return arg;
};
const fold =
  (f: (a: number, b: number) => number): Extra =>
  (...args) =>
    args.map(number).reduce(f);
const one =
  (f: (a: number) => number): Extra =>
  (arg) =>
    f(number(arg));
// arithmetic of the checks, so that a line of the file is a whole calculation
const arithmetic: Readonly<Record<string, Extra>> = {
  SUM: fold((a, b) => a + b),
  MINUS: fold((a, b) => a - b),
  TIMES: fold((a, b) => a * b),
  OVER: fold((a, b) => a / b),
  SIGN: one(Math.sign),
};

describe('published checks of lengths, ankle, lift, posture and loads', () => {
  const lines = readReference('mechanics.csv').map(
    (line) =>
      [
        `check ${line.check}, ${line.quantity}: ${line.expected} ${line.unit} (${line.source}; ${line.status})`,
        line.formula!,
        Number(line.expected),
        line.tolerance!,
      ] as const,
  );
  test.each(lines)('%s', (_, formula, expected, tolerance) => {
    const value = evaluate(formula, arithmetic);
    if (typeof value !== 'number') expect.fail(`${formula} gave ${JSON.stringify(value)}`);
    if (!agrees(value, expected, tolerance)) expect.fail(`${formula} gave ${value}, not ${expected}`);
  });
});

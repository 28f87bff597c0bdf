/** SEQUENCE: an array of numbers at equal steps. */
import { isIssue, issue } from '../../../../functions/core/issue.ts';
import type { Argument, Outcome } from '../../../../functions/core/value.ts';
import { limits } from '../../limits.ts';
import type { Own } from '../builtin.ts';
import { numberOf, problem } from './reading.ts';

const NAME = 'SEQUENCE';

/** Numbers in steps, as many rows and columns as asked: at most so many cells that nobody waits for them. */
export const sequence: Own = {
  minArgs: 1,
  maxArgs: 4,
  compute([rowsGiven, columnsGiven, startGiven, stepGiven]: readonly Argument[]): Outcome {
    const numbers: number[] = [];
    for (const arg of [rowsGiven ?? 0, columnsGiven, startGiven, stepGiven]) {
      const number = numberOf(NAME, arg, 1);
      if (isIssue(number)) return number;
      numbers.push(number);
    }
    const rows = Math.trunc(numbers[0]!);
    const columns = Math.trunc(numbers[1]!);
    const start = numbers[2]!;
    const step = numbers[3]!;
    if (rows < 1 || columns < 1) return problem(NAME, '#VALUE!', 'Argument cannot be less than 1.');
    if (rows * columns > limits.arrayCells)
      return issue('#NUM!', 'array-too-large', { function: NAME, details: { most: limits.arrayCells } });
    return { rows, columns, values: Array.from({ length: rows * columns }, (_, i) => start + i * step) };
  },
  // The values of its arguments decide, so what is told here is the least.
  size: () => ({ rows: 1, columns: 1 }),
};

import { square } from '../../../../functions/core/elementary/pow.ts';
import { type Issue, isIssue } from '../../../../functions/core/issue.ts';
import { type Argument, isRange, type Outcome } from '../../../../functions/core/value.ts';
import { sortedNumbersOf } from '../../ranges/sorted-ranges.ts';
import type { Own } from '../builtin.ts';
import { countUpTo } from './rank.ts';
import { divided, noData, notFound, numberOf, numbersIn, problem } from './reading.ts';

/** The numbers of all arguments, one after the other. */
function allNumbers(name: string, args: readonly Argument[]): Float64Array | Issue {
  if (args.length === 1) return numbersIn(name, args[0]);
  const all: number[] = [];
  for (const arg of args) {
    const numbers = numbersIn(name, arg);
    if (isIssue(numbers)) return numbers;
    for (const number of numbers) all.push(number);
  }
  return Float64Array.from(all);
}

/** OpenFormula, statistical functions, MODE: the value that occurs most often, the least of them where several do. */
export const mode: Own = {
  minArgs: 1,
  maxArgs: 255,
  compute(args, name): Outcome {
    const numbers = allNumbers(name, args);
    if (isIssue(numbers)) return numbers;
    const sorted = numbers.slice().sort();
    let best = 1;
    let value: number | undefined;
    for (let i = 0; i < sorted.length; ) {
      let end = i + 1;
      while (sorted[end] === sorted[i]) end++;
      if (end - i > best) {
        best = end - i;
        value = sorted[i];
      }
      i = end;
    }
    return value ?? notFound(name);
  },
};

/** OpenFormula, statistical functions, KURT: excess kurtosis of a sample; at least four values that differ. */
export const kurt: Own = {
  minArgs: 1,
  maxArgs: 255,
  compute(args): Outcome {
    const x = allNumbers('KURT', args);
    if (isIssue(x)) return x;
    const n = x.length;
    if (n < 4) return divided('KURT');
    const mean = x.reduce((sum, v) => sum + v, 0) / n;
    const squares = x.reduce((sum, v) => sum + square(v - mean), 0);
    if (squares === 0) return divided('KURT');
    const variance = squares / (n - 1);
    const fourth = x.reduce((sum, v) => sum + square(square(v - mean)), 0) / square(variance);
    return (
      ((n * (n + 1)) / ((n - 1) * (n - 2) * (n - 3))) * fourth - (3 * square(n - 1)) / ((n - 2) * (n - 3))
    );
  },
};

/** OpenFormula, statistical functions, TRIMMEAN: mean without a share of the values, half of it off each end. */
export const trimmean: Own = {
  minArgs: 2,
  maxArgs: 2,
  compute([range, given]): Outcome {
    const share = numberOf('TRIMMEAN', given);
    if (isIssue(share)) return share;
    if (share < 0 || share >= 1)
      return problem('TRIMMEAN', '#NUM!', share < 0 ? 'Value too small.' : 'Value too large.');
    const numbers = isRange(range) ? sortedNumbersOf(range) : numbersIn('TRIMMEAN', range);
    if (isIssue(numbers)) return numbers;
    const n = numbers.length;
    if (n === 0) return noData('TRIMMEAN');
    const off = Math.floor((n * share) / 2 + 1e-9);
    return numbers.subarray(off, n - off).reduce((sum, v) => sum + v, 0) / (n - 2 * off);
  },
};

/** OpenFormula, statistical functions, FREQUENCY: how many values lie in each class, the last one open above. */
export const frequency: Own = {
  minArgs: 2,
  maxArgs: 2,
  size: ([, limits]) => ({ rows: (limits ? limits.rows * limits.columns : 0) + 1, columns: 1 }),
  compute([range, given]): Outcome {
    const sorted = isRange(range) ? sortedNumbersOf(range) : numbersIn('FREQUENCY', range);
    if (isIssue(sorted)) return sorted;
    const limits = numbersIn('FREQUENCY', given);
    if (isIssue(limits)) return limits;
    const order = Array.from(limits.keys()).sort((a, b) => limits[a]! - limits[b]! || a - b);
    const values: number[] = new Array(limits.length + 1).fill(0);
    let below = 0;
    order.forEach((place, k) => {
      const same = k > 0 && limits[place] === limits[order[k - 1]!];
      const upTo = countUpTo(sorted, limits[place]!);
      values[place] = same ? 0 : upTo - below;
      below = upTo;
    });
    values[limits.length] = sorted.length - below;
    return { rows: values.length, columns: 1, values };
  },
};

/** OpenFormula, mathematical functions, PERMUT: n! / (n − k)!. */
export const permut: Own = {
  minArgs: 2,
  maxArgs: 2,
  compute([first, second]): Outcome {
    const n = numberOf('PERMUT', first);
    const k = numberOf('PERMUT', second);
    if (isIssue(n)) return n;
    if (isIssue(k)) return k;
    const [all, taken] = [Math.trunc(n), Math.trunc(k)];
    if (all < 0 || taken < 0 || taken > all) return problem('PERMUT', '#NUM!', 'Value too small.');
    let product = 1;
    for (let i = 0; i < taken && Number.isFinite(product); i++) product *= all - i;
    return Number.isFinite(product)
      ? product
      : problem('PERMUT', '#NUM!', 'NaN or infinite value encountered.');
  },
};

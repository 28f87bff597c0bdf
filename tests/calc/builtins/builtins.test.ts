import { describe, expect, test } from 'vitest';
import { isIssue } from '../../../functions/core/issue.ts';
import { type Argument, columnRange, isMatrix, rangeOf } from '../../../functions/core/value.ts';
import { owns } from './own.ts';

const call = (name: string, ...args: Argument[]): unknown => {
  const answer = owns.get(name)!.compute(args, name);
  if (isIssue(answer)) return answer.code;
  return isMatrix(answer) ? answer.values.map((value) => (isIssue(value) ? value.code : value)) : answer;
};
const column = (...values: (number | string | boolean | null)[]) => rangeOf(values.length, 1, values);
const missing = { code: '#N/A', reason: 'written-error' } as const;

type Check = readonly [title: string, given: readonly [string, ...Argument[]], expected: unknown];
const check = (checks: readonly Check[]): void => {
  test.each(checks)('%s', (_title, [name, ...args], expected) => {
    const close = (value: unknown): unknown =>
      typeof value === 'number' ? expect.closeTo(value, 12) : value;
    expect(call(name, ...args)).toEqual(Array.isArray(expected) ? expected.map(close) : close(expected));
  });
};

describe('rank', () => {
  // by hand: 7 is the first of 7, 3.5, 3.5, 1, 2 from the largest; the two 3.5 share places 2 and 3
  const data = column(7, 3.5, 3.5, 1, 2, null, 'x');
  check([
    ['RANK counts from the largest', ['RANK', 3.5, data], 2],
    ['RANK counts from the least when asked', ['RANK', 3.5, data, 1], 3],
    ['RANK.AVG gives equal values the mean of their places', ['RANK.AVG', 3.5, data], 2.5],
    ['RANK of a value that is not there is #N/A', ['RANK', 4, data], '#N/A'],
    ['RANK reads a text that is a number', ['RANK', '7', data], 1],
    ['RANK passes an error in the range on', ['RANK', 7, rangeOf(2, 1, [7, missing])], '#N/A'],
    ['RANK of a text is #VALUE!', ['RANK', 'seven', data], '#VALUE!'],
  ]);
});

describe('percent rank', () => {
  // by hand: of ten values three lie below 2, six above: 3/9, cut to three digits; 5 lies a quarter of the way from 4 to 8
  const data = column(13, 12, 11, 8, 4, 3, 2, 1, 1, 1);
  check([
    [
      'PERCENTRANK is the share below among the others, cut after three digits',
      ['PERCENTRANK', data, 2],
      0.333,
    ],
    ['PERCENTRANK of a value between two is between their shares', ['PERCENTRANK', data, 5], 0.583],
    ['PERCENTRANK gives more digits when asked', ['PERCENTRANK', data, 2, 5], 0.33333],
    ['PERCENTRANK outside of the values is #N/A', ['PERCENTRANK', data, 14], '#N/A'],
    ['PERCENTRANK of no values is #NUM!', ['PERCENTRANK', column('a', null), 1], '#NUM!'],
    // by hand: (3 + 1)/(10 + 1) = 0.3636…
    ['PERCENTRANK.EXC keeps off the ends', ['PERCENTRANK.EXC', data, 2], 0.363],
  ]);
});

describe('lines', () => {
  check([
    // y = 2x + 1
    ['INTERCEPT is where the line meets x = 0', ['INTERCEPT', column(3, 5, 7), column(1, 2, 3)], 1],
    ['FORECAST follows the line', ['FORECAST', 10, column(3, 5, 7), column(1, 2, 3)], 21],
    ['pairs with a blank are left out', ['FORECAST', 10, column(3, null, 5, 7), column(1, 9, 2, 3)], 21],
    ['lengths that differ are #N/A', ['INTERCEPT', column(1, 2), column(1, 2, 3)], '#N/A'],
    ['one x for all is #DIV/0!', ['INTERCEPT', column(1, 2), column(4, 4)], '#DIV/0!'],
    ['LINEST gives slope and constant', ['LINEST', column(3, 5, 7), column(1, 2, 3)], [2, 1]],
    ['LINEST counts 1, 2, 3 where no x is given', ['LINEST', column(3, 5, 7)], [2, 1]],
    // by hand: Σxy/Σx² = (3 + 10 + 21)/14
    [
      'LINEST without a constant goes through 0',
      ['LINEST', column(3, 5, 7), column(1, 2, 3), false],
      [34 / 14, 0],
    ],
    ['LINEST of a text is #VALUE!', ['LINEST', column(3, 'x', 7), column(1, 2, 3)], '#VALUE!'],
    [
      'LINEST of columns that repeat one another is #NUM!',
      ['LINEST', column(3, 5, 8), rangeOf(3, 2, [1, 2, 2, 4, 3, 6])],
      '#NUM!',
    ],
    ['TREND gives the line at new x', ['TREND', column(3, 5, 7), column(1, 2, 3), column(0, 4)], [1, 9]],
    ['TREND gives the line at its own x', ['TREND', column(3, 5, 7), column(1, 2, 3)], [3, 5, 7]],
    // y = 2x₁ + 3x₂
    [
      'TREND takes several variables',
      ['TREND', column(5, 7, 9, 14), rangeOf(4, 2, [1, 1, 2, 1, 3, 1, 4, 2]), rangeOf(1, 2, [10, 5])],
      [35],
    ],
  ]);
});

describe('spread', () => {
  check([
    ['MODE is the value that occurs most often', ['MODE', column(4, 1, 4, 2, 2, 4)], 4],
    ['MODE takes the least where several occur as often', ['MODE', column(9, 3, 9, 3)], 3],
    ['MODE of values that all differ is #N/A', ['MODE', column(1, 2, 3)], '#N/A'],
    ['KURT of three values is #DIV/0!', ['KURT', column(1, 2, 4)], '#DIV/0!'],
    ['KURT without spread is #DIV/0!', ['KURT', column(2, 2, 2, 2)], '#DIV/0!'],
    // by hand: 20 % of 10 values are two, one off each end: the mean of 2 … 9
    [
      'TRIMMEAN takes half of the share off each end',
      ['TRIMMEAN', column(10, 2, 3, 4, 5, 6, 7, 8, 9, 100), 0.2],
      6.5,
    ],
    ['TRIMMEAN of all is #NUM!', ['TRIMMEAN', column(1, 2), 1], '#NUM!'],
    [
      'FREQUENCY counts up to each limit and above the last',
      ['FREQUENCY', column(1, 2, 2, 5, 9), column(2, 5)],
      [3, 1, 1],
    ],
    [
      'FREQUENCY answers in the order of the limits',
      ['FREQUENCY', column(1, 2, 2, 5, 9), column(5, 2)],
      [1, 3, 1],
    ],
    ['PERMUT(5, 2) is 5 · 4', ['PERMUT', 5, 2], 20],
    ['PERMUT of more than there are is #NUM!', ['PERMUT', 2, 3], '#NUM!'],
  ]);
});

describe('texts', () => {
  check([
    [
      'CONCAT joins values and ranges, row by row',
      ['CONCAT', 'a', rangeOf(2, 2, [1, true, null, 'z']), 0.5],
      'a1TRUEz0.5',
    ],
    ['CONCAT passes an error on', ['CONCAT', 'a', rangeOf(1, 1, [missing])], '#N/A'],
    ['CONCAT beyond the longest text is #VALUE!', ['CONCAT', 'x'.repeat(32_767), 'y'], '#VALUE!'],
    ['REPT repeats', ['REPT', 'ab', 3], 'ababab'],
    ['REPT beyond the longest text is #VALUE!, at once', ['REPT', 'ab', 1e12], '#VALUE!'],
    ['SUBSTITUTE changes every place', ['SUBSTITUTE', 'a-b-c', '-', '+'], 'a+b+c'],
    ['SUBSTITUTE changes one place', ['SUBSTITUTE', 'a-b-c', '-', '+', 2], 'a-b+c'],
    ['SUBSTITUTE takes new text as it is', ['SUBSTITUTE', 'a.b', '.', '$&'], 'a$&b'],
    ['SUBSTITUTE of nothing comes back unchanged', ['SUBSTITUTE', 'abc', '', 'x', 5], 'abc'],
  ]);
});

describe('looking up', () => {
  const names = column('Ana', 'Bo', 'Cleo', 'Dan');
  const table = rangeOf(4, 2, ['Ana', 60, 'Bo', 72, 'Cleo', null, 'Dan', 80]);
  check([
    ['XMATCH finds in any case', ['XMATCH', 'bo', names], 2],
    ['XMATCH says #N/A when there is none', ['XMATCH', 'Eve', names], '#N/A'],
    ['XMATCH takes the next smaller', ['XMATCH', 7, column(1, 5, 10), -1], 2],
    ['XMATCH takes the next larger', ['XMATCH', 7, column(1, 5, 10), 1], 3],
    ['XMATCH searches from the end', ['XMATCH', 5, column(5, 1, 5), 0, -1], 3],
    ['VLOOKUP finds the row', ['VLOOKUP', 'bo', table, 2, false], 72],
    [
      'VLOOKUP of several values answers each',
      ['VLOOKUP', column('Dan', 'Eve'), table, 2, false],
      [80, '#N/A'],
    ],
    ['VLOOKUP of a blank answer is a blank', ['VLOOKUP', 'Cleo', table, 2, false], null],
    ['VLOOKUP in sorted texts finds capitals', ['VLOOKUP', 'Dan', table, 2], 80],
    [
      'VLOOKUP in sorted numbers takes the last that is not larger',
      ['VLOOKUP', 7, rangeOf(3, 2, [1, 'a', 5, 'b', 10, 'c']), 2],
      'b',
    ],
    ['VLOOKUP beyond the columns is #REF!', ['VLOOKUP', 'bo', table, 3, false], '#REF!'],
    ['HLOOKUP finds the column', ['HLOOKUP', 'b', rangeOf(2, 3, ['a', 'b', 'c', 1, 2, 3]), 2, false], 2],
    ['MATCH counts from 1', ['MATCH', 'Cleo', names, 0], 3],
    ['XLOOKUP answers from another column', ['XLOOKUP', 'bo', names, column(1, 2, 3, 4)], 2],
    ['XLOOKUP answers a whole row', ['XLOOKUP', 'bo', names, table], ['Bo', 72]],
    [
      'XLOOKUP gives what is asked for when there is none',
      ['XLOOKUP', 'Eve', names, names, 'nobody'],
      'nobody',
    ],
    [
      'AVERAGEIFS takes the values whose cells meet all criteria',
      ['AVERAGEIFS', column(1, 2, 3, 4), names, '<>Bo', column(1, 2, 3, 4), '>1'],
      3.5,
    ],
    ['AVERAGEIFS of none is #DIV/0!', ['AVERAGEIFS', column(1, 2), column('a', 'b'), 'c'], '#DIV/0!'],
  ]);
});

describe('CONVERT', () => {
  // international yard and pound agreement 1959 (exact), SI prefixes, temperatures by definition
  check([
    ['a pound is 0.45359237 kg', ['CONVERT', 1, 'lbm', 'kg'], 0.45359237],
    ['an inch is 2.54 cm', ['CONVERT', 1, 'in', 'cm'], 2.54],
    ['a mile is 1.609344 km', ['CONVERT', 1, 'mi', 'km'], 1.609344],
    ['a stone is 14 pounds', ['CONVERT', 1, 'stone', 'lbm'], 14],
    ['98.6 °F are 37 °C', ['CONVERT', 98.6, 'F', 'C'], 37],
    ['0 K are −459.67 °F', ['CONVERT', 0, 'K', 'F'], -459.67],
    ['a day has 24 hours', ['CONVERT', 1, 'day', 'hr'], 24],
    ['a square foot has 144 square inches', ['CONVERT', 1, 'ft2', 'in2'], 144],
    ['a square kilometre has a million square metres', ['CONVERT', 1, 'km2', 'm2'], 1e6],
    ['a kilowatt hour is 3.6 MJ', ['CONVERT', 1, 'kWh', 'MJ'], 3.6],
    ['units of other kinds are #N/A', ['CONVERT', 1, 'kg', 'm'], '#N/A'],
    ['capitals count', ['CONVERT', 1, 'KG', 'g'], '#N/A'],
  ]);
});

describe('every built-in function of ours', () => {
  test.each([...owns])('%s passes an error on that is its first argument', (name, { minArgs, compute }) => {
    const args: Argument[] = Array.from({ length: minArgs }, (_, k) =>
      k === 0 ? missing : columnRange(1, 2, 3),
    );
    const answer = compute(args, name);
    // an array where one value is asked for: the error stands in each of its cells
    const values = isMatrix(answer) ? answer.values : [answer];
    expect(values.every(isIssue), name).toBe(true);
  });
});

import { describe, expect, test } from 'vitest';
import { defineFunction } from '../../../functions/core/define.ts';
import { invoke } from '../../../functions/core/invoke.ts';
import { issue } from '../../../functions/core/issue.ts';
import {
  number,
  numberMaybe,
  numberOr,
  option,
  optionOr,
  range,
  yesNoOr,
} from '../../../functions/core/parameter.ts';
import { definition } from '../../../functions/core/source.ts';
import { type Argument, rangeOf } from '../../../functions/core/value.ts';

const rest = {
  family: 'segments',
  summary: 'For the tests.',
  result: { is: 'number', unit: '', about: '' },
  rule: '',
  sources: [definition('made for the tests')],
  examples: [],
  seeAlso: [],
  typical: [],
} as const;

/** Hands back what the kernel was handed, so that it can be looked at. */
let handed: readonly unknown[] = [];
const look = (...args: readonly unknown[]): number => {
  handed = args;
  return 1;
};

const two = defineFunction({
  ...rest,
  name: 'TWO',
  parameters: [
    number('first', 'cm', 'a number in bounds', { bounds: { min: 1, max: 5, because: 'So.' } }),
    option('word', ['left', 'right', '2021'], 'a word', { l: 'left' }),
    number('below', 'cm', 'a divisor', { divisor: true }),
    numberOr(7, 'more', 'deg', 'with a default', { bounds: { above: 0, below: 10 } }),
    numberMaybe('extra', 'cm', 'worked out when blank'),
  ],
  clash: (first, word) => (first === 3 && word === 'right' ? issue('#VALUE!', 'wrong-kind') : undefined),
  compute: look,
});
const error = issue('#REF!', 'lost');
const twoOf = (...args: Argument[]) => invoke(two, args);

describe('the order in which arguments are checked', () => {
  // each line breaks one rule more than the next; the earliest rule speaks
  test.each<readonly [string, Argument[], object]>([
    ['an error passed in comes first', ['x', null, error, 99], error],
    ['the first of two errors', [issue('#N/A', 'one'), error, 1], { code: '#N/A', reason: 'one' }],
    ['then a blank required argument', ['x', 'nowhere', null, 99], { code: '#N/A', parameter: 'below' }],
    ['then a wrong kind', [9, 'nowhere', 0, 99], { code: '#VALUE!', parameter: 'word' }],
    ['then arguments that clash', [3, 'right', 0, 99], { code: '#VALUE!' }],
    [
      'then a number out of bounds, of any argument',
      [2, 'left', 0, 99],
      { code: '#NUM!', parameter: 'more' },
    ],
    ['then a zero divisor', [2, 'left', 0, 9], { code: '#DIV/0!', parameter: 'below' }],
  ])('%s', (_, args, expected) => {
    expect(twoOf(...args)).toMatchObject(expected);
  });
  test('an error inside a range comes first too', () => {
    const sum = defineFunction({
      ...rest,
      name: 'SUMMED',
      parameters: [number('first', 'cm', ''), range('values', 'number', 'cm', '')],
      compute: look,
    });
    expect(invoke(sum, [null, rangeOf(3, 1, [1, 'x', error])])).toBe(error);
  });
  test('the function is named in what a kernel answers', () => {
    const refuses = defineFunction({
      ...rest,
      name: 'REFUSES',
      parameters: [],
      compute: () => issue('#NUM!', 'not-finite'),
    });
    expect(invoke(refuses, [])).toMatchObject({ function: 'REFUSES' });
  });
});

describe('what an argument comes to', () => {
  test('text that reads as a number counts as that number', () => {
    for (const text of ['2.5', ' 2.5 ', '+2.5', '25e-1', '\t2.5', '02.50']) {
      expect(twoOf(text, 'left', 1), text).toBe(1);
      expect(handed[0]).toBe(2.5);
    }
    for (const text of ['2,5', '2.5 cm', '1/2', '0x2', 'Infinity', 'NaN', ' ', '2 5', '1e999', '٢'])
      expect(twoOf(text, 'left', 1), text).toMatchObject({
        code: '#VALUE!',
        parameter: 'first',
        received: text,
      });
  });
  test('blanks and "" take the default, or are handed over as missing', () => {
    for (const blank of [null, undefined, '', rangeOf(1, 1, [null]), rangeOf(1, 1, [''])]) {
      expect(twoOf(2, 'left', 1, blank, blank)).toBe(1);
      expect(handed.slice(3)).toEqual([7, undefined]);
    }
  });
  test('words are taken in any case and trimmed, by their other spellings, and as numbers', () => {
    for (const [given, word] of [
      ['LEFT', 'left'],
      [' Left ', 'left'],
      ['L', 'left'],
      [2021, '2021'],
      ['2021', '2021'],
    ] as const) {
      expect(twoOf(2, given, 1)).toBe(1);
      expect(handed[1]).toBe(word);
    }
  });
  test('yes/no is no number and no word', () => {
    expect(twoOf(true, 'left', 1)).toMatchObject({ code: '#VALUE!', parameter: 'first' });
    expect(twoOf(2, false, 1)).toMatchObject({ code: '#VALUE!', parameter: 'word' });
  });
  test('yes/no is taken as such, as 0 and 1 and as their texts', () => {
    const asks = defineFunction({
      ...rest,
      name: 'ASKS',
      parameters: [yesNoOr(true, 'so', '')],
      compute: look,
    });
    for (const [given, expected] of [
      [true, true],
      [0, false],
      [1, true],
      ['1', true],
      ['0', false],
      [null, true],
    ] as const) {
      invoke(asks, [given]);
      expect(handed[0]).toBe(expected);
    }
    for (const wrong of [2, -1, 'yes', 'x']) expect(invoke(asks, [wrong])).toMatchObject({ code: '#VALUE!' });
  });
  test('a range of one cell is its value, a longer one is refused where one value is asked', () => {
    expect(twoOf(rangeOf(1, 1, [3]), 'left', 1)).toBe(1);
    expect(handed[0]).toBe(3);
    expect(twoOf(rangeOf(2, 1, [3, 4]), 'left', 1)).toMatchObject({
      code: '#VALUE!',
      reason: 'many-cells',
      received: 2,
    });
  });
  test('a date is a number, and a text is no date', () => {
    const day = defineFunction({
      ...rest,
      name: 'DAY',
      parameters: [number('on', 'date', '')],
      compute: look,
    });
    expect(invoke(day, [46031])).toBe(1);
    expect(invoke(day, ['46031'])).toMatchObject({ code: '#VALUE!' });
    expect(invoke(day, ['2026-01-09'])).toMatchObject({ code: '#VALUE!' });
  });
  test('what is no finite number keeps no bounds', () => {
    expect(twoOf(Number.NaN, 'left', 1)).toMatchObject({ code: '#NUM!', parameter: 'first' });
    expect(twoOf(Number.POSITIVE_INFINITY, 'left', 1)).toMatchObject({ code: '#NUM!', parameter: 'first' });
  });
});

describe('ranges', () => {
  const pair = defineFunction({
    ...rest,
    name: 'PAIR',
    parameters: [
      range('x', 'number', 'cm', '', { together: 'rows', cells: { min: 0 } }),
      range('when', 'date', 'date', '', { together: 'rows' }),
      optionOr('a', 'word', ['a', 'b'], ''),
    ],
    compute: look,
  });
  const dates = rangeOf(3, 1, [1, 2, 3]);
  test('blanks and "" are left out, text that reads as a number counts, but not as a date', () => {
    expect(invoke(pair, [rangeOf(3, 1, [1, '', '2']), dates])).toBe(1);
    expect(invoke(pair, [dates, rangeOf(3, 1, [1, '', null])])).toBe(1);
    expect(invoke(pair, [dates, rangeOf(3, 1, [1, '', '2'])])).toMatchObject({
      code: '#VALUE!',
      parameter: 'when',
    });
  });
  test('other text and yes/no are refused with their row', () => {
    expect(invoke(pair, [rangeOf(3, 1, [1, 'x', 2]), dates])).toMatchObject({
      code: '#VALUE!',
      parameter: 'x',
      received: 'x',
      details: { row: 2 },
    });
    expect(invoke(pair, [rangeOf(3, 1, [1, 2, true]), dates])).toMatchObject({
      code: '#VALUE!',
      details: { row: 3 },
    });
  });
  test('ranges that belong together must be equally long', () => {
    expect(invoke(pair, [rangeOf(2, 1, [1, 2]), dates])).toMatchObject({
      code: '#VALUE!',
      reason: 'unequal-lengths',
      parameter: 'when',
      details: { other: 'x', length: 2 },
    });
  });
  test('each cell keeps the bounds, and the row of the first that does not is told', () => {
    expect(invoke(pair, [rangeOf(3, 1, [1, -2, -3]), dates])).toMatchObject({
      code: '#NUM!',
      received: -2,
      details: { row: 2 },
    });
  });
  test('a single value is a range of one, a blank one is missing', () => {
    expect(invoke(pair, [5, 6])).toBe(1);
    expect(invoke(pair, [null, 6])).toMatchObject({ code: '#N/A', parameter: 'x' });
    expect(invoke(pair, ['', 6])).toMatchObject({ code: '#N/A', parameter: 'x' });
  });
});

describe('counts and faults', () => {
  test('too few and too many arguments are #N/A', () => {
    expect(twoOf(1, 'left')).toMatchObject({ code: '#N/A', reason: 'too-few-arguments' });
    expect(twoOf(1, 'left', 1, 1, 1, 1)).toMatchObject({ code: '#N/A', reason: 'too-many-arguments' });
  });
  test('parameters that repeat count on in their names', () => {
    const pairs = defineFunction({
      ...rest,
      name: 'PAIRS',
      parameters: [
        number('weight1', 'N', ''),
        number('arm1', 'cm', ''),
        numberMaybe('weight2', 'N', ''),
        numberMaybe('arm2', 'cm', ''),
      ],
      repeats: 2,
      compute: look,
    });
    expect(invoke(pairs, [1, 2, 3, 4, 5, 'x', 7])).toMatchObject({ parameter: 'arm3' });
    expect(invoke(pairs, [1, 2, 3, 4, 5, 6, 'x'])).toMatchObject({ parameter: 'weight4' });
    expect(invoke(pairs, [1, 2, 3, 4, 5, 6, 7])).toBe(1);
    expect(handed).toEqual([1, 2, 3, 4, 5, 6, 7, undefined]);
  });
  test('a kernel that throws or runs away is an error value, not an exception', () => {
    const throws = defineFunction({
      ...rest,
      name: 'THROWS',
      parameters: [],
      compute: () => {
        throw new RangeError('deep');
      },
    });
    expect(invoke(throws, [])).toMatchObject({ code: '#ERROR!', reason: 'fault', function: 'THROWS' });
    const runs = defineFunction({ ...rest, name: 'RUNS', parameters: [], compute: () => Number.NaN });
    expect(invoke(runs, [])).toMatchObject({ code: '#NUM!', reason: 'not-finite' });
  });
});

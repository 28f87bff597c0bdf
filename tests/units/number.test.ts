import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readNumber, writeNumber } from '../../src/units/number.ts';

const point = { decimal: '.' } as const;
const comma = { decimal: ',' } as const;

describe('readNumber(text, locale)', () => {
  test.each([
    ['41.2', point, 41.2],
    ['41,2', comma, 41.2],
    ['41,2', point, 41.2],
    ['41.2', comma, 41.2],
    ['1,234', point, 1234],
    ['0,234', point, 0.234],
    ['1.234', comma, 1234],
    ['1.234', point, 1.234],
    ['1,234.5', point, 1234.5],
    ['1.234,5', comma, 1234.5],
    ['1 234,5', comma, 1234.5],
    ['1\u00a0234', point, 1234],
    ['1\u202f234\u202f567', point, 1234567],
    ['1’234.5', point, 1234.5],
    ['−3', point, -3],
    ['+3', point, 3],
    ['.5', point, 0.5],
    ['5.', point, 5],
    ['1e3', point, 1000],
    [' 7 ', point, 7],
  ])('"%s" with %j is %d', (text, locale, expected) => expect(readNumber(text, locale)).toBe(expected));

  test.each([
    '',
    ' ',
    'tall',
    'NaN',
    'Infinity',
    '1.2.3',
    '1,2,3',
    '12 34',
    '--3',
    '0x10',
    '1e999',
    '1,23.4',
    '5 ft',
    '٣',
  ])('"%s" is no number', (text) => {
    expect(readNumber(text, point)).toBeUndefined();
  });
});

describe('writeNumber(value, style, locale)', () => {
  test.each([
    [1.005, { digits: 2 }, '1.01'],
    [2.5, { digits: 0 }, '3'],
    [-2.5, { digits: 0 }, '-3'],
    [-0.04, { digits: 1 }, '0.0'],
    [41, { digits: 1 }, '41.0'],
    [1 / 3, {}, '0.3333333333'],
    [0.1 + 0.2, {}, '0.3'],
    [0.4567, { percent: true, digits: 1 }, '45.7 %'],
    [1e-9, { digits: 2 }, '0.00'],
    [1234567.891, { digits: 1 }, '1234567.9'],
  ])('%d as %j is "%s"', (value, style, text) => expect(writeNumber(value, style, point)).toBe(text));

  test('writes the decimal mark of the locale', () =>
    expect(writeNumber(41.25, { digits: 1 }, comma)).toBe('41,3'));

  test('a number of up to 10 figures reads back as itself in both locales', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999_999_999, max: 999_999_999 }),
        fc.integer({ min: 0, max: 6 }),
        (n, shift) => {
          const value = Number(`${n}e-${shift}`);
          for (const locale of [point, comma])
            expect(readNumber(writeNumber(value, { digits: shift }, locale), locale)).toBe(value);
        },
      ),
    );
  });
});

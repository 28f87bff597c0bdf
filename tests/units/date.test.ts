import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dateToType,
  isoFromSerial,
  readDate,
  serialFromIso,
  serialOf,
  writeDate,
  writeMoment,
} from '../../src/units/date.ts';

// Source of the serials: OpenFormula (ISO/IEC 26300-2, 4.3.3 with the null date 1899-12-30 that is usual there):
// 1900-03-01 is day 61 in every spreadsheet that follows it; 2000-01-01 is 36526 (both widely printed values).
describe('serial days', () => {
  test.each([
    ['1899-12-30', 0],
    ['1900-03-01', 61],
    ['1970-01-01', 25569],
    ['2000-01-01', 36526],
    ['2000-02-29', 36585],
    ['1899-12-29', -1],
  ])('%s is day %d', (iso, serial) => {
    expect(serialFromIso(iso)).toBe(serial);
    expect(isoFromSerial(serial)).toBe(iso);
  });

  test('a time of day is the part of the day that has passed', () => {
    expect(serialFromIso('2000-01-01T12:00')).toBe(36526.5);
    expect(isoFromSerial(36526.5)).toBe('2000-01-01T12:00');
    expect(isoFromSerial(36526 + 1 / 86400)).toBe('2000-01-01T00:00:01');
  });

  test.each([
    '2023-02-29',
    '2024-13-01',
    '2024-00-10',
    '2024-01-32',
    '1500-01-01',
    '2024-1-1',
    '2024-01-01T25:00',
    'x',
  ])('%s is no ISO date', (text) => {
    expect(serialFromIso(text)).toBeUndefined();
  });

  test('every day reads back from its own text, in all three orders', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -100_000, max: 2_900_000 }),
        fc.constantFrom('ymd', 'dmy', 'mdy' as const),
        (serial, order) => {
          const locale = { dateOrder: order as 'ymd' };
          expect(serialFromIso(isoFromSerial(serial)!)).toBe(serial);
          expect(readDate(dateToType(serial, locale), locale)).toBe(serial);
          expect(readDate(writeDate(serial), locale)).toBe(serial);
        },
      ),
    );
  });

  test('dates are shown one way, whatever order they are typed in; a time of day follows', () => {
    const day = serialFromIso('2025-09-08')!;
    expect(writeDate(day)).toBe('8 Sep 2025');
    expect(writeDate(day + 0.75)).toBe('8 Sep 2025 18:00');
    expect(dateToType(day, { dateOrder: 'dmy' })).toBe('08.09.2025');
    expect(writeMoment(new Date(2025, 8, 28, 14, 5))).toBe('28 Sep 2025');
    expect(writeMoment(new Date(2025, 8, 28, 14, 5), { time: true })).toBe('28 Sep 2025 14:05');
    expect(writeMoment(new Date(2025, 8, 28, 0, 0, 20), { time: true })).toBe('28 Sep 2025 00:00');
  });

  test('agrees with the platform’s own calendar', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1600-01-01'), max: new Date('9999-12-31'), noInvalidDate: true }),
        (date) => {
          const day = date.toISOString().slice(0, 10);
          expect(serialFromIso(day)).toBe((Date.parse(day) - Date.parse('1899-12-30')) / 86_400_000);
        },
      ),
    );
  });
});

describe('readDate(text, locale)', () => {
  const first = serialOf(2024, 3, 1);
  test.each([
    ['01/03/2024', 'dmy'],
    ['1.3.2024', 'dmy'],
    ['1.3.24', 'dmy'],
    ['1-3-2024', 'dmy'],
    ['03/01/2024', 'mdy'],
    ['3/1/24', 'mdy'],
    ['2024/3/1', 'dmy'],
    ['2024-03-01', 'mdy'],
    ['20240301', 'ymd'],
    ['24-03-01', 'ymd'],
    ['1 Mar 2024', 'ymd'],
    ['1st March 2024', 'mdy'],
    ['Mar 1, 2024', 'dmy'],
    ['01-Mar-24', 'ymd'],
  ] as const)('"%s" by %s is 1 March 2024', (text, dateOrder) =>
    expect(readDate(text, { dateOrder })).toBe(first),
  );

  test('reads a time of day, also with am and pm', () => {
    expect(readDate('1.3.2024 18:00', { dateOrder: 'dmy' })).toBe(first! + 0.75);
    expect(readDate('3/1/2024 6:00 pm', { dateOrder: 'mdy' })).toBe(first! + 0.75);
    expect(readDate('3/1/2024 12:00 am', { dateOrder: 'mdy' })).toBe(first!);
  });

  test.each([
    '31/02/2024',
    '13/13/2024',
    '3/2024',
    '99',
    'soon',
    '1 Foo 2024',
    '1.3.2024 25:00',
    '',
    '1/2/345',
  ])('"%s" is no date', (text) => {
    expect(readDate(text, { dateOrder: 'dmy' })).toBeUndefined();
  });
});

import { describe, expect, test } from 'vitest';
import { Bench, bookOf, f } from './book-for-test.ts';

/* ISO/IEC 29500-1, 18.8.31 (number formats): examples and rules of that section; halves away from zero, as in ROUND. */
const answers = (formula: string): unknown[] => {
  const b = new Bench(bookOf({ s: { a: [f(formula)], z: { cells: [null], formula } } }));
  return [b.value('s', 'a', 0), b.value('s', 'z', 0)];
};
const both = (value: unknown): unknown[] => [value, value];
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

describe('numbers', () => {
  test.each([
    // examples of the section
    [1234.59, '####.#', '1234.6'],
    [8.9, '#.000', '8.900'],
    [0.631, '0.#', '0.6'],
    [12, '#.0#', '12.0'],
    [1234.568, '#.0#', '1234.57'],
    [5.25, '# ???/???', '5   1/4  '],
    [12000, '#,###', '12,000'],
    [12000, '#,', '12'],
    [12200000, '0.0,,', '12.2'],
    // its rules
    [0.12345, '0.0%', '12.3%'],
    [0.1235, '0.0%', '12.4%'],
    [1234567.891, '#,##0.00', '1,234,567.89'],
    [1234.5, '#,##0.###', '1,234.5'],
    [12345.678, '0.00E+00', '1.23E+04'],
    [0.00012345, '0.00E+00', '1.23E-04'],
    [12345, '##0.0E+0', '12.3E+3'],
    [-3.2185, '0.00;(0.00);"zero";@', '(3.22)'],
    [0, '0.00;(0.00);"zero";@', 'zero'],
    [3, '0.00;(0.00);"zero";@', '3.00'],
    [-5, '0;;', ''],
    [150, '[>100]"heavy";[<=20]"light";0', 'heavy'],
    [20, '[>100]"heavy";[<=20]"light";0', 'light'],
    [57, '[>100]"heavy";[<=20]"light";0', '57'],
    [5.25, '0.0" kg"', '5.3 kg'],
    [5, '0 \\k\\g', '5 kg'],
    [42, '00000', '00042'],
    [5, '_-0', ' 5'],
    [7, '[Red]0', '7'],
    [1.5, 'General', '1.5'],
    [1234.5, '[$€-407] #,##0.00', '€ 1,234.50'],
    [1.005, '0.00', '1.01'],
    [2.675, '0.00', '2.68'],
    [-1.005, '0.00', '-1.01'],
    [28.499999999999996, '0', '29'],
  ])('%s as %s is "%s"', (value, format, text) =>
    expect(answers(`TEXT(${value}, ${quoted(format)})`)).toEqual(both(text)),
  );
});

/* 45,366 is Friday, 15 March 2024 (Julian day 2,460,385). */
describe('dates and times', () => {
  test.each([
    [45366, 'dddd d mmmm yyyy', 'Friday 15 March 2024'],
    [45366, 'ddd dd mmm yy', 'Fri 15 Mar 24'],
    [45366, 'yyyy-mm-dd', '2024-03-15'],
    [45366, 'd/m/yyyy', '15/3/2024'],
    [45366, 'mmmmm', 'M'],
    [45366, '[$-407]d mmmm', '15 March'],
    [45366.75, 'h:mm AM/PM', '6:00 PM'],
    [45366.75, 'h:mm am/pm', '6:00 PM'],
    [0.5, 'h AM/PM', '12 PM'],
    [0.02, 'hh:mm AM/PM', '12:28 AM'],
    [0.75, 'h:mm:ss A/P', '6:00:00 P'],
    [1.5, '[h]:mm', '36:00'],
    [-1.5, '[h]:mm', '-36:00'],
    [0.0123, '[mm]:ss', '17:43'],
    [3.75 / 86400, 'mm:ss.00', '00:03.75'],
    // the language counts days without a 29 February 1900
    [2, 'yyyy-mm-dd', '1900-01-01'],
    [60, 'yyyy-mm-dd', '1900-02-28'],
    [61, 'dddd d mmmm yyyy', 'Thursday 1 March 1900'],
    [2958465, 'yyyy-mm-dd', '9999-12-31'],
    [1.99, 'yyyy', '#VALUE!'],
    [0, 'd mmm', '#VALUE!'],
    [-1, 'yyyy-mm-dd', '#VALUE!'],
    [2958466, 'yyyy-mm-dd', '#VALUE!'],
    [2958465.999999999, 'yyyy-mm-dd hh:mm:ss', '#VALUE!'],
    [1e300, 'dddd', '#VALUE!'],
    [-0.25, 'h:mm', '#VALUE!'],
  ])('%s as %s is "%s"', (value, format, text) =>
    expect(answers(`TEXT(${value}, ${quoted(format)})`)).toEqual(both(text)),
  );
  test('a date of a book', () => {
    expect(answers('TEXT(DATE(2024, 3, 15), "dddd d mmmm yyyy")')).toEqual(both('Friday 15 March 2024'));
  });
});

describe('what is not a number', () => {
  test.each([
    ['TEXT("squat", "0.0;-0.0;0;""the ""@")', 'the squat'],
    ['TEXT("squat", "0.0")', 'squat'],
    ['TEXT("2.5", "0.00")', '2.50'],
    ['TEXT(TRUE, "0")', '1'],
    ['TEXT(5, "")', ''],
    ['TEXT(NA(), "0")', '#N/A'],
    ['TEXT(5, "[")', '#VALUE!'],
    ['TEXT(5, "0.00E")', '#VALUE!'],
  ])('%s is %s', (formula, text) => expect(answers(formula)).toEqual(both(text)));
});

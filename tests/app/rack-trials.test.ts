import { describe, expect, test } from 'vitest';
import { enteredFrom, trialsOf } from '../../src/app/rack/trials.ts';
import { localeFor } from '../../src/units/locale.ts';

const wall = { kind: 'number', dimension: 'length', unit: 'cm' } as const;
const english = localeFor('en-GB');
const german = localeFor('de-DE');

describe('trials of one measure', () => {
  // Means by hand: (9.5 + 10 + 10.2) / 3 = 9.9.
  test('one trial is a number, three are their mean as the cell’s own formula, and come back as they were', () => {
    expect(enteredFrom(['9.5', '', ''], wall, english)).toEqual({ text: '9.5', mean: 9.5 });
    const three = enteredFrom(['9.5', '10', '10.2'], wall, english);
    expect(three.text).toBe('=AVERAGE(9.5, 10, 10.2)');
    expect(three.mean).toBeCloseTo(9.9, 12);
    expect(trialsOf(three.text!, wall, english)).toEqual(['9.5', '10', '10.2']);
    expect(trialsOf('', wall, english)).toEqual([]);
    expect(enteredFrom(['', '', ''], wall, english)).toEqual({ text: '', mean: null });
  });

  test('a decimal comma and a column in inches are read, and the formula is in centimetres', () => {
    expect(enteredFrom(['9,5', '10,5', ''], wall, german)).toEqual({ text: '=AVERAGE(9.5, 10.5)', mean: 10 });
    expect(trialsOf('=AVERAGE(9.5, 10.5)', wall, german)).toEqual(['9,5', '10,5']);
    // 1 in is 2.54 cm exactly (NIST SP 811).
    const inches = { ...wall, unit: 'in' };
    expect(enteredFrom(['4', '5', ''], inches, english)).toEqual({
      text: '=AVERAGE(10.16, 12.7)',
      mean: 4.5,
    });
    expect(trialsOf('=AVERAGE(10.16, 12.7)', inches, english)).toEqual(['4', '5']);
  });

  test('what is not a number is said and not written, and another formula is left alone', () => {
    expect(enteredFrom(['9.5', 'abc', ''], wall, english)).toMatchObject({
      mean: null,
      problem: { at: 1, sentence: '"abc" is not a number.' },
    });
    expect(enteredFrom(['9.5', 'abc', ''], wall, english)).not.toHaveProperty('text');
    for (const formula of ['=femur * 2', '=AVERAGE(1, 2, 3, 4)', '=AVERAGE(femur, 2)'])
      expect(trialsOf(formula, wall, english)).toBeNull();
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainLocale } from '../../src/units/locale.ts';
import { editText, readQuantity, writeQuantity } from '../../src/units/quantity.ts';
import { displayUnits, unitOf } from '../../src/units/unit.ts';

const comma = { decimal: ',', dateOrder: 'dmy' } as const;

function check(
  text: string,
  unit: string,
  expected: number | RegExp,
  locale: typeof plainLocale = plainLocale,
): void {
  const read = readQuantity(text, unitOf(unit), locale);
  if (typeof expected === 'number') expect(read).toEqual({ value: expected });
  else expect('reason' in read ? read.reason : read.value).toMatch(expected);
}

describe('readQuantity(text, unit, locale)', () => {
  // Expected values: whole inches × 2.54, pounds × 0.45359237 (1959 agreement), worked by hand.
  test.each([
    ['44', 'cm', 44],
    ['44 cm', 'in', 44],
    ['44cm', 'cm', 44],
    ['17', 'in', 43.18],
    ['17 in', 'cm', 43.18],
    ['17"', 'cm', 43.18],
    ['17in.', 'cm', 43.18],
    ['5 ft 11', 'cm', 180.34],
    ['5 ft 11 in', 'cm', 180.34],
    ['5ft11', 'cm', 180.34],
    ['5\'11"', 'cm', 180.34],
    ['5′ 11″', 'cm', 180.34],
    ['5’11', 'cm', 180.34],
    ['5 ft, 11 in', 'cm', 180.34],
    ['6 foot', 'cm', 182.88],
    ['16 1/2 in', 'cm', 41.91],
    ['1.78 m', 'cm', 178],
    ['1 m 75', 'cm', 175],
    ['412 mm', 'cm', 41.2],
    ['225 lb', 'kg', 102.05828325],
    ['225 lbs', 'kg', 102.05828325],
    ['11 st 4', 'kg', 71.66759446],
    ['-3 in', 'cm', -7.62],
    ['−0.5', 'cm', -0.5],
    ['1:15:00', 'min', 75],
    ['75:30', 'min', 75.5],
    ['1:15', 'h', 75],
    ['1 h 15 min', 'min', 75],
    ['1h15', 'min', 75],
    ['38°', 'deg', 38],
    ['3.4 kN', 'N', 3400],
  ] as const)('"%s" in a column of %s is %d in the base unit', (text, unit, value) =>
    check(text, unit, value),
  );

  test('reads the locale’s decimal mark before a unit', () => {
    check('41,5 cm', 'cm', 41.5, comma);
    check('16,5 in', 'cm', 41.91, comma);
  });

  test.each([
    ['44 kg', 'cm', /is a mass; this column holds a length, in cm/],
    ['44 parsec', 'cm', /"parsec".*not a unit of length/],
    ['tall', 'cm', /"tall" is not a number/],
    ['12 11', 'cm', /not a number/],
    ['5 ft -3 in', 'cm', /not a unit/],
    ['3 in 5 ft', 'cm', /not a number/],
    ['NaN', 'cm', /not a number/],
    ['=1+1', 'cm', /not a number/],
  ] as const)('"%s" in a column of %s is not taken, with the reason', (text, unit, reason) =>
    check(text, unit, reason),
  );

  test('a plain number takes per cent but no unit', () => {
    expect(readQuantity('45 %', undefined, plainLocale)).toEqual({ value: 0.45 });
    expect(readQuantity('45 cm', undefined, plainLocale)).toHaveProperty('reason');
  });

  test('never throws and never answers a number that is not finite, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[0-9 .,'"a-z:/%−-]{0,20}$/)),
        fc.constantFrom(undefined, ...displayUnits),
        fc.constantFrom(plainLocale, comma),
        (text, unit, locale) => {
          const read = readQuantity(text, unit, locale);
          if ('value' in read) expect(Number.isFinite(read.value)).toBe(true);
          else expect(read.reason.length).toBeGreaterThan(10);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('editText(value, unit, locale)', () => {
  test('is the number as it was typed', () => {
    expect(editText(43.18, unitOf('in'), plainLocale)).toBe('17');
    expect(editText(41.2, unitOf('mm'), plainLocale)).toBe('412');
    expect(editText(102.05828325, unitOf('lb'), comma)).toBe('225');
  });

  test('reads back as the stored number: in the unit it was typed in exactly, in any other to 1e-15 of it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...displayUnits),
        fc.integer({ min: 1, max: 9_999_999 }),
        fc.integer({ min: 0, max: 4 }),
        (unit, n, shift) => {
          const typed = readQuantity(`${n}e-${shift}`, unit, plainLocale);
          if (!('value' in typed)) throw new Error(typed.reason);
          for (const other of displayUnits.filter((u) => u.dimension === unit.dimension)) {
            const back = readQuantity(editText(typed.value, other, plainLocale), other, plainLocale);
            if (!('value' in back)) throw new Error(back.reason);
            if (other === unit) expect(back.value).toBe(typed.value);
            else expect(Math.abs(back.value / typed.value - 1)).toBeLessThan(1e-15);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  test('writeQuantity shows the display unit', () => {
    expect(writeQuantity(43.18, unitOf('in'), { digits: 1 }, plainLocale)).toBe('17.0');
  });
});

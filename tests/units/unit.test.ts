import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dimensions } from '../../src/units/dimension.ts';
import { displayUnitOf, displayUnits, fromBase, toBase, unitFromWord, unitOf } from '../../src/units/unit.ts';

describe('display units', () => {
  // Source: the international yard and pound agreement of 1959 (Federal Register 24:5348): 1 yd = 0.9144 m exactly,
  // 1 lb = 0.45359237 kg exactly; 1 ft = 1/3 yd, 1 in = 1/12 ft, 1 st = 14 lb. The rest are SI prefixes and
  // definitions (BIPM, SI brochure, 9th edition).
  test.each([
    ['in', 1, 2.54],
    ['in', 17, 43.18],
    ['ft', 1, 30.48],
    ['lb', 1, 0.45359237],
    ['lb', 225, 102.05828325],
    ['st', 1, 6.35029318],
    ['mm', 412, 41.2],
    ['m', 1.78, 178],
    ['g', 1, 0.001],
    ['kN', 3.4, 3400],
    ['h', 1.25, 75],
    ['s', 90, 1.5],
    ['km/h', 36, 10],
    ['rad', Math.PI, 180],
  ])('one %s times %d is %d in the base unit, to the last digit', (unit, value, base) => {
    expect(toBase(value, unitOf(unit))).toBe(base);
    expect(fromBase(base, unitOf(unit))).toBeCloseTo(value, 12);
  });

  test('every dimension has its base unit first, and it is stored as it is', () => {
    for (const [dimension, base] of Object.entries(dimensions)) {
      const [first] = displayUnits.filter((u) => u.dimension === dimension);
      expect(first?.unit).toBe(base);
      expect(toBase(41.23, first)).toBe(41.23);
    }
  });

  test('no word means two units', () => {
    const words = displayUnits.flatMap((u) => u.words);
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
  });

  test.each([
    ['lbs', 'lb'],
    ['Inches', 'in'],
    ['ins.', 'in'],
    ['°', 'deg'],
    ['KG', 'kg'],
    ['n·m', 'N·m'],
    ['stone', 'st'],
  ])('"%s" is written for %s', (word, unit) => expect(unitFromWord(word)?.unit).toBe(unit));

  test('a column without a dimension has no unit, and a unit of another dimension is not used', () => {
    expect(displayUnitOf({})).toBeUndefined();
    expect(displayUnitOf({ dimension: 'length', unit: 'kg' })?.unit).toBe('cm');
    expect(displayUnitOf({ dimension: 'length', unit: 'in' })?.unit).toBe('in');
  });

  test('to the base unit and back is the same number to 1e-15 of it, for every unit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...displayUnits),
        fc.double({ min: 1e-6, max: 1e9, noNaN: true }),
        (unit, value) => {
          expect(Math.abs(fromBase(toBase(value, unit), unit) / value - 1)).toBeLessThan(1e-15);
        },
      ),
    );
  });
});

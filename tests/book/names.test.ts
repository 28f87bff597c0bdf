import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LONGEST_NAME, nameProblem, properName } from '../../src/book/names.ts';

describe('nameProblem(name)', () => {
  test.each(['femur', 'femur_left', '_x', 'Längen', 'été', 'a1b', 'leg_1', 'target_lean', '身長'])(
    '"%s" can be a name',
    (name) => {
      expect(nameProblem(name)).toBeUndefined();
    },
  );
  test.each([
    ['', /at least one letter/],
    ['2nd', /Try "n_2nd"/],
    ['my femur', /Try "my_femur"/],
    ['a.b', /Try "a_b"/],
    ['leg1', /address of a cell.*"leg_1"/],
    ['RPE8', /address of a cell.*"rpe_8"/],
    ['TRUE', /fixed value.*"true_"/],
    ['=x', /Try "x"/],
    ['a'.repeat(65), /at most 64 characters/],
  ])('"%s" cannot, and the sentence proposes another', (name, sentence) => {
    expect(nameProblem(name)).toMatch(sentence);
  });
});

describe('properName(text)', () => {
  test.each([
    ['Knee to wall (cm)', 'knee_to_wall_cm'],
    ['Körpermasse', 'körpermasse'],
    ['  %  ', 'n'],
    ['1 RM', 'n_1_rm'],
    ['set2', 'set_2'],
  ])('"%s" becomes "%s"', (text, name) => {
    expect(properName(text)).toBe(name);
  });
  test('counts on when the name is taken', () => {
    const taken = new Set(['femur', 'femur_2']);
    expect(properName('Femur', (name) => taken.has(name))).toBe('femur_3');
  });
  test('is always a name that can be given, whatever the text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'grapheme', maxLength: 200 }), fc.string()), (text) => {
        const name = properName(text, (n) => n.length % 2 === 0);
        expect(nameProblem(name)).toBeUndefined();
        expect(name.length).toBeLessThanOrEqual(LONGEST_NAME);
      }),
      { numRuns: 500 },
    );
  });
});

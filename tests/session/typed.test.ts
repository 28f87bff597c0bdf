import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CellKind, Cells } from '../../src/book/cells.ts';
import { isUnchanged, readTyped, typedText } from '../../src/session/text/typed.ts';
import { cell } from '../book/random.ts';

const columns = [
  { kind: 'number' as const },
  { kind: 'number' as const, dimension: 'length' as const, unit: 'in' },
  { kind: 'number' as const, format: { percent: true, digits: 0 } },
  { kind: 'text' as const },
  { kind: 'date' as const },
  { kind: 'yes-no' as const },
  { kind: 'choice' as const, choices: ['left', 'right'] },
];
const locales = [
  { decimal: '.', dateOrder: 'ymd' },
  { decimal: ',', dateOrder: 'dmy' },
  { decimal: '.', dateOrder: 'mdy' },
] as const;

describe('what an editor starts with', () => {
  test('reads back as the same cell, or as a cell that shows the same text, in every kind of column', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.constantFrom(...columns),
        fc.constantFrom(...locales),
        fc.boolean(),
        (text, column, locale, formulas) => {
          const first = readTyped(text, column, locale, formulas);
          const shown = typedText(first, column, locale);
          const again = readTyped(shown, column, locale);
          expect(typedText(again, column, locale)).toBe(shown);
          if (first === null || typeof first !== 'object') {
            // What is not stored as text has no blanks around it; everything else is the very same.
            if (typeof first === 'string') expect(again).toBe(first);
            else expect(again).toEqual(first);
          }
        },
      ),
      { numRuns: 3000 },
    );
  });

  test('left as it was, it keeps a number or a date to the last bit', () => {
    fc.assert(
      fc.property(
        cell,
        fc.constantFrom(...columns),
        fc.constantFrom(...locales),
        (stored, column, locale) => {
          const cells = Cells.from([stored], 1);
          const kind = cells.kinds[0]!;
          const same = isUnchanged(typedText(stored, column, locale), stored, kind, column, locale);
          expect(same).toBe(kind === CellKind.number || kind === CellKind.date);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('never makes a formula of a text', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[ '"=+a1]{1,6}$/), fc.constantFrom(...columns), (text, column) => {
        const stored = readTyped(text, column, locales[0], false);
        const again = readTyped(typedText(stored, column, locales[0]), column, locales[0]);
        expect(again !== null && typeof again === 'object' && 'formula' in again).toBe(false);
      }),
      { numRuns: 1000 },
    );
  });
});

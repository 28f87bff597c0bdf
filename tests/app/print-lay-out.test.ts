import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut, letters, paper } from '../../src/app/print/lay-out.ts';

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

describe('layOut(widths, frozen) lays columns on pages', () => {
  test('A4 and Letter both have room for what it counts on, with margins of 14 mm', () => {
    // ISO 216: A4 is 210 × 297 mm. ANSI/ASME Y14.1: Letter is 215.9 × 279.4 mm.
    expect(paper.upright).toBeLessThanOrEqual(Math.min(210, 215.9) - 28);
    expect(paper.wide).toBeLessThanOrEqual(Math.min(297, 279.4) - 28);
  });

  test.each([
    ['few columns stand upright', [60, 60, 60], { wide: false, size: 9, parts: [[0, 1, 2]] }],
    ['more lie on the long side', [60, 60, 60, 60], { wide: true, size: 9, parts: [[0, 1, 2, 3]] }],
    [
      'a few more get smaller letters',
      [60, 60, 60, 60, 60],
      { wide: true, size: 7.5, parts: [[0, 1, 2, 3, 4]] },
    ],
  ])('%s', (_, widths, laid) => {
    expect(layOut(widths, 0)).toEqual(laid);
  });

  test('many are split, the first again on every page, the parts about equally full', () => {
    const { parts, size } = layOut([45, ...Array.from({ length: 24 }, () => 20)], 1);
    expect(size).toBe(letters.split);
    expect(parts.map((part) => part[0])).toEqual(parts.map(() => 0));
    // By hand: 20 mm are 17.8 mm in letters of 8 points; beside the first, 210 mm hold 11 of them: 24 take three pages.
    expect(parts.map(({ length }) => length)).toEqual([1 + 8, 1 + 8, 1 + 8]);
  });

  test('no column is lost or doubled, and a page that holds more than one column to its right is never too full', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 5, max: 120, noNaN: true }), { minLength: 2, maxLength: 60 }),
        fc.integer({ min: 0, max: 4 }),
        (widths, frozen) => {
          const { parts, size, wide } = layOut(widths, frozen);
          expect(size).toBeGreaterThanOrEqual(letters.least);
          const [first] = parts;
          const repeated = parts.length === 1 ? 0 : first!.filter((c) => parts[1]!.includes(c)).length;
          expect(parts.flatMap((part, i) => (i === 0 ? part : part.slice(repeated)))).toEqual(
            widths.map((_, i) => i),
          );
          for (const part of parts) {
            const own = part.slice(repeated);
            const used = (sum(own.map((c) => widths[c]!)) * size) / letters.wanted;
            if (own.length > 1) expect(used).toBeLessThanOrEqual(wide ? paper.wide : paper.upright);
          }
        },
      ),
    );
  });
});

import { expect, test } from 'vitest';
import { widthOf } from '../../src/app/grid/widths.ts';

const word = { id: 'word', name: 'word', label: 'Word', address: 'C', kind: 'choice' } as const;

test('a column of choices is as wide as its longest choice asks for, unless its width was set', () => {
  const placements = ['high-bar', 'low-bar', 'front', 'arms-forward'];
  // Twelve letters of the cells' typeface, 6 pixels each at the least.
  expect(widthOf({ ...word, choices: placements })).toBeGreaterThan(12 * 6);
  expect(widthOf({ ...word, choices: placements })).toBeGreaterThan(widthOf({ ...word, choices: ['front'] }));
  expect(widthOf({ ...word, choices: placements, width: 80 })).toBe(80);
  // One long text does not push the other columns off the screen.
  expect(widthOf({ ...word, choices: ['x'.repeat(300)] })).toBeLessThan(300);
});

/** Which rows of the sheet the lines of a grid stand for. */
import { expect, test } from 'vitest';
import { Lines } from '../../src/app/grid/rows.ts';

test('filling stops above the line that makes a new row, also with further blank ones and in a view', () => {
  const all = Lines.all(4, true, false);
  expect(all.runs(2, 4)).toEqual([{ row: 2, count: 3 }]);
  expect(all.filled(2, 4)).toEqual([{ row: 2, count: 2 }]);
  expect(all.filled(4, 4)).toEqual([]);
  expect(all.withAhead(3).filled(1, 7)).toEqual([{ row: 1, count: 3 }]);
  expect(Lines.of(4, Int32Array.of(3, 0), true, true).filled(0, 3)).toEqual([
    { row: 3, count: 1 },
    { row: 0, count: 1 },
  ]);
});

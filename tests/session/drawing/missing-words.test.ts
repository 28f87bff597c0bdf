import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { missingInWords } from '../../../src/session/figure/drawing/drawing-words.ts';
import { Session } from '../../../src/session/session.ts';

const all = ['femur', 'tibia', 'trunk', 'ankle'];

test.each([
  [
    'a blank row of a sheet with the columns',
    { missing: ['femur', 'ankle'], absent: [], elsewhere: null },
    'Femur and ankle are empty.',
  ],
  [
    'a sheet without the columns, another has them',
    { missing: all, absent: all, elsewhere: 'Roster' },
    'Assumptions has no columns femur, tibia, trunk and ankle. Select a row of Roster, which has all that the figure needs.',
  ],
  [
    'a sheet without the columns, and no other has them',
    { missing: all, absent: all, elsewhere: null },
    'Assumptions has no columns femur, tibia, trunk and ankle. Add them, or import a file with femur, tibia, trunk and ankle.',
  ],
  [
    'a sheet that lacks one column, in a row that lacks a cell',
    { missing: ['trunk', 'ankle'], absent: ['ankle'], elsewhere: 'Roster' },
    'Assumptions has no column ankle, and trunk is empty. Fill in the row and add the column, or select a row of Roster.',
  ],
])('%s is told what is missing and where', (_, figure, words) => {
  expect(missingInWords(figure, 'Assumptions')).toBe(words);
});

test('a figure says what its sheet has no column for, and which sheet has all', () => {
  const book = new URL('../../../sample-books/squat-screening.leverbook.json', import.meta.url);
  const session = Session.open(readFileSync(book, 'utf8'));
  // The assumptions are a list of named cells; femur, tibia, trunk and ankle stand in the roster.
  expect(session.figure('assumptions', 0)).toMatchObject({ missing: all, absent: all, elsewhere: 'Roster' });
  expect(session.figure('roster', 0)).toMatchObject({ missing: [], absent: [] });
});

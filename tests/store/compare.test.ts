import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook, type LiveBook } from '../../src/book/book.ts';
import type { Cell } from '../../src/book/cells.ts';
import type { Edit } from '../../src/book/edit.ts';
import { alignRows } from '../../src/store/align.ts';
import { compareBooks } from '../../src/store/compare.ts';
import { contentOf } from '../../src/store/content.ts';
import { book } from '../book/random.ts';

function roster(names: readonly string[], femurs: readonly Cell[]): LiveBook {
  const made = createBook('Roster');
  const column = (id: string, kind: 'text' | 'number', cells: readonly Cell[]) => ({
    column: { id, name: id, label: id, kind },
    cells,
  });
  applyEdit(made, {
    do: 'add-sheet',
    index: 0,
    sheet: {
      id: 'roster',
      name: 'roster',
      label: 'Roster',
      purpose: 'gathered',
      rows: names.length,
      columns: [column('athlete', 'text', names), column('femur', 'number', femurs)],
    },
  });
  return made;
}

function changed(from: LiveBook, ...edits: Edit[]): LiveBook {
  const copy = createBook();
  applyEdit(copy, contentOf(from));
  for (const edit of edits) applyEdit(copy, edit);
  return copy;
}

const four = roster(['Ana', 'Ben', 'Cy', 'Di'], [40, 41, 42, 43]);

describe('compareBooks(earlier, later)', () => {
  test('a book does not differ from itself', () => {
    fc.assert(
      fc.property(book, (made) => {
        expect(compareBooks(made, changed(made))).toEqual({ differences: [], cells: 0 });
      }),
      { numRuns: 100 },
    );
  });

  const cases: readonly (readonly [string, Edit[], unknown[]])[] = [
    [
      'a changed cell is listed with what it was and is',
      [{ do: 'put-cells', sheet: 'roster', row: 2, columns: ['femur'], cells: [['about 42']] }],
      [{ what: 'cell', sheet: 'roster', column: 'femur', row: 2, before: 42, after: 'about 42' }],
    ],
    [
      'rows put in between are rows that came; the rows below them do not differ',
      [
        {
          do: 'add-rows',
          sheet: 'roster',
          row: 1,
          count: 2,
          cells: [
            ['Eve', 'Flo'],
            [44, 45],
          ],
        },
      ],
      [{ what: 'rows added', sheet: 'roster', row: 1, count: 2 }],
    ],
    [
      'a row that went is told by where it stood',
      [{ do: 'remove-rows', sheet: 'roster', row: 1, count: 1 }],
      [{ what: 'rows removed', sheet: 'roster', row: 1, count: 1 }],
    ],
    [
      'a row removed above and one changed below',
      [
        { do: 'remove-rows', sheet: 'roster', row: 0, count: 1 },
        { do: 'put-cells', sheet: 'roster', row: 2, columns: ['femur'], cells: [[50]] },
      ],
      [
        { what: 'rows removed', sheet: 'roster', row: 0, count: 1 },
        { what: 'cell', sheet: 'roster', column: 'femur', row: 2, before: 43, after: 50 },
      ],
    ],
    [
      'a sheet in another order is in another order, and no cell differs',
      [{ do: 'order-rows', sheet: 'roster', order: [3, 1, 0, 2] }],
      [{ what: 'rows reordered', sheet: 'roster' }],
    ],
    [
      'a renamed column with a unit is the same column, with its fields',
      [
        {
          do: 'change-column',
          sheet: 'roster',
          column: { id: 'femur', name: 'thigh', label: 'femur', kind: 'number', dimension: 'length' },
        },
      ],
      [
        {
          what: 'column changed',
          sheet: 'roster',
          column: 'thigh',
          fields: [
            { field: 'name', before: 'femur', after: 'thigh' },
            { field: 'dimension', before: undefined, after: 'length' },
          ],
        },
      ],
    ],
    [
      'columns that came and went are named, and their cells are not counted',
      [
        { do: 'remove-column', sheet: 'roster', column: 'femur' },
        {
          do: 'add-column',
          sheet: 'roster',
          index: 1,
          column: { id: 'tibia', name: 'tibia', label: 'Tibia', kind: 'number' },
          cells: [1, 2, 3, 4],
        },
      ],
      [
        { what: 'column removed', sheet: 'roster', column: 'femur' },
        { what: 'column added', sheet: 'roster', column: 'tibia' },
      ],
    ],
    [
      'columns in another order',
      [{ do: 'move-column', sheet: 'roster', column: 'femur', index: 0 }],
      [{ what: 'columns reordered', sheet: 'roster' }],
    ],
    [
      'title, names and records of the book',
      [
        { do: 'set-title', title: 'Club' },
        { do: 'set-name', name: 'Target', target: { sheet: 'roster', column: 'femur', row: 0 } },
        { do: 'set-part', part: 'charts', key: 'lean', value: { kind: 'trend' } },
      ],
      [
        { what: 'title', before: 'Roster', after: 'Club' },
        { what: 'name added', name: 'Target' },
        { what: 'record added', part: 'charts', key: 'lean' },
      ],
    ],
    [
      'a sheet that went',
      [{ do: 'remove-sheet', sheet: 'roster' }],
      [{ what: 'sheet removed', sheet: 'roster', rows: 4 }],
    ],
  ];
  test.each(cases)('%s', (_, edits, expected) => {
    expect(compareBooks(four, changed(four, ...edits)).differences).toEqual(expected);
  });

  test('cells that differ are counted to the end, and listed up to a limit', () => {
    const many = roster(['Ana', 'Ben', 'Cy', 'Di'], [1, 2, 3, 4]);
    const { differences, cells } = compareBooks(four, many, 2);
    expect(cells).toBe(4);
    expect(differences).toHaveLength(2);
  });
});

describe('alignRows(earlier, later)', () => {
  test('partners keep their order, no row has two, and rows in common at both ends are partners', () => {
    const keys = fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'), { maxLength: 30 });
    fc.assert(
      fc.property(keys, keys, (earlier, later) => {
        const { before, reordered } = alignRows(earlier, later);
        const paired = [...before].filter((row) => row >= 0);
        expect(new Set(paired).size).toBe(paired.length);
        if (reordered) expect(later.map((_, i) => earlier[before[i]!])).toEqual(later);
        else expect(paired).toEqual(paired.toSorted((a, b) => a - b));
      }),
      { numRuns: 500 },
    );
  });

  test('rows put in anywhere among rows that occur once are found exactly', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.string(), { minLength: 1, maxLength: 40 }),
        fc.infiniteStream(fc.boolean()),
        (all, toss) => {
          const earlier = all.filter(() => toss.next().value);
          const stays = new Set(earlier);
          const { before } = alignRows(earlier, all);
          expect([...before].map((row) => (row < 0 ? null : earlier[row]))).toEqual(
            all.map((key) => (stays.has(key) ? key : null)),
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  test('100,000 rows, every tenth gone and every seventh changed, are aligned without delay', () => {
    const earlier = Array.from({ length: 100_000 }, (_, i) => `row ${i}`);
    const later = earlier.flatMap((key, i) => (i % 10 === 3 ? [] : [i % 7 === 0 ? `${key} new` : key]));
    const { before } = alignRows(earlier, later);
    const wrong = [...before].filter((row, i) => row >= 0 && !later[i]!.startsWith(earlier[row]!));
    expect(wrong.length).toBeLessThan(later.length / 20);
  });
});

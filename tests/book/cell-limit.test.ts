import { describe, expect, test } from 'vitest';
import { BookFileError, readBook } from '../../src/book/file.ts';
import { Session } from '../../src/session/session.ts';

/*
 * A book takes 60,000,000 cells with values or a column's formula: 30 columns of 2,000,000 rows. What a file may not
 * have, no edit makes either.
 */
const book = (formulas: number, rows = 2_000_000): string =>
  JSON.stringify({
    leverbook: 1,
    title: 'Large',
    sheets: [
      {
        name: 's',
        purpose: 'worked',
        rows,
        columns: Array.from({ length: formulas }, (_, i) => ({
          name: `col_${i}`,
          kind: 'number',
          formula: '1',
        })),
      },
    ],
  });

describe('the number of cells of a book', () => {
  test('counts columns of formulas when a file is opened', () => {
    expect(() => readBook(book(2_000))).toThrow(BookFileError);
    expect(() => readBook(book(31))).toThrow(/62000000 cells; at most 60000000 are accepted/);
    expect(readBook(book(2)).sheets[0]!.columns).toHaveLength(2);
  });

  test('is checked by edits, so that no book is saved that cannot be opened', () => {
    const session = Session.openStale(book(2_000, 30_000));
    expect(session.apply({ do: 'add-rows', sheet: 's', row: 0, count: 1 })).toMatchObject({
      ok: false,
      sentence: expect.stringMatching(/60002000 cells in the book are too many; at most 60000000/),
    });
    const done = session.apply({
      do: 'add-sheet',
      name: 'more',
      columns: [{ name: 'a', label: 'A', formula: '1' }],
      rows: 10,
    } as never);
    expect(done).toMatchObject({ ok: false, sentence: expect.stringMatching(/cells in the book/) });
  });

  test('counts a column that a paste or a fill is the first to write into, before anything changes', () => {
    const file = JSON.parse(book(2_000, 30_000));
    file.sheets.push({
      name: 'free',
      purpose: 'gathered',
      rows: 10,
      columns: [{ name: 'a', kind: 'number' }],
    });
    file.sheets[0].columns.pop();
    file.sheets[0].rows = 30_015;
    // 1,999 × 30,015 = 59,999,985: room for one column of ten rows more, and not for two.
    file.sheets[1].columns.push({ name: 'b', kind: 'number' });
    const session = Session.openStale(JSON.stringify(file));
    const paste = (column: string, text: string) =>
      session.execute({ do: 'set-cells', sheet: 'free', row: 0, columns: [column], texts: [[text]] });
    expect(paste('a', '1')).toMatchObject({ ok: true });
    const before = session.save();
    expect(paste('b', '1')).toMatchObject({
      ok: false,
      sentence: expect.stringMatching(/60000005 cells in the book are too many; at most 60000000/),
    });
    expect(session.save()).toBe(before);
    // A blank one takes no room.
    expect(paste('b', '')).toMatchObject({ ok: true });
  });
});

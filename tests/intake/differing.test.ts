import { describe, expect, test } from 'vitest';
import type { LiveBook } from '../../src/book/book.ts';
import type { ImportOptions } from '../../src/intake/index.ts';
import { addSheet, bring, column, newBook, wordsOf } from './help.ts';

// Common practice, no published source: a list of people has each once; a log has the same athlete on many days and in
// many sets. All people are invented.

/** A roster of four; the file below is what it was made from, before two of them were corrected in the sheet. */
function roster(): LiveBook {
  const book = newBook();
  addSheet(book, 'roster', [
    [{ name: 'athlete', kind: 'text' }, ['Ada Holm', 'Bo Lind', 'Cy Rask', 'Di Moen']],
    [{ name: 'femur', kind: 'number', dimension: 'length', unit: 'cm' }, [41.5, 44, 43, 39]],
    [{ name: 'mass', kind: 'number', dimension: 'mass', unit: 'kg' }, [61, 87.5, 92, 58]],
  ]);
  return book;
}
const people = 'athlete,femur (cm),mass (kg)\nAda Holm,42,61\nBo Lind,44,88\nCy Rask,43,92\nDi Moen,39,58\n';

/** A log of one row an athlete and day. */
function log(): LiveBook {
  const book = newBook();
  addSheet(book, 'log', [
    [{ name: 'date', kind: 'date' }],
    [{ name: 'athlete', kind: 'text' }],
    [{ name: 'load', kind: 'number', dimension: 'mass', unit: 'kg' }],
  ]);
  bring(book, 'log', `${head}2026-01-05,Ada Holm,80\n2026-01-05,Bo Lind,120\n2026-01-06,Cy Rask,95\n`);
  return book;
}
const head = 'date,athlete,load (kg)\n';

const counts = (book: LiveBook, sheet: string, text: string, options: ImportOptions = {}) => {
  const imported = bring(book, sheet, text, options);
  const { in: all, placed, held, added, updated, unchanged, left } = imported.report.rows;
  expect(all).toBe(placed + held);
  expect(placed).toBe(added + updated + unchanged + left);
  return { imported, added, updated, unchanged, left, held };
};

describe('the same roster once more, after two of its people were corrected', () => {
  test('doubles nobody: the two are named with what differs, and the answer is open', () => {
    const book = roster();
    const { imported, ...rows } = counts(book, 'roster', people);
    expect(rows).toEqual({ added: 0, updated: 0, unchanged: 2, left: 2, held: 0 });
    expect(column(book, 'roster', 'athlete')).toEqual(['Ada Holm', 'Bo Lind', 'Cy Rask', 'Di Moen']);
    expect(imported.differing).toMatchObject({ count: 2, key: ['athlete'], decided: null });
    expect(
      imported.differing!.first.map(({ line, row, who, cells }) => [
        line,
        row,
        who,
        cells.map(({ column: { name }, there, file }) => [name, there, file]),
      ]),
    ).toEqual([
      [2, 0, 'Ada Holm', [['femur', 41.5, 42]]],
      [3, 1, 'Bo Lind', [['mass', 87.5, 88]]],
    ]);
    expect(wordsOf(imported)).toContain(
      '2 rows differ from the rows there with the same athlete: left as they are. Ada Holm (line 2): femur 41.5 cm there, 42 cm in the file; Bo Lind (line 3): mass 87.5 kg there, 88 kg in the file.',
    );
  });

  test('left, the sheet keeps its values, and the recipe remembers it', () => {
    const book = roster();
    const { imported, left } = counts(book, 'roster', people, { ofDiffering: 'leave' });
    expect(left).toBe(2);
    expect(imported.recipe).toMatchObject({ mode: 'append', ofDiffering: 'leave' });
    expect(column(book, 'roster', 'mass')).toEqual([61, 87.5, 92, 58]);
    const next = counts(book, 'roster', people, { recipe: imported.recipe });
    expect(next.imported.differing).toMatchObject({ decided: 'leave', count: 2 });
  });

  test('taken, the file’s values stand in those rows, and the recipe is an update by that column', () => {
    const book = roster();
    const { imported, ...rows } = counts(book, 'roster', people, { ofDiffering: 'take' });
    expect(rows).toEqual({ added: 0, updated: 2, unchanged: 2, left: 0, held: 0 });
    expect(imported.changes).toEqual([
      { row: 0, column: 'femur', before: 41.5, after: 42 },
      { row: 1, column: 'mass', before: 87.5, after: 88 },
    ]);
    expect(column(book, 'roster', 'femur')).toEqual([42, 44, 43, 39]);
    expect(imported.recipe).toMatchObject({ mode: 'update', key: ['athlete'] });
    expect(imported.provenance.mode).toBe('update');
  });

  test('added, they are further rows, and that is said', () => {
    const book = roster();
    const { imported, ...rows } = counts(book, 'roster', people, { ofDiffering: 'add' });
    expect(rows).toEqual({ added: 2, updated: 0, unchanged: 2, left: 0, held: 0 });
    expect(column(book, 'roster', 'athlete').slice(4)).toEqual(['Ada Holm', 'Bo Lind']);
    expect(wordsOf(imported).join(' ')).toContain(
      '2 rows differ from the rows there with the same athlete: added',
    );
  });

  test('somebody new beside them is added whatever is answered', () => {
    const { imported, added, left } = counts(roster(), 'roster', `${people}Eli Sund,40,70\n`);
    expect({ added, left }).toEqual({ added: 1, left: 2 });
    expect(imported.differing).toMatchObject({ count: 2 });
  });

  test('a cell that the file leaves blank is a difference, but taking the file’s values keeps what stands there', () => {
    const book = roster();
    const blank = 'athlete,femur (cm),mass (kg)\nAda Holm,41.5,\n';
    expect(counts(roster(), 'roster', blank).imported.differing!.first[0]!.cells).toMatchObject([
      { there: 61, file: null },
    ]);
    expect(counts(book, 'roster', blank, { ofDiffering: 'take' })).toMatchObject({
      updated: 0,
      unchanged: 1,
    });
    expect(column(book, 'roster', 'mass')[0]).toBe(61);
  });

  test('a person whom the file has twice, and the sheet once, is not entered a second time unasked', () => {
    const again = 'athlete,femur (cm),mass (kg)\nAda Holm,41.5,61\nAda Holm,41.5,61\n';
    const more = Array.from({ length: 20 }, (_, i) => `New ${i},40,70\n`).join('');
    const { imported, unchanged, left, added } = counts(roster(), 'roster', again + more);
    expect({ unchanged, left, added }).toEqual({ unchanged: 1, left: 1, added: 20 });
    expect(imported.differing!.first[0]).toMatchObject({ who: 'Ada Holm', line: 3, cells: [] });
  });
});

describe('what rows are recognised by', () => {
  test('two people of one name are told apart by their identifier', () => {
    const book = newBook();
    addSheet(book, 'roster', [
      [{ name: 'id', kind: 'text' }, ['Q1', 'Q2', 'Q3']],
      [{ name: 'athlete', kind: 'text' }, ['Ada Holm', 'Ada Holm', 'Cy Rask']],
      [{ name: 'mass', kind: 'number', dimension: 'mass', unit: 'kg' }, [61, 70, 92]],
    ]);
    const { imported } = counts(book, 'roster', 'id,athlete,mass (kg)\nQ1,Ada Holm,61\nQ2,Ada Holm,71\n');
    expect(imported.differing).toMatchObject({ count: 1, key: ['id'] });
  });

  test('in a list with dates, the same list once more: a corrected date does not make a second person', () => {
    const book = newBook();
    const file =
      'athlete,tested,mass (kg)\nAda Holm,2025-09-08,61\nBo Lind,2025-09-08,88\nCy Rask,2025-09-09,92\n';
    addSheet(book, 'roster', [
      [{ name: 'athlete', kind: 'text' }],
      [{ name: 'tested', kind: 'date' }],
      [{ name: 'mass', kind: 'number', dimension: 'mass', unit: 'kg' }],
    ]);
    bring(book, 'roster', file);
    const { imported, added } = counts(
      book,
      'roster',
      file.replace('Cy Rask,2025-09-09', 'Cy Rask,2025-09-19'),
    );
    expect(added).toBe(0);
    expect(imported.differing).toMatchObject({ count: 1, key: ['athlete'] });
  });

  test('the columns that a recipe names go before', () => {
    const book = log();
    const { recipe } = bring(book, 'log', `${head}2026-01-05,Ada Holm,80\n`);
    const keyed = { ...recipe, key: ['date', 'athlete'] };
    const { imported } = counts(book, 'log', `${head}2026-01-06,Cy Rask,97.5\n`, { recipe: keyed });
    expect(imported.differing).toMatchObject({ count: 1, key: ['date', 'athlete'] });
  });

  test('without athletes or identifiers, the first column of texts names what the rows are about', () => {
    const book = newBook();
    addSheet(book, 'lifts', [
      [{ name: 'item', kind: 'text' }, ['Wedge', 'Plate', 'Shoe']],
      [{ name: 'height', kind: 'number', dimension: 'length', unit: 'cm' }, [2, 1.5, 1.9]],
    ]);
    const { imported } = counts(book, 'lifts', 'item,height (cm)\nwedge,2.5\n');
    // The spelling differs in its capital only: the same wedge, with two cells that differ.
    expect(imported.differing).toMatchObject({ count: 1, key: ['item'] });
    expect(imported.differing!.first[0]!.cells).toHaveLength(2);
  });
});

describe('a log is not asked about', () => {
  test('when its athletes come again on other days', () => {
    const { imported, added } = counts(
      log(),
      'log',
      `${head}2026-01-12,Ada Holm,82.5\n2026-01-12,Bo Lind,122.5\n`,
    );
    expect(imported.differing).toBeNull();
    expect(added).toBe(2);
  });

  test('when an export of all weeks has last week’s rows, too', () => {
    const all = `${head}2026-01-05,Ada Holm,80\n2026-01-05,Bo Lind,120\n2026-01-06,Cy Rask,95\n2026-01-12,Ada Holm,82.5\n`;
    const { imported, added, unchanged } = counts(log(), 'log', all);
    expect(imported.differing).toBeNull();
    expect({ added, unchanged }).toEqual({ added: 1, unchanged: 3 });
  });

  test('when it has several sets of an athlete a day', () => {
    const book = log();
    bring(book, 'log', `${head}2026-01-07,Ada Holm,80\n2026-01-07,Ada Holm,85\n`);
    const { imported, added } = counts(
      book,
      'log',
      `${head}2026-01-07,Ada Holm,90\n2026-01-05,Bo Lind,125\n`,
    );
    expect(imported.differing).toBeNull();
    expect(added).toBe(2);
  });

  test('but is when the load of a day that it has was corrected', () => {
    const { imported, added, left } = counts(
      log(),
      'log',
      `${head}2026-01-05,Bo Lind,125\n2026-01-12,Bo Lind,130\n`,
    );
    expect(imported.differing).toMatchObject({ count: 1, key: ['athlete', 'date'] });
    expect({ added, left }).toEqual({ added: 1, left: 1 });
  });

  test('nor when all rows are replaced, or rows are updated by a column', () => {
    expect(counts(roster(), 'roster', people, { mode: 'replace' }).imported.differing).toBeNull();
    const update = { mode: 'update', key: ['athlete'] } as const;
    expect(counts(roster(), 'roster', people, update).imported.differing).toBeNull();
  });
});

import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { sheetNamed } from '../../src/book/book.ts';
import { writeBook } from '../../src/book/file-write.ts';
import { importFile } from './at-once.ts';
import { addSheet, bring, bytesOf, column, newBook, refusal } from './help.ts';

function logBook() {
  const book = newBook();
  addSheet(book, 'log', [
    [{ name: 'date', kind: 'date' }],
    [{ name: 'athlete', kind: 'text' }],
    [{ name: 'load', kind: 'number', dimension: 'mass', unit: 'kg' }],
    [{ name: 'double', kind: 'number', formula: 'load * 2' }],
  ]);
  return book;
}

const week1 =
  'date,athlete,load (kg)\n2026-01-05,Ada Holm,80\n2026-01-05,Ada Holm,80\n2026-01-06,Bo Lind,120\n';
const week2 = `${week1}2026-01-12,Ada Holm,82.5\n2026-01-05,Ada Holm,80\n`;

describe('append', () => {
  test('rows seen before are not entered again, and a set done once more is', () => {
    const book = logBook();
    expect(bring(book, 'log', week1).report.rows).toMatchObject({ in: 3, placed: 3, added: 3, unchanged: 0 });
    // The second file has the first one's three rows, one new day, and the set of 80 kg a third time.
    expect(bring(book, 'log', week2).report.rows).toMatchObject({
      in: 5,
      placed: 5,
      added: 2,
      unchanged: 3,
      held: 0,
    });
    expect(column(book, 'log', 'load')).toEqual([80, 80, 120, 82.5, 80]);
    expect(bring(book, 'log', week2).report.rows).toMatchObject({ added: 0, unchanged: 5 });
  });

  test('a computed column of the file is left out, and said so', () => {
    const book = logBook();
    const imported = bring(book, 'log', 'date,athlete,load (kg),double\n2026-01-05,Ada Holm,80,999\n');
    expect(column(book, 'log', 'double')).toEqual([null]);
    expect(imported.report.notes.map((n) => n.reason)).toContain('computed-column');
  });

  test('a heading that matches nothing becomes a new column; what stood there before is blank in it', () => {
    const book = logBook();
    bring(book, 'log', week1);
    bring(book, 'log', 'date,athlete,load (kg),mood\n2026-01-20,Ada Holm,85,good\n');
    expect(column(book, 'log', 'mood')).toEqual([null, null, null, 'good']);
  });

  test('pounds come into a sheet in kilograms', () => {
    const book = logBook();
    bring(book, 'log', 'date,athlete,load (lb)\n2026-01-05,Ada Holm,225\n');
    // 1 lb = 0.45359237 kg (international yard and pound agreement 1959).
    expect(column(book, 'log', 'load')).toEqual([102.05828325]);
  });
});

describe('replace', () => {
  test('the rows of the file stand in place of the old ones', () => {
    const book = logBook();
    bring(book, 'log', week2);
    const imported = bring(book, 'log', week1, { mode: 'replace' });
    expect(imported.report.rows).toMatchObject({ in: 3, added: 3, unchanged: 0 });
    expect(sheetNamed(book, 'log')!.rows).toBe(3);
  });
});

describe('update by key', () => {
  function roster() {
    const book = newBook();
    addSheet(book, 'roster', [
      [{ name: 'id', kind: 'number' }, [1, 2, 3]],
      [{ name: 'athlete', kind: 'text' }, ['Ada Holm', 'Bo Lind', 'Cy Rask']],
      [{ name: 'mass', kind: 'number', dimension: 'mass', unit: 'kg' }, [61, 88, 92]],
    ]);
    return book;
  }
  const file = 'id,athlete,mass (kg)\n2,Bo Lind,87.2\n1,Ada Holm,\n3,Cy Rask,92\n4,Di Moen,70\n';

  test('known rows get the filled cells, blanks leave what stands, unknown rows are added; the change is shown first', () => {
    const book = roster();
    const before = writeBook(book);
    const imported = importFile(
      bytesOf(file),
      { sheet: sheetNamed(book, 'roster')!, book },
      { mode: 'update', key: ['id'] },
    );
    expect(writeBook(book)).toBe(before);
    expect(imported.changes).toEqual([{ row: 1, column: 'mass', before: 88, after: 87.2 }]);
    expect(imported.report.rows).toMatchObject({
      in: 4,
      placed: 4,
      added: 1,
      updated: 1,
      unchanged: 2,
      held: 0,
    });
    applyEdit(book, { do: 'batch', edits: imported.edits });
    expect(column(book, 'roster', 'mass')).toEqual([61, 87.2, 92, 70]);
    expect(column(book, 'roster', 'athlete')).toEqual(['Ada Holm', 'Bo Lind', 'Cy Rask', 'Di Moen']);
  });

  test('one undo takes the whole import back', () => {
    const book = roster();
    const before = writeBook(book);
    const imported = importFile(
      bytesOf(file),
      { sheet: sheetNamed(book, 'roster')!, book },
      { mode: 'update', key: ['id'] },
    );
    const { inverse } = applyEdit(book, { do: 'batch', edits: imported.edits });
    expect(writeBook(book)).not.toBe(before);
    applyEdit(book, inverse);
    expect(writeBook(book)).toBe(before);
  });

  test('a row without a key and a key that comes twice are held with the row as it stands in the file', () => {
    const book = roster();
    const imported = bring(book, 'roster', 'id,athlete,mass (kg)\n2,Bo Lind,87\n,Nobody,70\n2,Bo Lind,86\n', {
      mode: 'update',
      key: ['id'],
    });
    expect(imported.report.rows).toMatchObject({ in: 3, placed: 1, held: 2 });
    expect(imported.heldRows.map((h) => [h.line, h.raw, h.reason.reason])).toEqual([
      [3, ',Nobody,70', 'key-missing'],
      [4, '2,Bo Lind,86', 'key-twice'],
    ]);
    expect(column(book, 'roster', 'mass')[1]).toBe(87);
  });

  test('a key that the file does not fill is refused, naming those it does', () => {
    const book = roster();
    expect(refusal(() => bring(book, 'roster', file, { mode: 'update', key: ['passport'] }))).toMatch(
      /"passport" is none that the file fills.*id, athlete, mass/,
    );
  });
});

describe('a recipe', () => {
  test("is made by every import and takes next week's file in by its headings, columns in another order", () => {
    const book = logBook();
    const first = bring(
      book,
      'log',
      'Day;Lifter;Bar (lb)\n05/01/2026;Ada Holm;180\n17/01/2026;Bo Lind;225\n',
    );
    expect(first.byRecipe).toBe(false);
    // 01/02 alone would be open; the recipe remembers that the day comes first.
    const recipes = [{ key: first.recipeKey, recipe: first.recipe }];
    const next = bring(book, 'log', 'Lifter;Bar (lb);Day\nBo Lind;230;01/02/2026\n', { recipes });
    expect(next.byRecipe).toBe(true);
    expect(next.recipeKey).toBe(first.recipeKey);
    const day = (y: number, m: number, d: number) => ({ date: Date.UTC(y, m - 1, d) / 86_400_000 + 25_569 });
    expect(column(book, 'log', 'date')).toEqual([day(2026, 1, 5), day(2026, 1, 17), day(2026, 2, 1)]);
    expect(next.report.notes.map((n) => n.reason)).not.toContain('column-doubt');
  });

  test('that misses a heading says which, and what the file has', () => {
    const book = logBook();
    const { recipe } = bring(book, 'log', week1);
    expect(refusal(() => bring(book, 'log', 'date,athlete\n2026-01-05,Ada Holm\n', { recipe }))).toMatch(
      /has no column "load \(kg\)".*Its columns: date, athlete/,
    );
  });

  test('is not used for a file of other headings', () => {
    const book = logBook();
    const { recipe, recipeKey } = bring(book, 'log', week1);
    const other = importFile(
      bytesOf('name,femur (cm)\nAda Holm,42\n'),
      { sheet: null, book },
      { recipes: [{ key: recipeKey, recipe }] },
    );
    expect(other.byRecipe).toBe(false);
  });
});

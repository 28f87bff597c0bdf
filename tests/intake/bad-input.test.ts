import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { readBook } from '../../src/book/file.ts';
import { writeBook } from '../../src/book/file-write.ts';
import { readRecipe, recipeEdit } from '../../src/intake/index.ts';
import { importFile, inspect } from './at-once.ts';
import { addSheet, bring, bytesOf, column, newBook, refusal, wordsOf } from './help.ts';

const roster = () => {
  const book = newBook();
  addSheet(book, 'roster', [
    [{ name: 'athlete', kind: 'text' }],
    [{ name: 'femur', kind: 'number', dimension: 'length', unit: 'cm' }],
  ]);
  return book;
};

describe('bad input gives one clear message: what arrived, what is accepted, what to do', () => {
  const files: readonly (readonly [string, Uint8Array, RegExp])[] = [
    ['an empty file', new Uint8Array(0), /"x\.csv" is empty.*takes a text table.*Export it again/],
    ['blank lines', bytesOf('\n \n'), /nothing but blank lines.*takes a text table.*Export it again/],
    [
      'only headings',
      bytesOf('athlete,femur\n'),
      /headings \(2 columns\) but no row.*at least one row.*Export it again/,
    ],
    [
      'a picture',
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]),
      /a picture \(PNG\), not a table.*takes a text table.*CSV first/,
    ],
    [
      'bytes that are no text',
      Uint8Array.from({ length: 500 }, (_, i) => (i * 37) % 256),
      /binary data, not a table/,
    ],
    ['a book', bytesOf('{"leverbook": 1, "title": "x"}'), /is a book.*Open it as a book/],
  ];
  test.each(files)('%s', (_, bytes, message) => {
    expect(refusal(() => inspect(bytes, { name: 'x.csv' }))).toMatch(message);
    expect(refusal(() => importFile(bytes, { sheet: null }, { name: 'x.csv' }))).toMatch(message);
  });

  test('a file that is too large says how large it may be', () => {
    expect(refusal(() => inspect(bytesOf('a,b\n1,2\n'), { name: 'x.csv', largest: 4 }))).toMatch(
      /has 8 bytes.*up to 4 bytes.*Split it/,
    );
  });

  test('headings that fit nothing are refused before anything is changed', () => {
    const book = roster();
    expect(refusal(() => bring(book, 'roster', 'weekday,mood\nMon,good\n'))).toMatch(
      /None of the 2 headings.*\(weekday, mood\) fits a column of sheet "roster" \(athlete, femur\)/,
    );
  });

  test.each([
    [
      '440 mm',
      /"440 mm" carries a unit; the cells of this column are plain numbers in cm\. Write 44 if that/,
    ],
    ['1e999', /"1e999" is not a number/],
    [
      '"44,5"',
      /"44,5" has another decimal mark than this column, which has a point\. Write 44\.5 if that is meant/,
    ],
    [
      'about 44',
      /"about 44" is not a number\. A number such as 44\.5 is accepted here\. Correct it or clear it/,
    ],
    ['=1+1', /"=1\+1" is not a number/],
    ['17 in', /"17 in" carries a unit.*Write 43\.18 if/],
  ])('%s in a column of numbers is held as it came, with the reason', (cell, reason) => {
    const book = roster();
    const imported = bring(
      book,
      'roster',
      `athlete,femur\nAda,42.1\nBo,${cell}\nCy,45.2\nDi,41.0\nEk,43\nFi,40.4\n`,
    );
    expect(column(book, 'roster', 'femur')[1]).toEqual({
      held: cell.replaceAll('"', ''),
      reason: expect.stringMatching(reason),
    });
    expect(imported.report.cells.held).toBe(1);
    expect(wordsOf(imported).filter((w) => reason.test(w))).toHaveLength(1);
  });

  test('44 cm in a column in cm is 44, and the report says that the unit stood in the cell', () => {
    const book = roster();
    const imported = bring(
      book,
      'roster',
      'athlete,femur\nAda,42.1\nBo,44 cm\nCy,45.2\nDi,41.0\nEk,43\nFi,40.4\n',
    );
    expect(column(book, 'roster', 'femur')[1]).toBe(44);
    expect(wordsOf(imported)).toContain(
      'Column "femur": 1 cell with the unit in the cell, such as "44 cm", read in that unit.',
    );
  });

  test("a heading and a file name longer than a label are clipped, whole in the column's note, and the book opens again", () => {
    const book = newBook();
    const heading = `Femur ${'very '.repeat(100)}long`;
    const imported = importFile(
      bytesOf(`athlete,${heading}\nAda,42\n`),
      { sheet: null, book },
      { name: `${'x'.repeat(400)}.csv` },
    );
    applyEdit(book, { do: 'batch', edits: [...imported.edits, recipeEdit(imported)] });
    const back = readBook(writeBook(book));
    expect(back.sheets[0]!.label).toHaveLength(300);
    expect(back.sheets[0]!.columns[1]!.label).toHaveLength(300);
    expect(back.sheets[0]!.columns[1]!.note).toBe(heading);
    expect(readRecipe([...back.parts.recipes.values()][0]).columns[1]!.heading).toBe(heading);
  });

  test('a row with a cell longer than a book takes is held', () => {
    const book = roster();
    const imported = bring(book, 'roster', `athlete,femur\n${'a'.repeat(100_001)},42\nBo,44\n`);
    expect(imported.report.rows).toMatchObject({ in: 2, placed: 1, held: 1 });
    expect(imported.heldRows[0]!.reason.reason).toBe('cell-too-long');
  });

  test('more columns than a sheet takes are refused', () => {
    const wide = Array.from({ length: 2001 }, (_, i) => `c${i}x`);
    const bytes = bytesOf(`${wide.join(',')}\n${wide.map(() => 1).join(',')}\n`);
    expect(refusal(() => importFile(bytes, { sheet: null }, { name: 'x.csv' }))).toMatch(
      /would have 2,001 columns.*at most 2,000/,
    );
  });

  test('NaN is a word for a missing value: the cell is blank, and the report says so', () => {
    const book = roster();
    const imported = bring(book, 'roster', 'athlete,femur\nAda,NaN\nBo,44\n');
    expect(column(book, 'roster', 'femur')).toEqual([null, 44]);
    expect(wordsOf(imported)).toContain('Column "femur": 1 cell with "NaN" taken as missing and left blank.');
  });

  test('a text that begins like a formula stays a text, and the report says so', () => {
    const book = roster();
    const imported = bring(book, 'roster', 'athlete,femur\n=1+1,42\nBo,44\n');
    expect(column(book, 'roster', 'athlete')).toEqual(['=1+1', 'Bo']);
    expect(wordsOf(imported).join('\n')).toMatch(
      /start like a formula, such as "=1\+1"; they are imported as text and never computed/,
    );
  });

  test('ragged rows are held with their line, their text and the reason', () => {
    const book = roster();
    const imported = bring(
      book,
      'roster',
      'athlete,femur\nAda,42\nBo\nCy,45,7\nDi,41\nEk,40\nFi,44\nGus,42\nHal,43\n',
    );
    expect(imported.report.rows).toMatchObject({ in: 8, placed: 6, held: 2 });
    expect(imported.heldRows.map((h) => [h.line, h.raw])).toEqual([
      [3, 'Bo'],
      [4, 'Cy,45,7'],
    ]);
  });
});

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { columnNamed, createBook, sheetNamed } from '../../src/book/book.ts';
import { CellKind } from '../../src/book/cells.ts';
import type { Edit } from '../../src/book/edit.ts';
import type { Recipe } from '../../src/intake/index.ts';
import { importFile, inspect } from './at-once.ts';

// Gordon et al. 2014, NATICK/TR-15/007, the two public files of the 2012 survey; approved for public release. They stay
// outside the project. Row and column counts, encodings and the first man's values are read from the files themselves.
const folder = join(import.meta.dirname, '../../../shared/data');
const men = join(folder, 'ANSUR_II_MALE_Public.csv');
const women = join(folder, 'ANSUR_II_FEMALE_Public.csv');
const here = existsSync(men) && existsSync(women);
if (!here) console.warn(`The survey is not at ${folder}: the tests that read it are skipped.`);

const read = (path: string): Uint8Array => new Uint8Array(readFileSync(path));
const apply = (edits: readonly Edit[]) => {
  const book = createBook();
  applyEdit(book, { do: 'batch', edits });
  return book;
};

const recipe: Recipe = {
  version: 1,
  title: 'Survey',
  sheet: 'people',
  columns: [
    { heading: 'subjectid', column: 'id' },
    { heading: 'stature', column: 'stature', unit: 'mm' },
    { heading: 'trochanterionheight', column: 'trochanter', unit: 'mm' },
    { heading: 'weightkg', column: 'mass', unit: 'kg', factor: 0.1 },
    { heading: 'Ethnicity', column: 'ethnicity' },
    { heading: 'Date', column: 'day' },
  ],
};

const emptySheet = () => {
  const book = createBook();
  applyEdit(book, {
    do: 'add-sheet',
    index: 0,
    sheet: {
      id: 'people',
      name: 'people',
      label: 'People',
      purpose: 'gathered',
      rows: 0,
      columns: [
        { column: { id: 'id', name: 'id', label: 'Number', kind: 'number' } },
        { column: { id: 'stature', name: 'stature', label: 'Stature', kind: 'number', dimension: 'length' } },
        {
          column: {
            id: 'trochanter',
            name: 'trochanter',
            label: 'Trochanter',
            kind: 'number',
            dimension: 'length',
          },
        },
        { column: { id: 'mass', name: 'mass', label: 'Mass', kind: 'number', dimension: 'mass' } },
        { column: { id: 'ethnicity', name: 'ethnicity', label: 'Ethnicity', kind: 'text' } },
        { column: { id: 'day', name: 'day', label: 'Day', kind: 'date' } },
      ],
    },
  });
  return book;
};

describe.skipIf(!here)('the survey comes in exactly', () => {
  test('the file of the men is read as Western European, 4,082 rows of 108 columns, with its é', () => {
    const found = inspect(read(men), { name: 'men.csv' });
    expect(found.encoding.value).toBe('windows-1252');
    expect(found.lineEnd).toBe('\r\n');
    expect(found.columns).toHaveLength(108);
    expect(found.rows).toBe(4082);
    const imported = importFile(read(men), { sheet: null, label: 'men' });
    expect(imported.report.rows).toMatchObject({ in: 4082, placed: 4082, held: 0 });
    expect(imported.report.cells.held).toBe(0);
    const sheet = sheetNamed(apply(imported.edits), 'men')!;
    expect(sheet.columns).toHaveLength(108);
    // Line 1934 of the file, read in a hex dump: bytes 4D E9 74 69 73.
    const ethnicity = sheet.cells.get(columnNamed(sheet, 'ethnicity')!.id)!;
    expect(ethnicity.get(1934 - 2)).toBe('Métis Creole');
  });

  test('the file of the women is UTF-8, 1,986 rows, and its first heading is bare', () => {
    const found = inspect(read(women), { name: 'women.csv' });
    expect(found.encoding.value).toBe('utf-8');
    expect(found.columns).toHaveLength(108);
    expect(found.rows).toBe(1986);
    expect(found.columns[0]!.heading).toBe('SubjectId');
  });

  test('with a byte order mark before it the first heading stays bare, too', () => {
    const bytes = read(women);
    const bare = bytes[0] === 0xef ? bytes.subarray(3) : bytes;
    const marked = new Uint8Array(bare.length + 3);
    marked.set([0xef, 0xbb, 0xbf]);
    marked.set(bare, 3);
    const found = inspect(marked);
    expect(found.byteOrderMark).toBe(true);
    expect(found.columns[0]!.heading).toBe('SubjectId');
    expect(found.rows).toBe(1986);
  });

  test('a recipe turns millimetres into centimetres and tenths of kilograms into kilograms, to the last digit', () => {
    const book = emptySheet();
    const imported = importFile(
      read(men),
      { sheet: sheetNamed(book, 'people')! },
      { recipe, name: 'men.csv' },
    );
    applyEdit(book, { do: 'batch', edits: imported.edits });
    const sheet = sheetNamed(book, 'people')!;
    expect(sheet.rows).toBe(4082);
    // The first man: 10027, stature 1776 mm, trochanterion 919 mm, 815 tenths of a kilogram, 4-Oct-10.
    const row = sheet.columns.map(({ id }) => sheet.cells.get(id)!.get(0));
    const fourthOfOctober2010 = Date.UTC(2010, 9, 4) / 86_400_000 + 25_569;
    expect(row).toEqual([10027, 177.6, 91.9, 81.5, null, { date: fourthOfOctober2010 }]);
    // Independent route: the same cells cut out of the decoded text by hand.
    const lines = new TextDecoder('latin1')
      .decode(read(men))
      .split('\r\n')
      .slice(1)
      .filter((l) => l !== '');
    const at = (line: string, i: number): string => line.split(',')[i]!;
    const headings = new TextDecoder('latin1').decode(read(men)).split('\r\n')[0]!.split(',');
    for (const [heading, column, divisor] of [
      ['stature', 'stature', 10],
      ['weightkg', 'mass', 10],
    ] as const) {
      const cells = sheet.cells.get(column)!;
      const index = headings.indexOf(heading);
      lines.forEach((line, i) => {
        expect(cells.kinds[i]).toBe(CellKind.number);
        expect(cells.numbers[i]).toBe(Number(at(line, index)) / divisor);
      });
    }
  });

  test('both files go into one sheet by one recipe: 6,068 rows, and none twice when they come again', () => {
    const book = emptySheet();
    for (const path of [men, women]) {
      const imported = importFile(read(path), { sheet: sheetNamed(book, 'people')! }, { recipe });
      applyEdit(book, { do: 'batch', edits: imported.edits });
    }
    expect(sheetNamed(book, 'people')!.rows).toBe(6068);
    const again = importFile(read(women), { sheet: sheetNamed(book, 'people')! }, { recipe });
    expect(again.report.rows).toMatchObject({ in: 1986, placed: 1986, added: 0, unchanged: 1986, held: 0 });
  });
});

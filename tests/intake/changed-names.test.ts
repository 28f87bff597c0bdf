import { describe, expect, test } from 'vitest';
import { addSheet, bring, column, newBook } from './help.ts';

// Everybody here is invented.
const born = (iso: string) => ({ date: (Date.parse(iso) - Date.parse('1899-12-30')) / 86_400_000 });

function club() {
  const book = newBook();
  addSheet(book, 'roster', [
    [{ name: 'athlete', label: 'Athlete', kind: 'text' }, ['Anna Berg', 'Bo Lind', 'Cleo Dahl']],
    [{ name: 'id', label: 'ID', kind: 'text' }, ['K-1', 'K-2', 'K-3']],
    [
      { name: 'born', label: 'Birth date', kind: 'date' },
      [born('1999-03-04'), born('2001-07-09'), born('2000-01-31')],
    ],
    [{ name: 'mass', label: 'Body mass', kind: 'number', dimension: 'mass', unit: 'kg' }, [60, 80, 70]],
  ]);
  addSheet(book, 'log', [
    [{ name: 'athlete', label: 'Athlete', kind: 'text' }],
    [{ name: 'id', label: 'ID', kind: 'text' }],
    [{ name: 'born', label: 'Birth date', kind: 'date' }],
    [{ name: 'load', label: 'Load', kind: 'number', dimension: 'mass', unit: 'kg' }],
  ]);
  return book;
}

const who = { column: 'athlete', roster: 'roster', name: 'athlete' };

describe('a name that changed, in a log', () => {
  test('is recognised by the identifier of its rows', () => {
    const book = club();
    const imported = bring(book, 'log', 'Athlete,ID,Load (kg)\nAnna Holm,K-1,50\nBo Lind,K-2,90\n', { who });
    expect(imported.who?.same).toEqual([
      { text: 'Anna Holm', value: 'Anna Berg', by: 'identifier', rows: 1 },
    ]);
    expect(column(book, 'log', 'athlete')).toEqual(['Anna Berg', 'Bo Lind']);
  });

  test('is recognised by the birth date where a given name is the same', () => {
    const book = club();
    const imported = bring(book, 'log', 'Athlete,Birth date,Load (kg)\nAnna Holm-Berg,1999-03-04,50\n', {
      who,
    });
    expect(imported.who?.same).toMatchObject([{ value: 'Anna Berg', by: 'birth date' }]);
    expect(column(book, 'log', 'athlete')).toEqual(['Anna Berg']);
  });

  test('is only proposed where the given name differs: twins have one birth date', () => {
    const book = club();
    const imported = bring(book, 'log', 'Athlete,Birth date,Load (kg)\nIda Berg,1999-03-04,50\n', { who });
    expect(imported.who?.same).toEqual([]);
    expect(imported.who?.close).toMatchObject([{ text: 'Ida Berg', values: ['Anna Berg'] }]);
    expect(column(book, 'log', 'athlete')).toEqual(['Ida Berg']);
  });

  test('is nobody where its rows have several identifiers', () => {
    const book = club();
    const imported = bring(book, 'log', 'Athlete,ID,Load (kg)\nX Y,K-1,50\nX Y,K-2,50\n', { who });
    expect(imported.who?.unknown).toMatchObject([{ text: 'X Y' }]);
  });
});

describe('a name that changed, in the list of people itself', () => {
  test.each([
    ['identifier', 'Athlete,ID,Body mass (kg)\nAnna Holm,K-1,61\nBo Lind,K-2,80\n'],
    ['birth date', 'Athlete,Birth date,Body mass (kg)\nAnna Holm,1999-03-04,61\nBo Lind,2001-07-09,80\n'],
  ])('is the person who is there, by %s: asked about, and never entered twice', (_by, text) => {
    const book = club();
    const asked = bring(book, 'roster', text);
    expect(asked.differing).toMatchObject({ count: 1, first: [{ row: 0 }] });
    expect(asked.report.rows).toMatchObject({ in: 2, added: 0, left: 1 });
    const imported = bring(book, 'roster', text, { ofDiffering: 'take' });
    expect(imported.report.rows).toMatchObject({ updated: 1, added: 0 });
    expect(column(book, 'roster', 'athlete')).toEqual(['Anna Holm', 'Bo Lind', 'Cleo Dahl']);
    expect(column(book, 'roster', 'mass')).toEqual([61, 80, 70]);
  });

  test('with another given name on the same birth date is somebody else', () => {
    const book = club();
    const imported = bring(book, 'roster', 'Athlete,Birth date,Body mass (kg)\nIda Berg,1999-03-04,58\n');
    expect(imported.report.rows).toMatchObject({ added: 1 });
  });
});

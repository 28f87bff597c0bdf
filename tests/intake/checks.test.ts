import { describe, expect, test } from 'vitest';
import type { Plausibility } from '../../src/intake/index.ts';
import { addSheet, bring, column, newBook, wordsOf } from './help.ts';

const plausibility: Plausibility = {
  columns: [
    {
      names: ['femur'],
      dimension: 'length',
      min: 15,
      max: 80,
      because: 'shorter than any adult thigh, or longer',
    },
    { names: ['mass'], dimension: 'mass', min: 10, max: 400 },
  ],
  rows: [
    {
      about: 'segment lengths',
      needs: ['femur', 'tibia'],
      wants: ['stature'],
      check: ([femur, tibia]) => (femur! / tibia! > 1.3 ? 'the femur is long for the tibia' : null),
    },
  ],
};

function rosterBook() {
  const book = newBook();
  addSheet(book, 'roster', [
    [{ name: 'athlete', kind: 'text' }],
    [{ name: 'femur', kind: 'number', dimension: 'length', unit: 'cm' }],
    [{ name: 'tibia', kind: 'number', dimension: 'length', unit: 'cm' }],
    [{ name: 'group', kind: 'choice', choices: ['novice', 'club'] }],
  ]);
  return book;
}

describe('bounds', () => {
  test('metres typed for centimetres are placed, doubted, and the factor is proposed', () => {
    const book = rosterBook();
    const imported = bring(book, 'roster', 'athlete,femur,tibia\nAda,0.43,0.41\nBo,0.45,0.43\n', {
      plausibility,
    });
    expect(column(book, 'roster', 'femur')).toEqual([0.43, 0.45]);
    const words = wordsOf(imported).join('\n');
    expect(words).toMatch(
      /2 values outside 15 to 80 cm \(shorter than any adult thigh, or longer\), such as 0\.43 on line 2/,
    );
    expect(words).toMatch(/middle value is 0\.45 cm.*Read in metres it would be 45 cm/);
  });

  test('a synonym of the trade is bounded like the word itself', () => {
    const book = newBook();
    addSheet(book, 'roster', [[{ name: 'oberschenkel', kind: 'number', dimension: 'length', unit: 'cm' }]]);
    const imported = bring(book, 'roster', 'Oberschenkel\n430\n', { plausibility });
    expect(wordsOf(imported).join('\n')).toMatch(/Read in millimetres it would be 43 cm/);
  });

  test('a factor chosen for the column is used, and remembered in the recipe', () => {
    const book = rosterBook();
    const imported = bring(book, 'roster', 'athlete,femur\nAda,0.43\n', {
      plausibility,
      choices: { columns: { 1: { unit: 'm' } } },
    });
    expect(column(book, 'roster', 'femur')).toEqual([43]);
    expect(imported.recipe.columns[1]).toMatchObject({ heading: 'femur', column: 'femur', unit: 'm' });
  });
});

describe('values that do not make sense together', () => {
  test('are placed, and doubted with the line of the first', () => {
    const book = rosterBook();
    const imported = bring(book, 'roster', 'athlete,femur,tibia\nAda,43,41\nBo,60,40\n', { plausibility });
    expect(imported.doubtfulLines).toEqual([3]);
    expect(wordsOf(imported)).toContain('1 row: the femur is long for the tibia (first on line 3).');
  });
});

describe('choices', () => {
  test('are compared in any case; another word is held with the choices named', () => {
    const book = rosterBook();
    bring(book, 'roster', 'athlete,group\nAda,Club\nBo,pro\n');
    expect(column(book, 'roster', 'group')).toEqual([
      'club',
      { held: 'pro', reason: '"pro" is none of the choices: novice, club. Correct it, or add the choice.' },
    ]);
  });
});

describe('a unit of another kind', () => {
  test('in a cell is held', () => {
    const book = rosterBook();
    bring(book, 'roster', 'athlete,femur\nAda,43\nBo,44 kg\n');
    expect(column(book, 'roster', 'femur')[1]).toMatchObject({
      held: '44 kg',
      reason: expect.stringMatching(/kg.*not a unit of length/),
    });
  });

  test('in a recipe is refused', () => {
    const book = rosterBook();
    const recipe = {
      version: 1 as const,
      title: 'R',
      sheet: 'roster',
      columns: [{ heading: 'femur', column: 'femur', unit: 'kg' }],
    };
    expect(() => bring(book, 'roster', 'femur\n43\n', { recipe })).toThrow(
      /read "femur" in kg \(mass\).*contains length/,
    );
  });
});

describe('equal rows in one file', () => {
  test('are placed and told', () => {
    const book = rosterBook();
    const imported = bring(book, 'roster', 'athlete,femur\nAda,43\nBo,44\nAda,43\n');
    expect(imported.report.rows.placed).toBe(3);
    expect(wordsOf(imported)).toContain(
      '1 row in the file is the same as an earlier one, the first on line 4; all of them were placed.',
    );
  });
});

describe('words that the user chooses', () => {
  test('for missing values hold in texts, too; for yes and no they take the place of ours', () => {
    const book = newBook();
    addSheet(book, 'log', [[{ name: 'note', kind: 'text' }], [{ name: 'pain', kind: 'yes-no' }]]);
    bring(book, 'log', 'note,pain\nnil,hurts\nfine,quiet\nnil,yes\n', {
      choices: { missing: ['nil'], columns: { 1: { yes: ['hurts'], no: ['quiet'] } } },
    });
    expect(column(book, 'log', 'note')).toEqual([null, 'fine', null]);
    expect(column(book, 'log', 'pain')).toEqual([
      true,
      false,
      { held: 'yes', reason: '"yes" is neither yes (hurts) nor no (quiet). Correct it or clear it.' },
    ]);
  });

  test('a decimal mark chosen against the finding turns the other mark into that of thousands', () => {
    const book = newBook();
    addSheet(book, 'log', [[{ name: 'force', kind: 'number' }], [{ name: 'day', kind: 'text' }]]);
    bring(book, 'log', 'force;day\n1.250;a\n1.480;b\n', { choices: { columns: { 0: { decimal: ',' } } } });
    expect(column(book, 'log', 'force')).toEqual([1250, 1480]);
  });
});

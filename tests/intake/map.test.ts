import { describe, expect, test } from 'vitest';
import { readHeading } from '../../src/intake/detect/heading.ts';
import { headingKey } from '../../src/intake/detect/synonyms.ts';
import { addSheet, bring, column, newBook, wordsOf } from './help.ts';

function roster() {
  const book = newBook();
  addSheet(book, 'roster', [
    [{ name: 'athlete', kind: 'text' }],
    [{ name: 'measured', kind: 'date' }],
    [{ name: 'femur', label: 'Thigh bone', kind: 'number', dimension: 'length', unit: 'cm' }],
    [{ name: 'mass', kind: 'number', dimension: 'mass', unit: 'kg' }],
    [{ name: 'ktw_left', label: 'Knee to wall, left', kind: 'number', dimension: 'length', unit: 'cm' }],
    [{ name: 'ktw_right', label: 'Knee to wall, right', kind: 'number', dimension: 'length', unit: 'cm' }],
  ]);
  return book;
}
const fed = (text: string) => {
  const book = roster();
  const { report } = bring(book, 'roster', text);
  return Object.fromEntries(report.columns.map((c) => [c.heading, c.isNew ? `new ${c.column}` : c.column]));
};

describe('headings find their columns', () => {
  test('the axes of a point on a picture are columns of their own, and neither is the joint’s range', () => {
    const book = newBook();
    addSheet(book, 'roster', [
      [{ name: 'athlete', kind: 'text' }],
      [{ name: 'ankle', label: 'Ankle', kind: 'number', dimension: 'angle', unit: 'deg' }],
    ]);
    const { report } = bring(
      book,
      'roster',
      'Athlete,"Ankle, x","Ankle, y"\nA. Demo,120,431\nB. Demo,118,428\n',
    );
    expect(report.columns.filter((one) => one.column === 'ankle')).toEqual([]);
    expect(report.columns.filter((one) => one.isNew).map((one) => one.heading)).toEqual([
      'Ankle, x',
      'Ankle, y',
    ]);
  });
  test('by name, by label, by the words of the trade, sides and units aside', () => {
    expect(fed('Lifter;Thigh bone (mm);Bodyweight (lbs);L Knee-to-wall;KTW R\nAda;430;150;11;12\n')).toEqual({
      Lifter: 'athlete',
      'Thigh bone (mm)': 'femur',
      'Bodyweight (lbs)': 'mass',
      'L Knee-to-wall': 'ktw_left',
      'KTW R': 'ktw_right',
    });
  });

  test('in German and French, too', () => {
    expect(fed('Sportler;Oberschenkellänge (cm);Gewicht (kg)\nAda;43;70\n')).toEqual({
      Sportler: 'athlete',
      'Oberschenkellänge (cm)': 'femur',
      'Gewicht (kg)': 'mass',
    });
    expect(fed('Nom;Cuisse (cm);Poids (kg)\nAda;43;70\n')).toEqual({
      Nom: 'athlete',
      'Cuisse (cm)': 'femur',
      'Poids (kg)': 'mass',
    });
  });

  test('a word of the trade with a unit of another kind means something else', () => {
    // "weight" of a bar in newtons is no body mass.
    expect(fed('Athlete;Weight (N)\nAda;700\n')).toEqual({ Athlete: 'athlete', 'Weight (N)': 'new weight' });
  });

  test('a close spelling and a column alone of its kind are proposed, not taken', () => {
    const book = roster();
    const imported = bring(book, 'roster', 'Athlete;Femurr;Seen\nAda;43;2026-01-05\n');
    expect(imported.proposals).toEqual([
      { heading: 'Femurr', column: 'femur', by: 'spelling' },
      { heading: 'Seen', column: 'measured', by: 'content' },
    ]);
    expect(column(book, 'roster', 'femur')).toEqual([null]);
    expect(wordsOf(imported).join('\n')).toMatch(
      /"Femurr" is close to "femur" in spelling, but was not taken/,
    );
  });

  test('a choice feeds a column or leaves one out', () => {
    const book = roster();
    bring(book, 'roster', 'Athlete;Femurr;Shoe\nAda;43;42\n', {
      choices: { columns: { 1: { feeds: 'femur' }, 2: { feeds: null } } },
    });
    expect(column(book, 'roster', 'femur')).toEqual([43]);
    expect(book.sheets[0]!.columns).toHaveLength(6);
  });

  test('words that users add go before ours', () => {
    const book = roster();
    bring(book, 'roster', 'Athlete;Schlegel\nAda;43\n', { synonyms: [['Schlegel', 'femur']] });
    expect(column(book, 'roster', 'femur')).toEqual([43]);
  });

  test('pasted rows without headings go to the columns in order', () => {
    const book = roster();
    const imported = bring(book, 'roster', 'Ada\t2026-01-05\t43\t61\nBo\t2026-01-06\t44\t88\n');
    expect(column(book, 'roster', 'mass')).toEqual([61, 88]);
    expect(wordsOf(imported)).toContain(
      'The rows have no headings; their cells went to the columns in order: athlete, measured, femur, mass.',
    );
  });
});

describe('headingKey', () => {
  test.each([
    ['Ankle DF (L)', 'ankle df left'],
    ['ankle_df_left', 'ankle df left'],
    ['kneeToWallRight', 'knee to wall right'],
    ['Körpergröße', 'korpergrosse'],
  ])('%s is compared as "%s"', (heading, key) => {
    expect(headingKey(heading)).toBe(key);
  });
});

describe('readHeading', () => {
  test.each([
    ['Femur (cm)', 'Femur', 'cm'],
    ['Femur [mm]', 'Femur', 'mm'],
    ['Load, kg', 'Load', 'kg'],
    ['Load/kg', 'Load', 'kg'],
    ['Length in cm', 'Length', 'cm'],
    ['tibia_mm', 'tibia', 'mm'],
    ['Bar speed m/s', 'Bar speed', 'm/s'],
    ['weightkg', 'weight', 'kg'],
    ['Ankle (°)', 'Ankle', 'deg'],
    ['Left (best) (cm)', 'Left (best)', 'cm'],
    ['Name', 'Name', null],
    ['Rep min', 'Rep min', null],
    ['Notes (private)', 'Notes (private)', null],
    ['Training age, y', 'Training age', null],
    ['Age (y)', 'Age', null],
    ['Ankle, y', 'Ankle, y', null],
    ['Ankle (x)', 'Ankle (x)', null],
    ['Ankle (y)', 'Ankle (y)', null],
  ])('%s', (heading, label, unit) => {
    const read = readHeading(heading);
    expect([read.label, read.unit?.unit ?? null]).toEqual([label, unit]);
  });
});

test('a letter alone is the choice that it begins, and the report says so', () => {
  const book = newBook();
  addSheet(book, 'roster', [
    [{ name: 'athlete', kind: 'text' }],
    [{ name: 'sex', kind: 'choice', choices: ['female', 'male'] }],
  ]);
  const imported = bring(book, 'roster', 'athlete,sex\nAda,F\nBo,m\nCy,male\nDee,d\n');
  expect(column(book, 'roster', 'sex').slice(0, 3)).toEqual(['female', 'male', 'male']);
  expect(column(book, 'roster', 'sex')[3]).toMatchObject({ held: 'd' });
  expect(wordsOf(imported).join('\n')).toContain(
    '2 cells with a letter that starts one of the choices, such as "F"; it was taken for female.',
  );
});

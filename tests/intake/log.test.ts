import { describe, expect, test } from 'vitest';
import type { Choices } from '../../src/intake/index.ts';
import { addSheet, bring, column, newBook, wordsOf } from './help.ts';

/** By hand: one pound is 0.45359237 kg and one inch 2.54 cm (international yard and pound agreement of 1 July 1959). */
const pounds = {
  2.5: 1.133980925,
  10: 4.5359237,
  40: 18.1436948,
  50: 22.6796185,
  225: 102.05828325,
} as const;

function into(columns: Parameters<typeof addSheet>[2], text: string, choices: Choices = {}) {
  const book = newBook();
  addSheet(book, 'log', columns);
  return { book, imported: bring(book, 'log', text, { choices }) };
}

const load = { name: 'load', label: 'Load', kind: 'number', dimension: 'mass', unit: 'kg' } as const;
const reps = { name: 'reps', label: 'Reps', kind: 'number' } as const;
const exercise = { name: 'exercise', label: 'Exercise', kind: 'text' } as const;

describe('a column of units beside a number', () => {
  test('gives each row its unit: 225 lb never becomes 225 kg', () => {
    const { book, imported } = into(
      [[exercise], [load], [reps]],
      'Exercise,Weight,Reps,Unit\nSquat,225,5,lb\nSquat,100,5,kg\nSquat,2.5,8,LBS\n',
    );
    expect(column(book, 'log', 'load')).toEqual([pounds[225], 100, pounds[2.5]]);
    expect(wordsOf(imported)).toContain('Column "Unit" gives the unit of Weight, row by row.');
    const [, weight] = imported.findings.columns;
    expect(weight!.unit.because).toMatchObject({
      reason: 'units-in-column',
      details: { heading: 'Unit', units: '2 lb, 1 kg' },
    });
    expect(imported.report.columns.some(({ column: name }) => name === 'unit')).toBe(false);
  });

  test('in centimetres and inches, named by its heading, goes with that number alone', () => {
    const { book } = into(
      [
        [{ name: 'stature', label: 'Stature', kind: 'number', dimension: 'length', unit: 'cm' }],
        [{ name: 'femur', label: 'Femur', kind: 'number', dimension: 'length', unit: 'cm' }],
      ],
      'Height,Height unit,Femur\n70,in,44\n180,cm,45\n',
    );
    expect(column(book, 'log', 'stature')).toEqual([70 * 2.54, 180]);
    expect(column(book, 'log', 'femur')).toEqual([44, 45]);
  });

  test('makes a number without a unit, or with one that is not known, unreadable', () => {
    const { book } = into(
      [[exercise], [load]],
      `Exercise,Load,Unit\n${'Squat,100,kg\n'.repeat(12)}Squat,90,\nSquat,80,plates\n`,
    );
    const cells = column(book, 'log', 'load');
    expect(cells.slice(0, 12)).toEqual(Array(12).fill(100));
    expect(cells[12]).toMatchObject({
      held: '90',
      reason: expect.stringContaining('has no unit in its row'),
    });
    expect(cells[13]).toMatchObject({ held: '80', reason: expect.stringContaining('"plates"') });
  });

  test('that may be for several numbers is asked about, and goes by the answer', () => {
    const text = 'Athlete,Body mass,Load,Reps,Unit\nAda,150,225,5,lb\nBo,80,100,5,kg\n';
    const mass = { name: 'mass', label: 'Body mass', kind: 'number', dimension: 'mass', unit: 'kg' } as const;
    const { imported } = into([[load], [reps], [mass]], text);
    expect(imported.report.notes).toContainEqual(
      expect.objectContaining({
        reason: 'column-doubt',
        details: expect.objectContaining({ heading: 'Unit', about: 'unitsOf' }),
      }),
    );
    const { book, imported: sure } = into([[load], [reps], [mass]], text, {
      columns: { 4: { unitsOf: [2] } },
    });
    expect(sure.report.notes.some(({ reason }) => reason === 'column-doubt')).toBe(false);
    expect(column(book, 'log', 'load')).toEqual([pounds[225], 100]);
    expect(column(book, 'log', 'mass')).toEqual([150, 80]);
  });

  test('is remembered by the import settings, which miss it where a file lacks it', () => {
    const { book, imported } = into([[exercise], [load]], 'Exercise,Load,Unit\nSquat,225,lb\nSquat,100,kg\n');
    expect(imported.recipe.columns.find((c) => c.column === 'load')).toMatchObject({ unitsIn: 'Unit' });
    const next = { recipe: imported.recipe };
    bring(book, 'log', 'Exercise,Load,Unit\nPress,50,lb\nPress,40,lb\n', next);
    expect(column(book, 'log', 'load').slice(2)).toEqual([pounds[50], pounds[40]]);
    expect(() => bring(book, 'log', 'Exercise,Load\nPress,51\n', next)).toThrow(/has no column "Unit"/);
  });

  test('is no column of codes: m and f beside a number stay texts', () => {
    const { imported } = into([[load]], 'Load,Code\n100,m\n90,m\n80,m\n');
    expect(imported.findings.columns[1]!.unitsOf).toBeNull();
  });
});

describe('a few times in a column of numbers', () => {
  test('are unreadable and never make the others minutes', () => {
    const book = newBook();
    addSheet(book, 'log', []);
    const numbers = Array.from({ length: 10 }, (_, i) => `${i + 1}`);
    const imported = bring(book, 'log', `Score\n${[...numbers, '1:30', '2:15'].join('\n')}\n`);
    const [score] = imported.findings.columns;
    expect(score).toMatchObject({ dimension: null, unfit: 2 });
    expect(column(book, 'log', 'score').slice(0, 10)).toEqual(numbers.map(Number));
    expect(column(book, 'log', 'score')[10]).toMatchObject({ held: '1:30' });
    expect(imported.report.notes.some(({ reason }) => reason === 'column-doubt')).toBe(false);
  });

  test('under a heading that says a duration are read as times', () => {
    const { book } = into(
      [[{ name: 'minutes', label: 'Minutes', kind: 'number', dimension: 'duration', unit: 'min' }]],
      'Minutes\n75\n1:30\n60\n45\n90\n',
      { columns: { 0: { clock: 'h:mm' } } },
    );
    expect(column(book, 'log', 'minutes')).toEqual([75, 90, 60, 45, 90]);
  });
});

describe('durations', () => {
  const made = (text: string) => {
    const book = newBook();
    addSheet(book, 'log', []);
    bring(book, 'log', text, { choices: { columns: { 1: { clock: 'h:mm' } } } });
    return book.sheets[0]!.columns[1];
  };
  test('in hours stay in hours, written as numbers or as hours and minutes', () => {
    expect(made('Day,Sleep (h)\n2026-03-02,7.25\n2026-03-03,8\n')).toMatchObject({
      dimension: 'duration',
      unit: 'h',
    });
    expect(made('Day,Sleep\n2026-03-02,7:15\n2026-03-03,8:05\n')).toMatchObject({
      dimension: 'duration',
      unit: 'h',
    });
  });
});

describe('a log with a row for each set', () => {
  const text = 'Day,Exercise,Set,Weight (kg),Reps\n2026-03-02,Squat,1,100,5\n2026-03-02,Squat,2,100,4\n';
  const sets = { name: 'sets', label: 'Sets', kind: 'number' } as const;

  test('asks whether each row is one set', () => {
    const { imported } = into([[exercise], [sets], [reps], [load]], text);
    expect(imported.report.notes).toContainEqual(
      expect.objectContaining({
        reason: 'column-doubt',
        details: expect.objectContaining({ about: 'rowIsSet' }),
      }),
    );
  });

  test('counts one set in each row where it is, and the next file is not asked about', () => {
    const { book, imported } = into([[exercise], [sets], [reps], [load]], text, { rowIsSet: true });
    expect(column(book, 'log', 'sets')).toEqual([1, 1]);
    expect(column(book, 'log', 'load')).toEqual([100, 100]);
    const again = bring(book, 'log', text.replaceAll('03-02', '03-09'), { recipe: imported.recipe });
    expect(column(book, 'log', 'sets')).toEqual([1, 1, 1, 1]);
    expect(again.report.notes.some(({ reason }) => reason === 'column-doubt')).toBe(false);
  });

  test('makes a column of sets where the sheet has none', () => {
    const book = newBook();
    addSheet(book, 'log', []);
    bring(book, 'log', text, { choices: { rowIsSet: true } });
    expect(column(book, 'log', 'sets')).toEqual([1, 1]);
  });

  test('is not asked about where the file counts its sets', () => {
    const { imported } = into([[exercise]], 'Exercise,Set,Sets,Reps\nSquat,1,3,5\nSquat,2,3,5\n');
    expect(imported.findings.rowIsSet).toBeNull();
  });
});

describe('“Weight”', () => {
  test('is the load in a log and body mass in a roster', () => {
    const mass = { name: 'mass', label: 'Body mass', kind: 'number', dimension: 'mass', unit: 'kg' } as const;
    const { book } = into([[mass], [load], [reps]], 'Weight,Reps\n100,5\n90,3\n');
    expect(column(book, 'log', 'load')).toEqual([100, 90]);
    expect(column(book, 'log', 'mass')).toEqual([null, null]);
    const { book: roster } = into([[mass], [load]], 'Name,Weight\nAda,62\nBo,80\n');
    expect(column(roster, 'log', 'mass')).toEqual([62, 80]);
  });

  test('is called the load in a new sheet made from a log', () => {
    const book = newBook();
    addSheet(book, 'log', []);
    const imported = bring(book, 'log', 'Exercise,Weight (lb),Reps\nSquat,225,5\nSquat,10,5\n');
    expect(column(book, 'log', 'load')).toEqual([pounds[225], pounds[10]]);
    expect(wordsOf(imported)).toContain(
      'Column "Weight (lb)" is the load here, as in a training log, not body mass.',
    );
  });
});

describe('unreadable cells', () => {
  const text =
    'Load (kg),Reps\nheavy,5\n100,5\nheavy,3\n90,3\nskip,3\n80,2\n70,2\n60,1\n50,1\n40,1\nheavy,1\n';

  test('are grouped by column, text and reason', () => {
    const { imported } = into([[load], [reps]], text);
    expect(imported.unreadable.map(({ index, text: t, count, line }) => [index, t, count, line])).toEqual([
      [0, 'heavy', 3, 2],
      [0, 'skip', 1, 6],
    ]);
  });

  test('of one text are cleared, or read as another, all at once; the settings remember it', () => {
    const { book, imported } = into([[load], [reps]], text, {
      columns: { 0: { readAs: { heavy: '110', skip: '' } } },
    });
    expect(imported.unreadable).toEqual([]);
    expect(imported.report.rows).toMatchObject({ in: 11, placed: 11 });
    expect(column(book, 'log', 'load')).toEqual([110, 100, 110, 90, null, 80, 70, 60, 50, 40, 110]);
    bring(book, 'log', 'Load (kg),Reps\nheavy,7\n', { recipe: imported.recipe });
    expect(column(book, 'log', 'load').at(-1)).toBe(110);
  });
});

import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { preparing } from '../../src/session/imports/prepare-import.ts';
import { Session } from '../../src/session/session.ts';

/** A log with a row for each set: a set number, no count of sets, no minutes, no exertion. */
const log = [
  'Date,Exercise,Set,Weight,Unit,Reps',
  '2026-03-02,Back squat,1,100,kg,5',
  '2026-03-02,Back squat,2,225,lb,5',
  '2026-03-04,Back squat,1,110,kg,3',
  '2026-03-09,Back squat,1,105,kg,5',
].join('\n');

let session: Session;
beforeAll(() => {
  session = Session.open(readFileSync('sample-books/templates/two-years-of-squats.leverbook.json', 'utf8'));
  const sheet = session.outline().sheets.find(({ name }) => name === 'training')!.id;
  const work = preparing(session, {
    bytes: new TextEncoder().encode(log),
    name: 'log.csv',
    sheet,
    now: '2026-03-10T08:00:00.000Z',
    rest: 'ignore',
    choices: { rowIsSet: true },
  });
  for (;;) {
    const step = work.next();
    if (!step.done) continue;
    expect(session.writePlanned(step.value).ok).toBe(true);
    break;
  }
  // What was imported leaves its values to whoever waits for them; until then a cell shows what it had before.
  for (const _ of session.recalculate());
  expect(session.stale).toBe(false);
});

/** The cells of a column as the page shows them. */
function shown(sheet: string, name: string, rows: number): readonly string[] {
  const of = session.outline().sheets.find((one) => one.name === sheet)!;
  const at = of.columns.findIndex((one) => one.name === name);
  return session.tile(of.id, 0, rows, at, 1).texts;
}

describe('a log with a row for each set, in a new sheet', () => {
  test('has a column of tonnage, set by set, in the unit of its loads; blank where a part is missing', () => {
    const made = Session.create();
    const work = preparing(made, {
      bytes: new TextEncoder().encode(`${log}\n2026-03-11,Back squat,1,105,kg,\n`),
      name: 'log.csv',
      sheet: null,
      now: '2026-03-12T08:00:00.000Z',
      choices: { rowIsSet: true },
    });
    for (;;) {
      const step = work.next();
      if (!step.done) continue;
      expect(step.value.imported.report.notes).toContainEqual(
        expect.objectContaining({
          reason: 'column-computed',
          details: expect.objectContaining({ column: 'Tonnage' }),
        }),
      );
      expect(made.writePlanned(step.value).ok).toBe(true);
      break;
    }
    for (const _ of made.recalculate());
    const [sheet] = made.outline().sheets;
    const at = sheet!.columns.findIndex(({ label }) => label === 'Tonnage');
    expect(sheet!.columns[at]).toMatchObject({ dimension: 'mass', unit: 'kg' });
    // By hand, as below; the last row has no repetitions.
    expect(made.tile(sheet!.id, 0, 5, at, 1).texts).toEqual(['500', '510', '330', '525', '']);
  });
});

describe('a log with a row for each set, in the book for a lifter', () => {
  test('has its tonnage, set by set and by week', () => {
    // By hand: 5 × 100, 5 × 225 × 0.45359237 = 510.29, 3 × 110 and 5 × 105 kg.
    expect(shown('training', 'volume', 4)).toEqual(['500', '510', '330', '525']);
    expect(shown('weeks', 'week_volume', 2)).toEqual(['1340', '525']);
  });

  test('counts the days with a row as sessions, where no minutes are logged', () => {
    expect(shown('weeks', 'sessions', 2)).toEqual(['2', '1']);
    expect(shown('glance', 'figure', 1)).toEqual(['3.00']);
  });

  test('leaves blank what nothing in it can tell', () => {
    expect(shown('weeks', 'week_load', 2)).toEqual(['', '']);
    expect(shown('training', 'session_load', 4)).toEqual(['', '', '', '']);
  });

  test('says that the main exercise is called otherwise', () => {
    expect(session.doubts()).toMatchObject([{ about: 'setting', choices: ['Back squat'] }]);
  });
});

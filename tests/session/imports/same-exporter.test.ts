import { describe, expect, test } from 'vitest';
import type { FileDecisions } from '../../../src/session/imports/file-reading.ts';
import { type Read, readingFile } from '../../../src/session/imports/read-file.ts';
import { Session } from '../../../src/session/session.ts';

async function read(session: Session, text: string, decisions: FileDecisions): Promise<Read> {
  const work = await readingFile(session, new TextEncoder().encode(text), 'export.csv', decisions);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

const log = (mark = ',') =>
  [
    ['Athlete', 'Day', 'Set', 'Reps', 'Load'],
    ['Ada', '03/04/2026', '1', '5', 'bar'],
    ['Ada', '05/06/2026', '2', '5', '60'],
    ['Bo', '07/08/2026', '1', '3', '80'],
    ['Bo', '07/08/2026', '2', '3', '85'],
  ]
    .map((cells) => cells.join(mark))
    .join('\n');

async function imported(): Promise<Session> {
  const session = Session.create();
  const { prepared, reading } = await read(session, log(), {
    sheet: null,
    choices: {
      rowIsSet: true,
      columns: { 1: { dateOrder: 'mdy' }, 4: { readAs: { bar: '20' }, unit: 'kg' } },
    },
  });
  expect(reading.questions).toEqual([]);
  expect(session.writePlanned(prepared).ok).toBe(true);
  return session;
}

describe('a file of an exporter that was imported before, into another sheet', () => {
  test('is read as the one before: date order, sets, units and texts are not asked about again', async () => {
    const session = await imported();
    const { reading } = await read(session, log(), { sheet: null });
    expect(reading).toMatchObject({ recipe: null, like: 'export: export.csv', questions: [] });
    expect(reading.unreadable).toEqual([]);
    expect(reading.columns.find(({ heading }) => heading === 'Day')?.dateOrder?.value).toBe('mdy');
    expect(reading.columns.find(({ heading }) => heading === 'Load')?.written.value).toBe('kg');
  });

  test('goes by what is decided for this file first', async () => {
    const session = await imported();
    const { reading } = await read(session, log(), {
      sheet: null,
      choices: { columns: { 1: { dateOrder: 'dmy' } } },
    });
    expect(reading.columns.find(({ heading }) => heading === 'Day')?.dateOrder?.value).toBe('dmy');
    expect(reading.questions).toEqual([]);
  });

  test('with another delimiter or other headings is of another exporter, and asked about', async () => {
    const session = await imported();
    for (const other of [log(';'), log().replace('Load', 'Weight')]) {
      const { reading } = await read(session, other, { sheet: null });
      expect(reading.like).toBeNull();
      expect(reading.questions.length).toBeGreaterThan(0);
    }
  });
});

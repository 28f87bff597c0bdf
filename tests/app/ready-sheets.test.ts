import { describe, expect, test } from 'vitest';
import { type Ready, readySheet } from '../../src/app/ready/ready-sheets.ts';
import { Session } from '../../src/session/session.ts';

/** A book with ready-made sheets, added one after the other as from the page. */
function bookWith(...which: readonly Ready[]): Session {
  const session = Session.create({ locale: { decimal: '.', dateOrder: 'ymd' } });
  for (const one of which) expect(session.execute(readySheet(one, session.outline().sheets)).ok).toBe(true);
  return session;
}

function enter(session: Session, label: string, values: Readonly<Record<string, string>>): void {
  const sheet = session.outline().sheets.find((one) => one.label === label)!;
  const columns = Object.keys(values).map((name) => sheet.columns.find((c) => c.name === name)!.id);
  const row = sheet.rows;
  const done = session.execute({
    do: 'set-cells',
    sheet: sheet.id,
    row,
    columns,
    texts: [Object.values(values)],
  });
  expect(done.ok).toBe(true);
}

function shown(session: Session, label: string, name: string, row = 0): string {
  const sheet = session.outline().sheets.find((one) => one.label === label)!;
  const column = sheet.columns.findIndex((one) => one.name === name);
  return session.tile(sheet.id, row, 1, column, 1).texts[0]!;
}

const build = { athlete: 'Ada', femur: '42', tibia: '41', trunk: '51' };

describe('a ready-made sheet', () => {
  // posture.csv: LEAN.PARALLEL and LEAN.ERROR(1, 2, …) of 42, 41, 51 cm and 38°, from a model solved independently.
  test('of body lengths gives the minimum lean and its error', () => {
    const session = bookWith('body lengths');
    enter(session, 'Body lengths', { ...build, ankle: '38' });
    expect(shown(session, 'Body lengths', 'lean')).toBe('32');
    expect(shown(session, 'Body lengths', 'lean_error')).toBe('2');
    expect(shown(session, 'Body lengths', 'lengths_check')).toBe('ok');
  });

  test('is blank, not wrong, where a row has measures missing', () => {
    const session = bookWith('body lengths', 'training log', 'wall test');
    enter(session, 'Body lengths', { athlete: 'Ada' });
    enter(session, 'Training log', { athlete: 'Ada' });
    enter(session, 'Wall test', { athlete: 'Bo' });
    for (const sheet of session.outline().sheets)
      for (const { name, formula } of sheet.columns)
        if (formula !== undefined)
          expect(shown(session, sheet.label, name), `${sheet.label} ${name}`).toBe('');
  });

  // Volume is sets × reps × load (common practice); session load is RPE × minutes (Foster et al. 2001, J Strength Cond Res
  // 15:109–115); Epley 1985: 100 kg × (1 + 6/30) with 5 repetitions done and one in reserve.
  test('of training gives volume, estimated 1RM and session load', () => {
    const session = bookWith('training log');
    const row = { athlete: 'Ada', sets: '3', reps: '5', load: '100', rpe: '9', exertion: '7', minutes: '60' };
    enter(session, 'Training log', row);
    expect(shown(session, 'Training log', 'volume')).toBe('1500');
    expect(shown(session, 'Training log', 'max_estimate')).toBe('120.0');
    expect(shown(session, 'Training log', 'session_load')).toBe('420');
  });

  // posture.csv: ANKLE.FROM.WALL(11.7, 41.875, 27.118) is 40.2178°.
  test('of a wall test takes the mean of its trials, and lengths from the sheet that has them', () => {
    const session = bookWith('body lengths', 'wall test');
    enter(session, 'Body lengths', { ...build, tibia: '41.875', foot: '27.118' });
    const left = { left_1: '11.6', left_2: '11.8', left_3: '11.7' };
    enter(session, 'Wall test', { athlete: 'Ada', ...left, right_1: '12', right_2: '12' });
    expect(shown(session, 'Wall test', 'wall_left')).toBe('11.7');
    expect(shown(session, 'Wall test', 'ankle')).toBe('40');
  });

  test('of body lengths takes the ankle range from a wall test that was there first', () => {
    const session = bookWith('wall test', 'body lengths');
    const lengths = { tibia: '41.875', foot: '27.118' };
    enter(session, 'Wall test', { athlete: 'Ada', left_1: '11.7', right_1: '12', ...lengths });
    enter(session, 'Body lengths', build);
    enter(session, 'Body lengths', { ...build, athlete: 'Nobody tested' });
    expect(shown(session, 'Body lengths', 'ankle')).toBe('40');
    expect(shown(session, 'Body lengths', 'ankle', 1)).toBe('');
  });
});

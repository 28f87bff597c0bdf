import { describe, expect, test } from 'vitest';
import type { Command } from '../../src/session/commands/index.ts';
import { Session } from '../../src/session/session.ts';

function log(): Session {
  const session = Session.create();
  const run = (command: Command) => expect(session.execute(command)).toMatchObject({ ok: true });
  run({
    do: 'add-sheet',
    name: 'log',
    columns: [{ name: 'load', label: 'Load', dimension: 'mass' }, { name: 'reps' }],
  });
  run({
    do: 'set-cells',
    sheet: 'log',
    row: 0,
    columns: ['load', 'reps'],
    texts: [
      ['heavy', '5'],
      ['heavy', 'x'],
      ['100', '3'],
      ['light', '3'],
      ['heavy', '2'],
    ],
  });
  return session;
}

const loads = (session: Session) => session.tile('log', 0, 5, 0, 1).texts;
const groups = (session: Session) =>
  session.unreadable('log').groups.map(({ column, text, rows }) => [column, text, rows]);
const reasonOf = (session: Session, text: string) =>
  session.unreadable('log').groups.find((one) => one.text === text)!.reason;

describe('unreadable cells of a sheet', () => {
  test('are grouped by column, text and reason, the most frequent first, with every row', () => {
    expect(groups(log())).toEqual([
      ['load', 'heavy', [0, 1, 4]],
      ['load', 'light', [3]],
      ['reps', 'x', [1]],
    ]);
    expect(log().unreadable('log').count).toBe(5);
  });

  test('of one text are read as another all at once, and one undo brings them back', () => {
    const session = log();
    const reason = reasonOf(session, 'heavy');
    const done = session.execute({
      do: 'read-unreadable',
      sheet: 'log',
      column: 'load',
      text: 'heavy',
      reason,
      as: '225 lb',
    });
    expect(done.ok).toBe(true);
    // 225 × 0.45359237 (international yard and pound agreement of 1 July 1959).
    expect(session.evaluate('=SUM(log.load)')).toBeCloseTo(3 * 102.05828325 + 100, 9);
    expect(groups(session)).toEqual([
      ['load', 'light', [3]],
      ['reps', 'x', [1]],
    ]);
    session.undo();
    expect(loads(session)).toEqual(['heavy', 'heavy', '100', 'light', 'heavy']);
  });

  test('of one text are cleared all at once', () => {
    const session = log();
    const reason = reasonOf(session, 'heavy');
    session.execute({ do: 'read-unreadable', sheet: 'log', column: 'load', text: 'heavy', reason, as: '' });
    expect(loads(session)).toEqual(['', '', '100', 'light', '']);
  });

  test('stay as they are when the other text cannot be read either', () => {
    const session = log();
    const reason = reasonOf(session, 'heavy');
    const done = session.execute({
      do: 'read-unreadable',
      sheet: 'log',
      column: 'load',
      text: 'heavy',
      reason,
      as: 'very heavy',
    });
    expect(done).toMatchObject({ ok: false, sentence: expect.stringContaining('very heavy') });
    expect(groups(session)).toHaveLength(3);
  });
});

import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { CellMark } from '../../src/session/sheet/cell-mark.ts';

function log(exercises: readonly string[], setting: string): Session {
  const session = Session.create();
  session.execute({
    do: 'add-sheet',
    name: 'training',
    columns: [
      { name: 'exercise', kind: 'text' },
      { name: 'load', dimension: 'mass' },
    ],
  });
  session.execute({
    do: 'add-sheet',
    name: 'assumptions',
    columns: [{ name: 'word', kind: 'text' }],
  });
  session.execute({ do: 'set-cells', sheet: 'assumptions', row: 0, columns: ['word'], texts: [[setting]] });
  session.execute({ do: 'name-cell', name: 'main_lift', sheet: 'assumptions', column: 'word', row: 0 });
  session.execute({
    do: 'set-cells',
    sheet: 'training',
    row: 0,
    columns: ['exercise', 'load'],
    texts: exercises.map((one) => [one, '100']),
  });
  session.execute({
    do: 'add-column',
    sheet: 'training',
    column: { name: 'best', formula: 'IF(exercise = main_lift, load, "")' },
  });
  return session;
}

describe('a setting that names an exercise', () => {
  test('says so when no row has it, and offers the exercises found, the most frequent first', () => {
    const found = log(['Press', 'Back squat', 'Back squat'], 'Squat').doubts();
    expect(found).toMatchObject([
      { about: 'setting', choices: ['Back squat', 'Press'], place: { column: 'word', row: 0 } },
    ]);
    expect(found[0]!.sentence).toBe(
      'The setting “main lift” is “Squat”, and no row of training has that exercise. Found: Back squat (2 rows), Press (1 row).',
    );
  });

  test('offers the exercises found in its own cell, and says there when none of them matches', () => {
    const session = log(['Press', 'Back squat', 'Back squat'], 'Squat');
    const tile = session.tile('assumptions', 0, 1, 0, 1);
    expect(tile.offers).toEqual([{ row: 0, column: 0, choices: ['Back squat', 'Press'] }]);
    expect(tile.marks[0]! & CellMark.unmatched).toBe(CellMark.unmatched);
    expect(session.cellInfo({ sheet: 'assumptions', column: 'word', row: 0 }).sentence).toMatch(
      /no row of training has that exercise/,
    );
    session.execute({ do: 'set-cells', sheet: 'assumptions', row: 0, columns: ['word'], texts: [['Press']] });
    const after = session.tile('assumptions', 0, 1, 0, 1);
    expect(after.offers).toHaveLength(1);
    expect(after.marks[0]! & CellMark.unmatched).toBe(0);
    expect(session.cellInfo({ sheet: 'assumptions', column: 'word', row: 0 }).sentence).toBeUndefined();
  });

  test('says nothing when a row has it, in any case, or when the log is empty', () => {
    expect(log(['back Squat'], 'Back squat').doubts()).toEqual([]);
    expect(log([], 'Squat').doubts()).toEqual([]);
  });

  test('is found again under every new name of its column, sheet and cell, and of a formula that came before it', () => {
    const session = log(['Press', 'Back squat'], 'Squat');
    const run = (command: Parameters<Session['execute']>[0]) =>
      expect(session.execute(command)).toMatchObject({ ok: true });
    const sentences = () => session.doubts().map(({ sentence }) => sentence);
    const [before] = session.doubts();
    run({ do: 'accept-doubt', key: before!.key, reason: 'Squats start next week.' });
    run({
      do: 'change-column',
      sheet: 'training',
      column: 'exercise',
      change: { name: 'what', label: 'Done' },
    });
    run({ do: 'change-sheet', sheet: 'training', change: { name: 'diary', label: 'Diary' } });
    run({ do: 'rename-name', name: 'main_lift', to: 'chosen' });
    expect(sentences()).toEqual([
      'The setting “chosen” is “Squat”, and no row of Diary has that exercise. Found: Press (1 row), Back squat (1 row).',
    ]);
    expect(session.doubts()[0]!.accepted?.reason).toBe('Squats start next week.');
    // A free cell alone compares; its formula is there before the name is.
    run({ do: 'remove-column', sheet: 'training', column: 'best' });
    expect(sentences()).toEqual([]);
    run({ do: 'add-sheet', name: 'glance', rows: 1, columns: [{ name: 'figure' }] });
    const texts = [['=COUNTIFS(diary.what, chosen)']];
    run({ do: 'set-cells', sheet: 'glance', row: 0, columns: ['figure'], texts });
    expect(sentences()).toHaveLength(1);
    run({ do: 'rename-name', name: 'chosen', to: 'picked' });
    expect(sentences()[0]).toMatch(/^The setting “picked”/);
  });
});

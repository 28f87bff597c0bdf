import { describe, expect, test } from 'vitest';
import type { Command } from '../../src/session/commands/index.ts';
import { Session } from '../../src/session/session.ts';
import type { OwnSummary } from '../../src/session/sheet/sheet-view.ts';

const run = (session: Session, command: Command) => {
  const done = session.execute(command);
  if (!done.ok) throw new Error(done.sentence);
  return done;
};

/** Six lifters of two groups, invented. */
function club(summaries: readonly OwnSummary[] = [], rows = {}): Session {
  const session = Session.create();
  run(session, {
    do: 'add-sheet',
    name: 'roster',
    columns: [
      { name: 'squad', kind: 'choice', choices: ['a', 'b'] },
      { name: 'femur', dimension: 'length', unit: 'in', format: { digits: 1 } },
      { name: 'lean', dimension: 'angle', format: { digits: 0 } },
      { name: 'tested', kind: 'date' },
    ],
  });
  run(session, {
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['squad', 'femur', 'lean', 'tested'],
    texts: [
      ['a', '15', '30', '2025-03-01'],
      ['a', '16', '34', '2025-03-02'],
      ['b', '17', '41', '2025-03-03'],
      ['b', '18', '44', '2025-03-04'],
      ['b', '', '50', ''],
    ],
  });
  if (summaries.length > 0)
    run(session, {
      do: 'set-part',
      part: 'views',
      key: 'roster',
      value: JSON.parse(JSON.stringify({ rows, summaries })),
    });
  return session;
}
const own = (session: Session, column: string, rows?: readonly number[]) =>
  session.summaries('roster', rows && Int32Array.from(rows))[column]?.own;
const view = (session: Session, sheet = 'roster') =>
  session.outline().sheets.find(({ id }) => id === sheet)?.view;

describe('a column’s own summary', () => {
  test('is a formula over the rows: all of them, or those of a group', () => {
    const session = club([{ column: 'lean', formula: 'MEDIAN(lean)' }]);
    expect(own(session, 'lean')).toEqual({ text: '41.0' });
    expect(own(session, 'lean', [0, 1])).toEqual({ text: '32.0' });
    expect(own(session, 'lean', [2, 3, 4])).toEqual({ text: '44.0' });
    expect(own(session, 'femur')).toBeUndefined();
  });

  test('may set the rows against the whole column, and use named cells', () => {
    const session = club([
      { column: 'lean', formula: 'AVERAGE(lean) - AVERAGE(roster.lean) + aim', plain: true },
    ]);
    run(session, { do: 'name-cell', sheet: 'roster', column: 'femur', row: 0, name: 'aim' });
    // 47 − 39.8 + 15 in, which are 38.1 cm
    expect(own(session, 'lean', [3, 4])).toEqual({ text: '45.3' });
  });

  test('is written in the column’s unit, or as a plain number', () => {
    const mean: OwnSummary = { column: 'femur', formula: 'AVERAGE(femur)' };
    expect(own(club([mean]), 'femur')).toEqual({ text: '16.50' });
    // Smallest worthwhile change, .2 × SD of 15, 16, 17 and 18 in (1.291 in): Hopkins 2000, Sports Med 30:1–15.
    expect(own(club([{ column: 'femur', formula: 'TEST.SWC(femur)' }]), 'femur')).toEqual({ text: '0.26' });
    expect(own(club([{ column: 'femur', formula: 'COUNT(femur)', plain: true }]), 'femur')).toEqual({
      text: '4',
    });
    expect(own(club([{ column: 'tested', formula: 'MAX(tested)' }]), 'tested')).toEqual({
      text: '4 Mar 2025',
    });
    expect(own(club([{ column: 'tested', formula: 'COUNT(tested)', plain: true }]), 'tested')).toEqual({
      text: '4',
    });
    expect(own(club([{ column: 'squad', formula: 'INDEX(squad, 1)' }]), 'squad')).toEqual({ text: 'a' });
  });

  test('that cannot be worked out says why', () => {
    const said = (formula: string) => own(club([{ column: 'lean', formula }]), 'lean');
    expect(said('lean * 2')).toEqual({
      text: '#SPILL!',
      sentence: 'The formula returns 5 values, but a summary shows one. Combine them, as in MEDIAN(lean).',
    });
    expect(said('MEDIAN(laen)')).toMatchObject({ text: '#NAME?', sentence: expect.stringMatching(/laen/) });
    expect(club().triedSummary('roster', 'lean', { formula: 'MEDIAN(' })).toMatchObject({
      text: '',
      sentence: expect.stringMatching(/\S/),
    });
  });

  test('is tried over the rows that the sheet’s conditions show', () => {
    const session = club([{ column: 'femur', statistic: 'sd' }], {
      where: [{ column: 'squad', is: 'one of', texts: ['b'] }],
    });
    expect(session.triedSummary('roster', 'lean', { formula: 'MIN(lean)' })).toEqual({ text: '41.0' });
  });
});

describe('what a summary names', () => {
  const made = () =>
    club([
      { column: 'lean', formula: 'MEDIAN(lean) - aim', says: 'over' },
      { column: 'femur', statistic: 'sd' },
    ]);
  const undone = (session: Session, command: Command) => {
    const before = session.save();
    run(session, command);
    const after = session.save();
    session.undo();
    expect(session.save()).toBe(before);
    session.redo();
    expect(session.save()).toBe(after);
  };

  test('goes along with a new name, and undo brings it back byte for byte', () => {
    const session = made();
    run(session, { do: 'name-cell', sheet: 'roster', column: 'lean', row: 0, name: 'aim' });
    undone(session, { do: 'change-column', sheet: 'roster', column: 'lean', change: { name: 'tilt' } });
    undone(session, { do: 'rename-name', name: 'aim', to: 'target' });
    expect(view(session)?.summaries?.[0]).toMatchObject({ formula: 'MEDIAN(tilt) - target' });
    undone(session, { do: 'remove-name', name: 'target' });
    expect(view(session)?.summaries?.[0]).toMatchObject({ formula: 'MEDIAN(tilt) - #REF!target' });
  });

  test('goes with its column and its sheet; another sheet of the same id begins without', () => {
    const session = made();
    undone(session, { do: 'remove-column', sheet: 'roster', column: 'femur' });
    expect(view(session)?.summaries).toHaveLength(1);
    undone(session, { do: 'remove-sheet', sheet: 'roster' });
    run(session, { do: 'add-sheet', name: 'roster', columns: [{ name: 'x' }] });
    expect(view(session)).toBeUndefined();
  });

  test('is copied with the column and the sheet, and means the copy', () => {
    const session = made();
    undone(session, { do: 'duplicate-column', sheet: 'roster', column: 'lean' });
    expect(view(session)?.summaries?.at(-1)).toMatchObject({
      column: 'lean_2',
      formula: 'MEDIAN(lean_2) - aim',
    });
    undone(session, { do: 'duplicate-sheet', sheet: 'roster' });
    expect(view(session, 'roster_2')).toEqual(view(session));
  });

  test('a column that goes takes conditions, order and groups by it along', () => {
    const session = club([{ column: 'lean', statistic: 'most' }], {
      where: [
        { column: 'squad', is: 'filled' },
        { column: 'lean', is: 'filled' },
      ],
      sort: [{ column: 'squad' }],
      group: 'squad',
    });
    undone(session, { do: 'remove-column', sheet: 'roster', column: 'squad' });
    expect(view(session)).toEqual({
      rows: { where: [{ column: 'lean', is: 'filled' }] },
      summaries: [{ column: 'lean', statistic: 'most' }],
    });
  });
});

import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';

function withSheet(): Session {
  const session = Session.create();
  session.execute({
    do: 'add-sheet',
    name: 'people',
    rows: 3,
    columns: [
      { label: 'Name', kind: 'text' },
      { label: 'Mass', kind: 'number' },
    ],
  });
  return session;
}

describe('several commands as one step', () => {
  test('are undone and redone together', () => {
    const session = withSheet();
    const before = session.save();
    const done = session.applyAll('Clear up', [
      { do: 'set-cells', sheet: 'people', row: 0, columns: ['name'], texts: [['Ada']] },
      { do: 'remove-column', sheet: 'people', column: 'mass' },
      { do: 'change-column', sheet: 'people', column: 'name', change: { label: 'Who' } },
    ]);
    expect(done).toMatchObject({ ok: true, outline: { undo: 'Clear up' } });
    const after = session.save();
    session.undo();
    expect(session.save()).toBe(before);
    session.redo();
    expect(session.save()).toBe(after);
  });

  test('leave the book as it was when one of them is refused', () => {
    const session = withSheet();
    const before = session.save();
    const undo = session.outline().undo;
    const done = session.applyAll('Clear up', [
      { do: 'set-cells', sheet: 'people', row: 0, columns: ['name'], texts: [['Ada']] },
      { do: 'remove-column', sheet: 'people', column: 'nobody' },
    ]);
    expect(done).toMatchObject({ ok: false, sentence: expect.stringContaining('nobody') });
    expect(session.save()).toBe(before);
    expect(session.outline().undo).toBe(undo);
  });

  test('tell the journal of one edit that does the same again', () => {
    const session = withSheet();
    const told: string[] = [];
    session.onRecord = ({ words, edit }) => told.push(`${words}: ${edit.do}`);
    session.applyAll('Two things', [
      { do: 'set-title', title: 'Spring' },
      { do: 'remove-sheet', sheet: 'people' },
    ]);
    expect(told).toEqual(['Two things: batch']);
  });
});

describe('the view of a sheet', () => {
  test('forgets a column that is removed, and knows it again after undo', () => {
    const session = withSheet();
    const text = session.save();
    const where = [
      { column: 'mass', is: 'filled' },
      { column: 'name', is: 'filled' },
    ];
    session.execute({
      do: 'set-part',
      part: 'views',
      key: 'people',
      value: { rows: { where, sort: [{ column: 'mass' }], group: 'mass' }, frozen: 1 },
    });
    const view = () => session.outline().sheets[0]?.view;
    const before = view();
    session.execute({ do: 'remove-column', sheet: 'people', column: 'mass' });
    expect(view()).toEqual({ rows: { where: [{ column: 'name', is: 'filled' }] }, frozen: 1 });
    // A later column that happens to take its name is another one.
    session.execute({ do: 'add-column', sheet: 'people', column: { name: 'mass' } });
    expect(view()?.rows?.group).toBeUndefined();
    session.undo();
    session.undo();
    expect(view()).toEqual(before);
    session.undo();
    expect(session.save()).toBe(text);
  });
  test('is kept in the book and told with its outline', () => {
    const session = withSheet();
    const view = { rows: { sort: [{ column: 'mass', descending: true }] }, frozen: 1, statistic: 'mean' };
    session.execute({ do: 'set-part', part: 'views', key: 'people', value: view });
    expect(session.outline().sheets[0]?.view).toEqual(view);
    expect(Session.open(session.save()).outline().sheets[0]?.view).toEqual(view);
    session.undo();
    expect(session.outline().sheets[0]?.view).toBeUndefined();
  });

  test('counts as none when it cannot be read', () => {
    const session = withSheet();
    session.execute({ do: 'set-part', part: 'views', key: 'people', value: { frozen: 'two' } });
    expect(session.outline().sheets[0]?.view).toBeUndefined();
  });
});

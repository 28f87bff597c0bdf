import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { csvOf } from '../../src/session/text/csv.ts';

function club(): Session {
  const session = Session.create({ locale: { decimal: '.', dateOrder: 'ymd' } });
  session.execute({
    do: 'add-sheet',
    name: 'log',
    label: 'Log',
    columns: [
      { name: 'who', label: 'Who', kind: 'text' },
      { name: 'load', label: 'Load', dimension: 'mass', unit: 'kg' },
      { name: 'shown', label: 'Shown', kind: 'text', formula: 'IF(load > 85, who, "")' },
    ],
  });
  const texts = [
    ['Ada', '100'],
    ['Bo', '80'],
    ['-', ''],
    ['Cy', '90'],
  ];
  session.execute({ do: 'set-cells', sheet: 'log', row: 0, columns: ['who', 'load'], texts });
  return session;
}
const column = (session: Session, at: number): readonly string[] => session.tile('log', 0, 4, at, 1).texts;
const inOrder = (session: Session, descending: boolean): string =>
  session
    .tileOfRows('log', session.rowsInView('log', { sort: [{ column: 'shown', descending }] }), 2, 1)
    .texts.join('|');

describe('what one stumbles over', () => {
  test('rows whose text is nothing are last in either direction', () => {
    expect(inOrder(club(), false)).toBe('Ada|Cy||');
    expect(inOrder(club(), true)).toBe('Cy|Ada||');
  });

  test('a text that is only a minus sign leaves as it is; what could be a formula is still escaped (OWASP, CSV Injection)', () => {
    const session = club();
    session.execute({ do: 'set-cells', sheet: 'log', row: 3, columns: ['who'], texts: [['-2+3']] });
    const lines = session.ask((context) => csvOf(context, 'log')).split('\r\n');
    expect(lines[3]).toMatch(/^-,/);
    expect(lines[4]).toMatch(/^'-2\+3,/);
  });

  test('replacing leaves rows alone that a filter does not show, and says how many cells it changed', () => {
    const session = club();
    const shown = session.rowsInView('log', { where: [{ column: 'load', is: 'from to', from: '85' }] });
    const done = session.execute({ do: 'replace-text', sheet: 'log', find: 'a', put: 'o', rows: [...shown] });
    expect(done).toMatchObject({ ok: true, note: 'Replaced in 1 cell.' });
    session.execute({ do: 'set-cells', sheet: 'log', row: 1, columns: ['who'], texts: [['Bar']] });
    session.execute({ do: 'replace-text', sheet: 'log', find: 'B', put: 'C', rows: [...shown] });
    expect(column(session, 0)).toEqual(['odo', 'Bar', '-', 'Cy']);
  });

  test('a summary row may be the sum', () => {
    expect(club().summary('log', 'load').sum).toBe('270');
  });

  test('undo and redo say what they did, and where', () => {
    const session = club();
    expect(session.undo()).toMatchObject({ ok: true, note: expect.stringMatching(/^Undone: .*, in Log\.$/) });
    expect(session.redo()).toMatchObject({ ok: true, note: expect.stringMatching(/^Redone: .*, in Log\.$/) });
  });

  test('what formulas would lose is said before a column is deleted; nothing is changed by asking', () => {
    const session = club();
    const before = session.save();
    expect(session.losses([{ do: 'remove-column', sheet: 'log', column: 'load' }])).toEqual([
      '1 formula would show #REF!.',
    ]);
    expect(session.losses([{ do: 'remove-column', sheet: 'log', column: 'shown' }])).toEqual([]);
    expect(session.save()).toBe(before);
  });

  test('other parts of the book that would lose something are counted in words', () => {
    const session = Session.open(readFileSync('sample-books/squat-screening.leverbook.json', 'utf8'));
    const [sentence] = session.losses([{ do: 'remove-column', sheet: 'roster', column: 'athlete' }]);
    expect(sentence).toContain('Also used by: handout, 4 sets of import settings.');
  });
});

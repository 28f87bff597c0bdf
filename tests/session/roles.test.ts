import { readFileSync } from 'node:fs';
import { CompletionContext } from '@codemirror/autocomplete';
import { EditorState } from '@codemirror/state';
import { describe, expect, test } from 'vitest';
import { completeFrom } from '../../src/app/formula/complete.ts';
import { handoutsOf } from '../../src/session/handouts/handouts.ts';
import { observedSheet } from '../../src/session/picture/columns.ts';
import { Session } from '../../src/session/session.ts';

const sample = () =>
  Session.open(
    readFileSync(new URL('../../sample-books/squat-screening.leverbook.json', import.meta.url), 'utf8'),
  );

/** Every column of the sheets of data gets a name and a label that say nothing. */
function renamed(session: Session): Session {
  for (const sheet of session.outline().sheets)
    for (const [at, { id }] of sheet.columns.entries())
      session.execute({
        do: 'change-column',
        sheet: sheet.id,
        column: id,
        change: { name: `q_${at}_${sheet.id}`, label: `Q ${at}` },
      });
  return session;
}

describe('roles', () => {
  test('with every column of the sample renamed, the figure of every lifter is the same', () => {
    const [before, after] = [sample(), renamed(sample())];
    const { rows } = before.outline().sheets.find(({ id }) => id === 'roster')!;
    for (let row = 0; row < rows; row++) {
      const [was, is] = [before.figure('roster', row), after.figure('roster', row)];
      expect(is.title).toBe(was.title);
      expect(is.missing).toEqual(was.missing);
      expect(is.flat).toEqual(was.flat);
      expect(is.lifted).toEqual(was.lifted);
      expect(is.loads).toEqual(was.loads);
      expect(is.explained).toEqual(was.explained);
      expect(is.tests).toEqual(was.tests);
    }
  });

  test('with every column of the sample renamed, handouts, checks and the picture panel say the same', () => {
    const [before, after] = [sample(), renamed(sample())];
    const pages = (session: Session) =>
      session
        .ask((context) => handoutsOf(context))
        .handouts.map(({ athlete, tested, numbers, findings, toTry, open }) => ({
          athlete,
          tested,
          numbers: numbers.map(({ value, error }) => ({ value, error })),
          findings,
          toTry,
          open: open.length,
        }));
    expect(pages(after)).toEqual(pages(before));
    const checks = (session: Session) =>
      session
        .doubts()
        .filter(({ about }) => ['length', 'ankle', 'held'].includes(about))
        .map(({ place, about }) => ({ place, about }));
    expect(checks(after)).toEqual(checks(before));
    const days = { do: 'set-part', part: 'settings', key: 'doubts', value: { testsOlderThan: 1 } } as const;
    const old = (session: Session) => {
      session.execute(days);
      return session.doubts().filter(({ about }) => about === 'old test');
    };
    expect(old(after).map(({ place }) => place)).toEqual(old(before).map(({ place }) => place));
    const [was, is] = [before.picture('observed', 0), after.picture('observed', 0)];
    expect(is.missing).toEqual([]);
    expect(is.title).toBe(was.title);
    expect(is.seen).toEqual(was.seen);
  });

  test('a sheet for observed squats looks up the build in a roster whose columns have other names', () => {
    const outline = renamed(sample()).outline();
    const sheet = observedSheet(outline.sheets, outline.names);
    const femur = sheet.columns.find(({ name }) => name === 'femur')!;
    const columns = outline.sheets.find(({ id }) => id === 'roster')!.columns;
    const called = (id: string) => columns.find((one) => one.id === id)!.name;
    expect((femur as { formula?: string }).formula).toBe(
      `IF(ISBLANK(athlete), "", INDEX(roster.${called('femur')}, MATCH(athlete, roster.${called('athlete')}, 0)))`,
    );
  });

  test('completion offers the column that is what the argument asks for first, and renaming is undone whole', () => {
    const session = sample();
    const before = session.save();
    session.execute({
      do: 'change-column',
      sheet: 'roster',
      column: 'tibia',
      change: { name: 'zz', label: 'Z' },
    });
    const outline = session.outline();
    const state = EditorState.create({ doc: '=LEAN.PARALLEL(femur, z' });
    const found = completeFrom(new CompletionContext(state, state.doc.length, true), {
      builtIns: [],
      functions: [
        {
          name: 'LEAN.PARALLEL',
          signature: 'LEAN.PARALLEL(femur, tibia)',
          parameters: [{ name: 'femur' }, { name: 'tibia' }],
        },
      ] as never,
      outline,
      sheet: outline.sheets.find(({ id }) => id === 'roster')!,
      inFormula: true,
    });
    const first = found!.options.toSorted((a, b) => (b.boost ?? 0) - (a.boost ?? 0))[0]!;
    expect(first.label).toBe('zz');
    session.undo();
    expect(session.save()).toBe(before);
  });

  test('two columns that say the same role are refused with a sentence, and so is a role of another kind', () => {
    const session = sample();
    const change = (column: string, role: string | null) =>
      session.execute({ do: 'change-column', sheet: 'roster', column, change: { role } });
    expect(change('foot', 'femur')).toMatchObject({ ok: true });
    expect(change('tibia', 'femur')).toEqual({
      ok: false,
      sentence: 'Foot is already Femur in Roster. Set what Foot is to something else first.',
    });
    expect(change('mass', 'tibia')).toMatchObject({
      sentence: 'Tibia is a number in cm. Change the kind or unit of Body mass, or select another.',
    });
    expect(change('mass', 'wings')).toMatchObject({
      sentence: '"wings" is not something that a column can be. Select it from the list.',
    });
    const column = { label: 'Thigh', kind: 'number', role: 'femur' } as const;
    expect(session.execute({ do: 'add-column', sheet: 'roster', column })).toMatchObject({
      sentence: expect.stringMatching(/^Foot is already Femur/),
    });
    // What a column says goes before what another is called.
    expect(session.figure('roster', 0).flat).not.toEqual(sample().figure('roster', 0).flat);
    change('foot', null);
    expect(session.figure('roster', 0).flat).toEqual(sample().figure('roster', 0).flat);
  });

  test('what a column is goes through the file, and none is what nobody looks for', () => {
    const session = sample();
    session.execute({
      do: 'change-column',
      sheet: 'roster',
      column: 'femur',
      change: { name: 'long_bone', label: 'Long bone' },
    });
    const again = Session.open(session.save());
    const column = again.outline().sheets[0]!.columns.find(({ name }) => name === 'long_bone')!;
    expect(column.role).toBe('femur');
    expect(again.figure('roster', 0).missing).toEqual([]);
    const done = again.execute({
      do: 'change-column',
      sheet: 'roster',
      column: column.id,
      change: { role: 'none' },
    });
    expect(done).toMatchObject({ ok: true });
    expect(again.figure('roster', 0).missing).toEqual(['femur']);
  });

  test('a book that says no role is read by names, labels and usual words', () => {
    const session = Session.create();
    session.execute({
      do: 'add-sheet',
      name: 'list',
      rows: 1,
      columns: [
        { name: 'born', kind: 'date' },
        { name: 'player', kind: 'text' },
        { name: 'thigh', dimension: 'length', unit: 'cm' },
        { name: 'c_2', label: 'Tibia (cm)' },
        { name: 'torso' },
        { name: 'dorsiflexion' },
      ],
    });
    session.execute({
      do: 'set-cells',
      sheet: 'list',
      row: 0,
      columns: ['player', 'thigh', 'c_2', 'torso', 'dorsiflexion'],
      texts: [['Ada', '43', '40', '51', '32']],
    });
    expect(session.figure('list', 0)).toMatchObject({ title: 'Ada', missing: [] });
  });
});

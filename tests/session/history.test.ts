import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { commandFor, picks } from './random.ts';

/** Everything that a user can see of the cells. */
const seen = (session: Session): string =>
  JSON.stringify(
    session.outline().sheets.map(({ id, rows, columns }) => {
      const { texts, marks, drawings = [] } = session.tile(id, 0, rows, 0, columns.length);
      return [id, texts, [...marks], drawings, session.summaries(id)];
    }),
  );

function run(choices: readonly Parameters<typeof commandFor>[1][]): {
  session: Session;
  files: string[];
  values: string[];
} {
  const session = Session.create();
  const files = [session.save()];
  const values = [seen(session)];
  for (const pick of choices) {
    const before = files.at(-1)!;
    const done = session.execute(commandFor(session.outline(), pick));
    if (done.ok) {
      files.push(session.save());
      values.push(seen(session));
    } else {
      expect(done.sentence).toMatch(/[.…?]$/);
      expect(session.save()).toBe(before);
    }
  }
  return { session, files, values };
}

describe('history', () => {
  test('undo to the start and redo to the end pass the same books byte for byte, with the same values', () => {
    fc.assert(
      fc.property(fc.array(picks, { maxLength: 25, size: 'max' }), (choices) => {
        const { session, files, values } = run(choices);
        for (let i = files.length - 2; i >= 0; i--) {
          expect(session.undo().ok).toBe(true);
          expect(session.save()).toBe(files[i]);
          expect(seen(session)).toBe(values[i]);
        }
        expect(session.undo()).toEqual({ ok: false, sentence: 'There is nothing to undo.' });
        for (let i = 1; i < files.length; i++) {
          expect(session.redo().ok).toBe(true);
          expect(session.save()).toBe(files[i]);
          expect(seen(session)).toBe(values[i]);
        }
        expect(session.redo().ok).toBe(false);
      }),
      { numRuns: 40 },
    );
  });

  test('an edited book shows what the same book shows when it is opened anew', () => {
    fc.assert(
      fc.property(fc.array(picks, { maxLength: 30, size: 'max' }), (choices) => {
        const { session } = run(choices);
        const again = Session.open(session.save());
        expect(again.save()).toBe(session.save());
        expect(seen(again)).toBe(seen(session));
      }),
      { numRuns: 40 },
    );
  });

  test('five hundred commands: equal to the book opened anew, undone to the first byte, redone to the last', () => {
    const choices = fc.sample(picks, { numRuns: 500 });
    const { session, files } = run(choices);
    const last = session.save();
    expect(seen(Session.open(last))).toBe(seen(session));
    for (let i = files.length - 2; i >= 0; i--) {
      session.undo();
      expect(session.save()).toBe(files[i]);
    }
    while (session.redo().ok);
    expect(session.save()).toBe(last);
    expect(seen(Session.open(last))).toBe(seen(session));
  });

  test('says what undo and redo would do, and something new makes the undone unreachable', () => {
    const session = Session.create();
    session.execute({ do: 'add-sheet', label: 'Roster', columns: [{ name: 'femur', label: 'Femur' }] });
    session.execute({ do: 'set-cells', sheet: 'roster', row: 2, columns: ['femur'], texts: [['41']] });
    expect(session.outline()).toMatchObject({ undo: 'Change Femur of row 3', redo: null });
    session.undo();
    expect(session.outline()).toMatchObject({ undo: 'Add sheet Roster', redo: 'Change Femur of row 3' });
    session.execute({ do: 'set-title', title: 'Mine' });
    expect(session.outline()).toMatchObject({ undo: 'Rename the book', redo: null });
  });

  test('one undo takes a paste of 10,000 cells back', () => {
    const session = Session.create();
    session.execute({
      do: 'add-sheet',
      label: 'Log',
      columns: Array.from({ length: 10 }, (_, c) => ({ name: `m_${c}` })),
    });
    const before = session.save();
    const columns = session.outline().sheets[0]!.columns.map((c) => c.id);
    const texts = Array.from({ length: 1000 }, (_, r) => columns.map((_, c) => String(r * 10 + c)));
    session.execute({ do: 'set-cells', sheet: 'log', row: 0, columns, texts });
    expect(session.tile('log', 999, 1, 9, 1).texts).toEqual(['9999']);
    session.undo();
    expect(session.save()).toBe(before);
  });
});

describe('the edits that a journal is told', () => {
  test('make the same book when they are applied to the file it began with', async () => {
    const { applyEdit } = await import('../../src/book/apply.ts');
    const { readBook } = await import('../../src/book/file.ts');
    const { writeBook } = await import('../../src/book/file-write.ts');
    fc.assert(
      fc.property(fc.array(picks, { maxLength: 20, size: 'max' }), (choices) => {
        const session = Session.create();
        const replayed = readBook(session.save());
        session.onRecord = ({ edit }) => {
          applyEdit(replayed, structuredClone(edit));
        };
        choices.forEach((pick, i) => {
          if (i % 5 === 4) session.undo();
          else session.execute(commandFor(session.outline(), pick));
        });
        expect(writeBook(replayed)).toBe(session.save());
      }),
      { numRuns: 30 },
    );
  });
});

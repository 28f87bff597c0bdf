import { describe, expect, test } from 'vitest';
import { preparing } from '../../src/session/bring-in.ts';
import { importsOf } from '../../src/session/imports.ts';
import { mending } from '../../src/session/mend.ts';
import { Session } from '../../src/session/session.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

function toEnd<T>(work: Generator<unknown, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

const now = '2026-03-01T10:00:00.000Z';

/** A log with one row that has too many cells, one with too few, and one value that is no number. */
const log = [
  'Athlete,Load (kg),Reps',
  'Anna Berg,100,5',
  'Bo Lind,heavy,5',
  'Cleo Dahl,80,5,spilled',
  'Dan Ek,75,5',
  'Eva Moe,70',
  'Fritz Oy,65,3',
  '',
].join('\n');

function withLog(): Session {
  const session = Session.create();
  const prepared = toEnd(preparing(session, { bytes: bytesOf(log), name: 'log.csv', sheet: null, now }));
  expect(session.bringIn(prepared).ok).toBe(true);
  return session;
}

const sheetOf = (session: Session) => session.outline().sheets[0]!;
const importOf = (session: Session) => importsOf(session.current, sheetOf(session).id)[0]!;

describe('rows that were held', () => {
  test('are counted, with every row that came in', () => {
    const { rows, heldRows, cells } = importOf(withLog());
    expect(rows).toMatchObject({ in: 6, placed: 4, held: 2 });
    expect(heldRows.map(({ raw }) => raw)).toEqual(['Cleo Dahl,80,5,spilled', 'Eva Moe,70']);
    expect(cells.held).toBe(1);
  });

  test('are placed once they are mended; one that still does not fit stays, as it now reads, and undo takes it back', () => {
    const session = withLog();
    const before = session.save();
    const prepared = toEnd(
      mending(
        session,
        importOf(session).key,
        [
          { index: 0, text: 'Cleo Dahl,80,5,6' },
          { index: 1, text: 'Eva Moe,70,4' },
        ],
        now,
      ),
    );
    expect(session.bringIn(prepared).ok).toBe(true);
    const { rows, heldRows } = importOf(session);
    expect(rows).toMatchObject({ in: 6, placed: 5, held: 1 });
    expect(heldRows).toMatchObject([{ line: 4, raw: 'Cleo Dahl,80,5,6' }]);
    expect(sheetOf(session).rows).toBe(5);
    expect(session.tile(sheetOf(session).id, 4, 1, 0, 3).texts).toEqual(['Eva Moe', '70', '4']);
    session.undo();
    expect(session.save()).toBe(before);
  });

  test('are refused with a sentence when their recipe is gone, and nothing changes', () => {
    const session = withLog();
    const { key } = importOf(session);
    for (const recipe of session.current.parts.recipes.keys())
      session.execute({ do: 'set-part', part: 'recipes', key: recipe, value: null });
    const before = session.save();
    expect(() => toEnd(mending(session, key, [{ index: 0, text: 'x' }], now))).toThrow(
      /no longer in the book/,
    );
    expect(session.save()).toBe(before);
  });
});

describe('a file read again', () => {
  test('without its recipe leaves one recipe that fits, the new one', () => {
    const session = withLog();
    const again = { bytes: bytesOf(log), name: 'other.csv', sheet: sheetOf(session).id, now };
    const known = toEnd(preparing(session, again));
    expect(known.taken.byRecipe).toBe(true);
    expect(known.taken.report.rows).toMatchObject({ added: 0, unchanged: 4, held: 2 });
    const anew = toEnd(
      preparing(session, { ...again, recipe: null, choices: { columns: { 2: { feeds: null } } } }),
    );
    expect(anew.taken.byRecipe).toBe(false);
    expect(session.bringIn(anew).ok).toBe(true);
    const recipes = [...session.current.parts.recipes.values()];
    expect(recipes).toHaveLength(1);
    expect(JSON.stringify(recipes[0])).not.toContain('Reps');
  });

  test('keeps by which column its rows are recognised for the file after it', () => {
    const session = withLog();
    const next = (text: string) => ({ bytes: bytesOf(text), name: 'n.csv', sheet: sheetOf(session).id, now });
    const update = toEnd(
      preparing(session, {
        ...next('Athlete,Load (kg),Reps\nDan Ek,77.5,5\n'),
        mode: 'update',
        key: ['Athlete'],
      }),
    );
    expect(update.taken.report.rows).toMatchObject({ updated: 1, added: 0 });
    session.bringIn(update);
    const after = toEnd(preparing(session, next('Athlete,Load (kg),Reps\nDan Ek,80,5\nGry Sol,50,5\n')));
    expect(after.taken.byRecipe).toBe(true);
    expect(after.taken.report.rows).toMatchObject({ updated: 1, added: 1 });
  });
});

describe('names that a roster lacks', () => {
  test('are added to it with the rows, in the same step', () => {
    const session = Session.create();
    const roster = 'Athlete,Femur (cm)\nAnna Berg,41\nBo Lind,44\n';
    session.bringIn(
      toEnd(preparing(session, { bytes: bytesOf(roster), name: 'roster.csv', sheet: null, now })),
    );
    const before = session.save();
    const bytes = bytesOf('Athlete,Load (kg)\nAnna Berg,100\nBo Lind,90\nNew Face,60\n');
    const first = toEnd(preparing(session, { bytes, name: 'log.csv', sheet: null, now }));
    expect(first.taken.who?.unknown).toEqual([{ text: 'New Face', rows: 1 }]);
    const who = { ...first.taken.whoRule!, same: { 'New Face': 'New Face' } };
    const second = toEnd(
      preparing(session, { bytes, name: 'log.csv', sheet: null, now, who, newPeople: ['New Face'] }),
    );
    expect(second.taken.who?.unknown).toEqual([]);
    session.bringIn(second);
    const [people] = session.outline().sheets;
    expect(people!.rows).toBe(3);
    expect(session.tile(people!.id, 2, 1, 0, 2).texts).toEqual(['New Face', '']);
    session.undo();
    expect(session.save()).toBe(before);
  });
});

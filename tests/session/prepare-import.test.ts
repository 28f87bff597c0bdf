import { describe, expect, test } from 'vitest';
import { importsOf } from '../../src/session/imports/imports.ts';
import { mending } from '../../src/session/imports/mend.ts';
import { preparing } from '../../src/session/imports/prepare-import.ts';
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
  expect(session.writePlanned(prepared).ok).toBe(true);
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
    expect(session.writePlanned(prepared).ok).toBe(true);
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
    expect(known.imported.byRecipe).toBe(true);
    expect(known.imported.report.rows).toMatchObject({ added: 0, unchanged: 4, held: 2 });
    const anew = toEnd(
      preparing(session, { ...again, recipe: null, choices: { columns: { 2: { feeds: null } } } }),
    );
    expect(anew.imported.byRecipe).toBe(false);
    expect(session.writePlanned(anew).ok).toBe(true);
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
        key: ['athlete'],
      }),
    );
    expect(update.imported.report.rows).toMatchObject({ updated: 1, added: 0 });
    session.writePlanned(update);
    const after = toEnd(preparing(session, next('Athlete,Load (kg),Reps\nDan Ek,80,5\nGry Sol,50,5\n')));
    expect(after.imported.byRecipe).toBe(true);
    expect(after.imported.report.rows).toMatchObject({ updated: 1, added: 1 });
  });
});

describe('a roster brought in again, after somebody was corrected in the book', () => {
  const people = 'Athlete,Tested,Femur (cm)\nAnna Berg,2026-01-08,41\nBo Lind,2026-01-08,44\n';
  /** A log beside the roster makes it known as one; then Anna's femur is corrected to 42 cm. */
  function corrected(): Session {
    const session = Session.create();
    const importFile = (text: string, name: string) =>
      session.writePlanned(toEnd(preparing(session, { bytes: bytesOf(text), name, sheet: null, now })));
    importFile(people, 'roster.csv');
    importFile('Athlete,Load (kg)\nAnna Berg,100\nBo Lind,90\nAnna Berg,102.5\n', 'log.csv');
    const { id, columns } = sheetOf(session);
    const fixed = { sheet: id, row: 0, columns: [columns[2]!.id], texts: [['42']] };
    expect(session.execute({ do: 'set-cells', ...fixed }).ok).toBe(true);
    return session;
  }
  const again = (session: Session, ofDiffering?: 'leave' | 'take' | 'add', text = people) =>
    toEnd(
      preparing(session, {
        bytes: bytesOf(text),
        name: 'roster.csv',
        sheet: sheetOf(session).id,
        now,
        ...(ofDiffering ? { ofDiffering } : {}),
      }),
    );
  const femur = (session: Session) => session.tile(sheetOf(session).id, 0, sheetOf(session).rows, 2, 1).texts;

  test('asks, and doubles nobody meanwhile', () => {
    const session = corrected();
    const { imported } = again(session);
    expect(imported.differing).toMatchObject({ count: 1, decided: null, key: ['athlete'] });
    expect(imported.report.rows).toMatchObject({ added: 0, unchanged: 1, left: 1 });
  });

  test.each([
    ['leave', ['42', '44']],
    ['take', ['41', '44']],
    ['add', ['42', '44', '41']],
  ] as const)(
    'answered %s, it comes in so, is not asked again, and one undo takes it back',
    (answer, cells) => {
      const session = corrected();
      const before = session.save();
      expect(session.writePlanned(again(session, answer)).ok).toBe(true);
      expect(femur(session)).toEqual(cells);
      const next = again(
        session,
        undefined,
        people.replace('Bo Lind,2026-01-08,44', 'Bo Lind,2026-01-08,45'),
      );
      // Taken once, the next file updates; added once, the two rows of Anna say that several are right here.
      expect(next.imported.differing?.decided ?? null).toBe(answer === 'leave' ? 'leave' : null);
      session.undo();
      expect(session.save()).toBe(before);
    },
  );

  test('known as one by a log, it lists people once whatever the day of their test', () => {
    const session = corrected();
    const retest = people.replaceAll('2026-01-08', '2026-03-08');
    expect(again(session, undefined, retest).imported.differing).toMatchObject({
      count: 2,
      key: ['athlete'],
    });
  });

  test('a held row that is mended into somebody who is there with other values stays held, and says so', () => {
    const session = corrected();
    const text = 'Athlete,Tested,Femur (cm)\nAnna Berg,2026-01-08,41,spilled\nCleo Dahl,2026-01-08,39\n';
    session.writePlanned(again(session, 'leave', text));

    const held = importsOf(session.current, sheetOf(session).id).find(({ heldRows }) => heldRows.length > 0);
    expect(held!.heldRows).toHaveLength(1);
    session.writePlanned(
      toEnd(mending(session, held!.key, [{ index: 0, text: 'Anna Berg,2026-01-08,41' }], now)),
    );
    const still = importsOf(session.current, sheetOf(session).id).find(({ key }) => key === held!.key)!;
    expect(still.heldRows[0]!.reason).toMatch(
      /has this row already, with other values: Anna Berg.*42 cm there/,
    );
    expect(sheetOf(session).rows).toBe(3);
  });
});

describe('names that a roster lacks', () => {
  test('are added to it with the rows, in the same step', () => {
    const session = Session.create();
    const roster = 'Athlete,Femur (cm)\nAnna Berg,41\nBo Lind,44\n';
    session.writePlanned(
      toEnd(preparing(session, { bytes: bytesOf(roster), name: 'roster.csv', sheet: null, now })),
    );
    const before = session.save();
    const bytes = bytesOf('Athlete,Load (kg)\nAnna Berg,100\nBo Lind,90\nNew Face,60\n');
    const first = toEnd(preparing(session, { bytes, name: 'log.csv', sheet: null, now }));
    expect(first.imported.who?.unknown).toEqual([{ text: 'New Face', rows: 1 }]);
    const who = { ...first.imported.whoRule!, same: { 'New Face': 'New Face' } };
    const second = toEnd(
      preparing(session, { bytes, name: 'log.csv', sheet: null, now, who, newPeople: ['New Face'] }),
    );
    expect(second.imported.who?.unknown).toEqual([]);
    session.writePlanned(second);
    const [people] = session.outline().sheets;
    expect(people!.rows).toBe(3);
    expect(session.tile(people!.id, 2, 1, 0, 2).texts).toEqual(['New Face', '']);
    session.undo();
    expect(session.save()).toBe(before);
  });
});

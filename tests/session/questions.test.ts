import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';
import type { RowView } from '../../src/session/sheet/row-view.ts';

const rows = [
  ['Ada', 'F', '41.5', '2025-03-01', '60'],
  ['Bo', 'M', '44', '2025-01-15', '82'],
  ['Cy', 'M', 'about 43', '', '75'],
  ['Dee', 'F', '', '2025-02-10', ''],
  ['Eli', 'M', '43', '2024-12-31', '90'],
];
function club(): Session {
  const session = Session.create({ locale: { decimal: '.', dateOrder: 'ymd' } });
  session.execute({
    do: 'add-sheet',
    name: 'roster',
    columns: [
      { name: 'athlete', kind: 'text' },
      { name: 'sex', kind: 'choice', choices: ['F', 'M'] },
      { name: 'femur', dimension: 'length', format: { digits: 1 } },
      { name: 'tested', kind: 'date' },
      { name: 'mass', dimension: 'mass' },
      { name: 'share', formula: 'femur / mass' },
    ],
  });
  session.execute({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', 'sex', 'femur', 'tested', 'mass'],
    texts: rows,
  });
  return session;
}
const shown = (view: RowView, session = club()): string => {
  const picked = session.rowsInView('roster', view);
  return session.tileOfRows('roster', picked, 0, 1).texts.join(' ');
};

describe('a view of a sheet', () => {
  const cases: readonly (readonly [string, RowView, string])[] = [
    ['nothing asked', {}, 'Ada Bo Cy Dee Eli'],
    ['by name, down', { sort: [{ column: 'athlete', descending: true }] }, 'Eli Dee Cy Bo Ada'],
    ['by date, blanks last', { sort: [{ column: 'tested' }] }, 'Eli Bo Dee Ada Cy'],
    [
      'by date, down, blanks last all the same',
      { sort: [{ column: 'tested', descending: true }] },
      'Ada Dee Bo Eli Cy',
    ],
    ['numbers before held texts, blanks last', { sort: [{ column: 'femur' }] }, 'Ada Eli Bo Cy Dee'],
    [
      'in groups, then by mass',
      { group: 'sex', sort: [{ column: 'mass', descending: true }] },
      'Ada Dee Eli Bo Cy',
    ],
    [
      'containing a text, in any case',
      { where: [{ column: 'athlete', is: 'containing', text: 'E' }] },
      'Dee Eli',
    ],
    ['one of some', { where: [{ column: 'sex', is: 'one of', texts: ['F'] }] }, 'Ada Dee'],
    ['from', { where: [{ column: 'femur', is: 'from to', from: '43' }] }, 'Bo Eli'],
    [
      'from to, with a unit',
      { where: [{ column: 'femur', is: 'from to', from: '16 in', to: '17 in' }] },
      'Ada Eli',
    ],
    [
      'dates from to',
      { where: [{ column: 'tested', is: 'from to', from: '2025-01-01', to: '2025-02-10' }] },
      'Bo Dee',
    ],
    ['blank', { where: [{ column: 'femur', is: 'blank' }] }, 'Dee'],
    ['filled', { where: [{ column: 'tested', is: 'filled' }] }, 'Ada Bo Dee Eli'],
    ['held', { where: [{ column: 'femur', is: 'held' }] }, 'Cy'],
    ['error', { where: [{ column: 'share', is: 'error' }] }, 'Cy Dee'],
    [
      'two conditions',
      {
        where: [
          { column: 'sex', is: 'one of', texts: ['M'] },
          { column: 'mass', is: 'from to', from: '80' },
        ],
      },
      'Bo Eli',
    ],
  ];
  test.each(cases)('%s', (_, view, names) => expect(shown(view)).toBe(names));

  test('never touches the order of the data', () => {
    const session = club();
    const before = session.save();
    shown({ sort: [{ column: 'mass' }], where: [{ column: 'sex', is: 'filled' }] }, session);
    expect(session.save()).toBe(before);
  });

  test('keeps own values over a column formula apart', () => {
    const session = club();
    session.execute({ do: 'set-cells', sheet: 'roster', row: 1, columns: ['share'], texts: [['1']] });
    expect(shown({ where: [{ column: 'share', is: 'own value' }] }, session)).toBe('Bo');
  });

  test('shows every row once, whatever the order', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            column: fc.constantFrom('athlete', 'sex', 'femur', 'tested', 'mass', 'share'),
            descending: fc.boolean(),
          }),
          { minLength: 1, maxLength: 3 },
        ),
        (sort) => {
          expect([...club().rowsInView('roster', { sort })].sort()).toEqual([0, 1, 2, 3, 4]);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('shows the row after the last as a blank one', () => {
    const { texts, marks } = club().tileOfRows('roster', [4, 5], 0, 6);
    expect(texts.slice(6)).toEqual(['', '', '', '', '', '']);
    expect([...marks.slice(6)]).toEqual([0, 0, 0, 0, 0, 0]);
  });

  test('of a column that is not there is refused', () => {
    expect(() => club().rowsInView('roster', { sort: [{ column: 'x' }] })).toThrow('There is no column "x"');
  });
});

describe('the summary of a column', () => {
  test('counts, mean, SD, least and most, by hand', () => {
    // 41.5, 44, 43: mean 42.8333, SD √((1.7778 + 1.3611 + .0278)/2) = 1.2583
    expect(club().summary('roster', 'femur')).toEqual({
      rows: 5,
      filled: 4,
      numbers: 3,
      held: 1,
      errors: 0,
      sum: '128.5',
      mean: '42.83',
      sd: '1.26',
      least: '41.5',
      most: '44.0',
    });
    expect(club().summary('roster', 'tested')).toMatchObject({
      numbers: 4,
      least: '31 Dec 2024',
      most: '1 Mar 2025',
      sd: null,
    });
    expect(club().summary('roster', 'athlete')).toMatchObject({ numbers: 0, filled: 5, mean: null });
  });
  test('of some rows only', () => {
    expect(club().summary('roster', 'mass', [0, 1])).toMatchObject({
      rows: 2,
      mean: '71.00',
      least: '60',
      most: '82',
    });
  });
  test('of every column at once', () => {
    const session = club();
    const all = session.summaries('roster', [0, 1]);
    expect(Object.keys(all)).toEqual(['athlete', 'sex', 'femur', 'tested', 'mass', 'share']);
    expect(all.mass).toEqual(session.summary('roster', 'mass', [0, 1]));
  });
  test('is in the display unit', () => {
    const session = club();
    session.execute({ do: 'change-column', sheet: 'roster', column: 'femur', change: { unit: 'mm' } });
    expect(session.summary('roster', 'femur')).toMatchObject({ mean: '428.33', sd: '12.58', least: '415.0' });
  });
});

const found = (session: Session, search: Parameters<Session['finding']>[0]) => {
  const task = session.finding(search);
  let step = task.next();
  while (!step.done) step = task.next();
  return step.value;
};

describe('finding and replacing', () => {
  test('finds by what is shown, held values too, in the order of the sheet', () => {
    const { places, more } = found(club(), { text: '4' });
    expect(places.map((p) => [p.column, p.row])).toContainEqual(['femur', 2]);
    expect(more).toBe(false);
    expect(found(club(), { text: '4', most: 1 })).toMatchObject({ more: true });
    expect(found(club(), { text: 'ada', whole: true }).places).toEqual([
      { sheet: 'roster', column: 'athlete', row: 0 },
    ]);
    expect(found(club(), { text: 'ada', matchCase: true }).places).toEqual([]);
  });
  test('replaces in typed values, which are read again for their column, and one undo takes it back', () => {
    const session = club();
    const before = session.save();
    expect(session.execute({ do: 'replace-text', sheet: 'roster', find: 'about ', put: '' })).toMatchObject({
      note: 'Replaced in 1 cell.',
    });
    expect(session.summary('roster', 'femur')).toMatchObject({ numbers: 4, held: 0 });
    session.undo();
    expect(session.save()).toBe(before);
    expect(session.execute({ do: 'replace-text', sheet: 'roster', find: '$', put: 'x' })).toMatchObject({
      ok: false,
    });
    session.execute({ do: 'replace-text', sheet: 'roster', columns: ['athlete'], find: 'e', put: '$&' });
    expect(session.tile('roster', 3, 2, 0, 1).texts).toEqual(['D$&$&', '$&li']);
  });
});

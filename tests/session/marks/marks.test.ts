import { describe, expect, test } from 'vitest';
import type { Command } from '../../../src/session/commands/index.ts';
import type { MarksDraft, RuleDraft } from '../../../src/session/marks/draft.ts';
import { Session } from '../../../src/session/session.ts';

const run = (session: Session, command: Command) => {
  const done = session.execute(command);
  if (!done.ok) throw new Error(done.sentence);
  return done;
};
const refused = (session: Session, command: Command): string => {
  const done = session.execute(command);
  return done.ok ? '(done)' : done.sentence;
};

/** A club of five, an aim with a name, and a log of tests; all invented. */
function club(): Session {
  const session = Session.create();
  run(session, {
    do: 'add-sheet',
    name: 'roster',
    columns: [
      { name: 'athlete', kind: 'text' },
      { name: 'femur', dimension: 'length', unit: 'in' },
      { name: 'lean', dimension: 'angle', format: { digits: 0 } },
      { name: 'spring', dimension: 'angle' },
      { name: 'summer', dimension: 'angle' },
      { name: 'autumn', dimension: 'angle' },
      { name: 'change', formula: 'autumn - spring' },
    ],
  });
  run(session, {
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', 'femur', 'lean', 'spring', 'summer', 'autumn'],
    texts: [
      ['Ada', '16', '38', '40', '42', '44'],
      ['Bo', '17', '45', '45', '', '41'],
      ['Cy', '17.5', '45.4', '', '', '39'],
      ['Di', '18', '52', '38', '38', '38'],
      ['Ed', '', '', '', '', ''],
    ],
  });
  run(session, {
    do: 'add-sheet',
    name: 'aims',
    columns: [{ name: 'what', kind: 'text' }, { name: 'amount' }],
  });
  run(session, {
    do: 'set-cells',
    sheet: 'aims',
    row: 0,
    columns: ['what', 'amount'],
    texts: [['lean', '45']],
  });
  run(session, { do: 'name-cell', sheet: 'aims', column: 'amount', row: 0, name: 'target_lean' });
  run(session, {
    do: 'add-sheet',
    name: 'log',
    columns: [
      { name: 'who', kind: 'text' },
      { name: 'tested', kind: 'date' },
      { name: 'wall', dimension: 'length' },
    ],
  });
  run(session, {
    do: 'set-cells',
    sheet: 'log',
    row: 0,
    columns: ['who', 'tested', 'wall'],
    texts: [
      ['Bo', '2025-03-11', '9'],
      ['ada ', '2025-03-01', '8'],
      ['Ada', '2025-03-21', '12'],
      ['Ada', '2025-03-11', '11'],
      ['Ada', '', '99'],
      ['Di', '2025-03-02', 'sore'],
    ],
  });
  return session;
}

const mark = (column: string, marks: MarksDraft, sheet = 'roster'): Command => ({
  do: 'set-marks',
  sheet,
  column,
  marks,
});
const attend = (rule: Omit<RuleDraft, 'tone'>): MarksDraft => ({ rules: [{ ...rule, tone: 'attend' }] });
const drawing = (session: Session, column: string, sheet = 'roster') => {
  const outline = session.outline().sheets.find(({ id }) => id === sheet)!;
  const index = outline.columns.findIndex(({ name }) => name === column);
  return session.tile(sheet, 0, outline.rows, index, 1).drawings?.[0];
};
const shown = (session: Session, column = 'lean', sheet = 'roster') => [
  ...(drawing(session, column, sheet)?.rules ?? []),
];
const whens = (session: Session, column = 'lean', sheet = 'roster') =>
  session
    .outline()
    .sheets.find(({ id }) => id === sheet)
    ?.columns.find(({ name }) => name === column)
    ?.marks?.rules.map(({ when }) => when);

describe('a rule on a column', () => {
  test.each<[string, Omit<RuleDraft, 'tone'>, number[]]>([
    ['above a number', { is: 'above', to: '45' }, [0, 0, 1, 1, 0]],
    ['at least a number', { is: 'at least', to: '45' }, [0, 1, 1, 1, 0]],
    ['below a named cell', { is: 'below', to: 'target_lean' }, [1, 0, 0, 0, 0]],
    ['at most a formula', { is: 'at most', to: 'target_lean + 1' }, [1, 1, 1, 0, 0]],
    ['between two numbers, both in', { is: 'between', from: '38', to: '45' }, [1, 1, 0, 0, 0]],
    ['outside two ends', { is: 'outside', from: '40', to: 'target_lean' }, [1, 0, 1, 1, 0]],
    ['equal to another column of the row', { is: 'equal', to: 'spring' }, [0, 1, 0, 0, 0]],
    ['blank', { is: 'blank' }, [0, 0, 0, 0, 1]],
    ['not blank', { is: 'filled' }, [1, 1, 1, 1, 0]],
    ['a formula that is true', { is: 'true', to: '=AND(lean > target_lean, femur > 45)' }, [0, 0, 0, 1, 0]],
    ['a formula over the whole column', { is: 'true', to: 'lean = MAX(roster.lean)' }, [0, 0, 0, 1, 0]],
    ['a formula by address', { is: 'true', to: 'C1 > aims!$B$1' }, [0, 0, 1, 1, 0]],
  ])('marks the rows where it is %s', (_, rule, rows) => {
    const session = club();
    run(session, mark('lean', attend(rule)));
    expect(shown(session)).toEqual(rows);
  });

  test('says a text is, is not, or has a text in it, in any case', () => {
    const session = club();
    const marks = (rule: Omit<RuleDraft, 'tone'>) => {
      run(session, mark('athlete', attend(rule)));
      return shown(session, 'athlete');
    };
    expect(marks({ is: 'equal', to: 'ADA' })).toEqual([1, 0, 0, 0, 0]);
    expect(marks({ is: 'unequal', to: 'Ada' })).toEqual([0, 1, 1, 1, 1]);
    expect(marks({ is: 'containing', to: 'd' })).toEqual([1, 0, 0, 1, 1]);
    expect(marks({ is: 'equal', to: '="B" & "o"' })).toEqual([0, 1, 0, 0, 0]);
  });

  test('is the first that holds; another order shows another', () => {
    const session = club();
    const high: RuleDraft = { is: 'above', to: '50', tone: 'attend' };
    const some: RuleDraft = { is: 'above', to: '40', tone: 'watch' };
    run(session, mark('lean', { rules: [high, some] }));
    expect(shown(session)).toEqual([0, 2, 2, 1, 0]);
    run(session, mark('lean', { rules: [some, high] }));
    expect(shown(session)).toEqual([0, 1, 1, 1, 0]);
    expect(session.triedMarks('roster', 'lean', { rules: [some, high] }).rules).toEqual([
      { holds: 3, shows: 3, errors: 0 },
      { holds: 1, shows: 0, errors: 0 },
    ]);
  });

  test('follows the values, its own column’s and those that it only reads', () => {
    const session = club();
    run(session, mark('lean', attend({ is: 'above', to: 'target_lean' })));
    run(session, { do: 'set-cells', sheet: 'roster', row: 0, columns: ['lean'], texts: [['60']] });
    expect(shown(session)).toEqual([1, 0, 1, 1, 0]);
    run(session, { do: 'set-cells', sheet: 'aims', row: 0, columns: ['amount'], texts: [['51']] });
    expect(shown(session)).toEqual([1, 0, 0, 1, 0]);
    run(session, { do: 'add-rows', sheet: 'roster', row: 0, count: 1 });
    expect(shown(session)).toEqual([0, 1, 0, 0, 1, 0]);
    session.undo();
    session.undo();
    expect(shown(session)).toEqual([1, 0, 1, 1, 0]);
  });

  test('follows a computed column', () => {
    const session = club();
    run(session, mark('change', attend({ is: 'below', to: '0' })));
    expect(shown(session, 'change')).toEqual([0, 1, 0, 0, 0]);
    run(session, { do: 'set-cells', sheet: 'roster', row: 3, columns: ['autumn'], texts: [['30']] });
    expect(shown(session, 'change')).toEqual([0, 1, 0, 1, 0]);
  });
});

describe('a number in a rule', () => {
  test('is typed in the column’s unit and kept in the unit of calculation', () => {
    const session = club();
    run(session, mark('femur', attend({ is: 'at least', to: '17' })));
    // 1 in = 2.54 cm: international yard and pound agreement, 1959.
    expect(session.current.parts.marks.get('roster')).toMatchObject({
      columns: [{ rules: [{ when: { is: 'at least', to: { number: 43.18 } } }] }],
    });
    expect(shown(session, 'femur')).toEqual([0, 1, 1, 1, 0]);
    expect(whens(session, 'femur')).toEqual(['femur is at least 17 in']);
    run(session, { do: 'change-column', sheet: 'roster', column: 'femur', change: { unit: 'cm' } });
    expect(session.marks('roster', 'femur').rules[0]?.to).toBe('43.18');
    expect(shown(session, 'femur')).toEqual([0, 1, 1, 1, 0]);
  });

  test('may carry a unit of its own', () => {
    const session = club();
    run(session, mark('femur', attend({ is: 'above', to: '440 mm' })));
    expect(shown(session, 'femur')).toEqual([0, 0, 1, 1, 0]);
  });

  test('goes with the cells when the column is given a measure', () => {
    const session = club();
    run(session, { do: 'add-column', sheet: 'aims', index: 2, column: { name: 'height', label: 'height' } });
    run(session, { do: 'set-cells', sheet: 'aims', row: 0, columns: ['height'], texts: [['3']] });
    run(session, mark('height', attend({ is: 'above', to: '2' }), 'aims'));
    run(session, {
      do: 'change-column',
      sheet: 'aims',
      column: 'height',
      change: { dimension: 'length', unit: 'in' },
    });
    expect(whens(session, 'height', 'aims')).toEqual(['height is above 2 in']);
    expect(shown(session, 'height', 'aims')).toEqual([1]);
  });

  test('may be a date where the column holds dates', () => {
    const session = club();
    run(session, mark('tested', attend({ is: 'below', to: '2025-03-11' }), 'log'));
    expect(shown(session, 'tested', 'log')).toEqual([0, 1, 0, 0, 0, 1]);
    expect(whens(session, 'tested', 'log')).toEqual(['tested is below 11 Mar 2025']);
  });
});

describe('marks that cannot be kept', () => {
  test.each<[Omit<RuleDraft, 'tone'>, RegExp]>([
    [{ is: 'above', to: '' }, /^Rule 1: Enter what lean is compared with/],
    [{ is: 'above', to: 'target_laen' }, /^Rule 1: .*target_laen.*target_lean/],
    [{ is: 'above', to: '45 kg' }, /^Rule 1: .*45 kg.*angle/],
    [{ is: 'true', to: 'lean >' }, /^Rule 1: /],
    [{ is: 'true', to: '' }, /^Rule 1: Write a formula/],
    [{ is: 'between', from: '50', to: '40' }, /^Rule 1: The lower end 50 is above the upper end 40/],
  ])('%o are refused with a reason', (rule, sentence) => {
    const session = club();
    const before = session.save();
    expect(refused(session, mark('lean', attend(rule)))).toMatch(sentence);
    expect(session.save()).toBe(before);
  });

  test('leave a record that cannot be read as it is', () => {
    const session = club();
    run(session, { do: 'set-part', part: 'marks', key: 'roster', value: { columns: 'all of them' } });
    const before = session.save();
    expect(shown(session)).toEqual([]);
    expect(refused(session, mark('lean', attend({ is: 'blank' })))).toMatch(/cannot be read/);
    expect(session.save()).toBe(before);
  });

  test('a formula that gives a text or an error in a row is told with the count', () => {
    const session = club();
    const tried = session.triedMarks('roster', 'lean', {
      rules: [
        { is: 'true', to: 'athlete', tone: 'note' },
        { is: 'true', to: '1 / (spring - 45) > 0', tone: 'note' },
        { is: 'above', to: 'nothing_here', tone: 'note' },
      ],
    });
    expect(tried.rows).toBe(5);
    expect(tried.rules[0]).toMatchObject({ holds: 0, errors: 5, sentence: expect.stringMatching(/neither/) });
    expect(tried.rules[1]).toMatchObject({ holds: 0, errors: 1, sentence: expect.stringMatching(/divi/i) });
    expect(tried.rules[2]).toEqual({ sentence: expect.stringMatching(/nothing_here/) });
  });
});

describe('what rules name', () => {
  const marked = () => {
    const session = club();
    run(session, {
      ...mark('lean', {
        rules: [
          { is: 'above', to: 'target_lean', tone: 'attend', says: 'more than aimed at' },
          { is: 'true', to: 'lean > roster.lean + C1 + log.wall', tone: 'watch' },
        ],
        scale: { from: 'target_lean - 20', to: '' },
        trend: { is: 'columns', columns: ['spring', 'summer', 'autumn'] },
      }),
    } as Command);
    return session;
  };
  const undone = (session: Session, command: Command) => {
    const before = session.save();
    const done = run(session, command);
    const after = session.save();
    session.undo();
    expect(session.save()).toBe(before);
    session.redo();
    expect(session.save()).toBe(after);
    return done;
  };

  test('goes along with a new name of a column, a sheet and a cell, and undo brings it back byte for byte', () => {
    const session = marked();
    const done = undone(session, {
      do: 'change-column',
      sheet: 'roster',
      column: 'lean',
      change: { name: 'tilt' },
    });
    expect(done.note).toBe('1 formula now says tilt.');
    undone(session, { do: 'rename-name', name: 'target_lean', to: 'aim' });
    undone(session, { do: 'change-sheet', sheet: 'log', change: { name: 'diary' } });
    undone(session, { do: 'change-sheet', sheet: 'roster', change: { name: 'club' } });
    expect(whens(session, 'tilt')).toEqual(['tilt is above aim', 'tilt > club.tilt + C1 + diary.wall']);
    expect(session.marks('roster', 'lean').scale?.from).toBe('aim - 20');
  });

  test('follows addresses when columns move', () => {
    const session = marked();
    undone(session, { do: 'move-column', sheet: 'roster', column: 'lean', index: 0 });
    expect(whens(session)?.[1]).toBe('lean > roster.lean + A1 + log.wall');
  });

  test('that is deleted leaves the formula with its old name', () => {
    const session = marked();
    undone(session, { do: 'remove-column', sheet: 'log', column: 'wall' });
    expect(whens(session)?.[1]).toBe('lean > roster.lean + C1 + #REF!log.wall');
    undone(session, { do: 'remove-name', name: 'target_lean' });
    expect(whens(session)?.[0]).toBe('lean is above #REF!target_lean');
  });

  test('goes with the column or the sheet that bears it, and comes back with undo', () => {
    const session = marked();
    undone(session, { do: 'remove-column', sheet: 'roster', column: 'summer' });
    expect(session.marks('roster', 'lean').trend).toEqual({ is: 'columns', columns: ['spring', 'autumn'] });
    undone(session, { do: 'remove-column', sheet: 'roster', column: 'lean' });
    expect(session.save()).not.toContain('"marks"');
    session.undo();
    undone(session, { do: 'remove-sheet', sheet: 'roster' });
    expect(session.save()).not.toContain('target_lean - 20');
  });

  test('is copied with the column and with the sheet, and means the copy', () => {
    const session = marked();
    undone(session, { do: 'duplicate-column', sheet: 'roster', column: 'lean' });
    expect(whens(session, 'lean_2')).toEqual([
      'lean (copy) is above target_lean',
      'lean_2 > roster.lean_2 + C1 + log.wall',
    ]);
    undone(session, { do: 'duplicate-sheet', sheet: 'roster' });
    expect(whens(session, 'lean', 'roster_2')).toEqual([
      'lean is above target_lean',
      'lean > roster_2.lean + C1 + log.wall',
    ]);
    expect(shown(session, 'lean', 'roster_2')).toEqual(shown(session));
  });

  test('comes back from a file as it was', () => {
    const session = marked();
    const again = Session.open(session.save());
    expect(again.save()).toBe(session.save());
    expect(again.marks('roster', 'lean')).toEqual(session.marks('roster', 'lean'));
    expect(shown(again)).toEqual(shown(session));
  });
});

describe('a scale bar', () => {
  test('runs from the least to the most of the column', () => {
    const session = club();
    run(session, mark('lean', { rules: [], scale: {} }));
    const { scale } = drawing(session, 'lean')!;
    expect(scale?.words).toBe('from 38° to 52°');
    expect([...scale!.at].map((share) => Math.round(share * 100))).toEqual([0, 50, 53, 100, Number.NaN]);
    expect(scale?.zero).toBe(0);
  });

  test('has its nought where values lie on both sides of it', () => {
    const session = club();
    run(session, mark('change', { rules: [], scale: {} }));
    // autumn − spring: 4, −4, 39, 0, 0
    const { scale } = drawing(session, 'change')!;
    expect(scale?.zero).toBeCloseTo(4 / 43, 6);
    expect(scale?.at[0]).toBeCloseTo(8 / 43, 6);
  });

  test('takes ends from numbers and named cells; what lies beyond stands at the end', () => {
    const session = club();
    run(session, mark('lean', { rules: [], scale: { from: '40', to: 'target_lean + 5' } }));
    expect([...drawing(session, 'lean')!.scale!.at.slice(0, 4)].map((v) => Math.round(v * 100))).toEqual([
      0, 50, 54, 100,
    ]);
    expect(refused(session, mark('lean', { rules: [], scale: { from: '50', to: '40' } }))).toMatch(
      /lower end 50/,
    );
    expect(session.triedMarks('roster', 'lean', { rules: [], scale: { from: 'nowhere' } }).scale).toEqual({
      sentence: expect.stringMatching(/nowhere/),
    });
  });
});

describe('a line in a cell', () => {
  test('goes through the row’s values of some columns and leaves gaps where one is missing', () => {
    const session = club();
    run(
      session,
      mark('lean', { rules: [], trend: { is: 'columns', columns: ['spring', 'summer', 'autumn'] } }),
    );
    const trends = drawing(session, 'lean')!.trends!;
    expect([...trends[0]!.at]).toEqual([0, 0, 0.5, 0.5, 1, 1]);
    expect(trends[0]!.words).toBe('spring to autumn: 3 values, from 40° to 44°; minimum 40°, maximum 44°');
    expect([...trends[1]!.at]).toEqual([0, 1, 0.5, Number.NaN, 1, 0]);
    expect(trends[2]).toBeNull();
    expect([...trends[3]!.at]).toEqual([0, 0.5, 0.5, 0.5, 1, 0.5]);
    expect(trends[4]).toBeNull();
  });

  test('can be drawn to one scale for all rows', () => {
    const session = club();
    const columns = ['spring', 'summer', 'autumn'];
    run(session, mark('lean', { rules: [], trend: { is: 'columns', columns, together: true } }));
    // All values lie in 38 to 45.
    const heights = [...drawing(session, 'lean')!.trends![0]!.at].filter((_, i) => i % 2 === 1);
    expect(heights.map((height) => Math.round(height * 7))).toEqual([2, 4, 6]);
  });

  test('comes from a log, by the athlete of the row and in the order of the dates', () => {
    const session = club();
    const trend = {
      is: 'log',
      sheet: 'log',
      dates: 'tested',
      values: 'wall',
      who: 'who',
      by: 'athlete',
    } as const;
    run(session, mark('athlete', { rules: [], trend: { ...trend, last: 10 } }));
    const trends = drawing(session, 'athlete')!.trends!;
    // 1, 11 and 21 March: 8, 11 and 12 cm. A value without a date and a text are left out.
    expect([...trends[0]!.at]).toEqual([0, 0, 0.5, 0.75, 1, 1]);
    expect(trends[0]!.words).toBe('wall: 3 values, from 8 cm to 12 cm; minimum 8 cm, maximum 12 cm');
    expect(trends.slice(1)).toEqual([null, null, null, null]);
    expect(session.triedMarks('roster', 'athlete', { rules: [], trend: { ...trend, last: 10 } }).trend).toBe(
      1,
    );
    run(session, mark('athlete', { rules: [], trend: { ...trend, last: 2 } }));
    expect(drawing(session, 'athlete')!.trends![0]!.words).toMatch(/^wall: 2 values, from 11 cm/);
    run(session, { do: 'remove-column', sheet: 'log', column: 'tested' });
    expect(drawing(session, 'athlete')).toBeUndefined();
  });
});

describe('a cell', () => {
  test('says in words why it is marked', () => {
    const session = club();
    run(session, {
      ...mark('lean', {
        rules: [{ is: 'above', to: 'target_lean', tone: 'attend', says: 'more than aimed at' }],
        scale: {},
      }),
    } as Command);
    expect(session.cellInfo({ sheet: 'roster', column: 'lean', row: 3 }).marked).toEqual([
      'Marked attend: more than aimed at (lean is above target_lean).',
      'On a scale from 38° to 52°.',
    ]);
    expect(session.cellInfo({ sheet: 'roster', column: 'lean', row: 4 }).marked).toBeUndefined();
  });

  test('keeps its mark in the rows that a view picks', () => {
    const session = club();
    run(session, mark('lean', attend({ is: 'above', to: '50' })));
    const tile = session.tileOfRows('roster', Int32Array.of(3, 0, 5), 2, 1);
    expect([...tile.drawings![0]!.rules!]).toEqual([1, 0, 0]);
  });
});

describe('a view', () => {
  test('can show the marked rows alone, and follows the rules', () => {
    const session = club();
    const rows = () => [...session.rowsInView('roster', { where: [{ column: 'lean', is: 'marked' }] })];
    expect(rows()).toEqual([]);
    run(session, mark('lean', attend({ is: 'above', to: '45' })));
    expect(rows()).toEqual([2, 3]);
    run(session, mark('lean', attend({ is: 'below', to: '45' })));
    expect(rows()).toEqual([0]);
  });
});

describe('a hundred thousand rows', () => {
  const rows = 100_000;
  /** Numbers that look unordered and can be made again beside the code: a step around a circle of prime length. */
  const value = (row: number) => ((row * 7919) % 10_007) / 100;

  test('are marked as a loop over them would, and again after an edit', () => {
    const session = Session.create();
    run(session, {
      do: 'add-sheet',
      name: 'log',
      rows,
      columns: [{ name: 'load' }, { name: 'half', formula: 'load / 2' }],
    });
    run(session, {
      do: 'set-cells',
      sheet: 'log',
      row: 0,
      columns: ['load'],
      texts: Array.from({ length: rows }, (_, row) => [String(value(row))]),
    });
    const rules: RuleDraft[] = [
      { is: 'above', to: '99', tone: 'attend' },
      { is: 'true', to: 'half > 45 + AVERAGE(log.load) / 50', tone: 'watch' },
      { is: 'below', to: 'half - 0 * load + 0.5', tone: 'good' },
    ];
    run(session, mark('load', { rules }, 'log'));
    const all = Array.from({ length: rows }, (_, row) => value(row));
    const mean = all.reduce((sum, one) => sum + one, 0) / rows;
    const wanted = all.map((load) =>
      load > 99 ? 1 : load / 2 > 45 + mean / 50 ? 2 : load < load / 2 + 0.5 ? 3 : 0,
    );
    const got = (from: number, count: number) => [
      ...session.tile('log', from, count, 0, 1).drawings![0]!.rules!,
    ];
    expect(got(0, rows)).toEqual(wanted);
    const counts = session.triedMarks('log', 'load', { rules }).rules;
    expect(counts.map((one) => ('shows' in one ? one.shows : one))).toEqual(
      [1, 2, 3].map((rule) => wanted.filter((one) => one === rule).length),
    );
    run(session, { do: 'set-cells', sheet: 'log', row: 70_000, columns: ['load'], texts: [['99.5']] });
    expect(got(70_000, 1)).toEqual([1]);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Command, commands } from '../../src/session/commands/index.ts';
import { Session } from '../../src/session/session.ts';
import { CellMark } from '../../src/session/sheet/cell-mark.ts';

/** A roster with three lifters, a computed column, a named cell and a second sheet that looks at the first. */
function club(): Session {
  const session = Session.create();
  const run = (command: Command) => expect(session.execute(command)).toMatchObject({ ok: true });
  run({
    do: 'add-sheet',
    name: 'roster',
    label: 'Roster',
    columns: [
      { name: 'athlete', label: 'Athlete', kind: 'text' },
      { name: 'femur', label: 'Femur', dimension: 'length', unit: 'cm', format: { digits: 1 } },
      { name: 'tibia', label: 'Tibia', dimension: 'length' },
      { name: 'ratio', label: 'Ratio', formula: 'femur / tibia', format: { digits: 3 } },
    ],
  });
  run({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', 'femur', 'tibia'],
    texts: [
      ['Ada', '42', '40'],
      ['Bo', '44', '40'],
      ['Cy', '38', '40'],
    ],
  });
  run({
    do: 'add-sheet',
    name: 'summary',
    purpose: 'worked',
    rows: 2,
    columns: [{ name: 'what', kind: 'text' }, { name: 'result' }],
  });
  run({ do: 'set-formula', sheet: 'summary', column: 'result', row: 0, formula: '=AVERAGE(roster.femur)' });
  run({ do: 'set-formula', sheet: 'summary', column: 'result', row: 1, formula: '=roster!B2 + 1' });
  run({ do: 'name-cell', sheet: 'summary', column: 'result', row: 0, name: 'mean_femur' });
  return session;
}
const column = (session: Session, sheet: string, name: string) => {
  const outline = session.outline().sheets.find((s) => s.name === sheet)!;
  const index = outline.columns.findIndex((c) => c.name === name);
  return session.tile(outline.id, 0, outline.rows, index, 1);
};
const texts = (session: Session, sheet: string, name: string) => column(session, sheet, name).texts;
const info = (session: Session, column: string, row: number, sheet = 'roster') =>
  session.cellInfo({ sheet, column, row });

describe('entering', () => {
  test('reads numbers with units typed along and shows them in the column’s unit', () => {
    const session = club();
    session.execute({
      do: 'set-cells',
      sheet: 'roster',
      row: 0,
      columns: ['femur'],
      texts: [['17 in'], ['1 ft 4'], ['430 mm']],
    });
    // 1 in = 2.54 cm (international yard and pound agreement, 1959).
    expect(texts(session, 'roster', 'femur')).toEqual(['43.2', '40.6', '43.0']);
    expect(info(session, 'femur', 0).editText).toBe('43.18');
    expect(texts(session, 'roster', 'ratio')[0]).toBe('1.080');
  });

  test('holds what does not fit, with the reason, and never drops it', () => {
    const session = club();
    const done = session.execute({
      do: 'set-cells',
      sheet: 'roster',
      row: 1,
      columns: ['femur'],
      texts: [['44 kg']],
    });
    expect(done).toMatchObject({ ok: true, note: '1 text does not fit the column and is unreadable.' });
    expect(info(session, 'femur', 1)).toMatchObject({
      from: 'held',
      display: '44 kg',
      editText: '44 kg',
      sentence: '"44 kg" is a mass; this column holds a length, in cm.',
    });
    expect(column(session, 'roster', 'femur').marks[1]! & CellMark.held).toBeTruthy();
    expect(session.doubts()).toContainEqual(expect.objectContaining({ about: 'held' }));
    session.execute({ do: 'set-cells', sheet: 'roster', row: 1, columns: ['femur'], texts: [['44 cm']] });
    expect(texts(session, 'roster', 'femur')[1]).toBe('44.0');
  });

  test('a pasted text goes line by line into the rows given, and one undo takes it back', () => {
    const session = club();
    const before = session.save();
    const paste = (text: string, columns: string[], rows = 1) =>
      session.execute({
        do: 'paste-text',
        sheet: 'roster',
        text,
        columns,
        // As a view shows them: the last row first, then the first; further rows are new.
        runs: [
          { row: 2, count: 1 },
          { row: 0, count: 1 },
          { row: 3, count: 5 },
        ],
        over: { rows, columns: 1 },
      });
    expect(paste('30\t31\r\n32\theavy\r\n=1+1', ['femur', 'tibia'])).toMatchObject({
      ok: true,
      note: '2 texts do not fit the column and are unreadable.',
    });
    expect(texts(session, 'roster', 'femur')).toEqual(['32.0', '44.0', '30.0', '=1+1']);
    expect(texts(session, 'roster', 'athlete')).toEqual(['Ada', 'Bo', 'Cy', '']);
    session.undo();
    expect(session.save()).toBe(before);
    // One value goes into all that is chosen.
    paste('50', ['femur', 'tibia'], 2);
    expect(texts(session, 'roster', 'femur')).toEqual(['50.0', '44.0', '50.0']);
    session.undo();
    expect(paste('1\t2\t3', ['femur', 'tibia'])).toMatchObject({
      ok: false,
      sentence:
        'The block is 3 columns wide; from here to the end of the sheet there are 2. Add columns first, or start further left.',
    });
    expect(session.save()).toBe(before);
  });

  test('an edited text that is left as it was changes nothing stored, in any unit', () => {
    const session = club();
    session.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['femur'], texts: [['41.23']] });
    const before = session.save();
    for (const unit of ['in', 'mm', 'ft', 'm', 'cm']) {
      session.execute({ do: 'change-column', sheet: 'roster', column: 'femur', change: { unit } });
      const { editText } = info(session, 'femur', 0);
      session.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['femur'], texts: [[editText]] });
    }
    expect(session.save()).toBe(before);
  });

  test('reads dates, yes and no, choices and the decimal mark as the book says', () => {
    const session = Session.create({ locale: { decimal: ',', dateOrder: 'dmy' } });
    session.execute({
      do: 'add-sheet',
      name: 's',
      columns: [
        { name: 'born', kind: 'date' },
        { name: 'well', kind: 'yes-no' },
        { name: 'side', kind: 'choice', choices: ['Left', 'Right'] },
        { name: 'score', kind: 'number' },
        { name: 'share', kind: 'number', format: { percent: true, digits: 0 } },
      ],
    });
    const columns = ['born', 'well', 'side', 'score', 'share'];
    session.execute({
      do: 'set-cells',
      sheet: 's',
      row: 0,
      columns,
      texts: [
        ['6.5.2001', 'Y', 'LEFT', '1,5', '45'],
        ['31.2.2001', 'maybe', 'both', '1,5,5', '45 %'],
      ],
    });
    const tile = session.tile('s', 0, 2, 0, 5);
    expect(tile.texts).toEqual([
      '6 May 2001',
      'yes',
      'Left',
      '1,5',
      '45 %',
      '31.2.2001',
      'maybe',
      'both',
      '1,5,5',
      '45 %',
    ]);
    expect([...tile.marks].map((m) => (m & CellMark.held) !== 0).slice(5)).toEqual([
      true,
      true,
      true,
      true,
      false,
    ]);
    expect(session.cellInfo({ sheet: 's', column: 'share', row: 0 }).editText).toBe('45 %');
    expect([...session.records('s')][0]!.values).toMatchObject({ born: '2001-05-06', share: 0.45 });
  });

  test('makes a formula of a text with "=" that is typed, a text of one that is pasted from elsewhere', () => {
    const session = club();
    session.execute({
      do: 'set-cells',
      sheet: 'roster',
      row: 0,
      columns: ['athlete'],
      texts: [['=1+1']],
      formulas: false,
    });
    expect(info(session, 'athlete', 0)).toMatchObject({ from: 'value', display: '=1+1', editText: "'=1+1" });
    session.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['athlete'], texts: [["'=1+1"]] });
    expect(info(session, 'athlete', 0)).toMatchObject({ from: 'value', display: '=1+1' });
    session.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['athlete'], texts: [['=1+1']] });
    expect(info(session, 'athlete', 0)).toMatchObject({
      from: 'own formula',
      display: '2',
      editText: '=1+1',
    });
  });

  test('a text that begins with "=" becomes a formula by no way round', () => {
    const session = club();
    const put = (columns: string[], text: string) =>
      session.execute({
        do: 'set-cells',
        sheet: 'roster',
        row: 0,
        columns,
        texts: [[text]],
        formulas: false,
      });
    put(['femur'], '=1+1');
    put(['athlete'], 'a=1+1');
    expect(info(session, 'femur', 0)).toMatchObject({ from: 'held', editText: "'=1+1" });
    session.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['femur'], texts: [["'=1+1"]] });
    expect(info(session, 'femur', 0)).toMatchObject({ from: 'held', display: '=1+1' });
    session.execute({ do: 'change-column', sheet: 'roster', column: 'femur', change: { kind: 'text' } });
    expect(info(session, 'femur', 0)).toMatchObject({ from: 'value', display: '=1+1' });
    session.execute({ do: 'replace-text', sheet: 'roster', find: 'a=', put: '=' });
    expect(info(session, 'athlete', 0)).toMatchObject({ from: 'value', display: '=1+1' });
    session.execute({
      do: 'fill',
      sheet: 'roster',
      columns: ['athlete'],
      from: 0,
      fromRows: 1,
      row: 1,
      rows: 1,
      series: true,
    });
    expect(info(session, 'athlete', 1).from).toBe('value');
  });

  test('adds the rows that a paste needs and refuses one that is wider than its place', () => {
    const session = club();
    session.execute({ do: 'set-cells', sheet: 'roster', row: 5, columns: ['athlete'], texts: [['Eve']] });
    expect(texts(session, 'roster', 'athlete')).toEqual(['Ada', 'Bo', 'Cy', '', '', 'Eve']);
    expect(
      session.execute({
        do: 'set-cells',
        sheet: 'roster',
        row: 0,
        columns: ['athlete'],
        texts: [['a', 'b']],
      }),
    ).toMatchObject({
      ok: false,
      sentence: 'The block is wider than the 1 column that it would go to. Add columns first.',
    });
  });
});

describe('formulas of columns and cells', () => {
  test('a row may hold its own value over the column formula and be given back', () => {
    const session = club();
    session.execute({ do: 'set-cells', sheet: 'roster', row: 1, columns: ['ratio'], texts: [['1.5']] });
    expect(info(session, 'ratio', 1)).toMatchObject({
      from: 'value',
      override: true,
      columnFormula: 'femur / tibia',
    });
    expect(column(session, 'roster', 'ratio').marks[1]! & CellMark.override).toBeTruthy();
    session.execute({ do: 'release-cells', sheet: 'roster', row: 0, rows: 3, columns: ['ratio'] });
    expect(texts(session, 'roster', 'ratio')).toEqual(['1.050', '1.100', '0.950']);
    expect(info(session, 'ratio', 1)).toMatchObject({
      from: 'column formula',
      override: false,
      editText: '=femur / tibia',
    });
  });

  test('setting a column formula keeps own values, says so, or clears them', () => {
    const session = club();
    session.execute({ do: 'set-cells', sheet: 'roster', row: 1, columns: ['ratio'], texts: [['1.5']] });
    expect(
      session.execute({ do: 'set-formula', sheet: 'roster', column: 'ratio', formula: '=tibia / femur' }),
    ).toMatchObject({
      ok: true,
      note: '1 override remains.',
    });
    expect(texts(session, 'roster', 'ratio')).toEqual(['0.952', '1.500', '1.053']);
    session.execute({
      do: 'set-formula',
      sheet: 'roster',
      column: 'ratio',
      formula: '=tibia / femur',
      own: 'clear',
    });
    expect(texts(session, 'roster', 'ratio')).toEqual(['0.952', '0.909', '1.053']);
  });

  test('a formula with a mistake is kept as typed and the note says what is wrong', () => {
    const session = club();
    const done = session.execute({
      do: 'set-formula',
      sheet: 'roster',
      column: 'ratio',
      formula: '=femur / ',
    });
    expect(done.ok && done.note).toMatch(/\.$/);
    expect(info(session, 'ratio', 0)).toMatchObject({ columnFormula: 'femur /' });
    expect(info(session, 'ratio', 0).display).toMatch(/^#/);
  });

  test('a new computed column takes the dimension of its result', () => {
    const session = club();
    session.execute({
      do: 'add-column',
      sheet: 'roster',
      column: { name: 'both', formula: 'femur + tibia' },
    });
    expect(session.outline().sheets[0]!.columns.at(-1)).toMatchObject({ dimension: 'length' });
  });

  test('a preview is written as its column writes, and changes nothing', () => {
    const session = club();
    const before = session.save();
    expect(session.preview('femur * 2', { sheet: 'roster', column: 'femur', row: 0 })).toEqual({
      display: '84.0',
      error: false,
    });
    expect(session.preview('femur / 0', { sheet: 'roster', column: 'ratio', row: 0 })).toMatchObject({
      error: true,
    });
    expect(session.save()).toBe(before);
  });
});

describe('renaming and removing', () => {
  test('a renamed column is renamed in every formula, and the note says how many', () => {
    const session = club();
    const done = session.execute({
      do: 'change-column',
      sheet: 'roster',
      column: 'femur',
      change: { name: 'thigh' },
    });
    expect(done).toMatchObject({ ok: true, note: '2 formulas now say thigh.' });
    expect(info(session, 'ratio', 0).columnFormula).toBe('thigh / tibia');
    expect(info(session, 'result', 0, 'summary').editText).toBe('=AVERAGE(roster.thigh)');
    expect(texts(session, 'roster', 'ratio')).toEqual(['1.050', '1.100', '0.950']);
  });

  test('so are a sheet and a named cell', () => {
    const session = club();
    session.execute({ do: 'set-formula', sheet: 'roster', column: 'ratio', formula: 'femur / mean_femur' });
    expect(session.execute({ do: 'change-sheet', sheet: 'roster', change: { name: 'squad' } })).toMatchObject(
      {
        note: '2 formulas now say squad.',
      },
    );
    expect(info(session, 'result', 1, 'summary').editText).toBe('=squad!B2 + 1');
    expect(session.execute({ do: 'rename-name', name: 'mean_femur', to: 'middle' })).toMatchObject({
      note: '1 formula now says middle.',
    });
    expect(info(session, 'ratio', 0).columnFormula).toBe('femur / middle');
  });

  test('a renamed column is renamed in the recipe that feeds it', () => {
    const session = club();
    const recipe = {
      version: 1,
      title: 'Club file',
      sheet: 'roster',
      columns: [{ heading: 'Femur', column: 'femur', unit: 'mm' }],
    };
    session.execute({ do: 'set-part', part: 'recipes', key: 'club', value: recipe });
    session.execute({ do: 'change-column', sheet: 'roster', column: 'femur', change: { name: 'thigh' } });
    session.execute({ do: 'change-sheet', sheet: 'roster', change: { name: 'squad' } });
    expect(JSON.parse(session.save()).parts.recipes.club).toMatchObject({
      sheet: 'squad',
      columns: [{ heading: 'Femur', column: 'thigh' }],
    });
  });

  test('a removed column leaves #REF! with its old name, and undo brings everything back', () => {
    const session = club();
    const before = session.save();
    expect(session.execute({ do: 'remove-column', sheet: 'roster', column: 'femur' })).toMatchObject({
      ok: true,
    });
    expect(texts(session, 'roster', 'ratio')[0]).toBe('#REF!');
    expect(info(session, 'ratio', 0).columnFormula).toContain('femur');
    expect(texts(session, 'summary', 'result')[0]).toBe('#REF!');
    session.undo();
    expect(session.save()).toBe(before);
    expect(texts(session, 'summary', 'result')).toEqual(['41.33333333 cm', '45 cm']);
  });

  test('addresses follow rows and columns that come, go and change places', () => {
    const session = club();
    const formula = () => info(session, 'result', 1, 'summary').editText;
    session.execute({ do: 'add-rows', sheet: 'roster', row: 0, count: 2 });
    expect(formula()).toBe('=roster!B4 + 1');
    session.execute({ do: 'move-column', sheet: 'roster', column: 'femur', index: 0 });
    expect(formula()).toBe('=roster!A4 + 1');
    session.execute({ do: 'sort-rows', sheet: 'roster', by: [{ column: 'femur' }] });
    expect(texts(session, 'roster', 'athlete')).toEqual(['Cy', 'Ada', 'Bo', '', '']);
    expect(formula()).toBe('=roster!A3 + 1');
    session.execute({ do: 'remove-rows', sheet: 'roster', row: 0, count: 1 });
    expect(formula()).toBe('=roster!A2 + 1');
    expect(texts(session, 'summary', 'result')[1]).toBe('45 cm');
  });

  const taken: readonly (readonly [string, Command, RegExp])[] = [
    [
      'an address',
      { do: 'add-column', sheet: 'roster', column: { name: 'set2' } },
      /"set2" reads as the address of a cell\. Try "set_2"/,
    ],
    [
      'a function',
      { do: 'add-column', sheet: 'roster', column: { name: 'sum' } },
      /"sum" is a function\. "sum_2" would do/,
    ],
    [
      'a column that is there',
      { do: 'change-column', sheet: 'roster', column: 'tibia', change: { name: 'Femur' } },
      /column called "Femur" already/,
    ],
    [
      'a named cell',
      { do: 'add-column', sheet: 'roster', column: { name: 'mean_femur' } },
      /would mean two things/,
    ],
    [
      'a column, for a cell',
      { do: 'name-cell', sheet: 'summary', column: 'result', row: 1, name: 'tibia' },
      /would mean two things/,
    ],
    ['a sheet that is there', { do: 'add-sheet', name: 'ROSTER' }, /sheet called "ROSTER" already/],
    ['a text with blanks', { do: 'add-sheet', name: 'my log' }, /cannot be a name.*Try "my_log"/],
  ];
  test.each(taken)('the name of %s is refused, with another that would do', (_, command, sentence) => {
    const session = club();
    const before = session.save();
    const done = session.execute(command);
    expect(done.ok ? '' : done.sentence).toMatch(sentence);
    expect(session.save()).toBe(before);
  });

  test('a sheet may be called log', () => {
    const session = club();
    session.execute({ do: 'add-sheet', name: 'log', rows: 1, columns: [{ name: 'load' }] });
    session.execute({ do: 'set-cells', sheet: 'log', row: 0, columns: ['load'], texts: [['100']] });
    session.execute({
      do: 'set-formula',
      sheet: 'summary',
      column: 'result',
      row: 0,
      formula: 'LOG(SUM(log.load), 10)',
    });
    expect(texts(session, 'summary', 'result')[0]).toBe('2');
  });
});

describe('kinds, dimensions and units', () => {
  test('another display unit changes what is shown and nothing that is stored', () => {
    const session = club();
    session.execute({ do: 'change-column', sheet: 'roster', column: 'femur', change: { unit: 'in' } });
    expect(texts(session, 'roster', 'femur')).toEqual(['16.5', '17.3', '15.0']);
    expect([...session.records('roster')][0]!.values.femur).toBe(42);
    expect(texts(session, 'roster', 'ratio')[0]).toBe('1.050');
  });

  test('a dimension given to plain numbers takes them as they are read', () => {
    const session = club();
    session.execute({ do: 'add-column', sheet: 'roster', column: { name: 'wall' } });
    session.execute({
      do: 'set-cells',
      sheet: 'roster',
      row: 0,
      columns: ['wall'],
      texts: [['4'], ['x'], ['5 ft']],
    });
    session.execute({
      do: 'change-column',
      sheet: 'roster',
      column: 'wall',
      change: { dimension: 'length', unit: 'in' },
    });
    expect(texts(session, 'roster', 'wall')).toEqual(['4', 'x', '60']);
    expect([...session.records('roster')][0]!.values.wall).toBe(10.16);
  });

  test('another kind reads the cells again; what does not fit is held and comes back with the old kind', () => {
    const session = club();
    session.execute({ do: 'change-column', sheet: 'roster', column: 'athlete', change: { kind: 'number' } });
    expect(session.outline().doubts).toBeGreaterThanOrEqual(3);
    session.execute({ do: 'change-column', sheet: 'roster', column: 'athlete', change: { kind: 'text' } });
    expect(texts(session, 'roster', 'athlete')).toEqual(['Ada', 'Bo', 'Cy']);
    expect([...column(session, 'roster', 'athlete').marks]).toEqual([0, 0, 0]);
  });

  test('a unit of another dimension is refused with the ones there are', () => {
    const done = club().execute({
      do: 'change-column',
      sheet: 'roster',
      column: 'femur',
      change: { unit: 'kg' },
    });
    expect(done).toMatchObject({
      ok: false,
      sentence: '"kg" is not a unit of length. Accepted are cm, mm, m, in, ft.',
    });
  });
});

describe('filling', () => {
  const fill = (values: readonly string[], series: boolean, rows = 4): readonly string[] => {
    const session = Session.create();
    session.execute({ do: 'add-sheet', name: 's', columns: [{ name: 'v', kind: 'text' }] });
    session.execute({ do: 'set-cells', sheet: 's', row: 0, columns: ['v'], texts: values.map((v) => [v]) });
    session.execute({
      do: 'change-column',
      sheet: 's',
      column: 'v',
      change: { kind: /^\d{4}-/.test(values[0]!) ? 'date' : /^[\d.]+$/.test(values[0]!) ? 'number' : 'text' },
    });
    session.execute({
      do: 'fill',
      sheet: 's',
      columns: ['v'],
      from: 0,
      fromRows: values.length,
      row: values.length,
      rows,
      series,
    });
    return session.tile('s', 0, 99, 0, 1).texts.slice(values.length);
  };
  test.each([
    [['1', '2'], true, ['3', '4', '5', '6']],
    [['1', '2'], false, ['1', '2', '1', '2']],
    [['0.1', '0.2'], true, ['0.3', '0.4', '0.5', '0.6']],
    [['5'], true, ['6', '7', '8', '9']],
    [['2025-02-27'], true, ['28 Feb 2025', '1 Mar 2025', '2 Mar 2025', '3 Mar 2025']],
    [['2025-01-01', '2025-01-08'], true, ['15 Jan 2025', '22 Jan 2025', '29 Jan 2025', '5 Feb 2025']],
    [['Set 1'], true, ['Set 2', 'Set 3', 'Set 4', 'Set 5']],
    [['wk09', 'wk10'], true, ['wk11', 'wk12', 'wk13', 'wk14']],
    [['a', 'b'], true, ['a', 'b', 'a', 'b']],
    [['1', '2', '4'], true, ['1', '2', '4', '1']],
  ] as const)('%j with series %s goes on as %j', (values, series, expected) =>
    expect(fill(values, series)).toEqual(expected),
  );

  test('addresses in own formulas move along, fixed ones stay', () => {
    const session = club();
    session.execute({ do: 'set-formula', sheet: 'roster', column: 'tibia', row: 0, formula: 'B1 + B$3' });
    session.execute({
      do: 'fill',
      sheet: 'roster',
      columns: ['tibia'],
      from: 0,
      fromRows: 1,
      row: 1,
      rows: 1,
    });
    expect(info(session, 'tibia', 1).editText).toBe('=B2 + B$3');
  });
});

describe('commands from outside', () => {
  test('what is no command, or has another shape, is refused with a sentence', () => {
    const session = club();
    const odd = (command: unknown) => session.execute(command as Command);
    expect(odd({ do: 'explode' })).toEqual({ ok: false, sentence: 'There is no command "explode".' });
    expect(odd({ do: 'add-rows', sheet: 'roster', count: -1 })).toMatchObject({
      ok: false,
      sentence: expect.stringContaining('"count"'),
    });
    expect(odd({ do: 'add-rows', sheet: 'roster', count: 1e9 })).toMatchObject({ ok: false });
    expect(odd({ do: 'remove-sheet', sheet: 'x' })).toMatchObject({
      ok: false,
      sentence: 'There is no sheet "x" in this book.',
    });
    expect(odd({ do: 'set-part', part: 'charts', key: '__proto__', value: {} })).toMatchObject({ ok: false });
    expect(
      odd({ do: 'set-part', part: 'charts', key: 'a', value: JSON.parse('{"__proto__":1}') }),
    ).toMatchObject({ ok: false });
  });

  test('no payload makes a command throw or change the book when it is refused', () => {
    const session = club();
    fc.assert(
      fc.property(
        fc.constantFrom(...commands.keys()),
        fc.object({ maxDepth: 2 }),
        fc.constantFrom('roster', 'summary', 'x'),
        (id, payload, sheet) => {
          const before = session.save();
          const done = session.execute({
            sheet,
            row: 1,
            count: 1,
            columns: ['femur'],
            column: 'femur',
            ...payload,
            do: id,
          } as unknown as Command);
          if (done.ok) session.undo();
          expect(session.save()).toBe(before);
        },
      ),
      { numRuns: 500 },
    );
  });
});

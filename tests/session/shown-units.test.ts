/**
 * What a setting or a free cell shows of its number where no heading does: a date, a unit, a rate. Arithmetic of the
 * checks is done by hand beside them; units as SI and the international pound (1 lb = 0.45359237 kg) define them.
 */
import { describe, expect, test } from 'vitest';
import type { Command } from '../../src/session/commands/index.ts';
import { Session } from '../../src/session/session.ts';

const run = (session: Session, command: Command) => {
  const done = session.execute(command);
  if (!done.ok) throw new Error(JSON.stringify(command) + done.sentence);
};

/** A log of four days a week apart, sleep in hours and loads in lb, and a sheet of free cells. */
function book(formulas: readonly string[]): Session {
  const session = Session.create();
  run(session, {
    do: 'add-sheet',
    name: 'log',
    columns: [
      { name: 'night', kind: 'date' },
      { name: 'sleep', dimension: 'duration', unit: 'h' },
      { name: 'load', dimension: 'mass', unit: 'kg' },
      { name: 'lifted', dimension: 'mass', unit: 'lb' },
      { name: 'lean', dimension: 'angle' },
      { name: 'points' },
    ],
  });
  run(session, {
    do: 'set-cells',
    sheet: 'log',
    row: 0,
    columns: ['night', 'sleep', 'load', 'lifted', 'lean', 'points'],
    texts: [
      ['2025-03-01', '7', '100', '225', '30', '300'],
      ['2025-03-08', '7.5', '102', '225', '32', '310'],
      ['2025-03-15', '8', '104', '225', '34', '320'],
    ],
  });
  run(session, {
    do: 'add-sheet',
    name: 'glance',
    purpose: 'worked',
    rows: Math.max(1, formulas.length),
    columns: [{ name: 'figure' }],
  });
  formulas.forEach((formula, row) => {
    run(session, { do: 'set-cells', sheet: 'glance', row, columns: ['figure'], texts: [[`=${formula}`]] });
  });
  return session;
}
const shown = (formula: string): unknown => {
  const session = book([formula]);
  const { id } = session.outline().sheets[1]!;
  const text = session.tile(id, 0, 1, 0, 1).texts[0];
  // The formula line, the search and the side list say the same as the sheet.
  expect(session.cellInfo({ sheet: id, column: 'figure', row: 0 }).display).toBe(text);
  run(session, { do: 'name-cell', sheet: 'glance', column: 'figure', row: 0, name: 'a_setting' });
  expect(session.outline().names[0]!.display).toBe(text);
  return text;
};

describe('a free cell and a setting show what their number stands for', () => {
  test.each([
    ['a mean of hours stays in hours', 'AVERAGE(log.sleep)', '7.5 h'],
    ['a maximum keeps the unit of its column', 'MAX(log.lifted)', '225 lb'],
    ['an angle has its sign', 'AVERAGE(log.lean)', '32°'],
    [
      'a choice between nothing and a value keeps its unit',
      'IF(COUNT(log.load) = 0, "", MAX(log.load))',
      '104 kg',
    ],
    ['a ratio is a plain number', 'MAX(log.load) / MIN(log.load)', '1.04'],
    ['the last day is a date', 'MAX(log.night)', '15 Mar 2025'],
    ['a date and a number of days is a date', 'MAX(log.night) - 14', '1 Mar 2025'],
    ['between two dates lie days, a plain number', 'MAX(log.night) - MIN(log.night)', '14'],
    ['a date of the built-in functions', 'DATE(2025, 3, 1)', '1 Mar 2025'],
    ['a number of dates is no date', 'COUNT(log.night)', '3'],
    ['a spread of dates is no date', 'STDEV(log.night)', '7'],
    // 100, 102, 104 kg, each a week after the last: 2 kg a week.
    ['a trend is a rate per week', 'TRAIN.TREND(log.night, log.load)', '2 kg per week'],
    ['a trend of a column that says nothing is left as it is', 'TRAIN.TREND(log.night, log.points)', '10'],
    // 104 kg on one day of seven.
    [
      'a mean is a rate per day',
      'ROUND(TRAIN.MEAN(log.night, log.load, MAX(log.night), 7), 2)',
      '14.86 kg per day',
    ],
    ['a rate in hours stays in hours', 'TRAIN.TREND(log.night, log.sleep)', '0.5 h per week'],
    ['a rate times a count is no rate any more', 'TRAIN.TREND(log.night, log.load) * 4', '8'],
    [
      'two rates over one another are a plain number',
      'TRAIN.TREND(log.night, log.load) / TRAIN.TREND(log.night, log.load)',
      '1',
    ],
  ])('%s', (_, formula, text) => expect(shown(formula)).toBe(text));

  test('a cell takes its unit from the free cell that it reads', () => {
    const session = book(['AVERAGE(log.sleep)', 'A1 + 0', 'MAX(log.night)', 'A3 + 7']);
    const { id } = session.outline().sheets[1]!;
    expect(session.tile(id, 0, 4, 0, 1).texts).toEqual(['7.5 h', '7.5 h', '15 Mar 2025', '22 Mar 2025']);
    // Other programs are handed the number, and a date of ISO 8601.
    expect(session.tile(id, 0, 4, 0, 1).bare).toEqual({
      0: '7.5',
      1: '7.5',
      2: '2025-03-15',
      3: '2025-03-22',
    });
  });

  test('another unit of the column is another unit of the cell, at once', () => {
    const session = book(['AVERAGE(log.sleep)']);
    const { id } = session.outline().sheets[1]!;
    run(session, { do: 'change-column', sheet: 'log', column: 'sleep', change: { unit: 'min' } });
    expect(session.tile(id, 0, 1, 0, 1).texts).toEqual(['450 min']);
  });
});

describe('a date typed into a setting', () => {
  const settings = (): Session => {
    const session = book([]);
    run(session, { do: 'add-sheet', name: 'settings', rows: 2, columns: [{ name: 'amount' }] });
    return session;
  };
  const type = (session: Session, text: string): void =>
    run(session, { do: 'set-cells', sheet: 'settings', row: 0, columns: ['amount'], texts: [[text]] });
  const amount = (session: Session) => session.cellInfo({ sheet: 'settings', column: 'amount', row: 0 });

  test('is a date, shows as one and reads back from the editor as one', () => {
    const session = settings();
    run(session, { do: 'name-cell', sheet: 'settings', column: 'amount', row: 0, name: 'starts' });
    type(session, '2025-03-01');
    expect(amount(session)).toMatchObject({ from: 'value', display: '1 Mar 2025', editText: '2025-03-01' });
    expect(session.outline().names[0]!.display).toBe('1 Mar 2025');
    run(session, { do: 'set-formula', sheet: 'glance', column: 'figure', row: 0, formula: '=starts + 7' });
    expect(session.cellInfo({ sheet: 'glance', column: 'figure', row: 0 }).display).toBe('8 Mar 2025');
    type(session, '40');
    expect(amount(session)).toMatchObject({ display: '40' });
    type(session, 'soon');
    expect(amount(session)).toMatchObject({ from: 'held', display: 'soon' });
  });

  test('typed before the cell has its name, it becomes a date with the name, and undo takes both back', () => {
    const session = settings();
    type(session, '2025-03-01');
    expect(amount(session).from).toBe('held');
    run(session, { do: 'name-cell', sheet: 'settings', column: 'amount', row: 0, name: 'starts' });
    expect(amount(session)).toMatchObject({ from: 'value', display: '1 Mar 2025' });
    session.undo();
    expect(amount(session)).toMatchObject({ from: 'held', display: '2025-03-01' });
  });

  test('is no date in a column of lengths', () => {
    const session = book([]);
    run(session, { do: 'name-cell', sheet: 'log', column: 'load', row: 0, name: 'starts' });
    run(session, { do: 'set-cells', sheet: 'log', row: 0, columns: ['load'], texts: [['2025-03-01']] });
    expect(session.cellInfo({ sheet: 'log', column: 'load', row: 0 }).from).toBe('held');
  });
});

describe('a unit typed into a setting', () => {
  const settings = (): Session => {
    const session = book([]);
    run(session, { do: 'add-sheet', name: 'settings', rows: 2, columns: [{ name: 'amount' }] });
    run(session, { do: 'name-cell', sheet: 'settings', column: 'amount', row: 0, name: 'wanted' });
    return session;
  };
  const type = (session: Session, text: string): void =>
    run(session, { do: 'set-cells', sheet: 'settings', row: 0, columns: ['amount'], texts: [[text]] });
  const display = (session: Session) =>
    session.cellInfo({ sheet: 'settings', column: 'amount', row: 0 }).display;
  const value = (session: Session) => {
    run(session, { do: 'set-formula', sheet: 'glance', column: 'figure', row: 0, formula: '=wanted / 1' });
    return session.tile(session.outline().sheets[1]!.id, 0, 1, 0, 1).bare?.[0] ?? '';
  };

  // 1 in = 2.54 cm and 1 lb = 0.45359237 kg by the agreement of 1959; 5 ft 11 are 71 in.
  test.each([
    ['42 cm', '42 cm', 42],
    ['1.5 in', '1.5 in', 3.81],
    ['90 min', '90 min', 90],
    ['1.5 h', '1.5 h', 90],
    ['225 lb', '225 lb', 102.05828325],
    ['40°', '40°', 40],
    ['0.5 kg per week', '0.5 kg per week', 0.5],
    ['2 kg/day', '2 kg per day', 2],
    ['3 per week', '3 per week', 3],
  ])('%s is read, shows as %s and computes as %d', (text, shownAs, number) => {
    const session = settings();
    type(session, text);
    expect(display(session)).toBe(shownAs);
    expect(session.outline().names.find(({ name }) => name === 'wanted')!.display).toBe(shownAs);
    expect(session.evaluate('wanted')).toBeCloseTo(number, 12);
  });

  test('a number alone is in the unit that the setting has; another unit replaces it; a blank takes it away', () => {
    const session = settings();
    type(session, '1.5 in');
    const before = session.save();
    type(session, '2');
    expect([display(session), session.evaluate('wanted')]).toEqual(['2 in', 5.08]);
    session.undo();
    expect(session.save()).toBe(before);
    type(session, '7 cm');
    expect(display(session)).toBe('7 cm');
    run(session, { do: 'clear-cells', sheet: 'settings', row: 0, rows: 1, columns: ['amount'] });
    type(session, '7');
    expect(display(session)).toBe('7');
    // Taken away with the name, and said.
    type(session, '1.5 in');
    const done = session.execute({ do: 'remove-name', name: 'wanted' });
    expect(done).toMatchObject({ ok: true, note: 'The cell now has a plain number: its value in cm.' });
    expect(display(session)).toBe('3.81');
  });

  test('survives saving and opening, and follows into formulas that read it', () => {
    const session = settings();
    type(session, '1.5 in');
    const again = Session.open(session.save());
    if (!(again instanceof Session)) throw new Error('not opened');
    for (const _ of again.recalculate());
    expect(again.outline().names.find(({ name }) => name === 'wanted')!.display).toBe('1.5 in');
    expect(again.save()).toBe(session.save());
    expect(value(session)).toBe('1.5');
    // A length is compared with a mass: that is worth a look.
    run(session, {
      do: 'set-formula',
      sheet: 'glance',
      column: 'figure',
      row: 0,
      formula: '=MAX(log.load) > wanted',
    });
    expect(JSON.stringify(session.doubts())).toContain('a length (cm)');
  });

  test('typed before the cell has its name, the reason says to name it, and the name makes it a number', () => {
    const session = settings();
    run(session, { do: 'set-cells', sheet: 'settings', row: 1, columns: ['amount'], texts: [['42 cm']] });
    const at = { sheet: 'settings', column: 'amount', row: 1 };
    expect(session.cellInfo(at).from).toBe('held');
    run(session, { do: 'name-cell', ...at, name: 'other' });
    expect(session.cellInfo(at)).toMatchObject({ from: 'value', display: '42 cm' });
    session.undo();
    expect(session.cellInfo(at).from).toBe('held');
  });
});

describe('rates as a column’s dimension', () => {
  const rated = (): Session => {
    const session = book([]);
    run(session, {
      do: 'add-column',
      sheet: 'log',
      column: { name: 'gain', label: 'Gain', dimension: 'mass', unit: 'lb', per: 'week' },
    });
    return session;
  };
  const type = (session: Session, text: string): void =>
    run(session, { do: 'set-cells', sheet: 'log', row: 0, columns: ['gain'], texts: [[text]] });
  const info = (session: Session) => session.cellInfo({ sheet: 'log', column: 'gain', row: 0 });

  test('are typed with and without their unit, and never with another time', () => {
    const session = rated();
    const column = session.outline().sheets[0]!.columns.at(-1)!;
    expect(column.sign).toBe('lb per week');
    type(session, '2');
    expect(session.evaluate('INDEX(log.gain, 1)')).toBeCloseTo(0.90718474, 12);
    type(session, '1 kg per week');
    expect(session.evaluate('INDEX(log.gain, 1)')).toBe(1);
    type(session, '1 kg per day');
    expect(info(session)).toMatchObject({
      from: 'held',
      sentence: '"1 kg per day" is a rate per day; this column has rates per week.',
    });
  });

  test('are no masses: adding both is worth a look', () => {
    const session = rated();
    run(session, {
      do: 'set-formula',
      sheet: 'glance',
      column: 'figure',
      row: 0,
      formula: '=SUM(log.load, log.gain)',
    });
    expect(JSON.stringify(session.doubts())).toContain('a mass per week (kg per week)');
  });

  test('a column whose formula gives a rate or a length in inches takes that as its own', () => {
    const session = book([]);
    run(session, {
      do: 'add-column',
      sheet: 'log',
      column: { name: 'sleep_trend', formula: 'TRAIN.TREND(log.night, log.sleep)' },
    });
    run(session, { do: 'add-column', sheet: 'log', column: { name: 'half', formula: 'lifted / 2' } });
    const columns = session.outline().sheets[0]!.columns;
    expect(columns.slice(-2).map(({ sign }) => sign)).toEqual(['h per week', 'lb']);
    expect(columns.at(-2)).toMatchObject({ dimension: 'duration', unit: 'h', per: 'week' });
    const { id } = session.outline().sheets[0]!;
    expect(session.tile(id, 0, 1, columns.length - 2, 2).texts).toEqual(['0.5', '112.5']);
  });
});

describe('units in headings of files', () => {
  /** A column with a formula that says no unit of its own, as a book written by hand has it. */
  const undeclared = (): Session => {
    const session = book(['MAX(log.load)', 'MIN(log.load)']);
    const file = JSON.parse(session.save());
    file.sheets[0].columns.push(
      { name: 'twice', kind: 'number', formula: 'load * 2' },
      { name: 'pace', kind: 'number', formula: 'TRAIN.TREND(log.night, log.load)' },
    );
    const again = Session.open(JSON.stringify(file));
    if (!(again instanceof Session)) throw new Error('not opened');
    for (const _ of again.recalculate());
    return again;
  };

  test('a computed column whose unit is known carries it once, on the page and in CSV', () => {
    const session = undeclared();
    const [log, glance] = session.outline().sheets;
    expect(log!.columns.slice(-2).map(({ sign }) => sign)).toEqual(['kg', 'kg per week']);
    expect(session.toCsv('log').split('\r\n').slice(0, 2)).toEqual([
      'night,sleep (h),load (kg),lifted (lb),lean (deg),points,twice (kg),pace (kg per week)',
      '2025-03-01,7,100,225,30,300,200,2',
    ]);
    // Free cells that all measure the same say it above them.
    expect(session.toCsv(glance!.id)).toBe('figure (kg)\r\n104\r\n100\r\n');
  });

  test('free cells that measure this and that have their units beside them', () => {
    const session = book(['MAX(log.load)', 'AVERAGE(log.lean)', 'COUNT(log.load)']);
    const { id } = session.outline().sheets[1]!;
    expect(session.toCsv(id)).toBe('figure,figure: unit\r\n104,kg\r\n32,deg\r\n3,\r\n');
  });
});

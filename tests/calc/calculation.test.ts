import { describe, expect, test } from 'vitest';
import { createCalculation } from '../../src/calc/calculation.ts';
import { Bench, bookOf, exhaust, f } from './book-for-test.ts';

/*
 * Expected numbers are worked out by hand in the test: sums, ratios and means of a few small numbers.
 */
const roster = () =>
  new Bench(
    bookOf(
      {
        roster: {
          femur: [42, 40, null, 38],
          tibia: [40, 41, 39, 40],
          ratio: 'SEG.RATIO(femur, tibia)',
          double: 'ratio*2',
        },
        summary: {
          label: ['mean', 'top', 'target'],
          value: [f('AVERAGE(roster.femur)'), f('SUM(roster.tibia)+target'), 5],
        },
      },
      { target: ['summary', 'value', 2] },
    ),
  );

describe('a calculated book', () => {
  test('computes columns, free cells and named cells in one order', () => {
    const b = roster();
    expect(b.column('roster', 'double')[0]).toBeCloseTo(2.1, 12);
    expect(b.values('roster', 'ratio')[2]).toBe('#N/A');
    expect(b.value('summary', 'value', 0)).toBeCloseTo(40, 12);
    expect(b.value('summary', 'value', 1)).toBe(165);
    expect(b.sentence('roster', 'double', 2)).toContain('"a" of SEG.RATIO is blank');
  });
  test('follows an edit through rows, aggregates and cells', () => {
    const b = roster();
    b.put('roster', 'femur', 2, 39);
    expect(b.value('roster', 'double', 2)).toBeCloseTo(2, 12);
    expect(b.value('summary', 'value', 0)).toBeCloseTo((42 + 40 + 39 + 38) / 4, 12);
    b.put('summary', 'value', 2, 10);
    expect(b.value('summary', 'value', 1)).toBe(170);
  });
  test('hands out a new range when a value changed and the same one otherwise', () => {
    const b = roster();
    const before = {
      ratio: b.calculation.column('roster', 'ratio'),
      tibia: b.calculation.column('roster', 'tibia'),
      value: b.calculation.column('summary', 'value'),
    };
    b.put('roster', 'femur', 0, 43);
    expect(b.calculation.column('roster', 'ratio')).not.toBe(before.ratio);
    expect(b.calculation.column('summary', 'value')).not.toBe(before.value);
    expect(b.calculation.column('roster', 'tibia')).toBe(before.tibia);
  });
  test('tells which rows are fresh', () => {
    const b = roster();
    const changes = [{ what: 'cells', sheet: 'roster', column: 'femur', from: 3, to: 4 }] as const;
    b.book.sheets[0]!.cells.get('femur')!.set(3, 44);
    const fresh = exhaust(b.calculation.update(changes));
    expect(fresh).toContainEqual({ sheet: 'roster', column: 'ratio', from: 3, to: 4 });
    expect(fresh).toContainEqual({ sheet: 'summary', column: 'value', from: 0, to: 1 });
    expect(fresh.some(({ column }) => column === 'tibia')).toBe(false);
  });
  test('lets columns use free cells that use columns', () => {
    const b = new Bench(
      bookOf(
        {
          s: { x: [1, 2, 3], share: 'x/total', half: 'share/2' },
          t: { v: [f('SUM(s.x)'), f('SUM(s.half)')] },
        },
        { total: ['t', 'v', 0] },
      ),
    );
    expect(b.values('s', 'share')).toEqual([1 / 6, 2 / 6, 3 / 6]);
    expect(b.value('t', 'v', 1)).toBeCloseTo(0.5, 12);
    b.put('s', 'x', 2, 7);
    expect(b.values('s', 'share')).toEqual([0.1, 0.2, 0.7]);
    expect(b.value('t', 'v', 1)).toBeCloseTo(0.5, 12);
  });
  test('takes held values as texts', () => {
    const b = new Bench(
      bookOf({ s: { x: [{ held: '44 cm', reason: 'not a number' }, 2], twice: 'x*2', text: 'x&"!"' } }),
    );
    expect(b.values('s', 'twice')).toEqual(['#VALUE!', 4]);
    expect(b.values('s', 'text')).toEqual(['44 cm!', '2!']);
  });
  test('keeps dates dates', () => {
    const b = new Bench(
      bookOf({ s: { day: [{ date: 45000 }, { date: 45007 }], next: 'day+1', v: [f('A1+7'), f('s!A2-A1')] } }),
    );
    expect([...b.calculation.column('s', 'next').kinds]).toEqual([2, 2]);
    expect([...b.calculation.column('s', 'v').kinds]).toEqual([2, 1]);
    expect(b.values('s', 'v')).toEqual([45007, 7]);
  });
});

describe('a row with something of its own over a column’s formula', () => {
  const make = () =>
    new Bench(
      bookOf(
        { s: { x: [1, 2, 3], y: { formula: 'x*10', cells: [null, 99, f('x+y_of_first')] }, z: 'y+1' } },
        { y_of_first: ['s', 'y', 0] },
      ),
    );
  test('keeps its value or formula, and readers see it', () => {
    const b = make();
    expect(b.values('s', 'y')).toEqual([10, 99, 13]);
    expect(b.values('s', 'z')).toEqual([11, 100, 14]);
  });
  test('keeps it when the rest of the column is computed again', () => {
    const b = make();
    b.put('s', 'x', 0, 5, 6, 7);
    expect(b.values('s', 'y')).toEqual([50, 99, 57]);
    expect(b.values('s', 'z')).toEqual([51, 100, 58]);
  });
  test('is released by clearing it', () => {
    const b = make();
    b.put('s', 'y', 1, null, null);
    expect(b.values('s', 'y')).toEqual([10, 20, 30]);
    expect(b.values('s', 'z')).toEqual([11, 21, 31]);
  });
  test('is an error of its own without harming the others', () => {
    const b = make();
    b.put('s', 'y', 1, f('1/0'));
    expect(b.values('s', 'y')).toEqual([10, '#DIV/0!', 13]);
    expect(b.values('s', 'z')).toEqual([11, '#DIV/0!', 14]);
  });
});

describe('circles', () => {
  test('of columns are named in every member, with their path', () => {
    const b = new Bench(bookOf({ s: { x: [1, 2], a: 'b+x', b: 'c', c: 'a*2', d: 'x+1', e: 'a+1' } }));
    for (const column of ['a', 'b', 'c', 'e']) expect(b.values('s', column)).toEqual(['#CYCLE!', '#CYCLE!']);
    expect(b.values('s', 'd')).toEqual([2, 3]);
    expect(b.sentence('s', 'a', 0)).toMatch(
      /s\.a → s\.b → s\.c → s\.a|s\.b → s\.c → s\.a → s\.b|s\.c → s\.a → s\.b → s\.c/,
    );
  });
  test('of a column with itself', () => {
    const b = new Bench(bookOf({ s: { x: [1], a: 'a+x' } }));
    expect(b.sentence('s', 'a', 0)).toContain('s.a → s.a');
  });
  test('of cells, and of cells through whole columns', () => {
    const b = new Bench(
      bookOf(
        { s: { x: [1, 2], y: 'x*share' }, t: { v: [f('B1'), f('SUM(s.y)')], w: [f('A1'), null] } },
        { share: ['t', 'v', 1] },
      ),
    );
    expect(b.value('t', 'v', 0)).toBe('#CYCLE!');
    expect(b.value('t', 'w', 0)).toBe('#CYCLE!');
    expect(b.value('t', 'v', 1)).toBe('#CYCLE!');
    expect(b.sentence('s', 'y', 0)).toMatch(/share/);
  });
  test('end when they are broken', () => {
    const b = new Bench(bookOf({ s: { x: [1, 2], v: [f('C1'), null], w: [f('B1'), f('x+1')] } }));
    expect(b.values('s', 'w')).toEqual(['#CYCLE!', 3]);
    b.put('s', 'v', 0, 7);
    expect(b.values('s', 'w')).toEqual([7, 3]);
    b.put('s', 'v', 0, f('C1'));
    expect(b.values('s', 'w')).toEqual(['#CYCLE!', 3]);
  });
  test('are not seen where rows lean on the row above', () => {
    const b = new Bench(
      bookOf({ s: { change: [5, -2, 4, 1], start: [100, f('C1'), f('C2'), f('C3')], end: 'start+change' } }),
    );
    expect(b.values('s', 'end')).toEqual([105, 103, 107, 108]);
    b.put('s', 'change', 1, 10);
    expect(b.values('s', 'end')).toEqual([105, 115, 119, 120]);
    b.put('s', 'start', 0, f('C4'));
    expect(b.values('s', 'end')).toEqual(['#CYCLE!', '#CYCLE!', '#CYCLE!', '#CYCLE!']);
    b.put('s', 'start', 0, 0);
    expect(b.values('s', 'end')).toEqual([5, 15, 19, 20]);
  });
});

describe('array results', () => {
  const make = () =>
    new Bench(
      bookOf({
        s: {
          a: [f('SEQUENCE(3)'), null, null, null],
          b: [null, null, null, null],
          c: [1, f('A2*10'), f('SUM(A1:A4)'), f('SUM(s.a)')],
        },
      }),
    );
  test('spill, and other formulas read what they cover', () => {
    const b = make();
    expect(b.values('s', 'a')).toEqual([1, 2, 3, null]);
    expect(b.values('s', 'c')).toEqual([1, 20, 6, 6]);
  });
  test('grow and shrink with their formula', () => {
    const b = make();
    b.put('s', 'a', 0, f('SEQUENCE(2,2)'));
    expect(b.values('s', 'a')).toEqual([1, 3, null, null]);
    expect(b.values('s', 'b')).toEqual([2, 4, null, null]);
    expect(b.values('s', 'c')).toEqual([1, 30, 4, 4]);
    b.put('s', 'a', 0, 8);
    expect(b.values('s', 'a')).toEqual([8, null, null, null]);
    expect(b.values('s', 'b')).toEqual([null, null, null, null]);
    expect(b.values('s', 'c')).toEqual([1, 0, 8, 8]);
  });
  test('need room, and take it when it comes free', () => {
    const b = make();
    b.put('s', 'a', 2, 'here');
    expect(b.values('s', 'a')).toEqual(['#SPILL!', null, 'here', null]);
    expect(b.sentence('s', 'a', 0)).toContain('row 3 of a');
    b.put('s', 'a', 2, null);
    expect(b.values('s', 'a')).toEqual([1, 2, 3, null]);
    expect(b.values('s', 'c')).toEqual([1, 20, 6, 6]);
  });
  test('do not reach beyond the sheet or over a column’s formula', () => {
    const b = make();
    b.put('s', 'a', 0, f('SEQUENCE(5)'));
    expect(b.sentence('s', 'a', 0)).toContain('more than the sheet has');
    const over = new Bench(bookOf({ s: { x: [f('{1,2}'), 3], y: 'x*2' } }));
    expect(over.value('s', 'x', 0)).toBe('#SPILL!');
    expect(over.values('s', 'y')).toEqual(['#SPILL!', 6]);
  });
  test('that need a circle to stand are told so', () => {
    const b = new Bench(bookOf({ s: { a: [f('SEQUENCE(2+A2)'), null, null, null, null, null] } }));
    expect(b.value('s', 'a', 0)).toBe('#CYCLE!');
  });
  test('of one cell are its value', () => {
    const b = new Bench(
      bookOf({ s: { a: [f('{5}'), f('SORT({3,1,2},1,1,TRUE)')], b: [null, null], c: [null, null] } }),
    );
    expect(b.values('s', 'a')).toEqual([5, 1]);
    expect(b.value('s', 'c', 1)).toBe(3);
  });
});

describe('columns that read other rows', () => {
  test('by moving addresses, and follow their edits', () => {
    const b = new Bench(
      bookOf({ s: { x: [1, 2, 3, 4], next: 'A2', window: 'SUM(A1:A2)', up_to_here: 'SUM(A$1:A1)' } }),
    );
    expect(b.values('s', 'next')).toEqual([2, 3, 4, null]);
    expect(b.values('s', 'window')).toEqual([3, 5, 7, 4]);
    expect(b.values('s', 'up_to_here')).toEqual([1, 3, 6, 10]);
    b.put('s', 'x', 1, 20);
    expect(b.values('s', 'next')).toEqual([20, 3, 4, null]);
    expect(b.values('s', 'window')).toEqual([21, 23, 7, 4]);
    expect(b.values('s', 'up_to_here')).toEqual([1, 21, 24, 28]);
  });
});

describe('changes of the book’s shape', () => {
  test('rows come and go', () => {
    const b = roster();
    b.edit({ do: 'add-rows', sheet: 'roster', row: 1, count: 1, cells: [[44], [40]] });
    expect(b.value('roster', 'ratio', 1)).toBeCloseTo(1.1, 12);
    expect(b.value('summary', 'value', 0)).toBeCloseTo((42 + 44 + 40 + 38) / 4, 12);
    b.edit({ do: 'remove-rows', sheet: 'roster', row: 0, count: 2 });
    expect(b.column('roster', 'ratio').length).toBe(3);
    expect(b.value('summary', 'value', 0)).toBeCloseTo(39, 12);
    b.edit({ do: 'order-rows', sheet: 'roster', order: [2, 1, 0] });
    expect(b.column('roster', 'ratio')[0]).toBeCloseTo(38 / 40, 12);
  });
  test('a named cell follows its row', () => {
    const b = roster();
    b.edit({ do: 'add-rows', sheet: 'summary', row: 0, count: 1 });
    b.put('summary', 'value', 3, 100);
    expect(b.value('summary', 'value', 2)).toBe(260);
  });
  test('a column’s formula is changed, taken away and given', () => {
    const b = roster();
    const [sheet] = b.book.sheets;
    const double = sheet!.columns[3]!;
    b.edit({ do: 'change-column', sheet: 'roster', column: { ...double, formula: 'ratio*3' } });
    expect(b.column('roster', 'double')[0]).toBeCloseTo(3.15, 12);
    const { formula: _, ...plain } = double;
    b.edit({ do: 'change-column', sheet: 'roster', column: plain });
    expect(b.values('roster', 'double')).toEqual([null, null, null, null]);
    b.edit({ do: 'change-column', sheet: 'roster', column: { ...double, formula: 'tibia' } });
    expect(b.values('roster', 'double')).toEqual([40, 41, 39, 40]);
  });
  test('a name that comes to be is found by formulas that wanted it', () => {
    const b = new Bench(bookOf({ s: { x: [1, 2], y: 'x*factor' } }));
    expect(b.values('s', 'y')).toEqual(['#NAME?', '#NAME?']);
    b.edit({ do: 'set-name', name: 'factor', target: { sheet: 's', column: 'x', row: 1 } });
    expect(b.values('s', 'y')).toEqual([2, 4]);
    b.edit({ do: 'set-name', name: 'factor', target: null });
    expect(b.sentence('s', 'y', 0)).toContain('"factor"');
  });
  test('a deleted column is told by its old name', () => {
    const b = new Bench(bookOf({ s: { x: [1, 2], y: '#REF!femur*2', v: [f('#REF!femur'), null] } }));
    expect(b.values('s', 'y')).toEqual(['#REF!', '#REF!']);
    expect(b.sentence('s', 'y', 0)).toContain('"femur", which was deleted');
    expect(b.sentence('s', 'v', 0)).toContain('"femur", which was deleted');
  });
});

describe('long work', () => {
  const long = () => {
    const rows = 20_000;
    const x = Array.from({ length: rows }, (_, i) => i + 1);
    const text = Object.fromEntries(
      Array.from({ length: 6 }, (_, k) => [
        `t_${'abcdef'[k]}`,
        `SUBSTITUTE(TEXT(x*${k + 1}.25, "0.000"), "1", "one")`,
      ]),
    );
    return bookOf({ s: { x, ...text } });
  };
  test('tells of its progress and, ended early, is taken up again', () => {
    const book = long();
    const calculation = new Bench(book).calculation;
    const steps = calculation.all();
    const first = steps.next();
    if (!first.done) {
      expect(first.value.about).toMatch(/^Calculating t_[a-f]$/);
      steps.return([]);
    }
    exhaust(calculation.update([]));
    expect(calculation.value('s', 't_a', 19_999)).toBe('25000.000');
  });
  test('done carefully names every formula before it is computed', () => {
    const calculation = createCalculation(roster().book, { careful: true });
    const told: string[] = [];
    const steps = calculation.all();
    for (let step = steps.next(); !step.done; step = steps.next()) {
      told.push(step.value.about);
      expect(calculation.current()).toEqual(step.value.place);
    }
    expect(told).toHaveLength(4);
    expect(told).toContain('Calculating ratio');
    expect(told).toContain('Calculating value, row 1');
  });
  test('a formula that was stopped is an error until it is changed', () => {
    const b = roster();
    b.calculation.stop({ sheet: 'roster', column: 'ratio' });
    exhaust(b.calculation.update([]));
    expect(b.value('roster', 'ratio', 0)).toBe('#ERROR!');
    expect(b.sentence('roster', 'double', 0)).toContain('took too long');
    expect(b.value('summary', 'value', 0)).toBeCloseTo(40, 12);
    const ratio = b.book.sheets[0]!.columns[2]!;
    b.edit({ do: 'change-column', sheet: 'roster', column: { ...ratio, formula: 'femur/tibia' } });
    expect(b.value('roster', 'ratio', 0)).toBeCloseTo(1.05, 12);
  });
});

describe('questions about a formula', () => {
  test('what it reads and who reads it', () => {
    const b = roster();
    expect(b.calculation.precedents({ sheet: 'roster', column: 'ratio', row: 1 })).toEqual([
      { sheet: 'roster', column: 'femur', row: 1 },
      { sheet: 'roster', column: 'tibia', row: 1 },
    ]);
    expect(b.calculation.precedents({ sheet: 'summary', column: 'value', row: 1 })).toEqual([
      { sheet: 'roster', column: 'tibia' },
      { sheet: 'summary', column: 'value', row: 2 },
    ]);
    expect(b.calculation.dependents({ sheet: 'roster', column: 'femur', row: 1 })).toEqual([
      { sheet: 'roster', column: 'ratio', row: 1 },
      { sheet: 'summary', column: 'value', row: 0 },
    ]);
    expect(b.calculation.dependents({ sheet: 'summary', column: 'value', row: 2 })).toEqual([
      { sheet: 'summary', column: 'value', row: 1 },
    ]);
  });
  test('what it would give', () => {
    const b = roster();
    expect(b.calculation.evaluate('1+1')).toBe(2);
    expect(b.calculation.evaluate('femur*2', { sheet: 'roster', column: 'double', row: 1 })).toBe(80);
    expect(b.calculation.evaluate('femur*2', { sheet: 'roster', column: 'double' })).toBe(84);
    expect(b.calculation.evaluate('{1,2;3,4}')).toEqual({ rows: 2, columns: 2, values: [1, 2, 3, 4] });
    expect(b.eval('femur')).toBe('#NAME?');
    expect(b.eval('AVERAGE(roster.femur)')).toBe(40);
  });
  test('its pieces by meaning', () => {
    const b = roster();
    const { tokens } = b.calculation.check(
      'SEG.RATIO(femur, roster.tibia) + target*2 & "x" - nothing + B$7',
      {
        sheet: 'roster',
        column: 'double',
      },
    );
    expect(tokens.map((t) => t.is)).toEqual([
      ...['function', 'bracket', 'column', 'operator', 'sheet', 'operator', 'column', 'bracket'],
      ...[
        'operator',
        'name',
        'operator',
        'number',
        'operator',
        'text',
        'operator',
        'unknown',
        'operator',
        'cell',
      ],
    ]);
  });
  test('what is wrong with it, and where', () => {
    const b = roster();
    const check = b.calculation.check('femurr + SEG.RATO(1, 2)', { sheet: 'roster', column: 'double' });
    expect(check.ok).toBe(false);
    expect(check.problems.map(({ from, to, sentence }) => [from, to, sentence])).toEqual([
      [0, 6, 'There is no column or setting called "femurr" for the sheet roster. Did you mean femur?'],
      [9, 17, 'There is no function called SEG.RATO. Did you mean SEG.RATIO?'],
    ]);
  });
});

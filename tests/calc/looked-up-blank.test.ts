import { describe, expect, test } from 'vitest';
import { Bench, bookOf, f } from './book-for-test.ts';

/* OpenFormula 1.3, part 4, 6.14 (lookup functions): they answer the cell that is found, and a blank cell is blank. */
const lookups = [
  'XLOOKUP("Bo", people.name, people.femur)',
  'VLOOKUP("Bo", people!A1:B3, 2, FALSE)',
  'INDEX(people.femur, 2)',
  'INDEX(people.femur, MATCH("Bo", people.name, 0))',
  'OFFSET(people!B1, 1, 0)',
  'people!B2',
] as const;
const sketch = {
  people: {
    name: { kind: 'text', cells: ['Ann', 'Bo', 'Cy'] },
    femur: { kind: 'number', dimension: 'length', cells: [44, null, 41] },
    weight: { kind: 'number', cells: [60, 70, null] },
  },
} as const;

/** What a formula gives as a free cell, as a column and where it is tried out. */
function answers(formula: string): unknown[] {
  const free = new Bench(bookOf({ ...sketch, at: { z: [f(formula)] } }));
  const column = new Bench(bookOf({ ...sketch, at: { z: { cells: [null], formula } } }));
  return [free.value('at', 'z', 0), column.value('at', 'z', 0), column.eval(formula)];
}

describe.each(lookups)('a blank found by %s', (lookup) => {
  test('shows as a blank', () => expect(answers(lookup)).toEqual([null, null, null]));
  test('is blank to a test', () => {
    expect(answers(`ISBLANK(${lookup})`)).toEqual([true, true, true]);
    expect(answers(`ISNUMBER(${lookup})`)).toEqual([false, false, false]);
    expect(answers(`IF(${lookup} = "", "not measured", "measured")`)).toEqual(
      Array.from({ length: 3 }, () => 'not measured'),
    );
  });
  test('is a missing length to a function of the domain, not a length of 0', () => {
    const lean = answers(`LEAN.PARALLEL(${lookup}, 41, 50, 28, 0, "high", 27.5)`);
    expect(lean).toEqual(['#N/A', '#N/A', '#N/A']);
  });
  test('joins as an empty text and counts as 0 in arithmetic', () => {
    expect(answers(`${lookup} & "cm"`)).toEqual(['cm', 'cm', 'cm']);
    expect(answers(`${lookup} + 1`)).toEqual([1, 1, 1]);
  });
});

test('a blank in a row of answers stays one', () => {
  const row = 'XLOOKUP("Bo", people.name, people!B1:C3)';
  const b = new Bench(bookOf({ ...sketch, at: { z: [f(row)], y: [null] } }));
  expect([b.value('at', 'z', 0), b.value('at', 'y', 0)]).toEqual([null, 70]);
  expect(answers(`INDEX(${row}, 1, 1)`)).toEqual([null, null, null]);
  expect(answers(`SUM(${row})`)).toEqual([70, 70, 70]);
});

test('HLOOKUP finds a blank as one', () => {
  expect(answers('ISBLANK(HLOOKUP("Ann", people!A1:C3, 3, FALSE))')).toEqual([false, false, false]);
  expect(answers('ISBLANK(HLOOKUP(44, people!B1:C3, 2, FALSE))')).toEqual([true, true, true]);
  expect(answers('HLOOKUP(44, people!B1:C3, 2, FALSE)')).toEqual([null, null, null]);
});

describe('a blank that arithmetic counts as 0 is raised as a check', () => {
  const femur = { dimension: 'length', cells: [44, null, 41] } as const;
  /** Row from 0 and sentence of each check about a blank, the formula once a column's and once in single cells. */
  const checks = (formula: string): unknown[] => {
    const columns = { name: sketch.people.name, femur, load: [60, 70, null], one: [1, 1, 1] };
    const column = new Bench(bookOf({ s: { ...columns, z: formula }, ...sketch }));
    const cells = new Bench(
      bookOf({ s: { ...columns, z: [f(formula), f(formula), f(formula)] }, ...sketch }),
    );
    const found = [column, cells].map((bench) =>
      bench.calculation
        .doubts()
        .filter(({ about }) => about === 'blank')
        .map(({ place, sentence }) => [place.column, place.row, sentence]),
    );
    expect(found[1]).toEqual(found[0]);
    return found[0]!;
  };
  const told = (operand: string, row: number, more = ''): unknown[] => [
    'z',
    row,
    `0 comes from a blank: ${operand} is blank and counts as 0 here.${more}`,
  ];
  test('of this row, with the cell and the operand', () => {
    expect(checks('femur * 2')).toEqual([told('femur', 1)]);
    expect(checks('one + femur - load')).toEqual([told('femur', 1), told('load', 2)]);
    expect(checks('-load')).toEqual([told('load', 2)]);
    expect(checks('ROUND(load, 1)')).toEqual([told('load', 2)]);
    expect(checks('SQRT(load) & "x"')).toEqual([told('load', 2)]);
  });
  test.each(lookups)('that %s finds, in every row', (moving) => {
    const lookup = moving.replaceAll(/([A-C])([1-3])/g, '$$$1$$$2');
    expect(checks(`one + ${lookup}`)).toEqual([told(lookup, 0, ' (3 rows)')]);
    expect(checks(`LET(x, ${lookup}, one + x)`)).toEqual([told('x', 0, ' (3 rows)')]);
  });
  test('handed on by a choice', () => {
    expect(checks('IF(one = 1, load, 0) * 2')).toEqual([told('IF(one = 1, load, 0)', 2)]);
  });
  test('of an operand in a branch that the row takes, and of no other', () => {
    expect(checks('IF(ISBLANK(load), "none", load * 2)')).toEqual([]);
    expect(checks('IF(load = "", 0, IF(one = 1, load * 2, 3))')).toEqual([]);
    expect(checks('IFS(ISNUMBER(load), load * 2, TRUE, femur * 2)')).toEqual([]);
    expect(checks('IF(ISBLANK(load), femur + 1, 0) + one')).toEqual([]);
    expect(checks('IF(ISBLANK(femur), femur + 1, 0)')).toEqual([told('femur', 1)]);
    expect(checks('IFERROR(one / 0, load * 2)')).toEqual([told('load', 2)]);
    expect(checks('IFERROR(load * 2, femur * 2)')).toEqual([told('load', 2)]);
    expect(checks('CHOOSE(one, load * 2, femur * 2)')).toEqual([told('load', 2)]);
    expect(checks('SWITCH(one, 1, load * 2, femur * 2)')).toEqual([told('load', 2)]);
  });
  test('but not where blanks are left out, compared, joined or handed to a domain function', () => {
    for (const formula of ['SUM(s.load)', 'AVERAGE(s.femur)', 'load & "kg"', 'load = ""', 'one * 2'])
      expect(checks(formula)).toEqual([]);
    expect(checks('LEAN.PARALLEL(femur, 41, 50, 28, 0, "high", 27.5)')).toEqual([]);
  });
  test('nor where the result is an error, which is told as one', () => {
    expect(checks('one / load')).toEqual([]);
    expect(checks('load * NA()')).toEqual([]);
  });
  test('and no longer once the value is entered', () => {
    const b = new Bench(bookOf({ s: { femur, z: 'femur * 2' } }));
    const count = () => b.calculation.doubts().filter(({ about }) => about === 'blank').length;
    expect(count()).toBe(1);
    b.put('s', 'femur', 1, 42);
    expect(count()).toBe(0);
    b.put('s', 'femur', 0, null);
    expect(count()).toBe(1);
  });
});

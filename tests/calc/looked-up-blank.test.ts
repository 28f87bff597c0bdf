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

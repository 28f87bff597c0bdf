import { describe, expect, test } from 'vitest';
import { isIssue } from '../../../functions/core/issue.ts';
import { Kind, valueAt } from '../../../functions/core/value.ts';
import { freeFormula, isArray } from '../../../src/calc/cells/free-formula.ts';
import type { Place } from '../../../src/calc/cells/place.ts';
import { SEED } from '../../seed.ts';
import { type Answer, inCells } from './cell-engine.ts';
import { randomSheet } from './data.ts';
import { formulaMaker, type Made, recipeNames } from './formulas.ts';
import { chance } from './random.ts';
import { type Filled, runFormula, sourceOf } from './run.ts';

/**
 * The same random formulas over the same random columns, once as column plans and once in the cells of hyperformula:
 * value and error type must be the same, to the last bit. hyperformula's observed behaviour is what plans are held to.
 *
 * Accepted differences, each said again where formulas.ts leaves it out: sorted search in texts (hyperformula misses
 * capitals), VLOOKUP with a fraction in its column number, SUBSTITUTE that looks for an empty text (hyperformula may
 * never come back). Free cells call the same functions of ours there, so the two evaluators of the product agree.
 *
 * SEED chooses other formulas; LEVERBOOK_ROUNDS makes more of them (1,500 comparisons a round).
 */
const rounds = Number(process.env.LEVERBOOK_ROUNDS ?? 16);
const ROWS = 30;
const FORMULAS = 50;

/** What differs in one row, in words; undefined when nothing does. */
function difference(out: Filled, row: number, theirs: Answer): string | undefined {
  const value = out.at(row);
  const mine = isIssue(value) ? value.code : value;
  // an array has no room in a row: the cell engine spills it, or refuses it where something stands in its way. An error
  // that all of it is made from may be told instead: it is what the cell itself would show
  if (theirs.isArray)
    return mine === '#SPILL!' || theirs.error === '#SPILL!' || (isIssue(value) && mine === theirs.error)
      ? undefined
      : `${mine}, not an array`;
  const other = theirs.error ?? theirs.value;
  if (!Object.is(mine, other)) return `${String(mine)}, not ${String(other)}`;
  if (typeof mine === 'number' && (out.kinds[row] === Kind.date) !== theirs.isDate)
    return `${mine} ${theirs.isDate ? 'is' : 'is no'} date`;
  return undefined;
}

function compare(round: number): { compared: number; arrays: number; differences: string[] } {
  const c = chance(SEED + round);
  const sheet = randomSheet(c, ROWS);
  const make = formulaMaker(c, ROWS);
  const made: Made[] = Array.from({ length: FORMULAS }, () => make(2));
  const answers = inCells(
    sheet,
    made.map((formula) => formula.text),
  );
  const differences: string[] = [];
  let arrays = 0;
  made.forEach((formula, f) => {
    const out = runFormula(formula.bound, sheet);
    for (let row = 0; row < ROWS; row++) {
      const theirs = answers[f]![row]!;
      if (theirs.isArray) arrays++;
      const differs = difference(out, row, theirs);
      if (differs)
        differences.push(`seed ${SEED + round}, row ${row + 1}: =${formula.text(row)} is ${differs}`);
    }
  });
  return { compared: FORMULAS * ROWS, arrays, differences };
}

/** The same for formulas of single cells, the product's other evaluator. */
function compareFree(round: number): string[] {
  const c = chance(SEED + round);
  const sheet = randomSheet(c, ROWS);
  const make = formulaMaker(c, ROWS);
  const place: Place = {
    source: sourceOf(sheet),
    row: 0,
    evaluation: 0,
    spot: (_sheet, column, row) => {
      const range = sheet.ranges[column]!;
      if (row >= range.rows) return { kind: Kind.blank, value: null };
      return { kind: range.kinds[row] as Kind, value: valueAt(range, row) };
    },
  };
  const differences: string[] = [];
  for (let f = 0; f < FORMULAS; f++) {
    const formula = make(2);
    const out = runFormula(formula.bound, sheet);
    const free = freeFormula(formula.bound, place);
    for (let row = 0; row < ROWS; row++) {
      const result = free.evaluate(row);
      const mine = out.at(row);
      const value = isIssue(mine) ? mine.code : mine;
      const other = isArray(result) ? '#SPILL!' : isIssue(result.value) ? result.value.code : result.value;
      if (!Object.is(value, other))
        differences.push(
          `seed ${SEED + round}, row ${row + 1}: =${formula.text(row)}: plan ${value}, free ${other}`,
        );
    }
  }
  return differences;
}

describe('column plans and the cell engine', () => {
  test(`agree on ${rounds * FORMULAS * ROWS} random formulas × rows (seed ${SEED})`, () => {
    let compared = 0;
    let arrays = 0;
    for (let round = 0; round < rounds; round++) {
      const result = compare(round);
      compared += result.compared;
      arrays += result.arrays;
      expect(result.differences.slice(0, 20)).toEqual([]);
    }
    expect(compared).toBeGreaterThanOrEqual(Math.min(rounds, 14) * 1500);
    expect(arrays / compared).toBeLessThan(0.05);
  });

  test(`agree with formulas of single cells (seed ${SEED})`, () => {
    for (let round = 0; round < rounds / 2; round++) expect(compareFree(round).slice(0, 20)).toEqual([]);
  });

  test('are compared on every kind of value and error, through every function that is listed', () => {
    const met = new Set<string>();
    const called = new Set<string>();
    for (let round = 0; round < rounds; round++) {
      const c = chance(SEED + round);
      const sheet = randomSheet(c, ROWS);
      const make = formulaMaker(c, ROWS);
      for (let f = 0; f < FORMULAS; f++) {
        const formula = make(2);
        for (const [name] of formula.text(0).matchAll(/[A-Z][A-Z0-9.]*(?=\()/g)) called.add(name);
        const out = runFormula(formula.bound, sheet);
        for (let row = 0; row < ROWS; row++) {
          const value = out.at(row);
          met.add(
            isIssue(value)
              ? value.code
              : value === null
                ? 'blank'
                : out.kinds[row] === Kind.date
                  ? 'date'
                  : typeof value,
          );
        }
      }
    }
    for (const kind of [
      'blank',
      'number',
      'date',
      'string',
      'boolean',
      '#N/A',
      '#VALUE!',
      '#NUM!',
      '#DIV/0!',
    ])
      expect(met).toContain(kind);
    const missing = recipeNames.filter((name) => !called.has(name));
    expect(missing.length, `not drawn with this seed: ${missing.join(' ')}`).toBeLessThan(
      recipeNames.length / 20,
    );
  });
});

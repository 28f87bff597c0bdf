import { describe, expect, test } from 'vitest';
import { givenNameProblem, type NameFor, nearest } from '../../../src/calc/language/names.ts';
import { parse } from '../../../src/calc/language/parse.ts';
import { bookOf } from '../book-for-test.ts';

const book = bookOf(
  { roster: { femur: [1], tibia: [2] }, log: { load_kg: [3] } },
  { target: ['roster', 'femur', 0] },
);
const column: NameFor = { what: 'column', sheet: 'roster' };

describe('a name that would mean two things is refused, with one that could be given', () => {
  test.each<readonly [string, NameFor]>([
    ['leg1', column],
    ['set2', column],
    ['rpe8', column],
    ['ABC123', { what: 'sheet' }],
    ['max', column],
    ['lean.at', column],
    ['true', column],
    ['two words', column],
    ['2nd', column],
    ['', column],
    ['Femur', column],
    ['target', column],
    ['Target', { what: 'named cell' }],
    ['tibia', { what: 'named cell' }],
    ['Roster', { what: 'sheet' }],
    ['a'.repeat(80), column],
  ])('%s', (name, whose) => {
    const problem = givenNameProblem(name, book, whose);
    expect(problem).toMatchSnapshot();
    const proposal = /Try "([^"]+)"/.exec(problem ?? '')?.[1];
    if (proposal) expect(givenNameProblem(proposal, book, whose)).toBeUndefined();
  });
});

describe('a name that means one thing is accepted', () => {
  test.each<readonly [string, NameFor]>([
    ['leg_1', column],
    ['größe', column],
    ['load_kg', column],
    ['roster', column],
    ['FEMUR', { ...column, self: 'femur' }],
    ['log', { what: 'sheet', self: 'log' }],
    ['ABCD123', column],
    ['lean_target', { what: 'named cell' }],
  ])('%s', (name, whose) => {
    expect(givenNameProblem(name, book, whose)).toBeUndefined();
    expect(parse(name)).toMatchObject({ ok: true, node: { type: 'name' } });
  });
});

test('the nearest name is offered only when it is near', () => {
  expect(nearest('femurr', ['tibia', 'femur'])).toBe('femur');
  expect(nearest('FEMUR', ['femur'])).toBe('femur');
  expect(nearest('load', ['femur', 'tibia'])).toBeUndefined();
  expect(nearest('x', [])).toBeUndefined();
});

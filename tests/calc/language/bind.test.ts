import { describe, expect, test } from 'vitest';
import type { Bound } from '../../../src/calc/ast.ts';
import { bind } from '../../../src/calc/language/bind.ts';
import { indexBook } from '../../../src/calc/language/book-index.ts';
import { parse } from '../../../src/calc/language/parse.ts';
import { sentenceOf } from '../../../src/calc/sentences.ts';
import { bookOf } from '../book-for-test.ts';

const index = indexBook(
  bookOf(
    { roster: { femur: [1, 2], tibia: [3, 4], lean: 'femur' }, log: { load: [5] } },
    { target: ['log', 'load', 0] },
  ),
);
function bound(formula: string, column = true, sheet = 'roster') {
  const parsed = parse(formula);
  if (!parsed.ok) throw new Error(formula);
  return bind(parsed.node, index, { sheet: sheet || undefined, column });
}
const bare = ({ span: _, ...node }: Bound): unknown => node;

describe('names are looked up', () => {
  test.each<readonly [string, boolean, unknown]>([
    ['femur', true, { type: 'row-of', sheet: 'roster', column: 'femur' }],
    ['FEMUR', false, { type: 'row-of', sheet: 'roster', column: 'femur' }],
    ['roster.femur', true, { type: 'column-of', sheet: 'roster', column: 'femur' }],
    ['Log.Load', true, { type: 'column-of', sheet: 'log', column: 'load' }],
    ['target', true, { type: 'named', name: 'target', sheet: 'log', column: 'load', row: 0 }],
    ['B1', true, { type: 'cell-of', sheet: 'roster', column: 'tibia', row: 0, rowMoves: true }],
    ['B$1', true, { type: 'cell-of', sheet: 'roster', column: 'tibia', row: 0, rowMoves: false }],
    ['B1', false, { type: 'cell-of', sheet: 'roster', column: 'tibia', row: 0, rowMoves: false }],
    ['log!A9', true, { type: 'cell-of', sheet: 'log', column: 'load', row: 8, rowMoves: true }],
    [
      'A$1:B2',
      true,
      {
        type: 'cells-of',
        sheet: 'roster',
        columns: ['femur', 'tibia'],
        from: 0,
        to: 1,
        fromMoves: false,
        toMoves: true,
      },
    ],
    ['OFFSET(A1,1,1)', false, { type: 'cell-of', sheet: 'roster', column: 'tibia', row: 1, rowMoves: false }],
    ['COLUMN(B9)', true, { type: 'number', value: 2 }],
    ['COLUMN(tibia)', true, { type: 'number', value: 2 }],
    ['COLUMNS(A1:C5)', true, { type: 'number', value: 3 }],
    ['ROWS(A1:C5)', true, { type: 'number', value: 5 }],
  ])('%s', (formula, column, expected) => {
    const { bound: node, problems } = bound(formula, column);
    expect(bare(node)).toEqual(expected);
    expect(problems).toEqual([]);
  });
  test('names of LET hide columns and end with it', () => {
    const { bound: node, problems } = bound('LET(femur, 2, femur) + femur');
    expect(problems).toEqual([]);
    expect(node).toMatchObject({
      left: { args: [{ type: 'local' }, { type: 'number' }, { type: 'local', name: 'femur' }] },
      right: { type: 'row-of' },
    });
  });
});

describe('what is not found is told, with what may be meant', () => {
  test.each([
    ['femurr', 'roster'],
    ['load', 'roster'],
    ['roster', 'log'],
    ['average', 'roster'],
    ['rooster.femur', 'roster'],
    ['roster.tibai', 'roster'],
    ['SEG.RATOI(1,2)', 'roster'],
    ['XYZZY(1)', 'roster'],
    ['HYPERLINK("x")', 'roster'],
    ['FORMULATEXT(A1)', 'roster'],
    ['D1', 'roster'],
    ['A1:D1', 'roster'],
    ['COLUMN()', 'roster'],
    ['OFFSET(A1,femur,0)', 'roster'],
    ['OFFSET(A1,-1,0)', 'roster'],
    ['LET(1,2,3)', 'roster'],
    ['LET(x,2)', 'roster'],
    ['SUM(A1:C1048576,A1:C1048576)', 'roster'],
    ['SUM(roster!A1:A1048576)', 'log'],
    ['SEQUENCE(40000,1000)', 'roster'],
    ['#REF!femur', 'roster'],
    ['A1', ''],
  ])('%s in %s', (formula, sheet) => {
    const { problems } = bound(formula, true, sheet);
    expect(
      problems.map(({ span, issue }) => [span.from, span.to, issue.code, sentenceOf(issue)]),
    ).toMatchSnapshot();
  });
});

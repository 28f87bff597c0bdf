import { appendFileSync } from 'node:fs';
import fc from 'fast-check';
import { HyperFormula, type RawCellContent } from 'hyperformula';
import { describe, expect, test } from 'vitest';
import { isIssue } from '../../functions/core/issue.ts';
import { isMatrix, type Matrix, type Value } from '../../functions/core/value.ts';
import type { Cell } from '../../src/book/cells.ts';
import { notOffered } from '../../src/calc/builtins/not-offered.ts';
import { ownBodies } from '../../src/calc/cell-engine/own-bodies.ts';
import { cellEngineSettings } from '../../src/calc/cell-engine/settings.ts';
import { Bench, bookOf } from './book-for-test.ts';
import { owns } from './builtins/own.ts';

/*
 * Outside reference: the same formulas over the same cells in hyperformula itself, with its own cells, references and
 * parser. Value and error code must be the same.
 */
const columns: readonly (readonly Cell[])[] = [
  [1, 2.5, -3, 0, 40, 7],
  ['x', 'Beta', '3', '', 'beta', '2024-02-03'],
  [null, 5, 'n/a', true, { date: 45296 }, false],
  [10, 20, 30, 40, 50, 60],
];
const bench = new Bench(
  bookOf({ s: Object.fromEntries(columns.map((cells, i) => [`col_${'abcd'[i]}`, cells])) }),
);
const day = (serial: number): Date => new Date(1899, 11, 30 + serial);
const raw = (cell: Cell): RawCellContent => {
  if (typeof cell === 'string') return `'${cell}`;
  if (typeof cell === 'object' && cell !== null) return 'date' in cell ? day(cell.date) : null;
  return cell;
};
const engine = HyperFormula.buildFromSheets(
  { s: columns[0]!.map((_, row) => columns.map((cells) => raw(cells[row]!))) },
  cellEngineSettings,
);
const sheet = engine.getSheetId('s')!;

const shown = (value: unknown): unknown => {
  if (value === undefined) return null;
  if (typeof value === 'object' && value !== null && 'type' in value)
    return (value as unknown as { value: string }).value;
  return typeof value === 'number' ? Number(value.toPrecision(12)) : value;
};
function inEngine(formula: string): unknown {
  const text = `=${formula.replaceAll(/\bTRUE\b(?!\()/g, 'TRUE()').replaceAll(/\bFALSE\b(?!\()/g, 'FALSE()')}`;
  let value: ReturnType<typeof engine.calculateFormula>;
  try {
    value = engine.calculateFormula(text, sheet);
  } catch {
    return '#ERROR!';
  }
  return Array.isArray(value) ? value.map((row) => row.map(shown)) : shown(value);
}
const own = (value: Value): unknown => shown(isIssue(value) ? value.code : value);
const rowsOf = ({ rows, columns: width, values }: Matrix): unknown =>
  Array.from({ length: rows }, (_, r) => values.slice(r * width, (r + 1) * width).map(own));
function inBook(formula: string): unknown {
  const value = bench.calculation.evaluate(formula, { sheet: 's', column: 'col_a', row: 0 });
  return isMatrix(value) ? rowsOf(value) : own(value);
}

const literals = [
  '1',
  '2',
  '0',
  '-1.5',
  '3',
  '0.5',
  '"x"',
  '"3"',
  '""',
  'TRUE',
  'FALSE',
  '"2024-01-05"',
  '1/0',
  '#N/A',
];
const cells = ['A1', 'A3', 'A4', 'B1', 'B2', 'B3', 'B4', 'B6', 'C1', 'C2', 'C3', 'C4', 'C5', '$D$2', 's!A2'];
const ranges = [
  'A1:A6',
  'B1:B6',
  'C1:C6',
  'D1:D6',
  'A1:D2',
  'A2:C4',
  '{1,2,3}',
  '{1;2;3}',
  '{"a","b"}',
  'A1:A1',
];
const argument = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...literals) },
  { weight: 3, arbitrary: fc.constantFrom(...cells) },
  { weight: 3, arbitrary: fc.constantFrom(...ranges) },
);
const operator = fc.constantFrom('+', '-', '*', '/', '^', '&', '=', '<>', '<', '<=', '>', '>=');
const expression = fc.letrec<{ e: string }>((tie) => ({
  e: fc.oneof(
    { depthSize: 'small' },
    argument,
    fc.tuple(tie('e'), operator, tie('e')).map(([a, o, b]) => `(${a})${o}(${b})`),
    tie('e').map((a) => `-(${a})`),
    tie('e').map((a) => `(${a})%`),
  ),
})).e;

/** Differences that are meant, and functions that answer differently each time. */
const leftOut = new Set([
  // The engine must know the size of these before it knows their arguments; a free cell takes the size that comes out.
  ...['MAXPOOL', 'MEDIANPOOL', 'SEQUENCE', 'SORT', 'UNIQUE', 'SUBTOTAL'],
  // Sorted search in what is not sorted has no defined answer, and these two need cells with addresses.
  ...['MATCH', 'VLOOKUP', 'HLOOKUP'],
  // Formats are read by another package, and texts are taken: tests/calc/text.test.ts.
  'TEXT',
  // An empty text to look for keeps the engine busy for ever; ours stands in for it.
  'SUBSTITUTE',
  ...['RAND', 'RANDBETWEEN', 'NOW', 'TODAY', 'ARRAY_CONSTRAIN', 'COLUMN', 'ROW', 'OFFSET', 'ISREF'],
  ...notOffered.keys(),
  ...owns.keys(),
]);

/** Whether the body of a function is ours: its values are held to tests/reference instead. */
function isOurs(name: string): boolean {
  const plugin = HyperFormula.getFunctionPlugin(name);
  const known = plugin?.implementedFunctions[plugin.aliases?.[name] ?? name];
  return known !== undefined && ownBodies.has(known.method);
}

/** Where an answer is #VALUE!: what coercion refuses. */
const refused = (answer: unknown): unknown =>
  Array.isArray(answer) ? answer.flat().map((one) => one === '#VALUE!') : answer === '#VALUE!';
function agreeOnArguments(formula: string): void {
  expect([formula, refused(inBook(formula))]).toEqual([formula, refused(inEngine(formula))]);
}

function agree(formula: string): void {
  if (process.env.TRACE) appendFileSync(process.env.TRACE, `${formula}\n`);
  expect([formula, inBook(formula)]).toEqual([formula, inEngine(formula)]);
}

describe('a free formula and the cell engine with cells of its own', () => {
  test('agree on operators', () => {
    fc.assert(fc.property(expression, agree), { numRuns: 1500 });
  });
  const names = HyperFormula.getRegisteredFunctionNames('enGB').filter(
    (name) => !leftOut.has(name) && !name.startsWith('HF.'),
  );
  const callOf = (name: string) =>
    fc
      .tuple(fc.array(argument, { minLength: 1, maxLength: 4 }))
      .map(([args]) => `${name}(${args.join(',')})`);
  test.each(names.filter((name) => !isOurs(name)))('agree on %s', (name) => {
    fc.assert(fc.property(callOf(name), agree), { numRuns: 40 });
  });
  test.each(names.filter(isOurs))('agree on the arguments that %s refuses', (name) => {
    fc.assert(fc.property(callOf(name), agreeOnArguments), { numRuns: 40 });
  });
});

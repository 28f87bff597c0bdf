import { isMatrix } from '../../functions/core/value.ts';
import { functionNames } from '../../src/calc/catalogue.ts';
import { Bench, bookOf, plainly } from './book-for-test.ts';

const changing = new Set(['RAND', 'RANDBETWEEN', 'NOW', 'TODAY']);
const operands = [
  '1.5',
  '-2',
  '"3"',
  '"x"',
  '""',
  'TRUE',
  '"2024-02-03"',
  's!A1',
  's!B2',
  's!C1',
  's!D1',
  '1/0',
];
const operators = ['+', '-', '*', '/', '^', '&', '=', '<>', '<', '>='];
const argumentLists = [
  ...[
    '',
    '2',
    '"x"',
    '1/0',
    '2, 3',
    '3, 2, 1',
    '10, 2, 3, 4',
    '"2024-02-03"',
    '"2024-02-03", 2',
    'TRUE, 1, 2',
  ],
  ...['s!A1', 's!B1, s!A1', 's!C1, 2', 's!A1:A4', 's!A1:B4', 's!A1:A4, s!D1:D4', 's!A1:A4, ">2"'],
  ...['s.x', 's.x, 2', '2, s.x', 's.x, s.y', 's.k, "a", s.x', 's.x, ">1", s.y', '"a", s.k, s.x', '{1,2;3,4}'],
  ...['x', 'x, 2', '2, x', 'x, 2, x'],
];

/** What every function and operator of the language answers, alone and down a column: the formula and its value. */
export function answers(): readonly (readonly [string, unknown])[] {
  const columns = {
    x: [1, 2.5, 3, 4],
    k: ['a', 'b', 'a', '7'],
    d: [{ date: 45325 }, null, { date: 45326 }, null],
    y: [4, 0, -2, 1],
  };
  const formulas = [
    ...operators.flatMap((o) => operands.flatMap((a) => operands.map((b) => `(${a}) ${o} (${b})`))),
    ...[...functionNames()]
      .filter((name) => !changing.has(name))
      .flatMap((name) => argumentLists.map((args) => `${name}(${args})`)),
  ];
  const { calculation } = new Bench(bookOf({ s: columns }));
  const alone = formulas.map((formula) => {
    const value = calculation.evaluate(formula, { sheet: 's', column: 'x', row: 0 });
    return [formula, isMatrix(value) ? value.values.map(plainly) : plainly(value)] as const;
  });
  // At most so many columns to a sheet.
  const down = Array.from({ length: Math.ceil(formulas.length / 1000) }, (_, i) => {
    const some = formulas.slice(i * 1000, (i + 1) * 1000);
    const made = Object.fromEntries(some.map((formula, j) => [`f_${j}`, formula]));
    const bench = new Bench(bookOf({ s: columns, t: { x: columns.x, ...made } }));
    return some.map((formula, j) => [formula, bench.values('t', `f_${j}`)] as const);
  });
  return [...alone, ...down.flat()];
}

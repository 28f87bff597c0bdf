import { applyEdit } from '../../src/book/apply.ts';
import { createBook, type LiveBook } from '../../src/book/book.ts';
import type { Cell } from '../../src/book/cell.ts';
import type { Column } from '../../src/book/model.ts';

/** Input columns of the squad: name and range of plausible values. */
export const inputs: readonly (readonly [name: string, least: number, most: number])[] = [
  ['femur', 36, 46],
  ['tibia', 36, 46],
  ['trunk', 46, 58],
  ['ankle', 30, 48],
  ['mass', 50, 110],
  ['squat', 60, 220],
  ['lift', 0, 3],
  ...Array.from({ length: 13 }, (_, k): [string, number, number] => [`test_${k + 1}`, 0, 100]),
];

/** Columns with formulas; those with `standard_lift` read a named cell. */
export const computed: readonly (readonly [name: string, formula: string])[] = [
  ['lean', 'LEAN.PARALLEL(femur, tibia, trunk, ankle, lift)'],
  ['lean_lifted', 'LEAN.PARALLEL(femur, tibia, trunk, ankle, standard_lift)'],
  ['relative', 'squat / mass'],
  ['crural', '100 * tibia / femur'],
  ['sum_of_tests', 'test_1 + test_2 + test_3'],
  ['best_test', 'MAX(test_1, test_2, test_3)'],
  ['with_belt', 'squat * (1 + standard_lift / 100)'],
  ['index', 'ROUND(relative * 100 + crural, 1)'],
  ['grade', 'IF(relative >= 1.5, 2, IF(relative >= 1, 1, 0))'],
  ['target', 'squat + standard_lift * 2.5'],
];

/** Figures over whole columns, in a sheet of their own. */
export const summaries: readonly string[] = [
  'AVERAGE(squad.relative)',
  'STDEV.S(squad.relative)',
  'COUNTIFS(squad.grade, 2)',
  'MAX(squad.index)',
  'AVERAGE(squad.lean)',
];

/** A squad of so many rows: its first inputs, 10 computed columns, 5 figures over them and a named cell. */
export function squad(rows: number, given = inputs.length): LiveBook {
  let state = 99;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const book = createBook('A large squad');
  const column = (name: string, formula?: string): Column => ({
    id: name,
    name,
    label: name,
    kind: 'number',
    ...(formula ? { formula } : {}),
  });
  applyEdit(book, {
    do: 'add-sheet',
    index: 0,
    sheet: {
      id: 'squad',
      name: 'squad',
      label: 'Squad',
      purpose: 'gathered',
      rows,
      columns: [
        ...inputs.slice(0, given).map(([name, least, most]) => ({
          column: column(name),
          cells: Array.from(
            { length: rows },
            () => Math.round((least + random() * (most - least)) * 10) / 10,
          ),
        })),
        ...computed.map(([name, formula]) => ({
          column: column(name, formula),
          cells: new Array<Cell>(rows).fill(null),
        })),
      ],
    },
  });
  applyEdit(book, {
    do: 'add-sheet',
    index: 1,
    sheet: {
      id: 'figures',
      name: 'figures',
      label: 'Figures',
      purpose: 'worked',
      rows: summaries.length + 1,
      columns: [{ column: column('value'), cells: [...summaries.map((formula) => ({ formula })), 1.5] }],
    },
  });
  applyEdit(book, {
    do: 'set-name',
    name: 'standard_lift',
    target: { sheet: 'figures', column: 'value', row: summaries.length },
  });
  return book;
}

import type { ErrorCode } from '../../../functions/core/issue.ts';
import { issue } from '../../../functions/core/issue.ts';
import { Kind, type Range, rangeOf, type Value } from '../../../functions/core/value.ts';
import type { Chance } from './random.ts';

/** A cell of the random sheet: what a column of the book holds, and what is typed into the cell engine for it. */
export interface RandomCell {
  readonly value: Value;
  readonly kind: Kind;
  readonly typed: string | number | boolean | null;
}

const errors: readonly [ErrorCode, string][] = [
  ['#N/A', '=NA()'],
  ['#DIV/0!', '=1/0'],
  ['#VALUE!', '="x"+1'],
  ['#NUM!', '=SQRT(-1)'],
];
const words = [
  'female',
  'male',
  'Female',
  'Ana',
  'ana',
  'Bo',
  'Åsa',
  'asa',
  'José',
  'a|b',
  '',
  ' ',
  'TRUE',
  'x y  z',
];
const numberTexts = [
  '5',
  ' 7.5 ',
  '1e3',
  '-2',
  '12%',
  '2024-03-15',
  '10:30',
  '.5',
  '+4',
  '0x10',
  '1,5',
  '2024-3-5',
];

const number = (value: number): RandomCell => ({ value, kind: Kind.number, typed: value });
const text = (value: string): RandomCell => ({ value, kind: Kind.text, typed: `'${value}` });

const makers: Readonly<Record<string, (c: Chance) => RandomCell>> = {
  number: (c) => number(Math.round((c.next() * 200 - 100) * 100) / 100),
  small: (c) => number(c.below(7) - 2),
  odd: (c) => number(c.pick([0, 1e300, -1e300, 1e-300, 1.7e308, 123456789.123, 0.1, -0.5, 2.5, 3.5, 1e15])),
  length: (c) => number(Math.round((30 + c.next() * 30) * 10) / 10),
  date: (c) => {
    const date = 40_000 + c.below(6000);
    const day = new Date(Date.UTC(1899, 11, 30 + date));
    return { value: date, kind: Kind.date, typed: day.toISOString().slice(0, 10) };
  },
  word: (c) => text(c.pick(words)),
  numberText: (c) => text(c.pick(numberTexts)),
  yesNo: (c) => {
    const value = c.maybe(0.5);
    return { value, kind: Kind.yesNo, typed: value };
  },
  blank: () => ({ value: null, kind: Kind.blank, typed: null }),
  error: (c) => {
    const [code, typed] = c.pick(errors);
    return { value: issue(code, 'written-error'), kind: Kind.error, typed };
  },
};

/** Columns of the random sheet, by name: which cells they are made of, and how often. */
export const columnRecipes: Readonly<Record<string, readonly (readonly [keyof typeof makers, number])[]>> = {
  plain: [['number', 1]],
  counts: [['small', 1]],
  femur: [
    ['length', 9],
    ['blank', 1],
  ],
  gaps: [
    ['number', 6],
    ['blank', 2],
    ['small', 2],
  ],
  odd: [
    ['odd', 5],
    ['small', 4],
    ['blank', 1],
  ],
  day: [
    ['date', 8],
    ['blank', 1],
  ],
  names: [
    ['word', 8],
    ['blank', 1],
  ],
  texts: [
    ['word', 4],
    ['numberText', 5],
    ['blank', 1],
  ],
  answers: [
    ['yesNo', 6],
    ['blank', 1],
    ['small', 1],
  ],
  ranked: [['number', 1]],
  falling: [['number', 1]],
  wild: [
    ['number', 3],
    ['small', 3],
    ['date', 1],
    ['word', 2],
    ['numberText', 2],
    ['yesNo', 2],
    ['blank', 2],
    ['error', 1],
    ['odd', 1],
  ],
};
export const columnNames = Object.keys(columnRecipes);

export interface RandomSheet {
  readonly rows: number;
  readonly cells: Readonly<Record<string, readonly RandomCell[]>>;
  readonly ranges: Readonly<Record<string, Range>>;
}

export function randomSheet(c: Chance, rows: number): RandomSheet {
  const cells: Record<string, RandomCell[]> = {};
  const ranges: Record<string, Range> = {};
  for (const name of columnNames) {
    const recipe = columnRecipes[name]!;
    const total = recipe.reduce((sum, [, weight]) => sum + weight, 0);
    const column = Array.from({ length: rows }, () => {
      let left = c.next() * total;
      const [maker] = recipe.find(([, weight]) => {
        left -= weight;
        return left < 0;
      })!;
      return makers[maker]!(c);
    });
    if (name === 'ranked' || name === 'falling') {
      const way = name === 'ranked' ? 1 : -1;
      column.sort((a, b) => way * (Number(a.value) - Number(b.value)));
      // duplicates and blanks lie between the values of a sorted column too
      for (let row = 1; row < rows; row++)
        if (c.maybe(0.1)) column[row] = c.maybe(0.5) ? column[row - 1]! : makers.blank!(c);
    }
    cells[name] = column;
    const range = rangeOf(
      rows,
      1,
      column.map((cell) => cell.value),
    );
    column.forEach((cell, row) => {
      range.kinds[row] = cell.kind;
    });
    ranges[name] = range;
  }
  return { rows, cells, ranges };
}

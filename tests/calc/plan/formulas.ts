import type { BinaryOperator, Bound } from '../../../src/calc/ast.ts';
import { columnNames } from './data.ts';
import type { Chance } from './random.ts';

/** A formula in two forms: the tree that plans compile, and the text for the cell engine in a given row (from 0). */
export interface Made {
  readonly bound: Bound;
  text(row: number): string;
}

const span = { from: 0, to: 0 };
const SHEET = 'data';
const letter = (column: string): string => String.fromCharCode(65 + columnNames.indexOf(column));

export const literal = (value: number | string | boolean): Made => {
  const text =
    typeof value === 'string'
      ? `"${value.replaceAll('"', '""')}"`
      : typeof value === 'boolean'
        ? value
          ? 'TRUE()'
          : 'FALSE()'
        : `${value}`;
  if (typeof value === 'number')
    return value < 0
      ? negative(literal(-value))
      : { bound: { type: 'number', value, span }, text: () => text };
  if (typeof value === 'string') return { bound: { type: 'text', value, span }, text: () => text };
  return { bound: { type: 'yes-no', value, span }, text: () => text };
};
export const negative = (of: Made): Made => ({
  bound: { type: 'unary', operator: '-', operand: of.bound, span },
  text: (row) => `(-${of.text(row)})`,
});
export const rowOf = (column: string): Made => ({
  bound: { type: 'row-of', sheet: SHEET, column, span },
  text: (row) => `${letter(column)}${row + 1}`,
});
const below = (column: string, by: number): Made => ({
  bound: { type: 'cell-of', sheet: SHEET, column, row: by, rowMoves: true, span },
  text: (row) => `${letter(column)}${row + by + 1}`,
});
const fixed = (column: string, at: number): Made => ({
  bound: { type: 'cell-of', sheet: SHEET, column, row: at, rowMoves: false, span },
  text: () => `$${letter(column)}$${at + 1}`,
});
export const whole = (column: string, rows: number): Made => ({
  bound: { type: 'column-of', sheet: SHEET, column, span },
  text: () => `$${letter(column)}$1:$${letter(column)}$${rows}`,
});
const cells = (columns: readonly string[], from: number, to: number, moves: boolean): Made => ({
  bound: { type: 'cells-of', sheet: SHEET, columns, from, to, fromMoves: moves, toMoves: moves, span },
  text: (row) => {
    const by = moves ? row : 0;
    return `${letter(columns[0]!)}${from + by + 1}:${letter(columns.at(-1)!)}${to + by + 1}`;
  },
});
export const binary = (operator: BinaryOperator, left: Made, right: Made): Made => ({
  bound: { type: 'binary', operator, left: left.bound, right: right.bound, span },
  text: (row) => `(${left.text(row)}${operator}${right.text(row)})`,
});
export const call = (name: string, ...args: readonly Made[]): Made => ({
  bound: { type: 'call', name, nameSpan: span, args: args.map((arg) => arg.bound), span },
  text: (row) => `${name}(${args.map((arg) => arg.text(row)).join(',')})`,
});
const percent = (of: Made): Made => ({
  bound: { type: 'percent', operand: of.bound, span },
  text: (row) => `(${of.text(row)})%`,
});
const inline = (rows: readonly (readonly (number | string | boolean)[])[]): Made => ({
  bound: { type: 'array', rows: rows.map((row) => row.map((cell) => literal(cell).bound)), span },
  text: () => `{${rows.map((row) => row.map((cell) => literal(cell).text(0)).join(',')).join(';')}}`,
});
const empty: Made = { bound: { type: 'empty', span }, text: () => '' };

const operators: readonly BinaryOperator[] = ['+', '-', '*', '/', '^', '&', '=', '<>', '<', '<=', '>', '>='];
const numeric = ['plain', 'counts', 'femur', 'gaps', 'odd', 'day'];

/** What an argument is to be, in the recipes of calls below. */
type Asked =
  | 'any'
  | 'number'
  | 'small'
  | 'text'
  | 'condition'
  | 'date'
  | 'area'
  | 'numbers'
  | 'column'
  | 'criterion'
  | 'key'
  | 'mode'
  | 'zero'
  | 'subtotal'
  | 'no'
  | 'way'
  | 'ranked'
  | 'letter'
  | 'place'
  | 'format'
  | 'unit'
  | 'share'
  | 'length'
  | 'array'
  | 'table'
  | 'sorted'
  | 'either';

const one: readonly Asked[] = ['number'];
const two: readonly Asked[] = ['number', 'number'];
const some: readonly (readonly Asked[])[] = [
  ['either'],
  ['either', 'either'],
  ['number', 'either', 'number'],
  ['array'],
];

/** Calls by name: one of the lists of arguments is taken. */
export const recipes: Readonly<Record<string, readonly (readonly Asked[])[]>> = {
  IF: [
    ['condition', 'any', 'any'],
    ['condition', 'any'],
  ],
  IFS: [
    ['condition', 'any'],
    ['condition', 'any', 'condition', 'any'],
  ],
  IFERROR: [['any', 'any']],
  IFNA: [['any', 'any']],
  SWITCH: [
    ['any', 'any', 'any'],
    ['small', 'small', 'any', 'small', 'any', 'any'],
  ],
  CHOOSE: [['small', 'any', 'any', 'any']],
  AND: [['condition', 'condition'], ['condition'], ['area'], ['condition', 'area']],
  OR: [['condition', 'condition'], ['condition'], ['area'], ['condition', 'area']],
  XOR: [['condition', 'condition'], ['condition', 'condition', 'condition'], ['area']],
  NOT: [['condition']],
  ...Object.fromEntries(
    [
      'ISBLANK',
      'ISNUMBER',
      'ISERROR',
      'ISERR',
      'ISTEXT',
      'ISNONTEXT',
      'ISNA',
      'ISLOGICAL',
      'ISEVEN',
      'ISODD',
    ].map((name) => [name, [['any']] as const]),
  ),
  ...Object.fromEntries(
    [
      ...[
        'ABS',
        'INT',
        'SIGN',
        'SQRT',
        'EXP',
        'LN',
        'LOG10',
        'SIN',
        'COS',
        'TAN',
        'ASIN',
        'ACOS',
        'ATAN',
        'SINH',
      ],
      ...[
        'COSH',
        'TANH',
        'ASINH',
        'ACOSH',
        'ATANH',
        'COT',
        'SEC',
        'DEGREES',
        'RADIANS',
        'EVEN',
        'ODD',
        'FACT',
      ],
    ].map((name) => [name, [one]] as const),
  ),
  ...Object.fromEntries(
    ['MOD', 'POWER', 'ATAN2', 'QUOTIENT', 'MROUND'].map((name) => [name, [two]] as const),
  ),
  LOG: [one, two],
  ROUND: [one, ['number', 'small']],
  ROUNDUP: [one, ['number', 'small']],
  ROUNDDOWN: [one, ['number', 'small']],
  TRUNC: [one, ['number', 'small']],
  CEILING: [two],
  FLOOR: [two],
  'CEILING.MATH': [one, two],
  'FLOOR.MATH': [one, two],
  PI: [[]],
  SUM: some,
  MIN: some,
  MAX: some,
  AVERAGE: some,
  COUNT: [...some, ['any'], ['any', 'area']],
  COUNTA: [...some, ['any'], ['any', 'area']],
  COUNTBLANK: [['area'], ['any']],
  PRODUCT: [['small', 'small'], ['either']],
  SUMSQ: some,
  AVERAGEA: some,
  MAXA: some,
  MINA: some,
  MEDIAN: [['numbers'], ['number', 'number', 'number'], ['area', 'number']],
  STDEV: [['numbers'], ['number', 'number', 'number']],
  'STDEV.S': [['area'], ['number', 'number', 'area']],
  'STDEV.P': [['numbers'], ['number', 'number']],
  'VAR.S': [['area']],
  'VAR.P': [['numbers'], ['number']],
  STDEVA: [['area']],
  SUBTOTAL: [
    ['subtotal', 'area'],
    ['subtotal', 'area', 'number'],
    ['small', 'numbers'],
  ],
  LARGE: [['numbers', 'small']],
  SMALL: [['area', 'small']],
  PERCENTILE: [['numbers', 'share']],
  'PERCENTILE.EXC': [['numbers', 'share']],
  QUARTILE: [['numbers', 'small']],
  'QUARTILE.EXC': [['area', 'small']],
  CORREL: [['numbers', 'numbers']],
  SLOPE: [['column', 'column']],
  RSQ: [['column', 'column']],
  AVEDEV: [['numbers']],
  DEVSQ: [['area', 'number']],
  GEOMEAN: [['area']],
  SUMIF: [
    ['column', 'criterion'],
    ['column', 'criterion', 'column'],
  ],
  COUNTIF: [['column', 'criterion']],
  TRANSPOSE: [['area']],
  COUNTUNIQUE: [['area']],
  AVERAGEIF: [
    ['column', 'criterion', 'column'],
    ['column', 'criterion'],
  ],
  SUMIFS: [
    ['column', 'column', 'criterion'],
    ['column', 'column', 'criterion', 'column', 'criterion'],
  ],
  COUNTIFS: [
    ['column', 'criterion'],
    ['column', 'criterion', 'column', 'criterion'],
  ],
  MINIFS: [['column', 'column', 'criterion']],
  MAXIFS: [['column', 'column', 'criterion', 'column', 'criterion']],
  SUMPRODUCT: [['column'], ['column', 'column'], ['array'], ['array', 'column']],
  // A column number with a fraction is cut off here; hyperformula looks between two columns and answers 0. And searches
  // that trust an order are made in numbers: in texts hyperformula compares a lower-case key with cells as they are
  // written, and misses every capital; here both are folded.
  VLOOKUP: [
    ['key', 'table', 'place', 'no'],
    ['number', 'ranked', 'place'],
    ['number', 'ranked', 'place', 'condition'],
  ],
  XLOOKUP: [
    ['key', 'column', 'column'],
    ['key', 'column', 'column', 'any'],
    ['key', 'column', 'column', 'any', 'mode', 'way'],
    ['number', 'sorted', 'column', 'any', 'mode', 'mode'],
  ],
  MATCH: [
    ['key', 'column', 'zero'],
    ['number', 'sorted', 'mode'],
    ['number', 'sorted'],
  ],
  INDEX: [
    ['column', 'small'],
    ['area', 'small', 'small'],
  ],
  YEAR: [['date']],
  MONTH: [['date']],
  DAY: [['date']],
  WEEKDAY: [['date'], ['date', 'small']],
  WEEKNUM: [['date']],
  ISOWEEKNUM: [['date']],
  HOUR: [['date']],
  MINUTE: [['number']],
  DATE: [['length', 'small', 'small']],
  TIME: [['small', 'small', 'small']],
  DAYS: [['date', 'date']],
  EDATE: [['date', 'small']],
  EOMONTH: [['date', 'small']],
  DATEDIF: [['date', 'date', 'unit']],
  YEARFRAC: [['date', 'date']],
  DATEVALUE: [['text']],
  TEXT: [
    ['number', 'format'],
    ['date', 'format'],
  ],
  VALUE: [['any']],
  T: [['any']],
  N: [['any']],
  LEFT: [['text'], ['text', 'small']],
  RIGHT: [['text'], ['text', 'small']],
  MID: [['text', 'small', 'small']],
  LEN: [['text']],
  TRIM: [['text']],
  UPPER: [['text']],
  LOWER: [['text']],
  PROPER: [['text']],
  EXACT: [['text', 'text']],
  CONCATENATE: [
    ['text', 'any', 'text'],
    ['text', 'area'],
  ],
  TEXTJOIN: [
    ['text', 'condition', 'any', 'any'],
    ['text', 'condition', 'area'],
  ],
  // looking for an empty text changes nothing here; hyperformula puts the new text between all letters or never comes back
  SUBSTITUTE: [
    ['text', 'letter', 'text'],
    ['text', 'letter', 'text', 'small'],
  ],
  REPLACE: [['text', 'small', 'small', 'text']],
  FIND: [
    ['text', 'text'],
    ['text', 'text', 'small'],
  ],
  SEARCH: [
    ['text', 'text'],
    ['criterion', 'text'],
    ['text', 'text', 'small'],
  ],
  ROW: [[]],
  'SEG.RATIO': [
    ['length', 'length'],
    ['any', 'number'],
  ],
  'STRENGTH.MAX': [
    ['length', 'small'],
    ['any', 'small', 'text'],
    ['length', 'small', 'any', 'small'],
  ],
  'COHORT.Z': [
    ['length', 'numbers'],
    ['any', 'column'],
  ],
  'LEAN.PARALLEL': [
    ['length', 'length', 'length', 'number'],
    ['length', 'length', 'length', 'small', 'any'],
  ],
};
export const recipeNames = Object.keys(recipes);

/** Makes random formulas over a sheet of so many rows. */
export function formulaMaker(c: Chance, rows: number): (depth: number) => Made {
  const anyColumn = (): Made => rowOf(c.pick(columnNames));
  const leaf = (): Made => {
    const which = c.below(10);
    if (which < 6) return anyColumn();
    if (which === 6) return fixed(c.pick(columnNames), c.below(rows + 2));
    if (which === 7) return below(c.pick(columnNames), c.below(3));
    return literal(c.pick([0, 1, 2, 0.5, -3, 100, 1e-9, 'Ana', '', '5', '2024-03-15', true, false]));
  };
  const area = (): Made => {
    const which = c.below(6);
    if (which < 3) return whole(c.pick(columnNames), rows);
    const first = c.below(columnNames.length - 3);
    const columns = columnNames.slice(first, first + 1 + c.below(3));
    const from = c.below(rows - 4);
    if (which === 3) return cells(columns, from, from + c.below(4), false);
    if (which === 4) return cells(columns, 0, 0, true);
    return cells(columns, 0, 1 + c.below(3), true);
  };
  const array = (depth: number): Made => {
    const which = c.below(6);
    if (which === 0)
      return inline(Array.from({ length: 1 + c.below(3) }, () => [c.below(9), c.pick(['a', 2, true]), 0.5]));
    if (which === 1) return call(c.pick(['ABS', 'LEN', 'ISNUMBER', 'UPPER', 'ROUND', 'YEAR']), area());
    if (which === 2) return negative(area());
    if (which === 3) return binary(c.pick(operators), area(), any(depth - 1));
    if (which === 4)
      return call('IF', binary(c.pick(operators.slice(6)), numberColumn(), any(depth - 1)), numberColumn());
    return binary(c.pick(operators), numberColumn(), whole(c.pick(columnNames), rows));
  };
  const numberColumn = (): Made => whole(c.pick(numeric), rows);
  const criterion = (depth: number): Made => {
    const which = c.below(7);
    if (which < 2) return anyColumn();
    if (which === 2) return binary('&', literal(c.pick(['>', '>=', '<', '<=', '<>', '='])), anyColumn());
    if (which === 3 && depth > 0) return any(depth - 1);
    return literal(
      c.pick([
        '>=5',
        '<0',
        '<>Ana',
        '=',
        '<>',
        'ana',
        5,
        true,
        '>2020-01-01',
        'a|b',
        '=5',
        'x*',
        '*a*',
        '<>??',
        '=f*~e',
        '~*',
        '?o*',
        '',
        'TRUE',
        '12%',
      ]),
    );
  };
  const ask = (asked: Asked, depth: number): Made => {
    switch (asked) {
      case 'area':
        return c.maybe(0.2) ? array(depth) : area();
      case 'array':
        return c.maybe(0.8) ? array(depth) : area();
      case 'table': {
        const first = c.below(columnNames.length - 3);
        return cells(columnNames.slice(first, first + 3), 0, rows - 1, false);
      }
      case 'sorted':
        return whole(c.pick(['ranked', 'falling']), rows);
      case 'numbers':
        return c.maybe(0.8) ? numberColumn() : area();
      case 'column':
        return c.maybe(0.3) ? numberColumn() : whole(c.pick(columnNames), rows);
      case 'either':
        return c.maybe(0.4) ? area() : any(depth - 1);
      case 'criterion':
        return criterion(depth);
      case 'key':
        return c.maybe(0.2)
          ? literal(c.pick(['*', '?o', 'a?a', '*MALE', 'jose', '~?', 'x*z', '*|?']))
          : any(depth - 1);
      case 'number':
        return c.maybe(0.5) ? rowOf(c.pick(numeric)) : any(depth - 1);
      case 'length':
        return c.maybe(0.8) ? rowOf('femur') : any(depth - 1);
      case 'small':
        return c.maybe(0.6)
          ? rowOf('counts')
          : c.maybe(0.5)
            ? literal(c.below(5))
            : c.maybe(0.1)
              ? empty
              : any(depth - 1);
      case 'date':
        return c.maybe(0.7) ? rowOf('day') : any(depth - 1);
      case 'text':
        return c.maybe(0.5) ? rowOf(c.pick(['names', 'texts'])) : any(depth - 1);
      case 'condition':
        return c.maybe(0.5)
          ? binary(c.pick(operators.slice(6)), any(depth - 1), any(depth - 1))
          : any(depth - 1);
      case 'place':
        return c.maybe(0.5) ? rowOf('counts') : literal(c.below(5));
      case 'letter':
        return literal(c.pick(['a', 'e', '5', 'A', 'x y', '-']));
      case 'no':
        return literal(false);
      case 'way':
        return literal(c.pick([1, -1]));
      case 'ranked':
        return cells(['ranked', 'falling', 'wild'], 0, rows - 1, false);
      case 'subtotal':
        return literal(c.pick([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 101, 109, 12, 0]));
      case 'zero':
        return literal(0);
      case 'mode':
        return literal(c.pick([0, 1, -1, 2, -2]));
      case 'share':
        return c.maybe(0.7) ? literal(c.pick([0, 0.1, 0.25, 0.5, 0.9, 1, 1.5])) : any(depth - 1);
      case 'format':
        return literal(c.pick(['0.00', 'dd/mm/yyyy', 'yyyy-mm-dd', '#.##', 'hh:mm', '000', 'x']));
      case 'unit':
        return literal(c.pick(['D', 'M', 'Y', 'YM', 'MD', 'YD', 'q']));
      default:
        return any(depth - 1);
    }
  };
  const any = (depth: number): Made => {
    if (depth <= 0) return leaf();
    const which = c.below(12);
    if (which < 3) return leaf();
    if (which < 6) return binary(c.pick(operators), any(depth - 1), any(depth - 1));
    if (which === 6) return c.maybe(0.5) ? negative(any(depth - 1)) : percent(any(depth - 1));
    const name = c.pick(recipeNames);
    return call(name, ...c.pick(recipes[name]!).map((asked) => ask(asked, depth)));
  };
  return (depth) => {
    const name = c.pick(recipeNames);
    return c.maybe(0.25)
      ? any(depth)
      : call(name, ...c.pick(recipes[name]!).map((asked) => ask(asked, depth)));
  };
}

/** A name that LET gave; the cell engine has no LET, so these have no text. */
export const local = (name: string): Made => ({
  bound: { type: 'local', name, span },
  text: () => name,
});
export const lettings = (...parts: readonly [...[string, Made][], Made]): Bound => {
  const body = parts.at(-1) as Made;
  const names = parts.slice(0, -1) as [string, Made][];
  const args = names.flatMap(([name, value]) => [local(name).bound, value.bound]);
  return { type: 'call', name: 'LET', nameSpan: span, args: [...args, body.bound], span };
};

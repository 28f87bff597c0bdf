import type { BinaryOperator, Bound } from '../../src/calc/ast.ts';

/** A formula as the tree that plans compile, and as text for the cell engine: `letter` names a column's place. */
export interface Made {
  readonly bound: Bound;
  text(letter: (column: string) => string, row: number): string;
}

const span = { from: 0, to: 0 };

export const literal = (value: number | string): Made =>
  typeof value === 'number'
    ? { bound: { type: 'number', value, span }, text: () => `${value}` }
    : { bound: { type: 'text', value, span }, text: () => `"${value}"` };
export const rowOf = (column: string): Made => ({
  bound: { type: 'row-of', sheet: '', column, span },
  text: (letter, row) => `${letter(column)}${row + 1}`,
});
/** A whole column of another sheet; `rows` is how long it is there. */
export const whole = (sheet: string, column: string, rows: number): Made => ({
  bound: { type: 'column-of', sheet, column, span },
  text: (letter) => `${sheet}!$${letter(column)}$1:$${letter(column)}$${rows}`,
});
export const binary = (operator: BinaryOperator, left: Made, right: Made): Made => ({
  bound: { type: 'binary', operator, left: left.bound, right: right.bound, span },
  text: (letter, row) => `(${left.text(letter, row)}${operator}${right.text(letter, row)})`,
});
export const call = (name: string, ...args: readonly Made[]): Made => ({
  bound: { type: 'call', name, nameSpan: span, args: args.map((arg) => arg.bound), span },
  text: (letter, row) => `${name}(${args.map((arg) => arg.text(letter, row)).join(',')})`,
});

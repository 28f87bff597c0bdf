/**
 * What functions that take cells one by one do on a list of them, instead of on arguments one by one: more than so many do
 * not fit on the cell engine's stack.
 */
import { CellError, EmptyValue, ErrorType } from 'hyperformula';

export const lists = {
  countBlanks: (values: readonly unknown[]) =>
    values.reduce<number>((n, value) => n + (value === EmptyValue ? 1 : 0), 0),
  countDifferent: (values: readonly unknown[]) =>
    new Set(values.filter((v) => v !== '').map((v) => (v instanceof CellError ? errorTypes[v.type] : v)))
      .size,
  join: (values: readonly unknown[]) => values.join(''),
} as const;
const errorTypes = Object.fromEntries(
  Object.values(ErrorType).map((type) => [type, Symbol(type)]),
) as Readonly<Record<ErrorType, symbol>>;

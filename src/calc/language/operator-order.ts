import type { BinaryOperator } from '../ast.ts';

/**
 * How tightly an operator holds its operands: OpenFormula (ISO/IEC 26300-2), 5.5, table 1. A sign holds tighter than a
 * power, so −2^2 is 4; all operators of two operands group from the left, powers too.
 */
export const strength: Readonly<Record<BinaryOperator, number>> = {
  '=': 1,
  '<>': 1,
  '<': 1,
  '<=': 1,
  '>': 1,
  '>=': 1,
  '&': 2,
  '+': 3,
  '-': 3,
  '*': 4,
  '/': 4,
  '^': 5,
};
export const PERCENT = 6;
export const SIGN = 7;
/** What never needs parentheses. */
export const WHOLE = 9;

/** What the session uses of the formula language. */
export type { CalcDoubt, Calculation, FormulaCheck, Fresh, Place, Progress, Span } from './api.ts';
export { type CalculationOptions, createCalculation } from './calculation.ts';
export { functionNames, isFunction, isFunction as isFunctionName } from './catalogue.ts';
export { addressText, lettersOf } from './language/address.ts';
export { type Moved, moveColumns, moveRows, shiftRelative } from './language/move.ts';
export { givenNameProblem } from './language/names.ts';
export {
  loseColumn,
  loseNamed,
  loseSheet,
  renameColumn,
  renameNamed,
  renameNames,
  renameSheet,
} from './language/rewrite.ts';
export { sentenceOf } from './sentences.ts';

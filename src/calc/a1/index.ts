/** Formulas with the addresses of a spreadsheet file. */
export { type A1Formula, a1Text } from './a1-formula.ts';
export { a1Translator, isA1, type NoA1 } from './translate.ts';

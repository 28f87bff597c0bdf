/** Formulas with the addresses of a spreadsheet file, for what writes them; what translates into them is in api.ts. */
export { type A1Formula, a1Text } from './a1-formula.ts';

/** Translates formulas into those of a spreadsheet file. A door of its own: with it comes all that calculates. */
export { a1Translator, isA1, type NoA1 } from './translate.ts';

/** Functions of the cell engine that the language leaves out, with the reason. */
export const notOffered: ReadonlyMap<string, string> = new Map([
  ['HYPERLINK', 'a formula cannot make a link'],
  ['VERSION', 'it says nothing about your data'],
  ['FORMULATEXT', 'a formula reads values, not formulas'],
  ['ISFORMULA', 'a formula reads values, not formulas'],
  ['SHEET', 'sheets have names here, not numbers'],
  ['SHEETS', 'sheets have names here, not numbers'],
]);

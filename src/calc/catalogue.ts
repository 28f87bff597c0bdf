import { registry } from '../../functions/registry.ts';
import { builtins } from './builtins/index.ts';
import { engineFunctions } from './cell-engine/functions.ts';

/** Functions of the cell engine that the language leaves out, with the reason. */
export const notOffered: ReadonlyMap<string, string> = new Map([
  ['HYPERLINK', 'a formula cannot make a link'],
  ['VERSION', 'it says nothing about your data'],
  ['FORMULATEXT', 'a formula reads values, not formulas'],
  ['ISFORMULA', 'a formula reads values, not formulas'],
  ['SHEET', 'sheets have names here, not numbers'],
  ['SHEETS', 'sheets have names here, not numbers'],
]);

let known: ReadonlySet<string> | undefined;

/** Every function of the language, in capitals and in alphabetical order. */
export function functionNames(): ReadonlySet<string> {
  known ??= new Set(
    [
      ...registry.keys(),
      ...builtins.keys(),
      ...engineFunctions().filter((name) => !notOffered.has(name) && !name.startsWith('HF.')),
      'LET',
      'OFFSET',
    ].sort(),
  );
  return known;
}

export const isFunction = (name: string): boolean => functionNames().has(name.toUpperCase());

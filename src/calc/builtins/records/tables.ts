/** Figures of a table whose rows meet criteria that are written in a range: OpenFormula 1.3, part 4, 6.8. */
import { type BuiltIn, builtIn } from '../builtin.ts';

export const tables: readonly BuiltIn[] = [
  ...['DSUM', 'DAVERAGE', 'DMAX', 'DMIN', 'DGET', 'DPRODUCT', 'DSTDEV', 'DSTDEVP', 'DVAR', 'DVARP'].map(
    (name) => builtIn(name, 'unknown', null),
  ),
  builtIn('DCOUNT', 'plain', null),
  builtIn('DCOUNTA', 'plain', null),
];

/** Functions as the formulas of a workbook file have them, by their records. */
import { builtIns } from '../builtins/index.ts';

export interface A1Function {
  /** As the file has it. */
  readonly name: string;
  /** Holds for arguments that are accepted, written as a letter each: `v` value, `c` cell, `r` range, `k` array. */
  readonly accepts: RegExp;
  readonly patterns: boolean;
  readonly asIndexMatch: boolean;
}

const letters: Readonly<Record<string, string>> = { v: '[vc]', w: 'v', a: '[vcrk]', r: '[cr]' };

const known = new Map<string, A1Function | undefined>();

export function a1FunctionOf(name: string): A1Function | undefined {
  if (!known.has(name)) known.set(name, functionOf(name));
  return known.get(name);
}

/** A name that files know is kept; for others of the same function the first that they know stands. */
function functionOf(name: string): A1Function | undefined {
  const how = builtIns.get(name)?.export;
  if (!how) return undefined;
  return {
    name: how.as.find((one) => one.replace(/^_xlfn\./, '') === name) ?? how.as[0]!,
    accepts: new RegExp(`^${how.takes.replace(/[vwar]/g, (letter) => letters[letter]!)}$`),
    patterns: how.searches === true,
    asIndexMatch: how.asIndexMatch === true,
  };
}

import type { FunctionHelp } from '../../../functions/core/describe.ts';

/** The call that the caret stands in. */
export interface CallAtCaret {
  readonly name: string;
  /** Which argument, from 0. */
  readonly argument: number;
}

/**
 * Finds the innermost call around the caret: scans from the start, keeping a stack of open brackets. Texts in quotes and
 * inline arrays are skipped over.
 */
export function callAt(formula: string, caret: number): CallAtCaret | null {
  const open: { name: string | null; argument: number }[] = [];
  let i = 0;
  while (i < Math.min(caret, formula.length)) {
    const c = formula[i]!;
    if (c === '"') {
      const end = formula.indexOf('"', i + 1);
      if (end < 0 || end >= caret) break;
      i = end;
    } else if (c === '(') {
      const name = /([\p{L}_][\p{L}\p{N}_.]*)\s*$/u.exec(formula.slice(0, i));
      open.push({ name: name?.[1] ?? null, argument: 0 });
    } else if (c === '{') open.push({ name: null, argument: 0 });
    else if (c === ')' || c === '}') open.pop();
    else if (c === ',' || c === ';') {
      const top = open.at(-1);
      if (top) top.argument++;
    }
    i++;
  }
  for (let k = open.length - 1; k >= 0; k--) {
    const { name, argument } = open[k]!;
    if (name) return { name: name.toUpperCase(), argument };
  }
  return null;
}

/** Which of a function's parameters an argument is for; those that repeat come round again. */
export function argumentAt({ parameters, repeats }: FunctionHelp, argument: number): number {
  if (!repeats || argument < repeats[1]) return Math.min(argument, parameters.length - 1);
  const [from, to] = repeats;
  return from + ((argument - from) % (to - from));
}

/** The arguments as a signature writes them, each with the parameter it is for. */
export function writtenArguments({ parameters, repeats }: FunctionHelp): readonly {
  readonly text: string;
  /** None for the sign that arguments repeat. */
  readonly of?: number;
}[] {
  const written: { text: string; of?: number }[] = parameters.map(({ name, optional }, of) => ({
    text: optional ? `[${name}]` : name,
    of,
  }));
  if (repeats) written.splice(repeats[1], 0, { text: '…' });
  return written;
}

/** A default as a formula writes it. */
export const writtenValue = (value: number | string | boolean): string =>
  typeof value === 'boolean' ? String(value).toUpperCase() : String(value);

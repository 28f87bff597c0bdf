import { type Issue, isIssue, issue } from '../../../../functions/core/issue.ts';
import {
  type Argument,
  isRange,
  type Outcome,
  type Value,
  valueAt,
} from '../../../../functions/core/value.ts';
import { limits } from '../../limits.ts';
import type { Own } from '../builtin.ts';
import { numberOf, problem } from './reading.ts';

/** A value as text: numbers as they are written, yes/no in capitals, a blank as nothing. */
const textOf = (value: Value | undefined): string | Issue => {
  if (value === null || value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return isIssue(value) ? value : String(value);
};

const tooLong = (name: string): Issue =>
  issue('#VALUE!', 'text-too-long', { function: name, details: { most: limits.text } });

const oneText = (name: string, arg: Argument): string | Issue =>
  isRange(arg) ? problem(name, '#VALUE!', 'Cell range not allowed.') : textOf(arg);

/** Joins texts and the cells of ranges, row by row. */
export const concat: Own = {
  minArgs: 1,
  maxArgs: 255,
  compute(args): Outcome {
    let joined = '';
    for (const arg of args) {
      const count = isRange(arg) ? arg.rows * arg.columns : 1;
      for (let i = 0; i < count; i++) {
        const text = textOf(isRange(arg) ? valueAt(arg, i) : arg);
        if (isIssue(text)) return text;
        joined += text;
        if (joined.length > limits.text) return tooLong('CONCAT');
      }
    }
    return joined;
  },
};

/** OpenFormula, text functions, REPT. */
export const rept: Own = {
  minArgs: 2,
  maxArgs: 2,
  compute([given, times]): Outcome {
    const text = oneText('REPT', given);
    if (isIssue(text)) return text;
    const count = numberOf('REPT', times);
    if (isIssue(count)) return count;
    if (count < 0) return problem('REPT', '#VALUE!', 'Count cannot be negative.');
    if (text.length * Math.floor(count) > limits.text) return tooLong('REPT');
    return text.repeat(count);
  },
};

/** OpenFormula, text functions, SUBSTITUTE: an empty text to look for changes nothing. */
export const substitute: Own = {
  minArgs: 3,
  maxArgs: 4,
  compute(args): Outcome {
    const [given, search, replacement, which] = args;
    const name = 'SUBSTITUTE';
    const text = oneText(name, given);
    if (isIssue(text)) return text;
    const old = oneText(name, search);
    if (isIssue(old)) return old;
    const instead = oneText(name, replacement);
    if (isIssue(instead)) return instead;
    // left empty it counts as 0, as an empty argument of the cell engine's functions does
    const place = args.length < 4 ? undefined : numberOf(name, which);
    if (isIssue(place)) return place;
    if (place !== undefined && place < 1) return problem(name, '#VALUE!', 'Argument cannot be less than 1.');
    if (old === '') return text;
    if (place === undefined) {
      const parts = text.split(old);
      const length = text.length + (parts.length - 1) * (instead.length - old.length);
      return length > limits.text ? tooLong(name) : parts.join(instead);
    }
    let at = -old.length;
    for (let k = 1; k <= place; k++) {
      at = text.indexOf(old, at + old.length);
      if (at < 0) return text;
      if (k === place) return text.slice(0, at) + instead + text.slice(at + old.length);
    }
    return text;
  },
};

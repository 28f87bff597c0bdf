import { invoke } from '../../functions/core/invoke.ts';
import { isIssue } from '../../functions/core/issue.ts';
import {
  type Argument,
  isMatrix,
  isRange,
  type Outcome,
  type Range,
  rangeOf,
} from '../../functions/core/value.ts';
import { registry } from '../../functions/registry.ts';
import { readBlock, readColumn } from './reference.ts';

/** What stands in tests beside the domain functions: a kernel or a shorthand, by its name. */
export type Extra = (...args: Argument[]) => Argument;

/**
 * Reads a formula of literals and answers what it gives: calls of domain functions and of `extras`, numbers, texts,
 * inline arrays (`,` between columns, `;` between rows, `v*n` for n rows of v, `(v;w)*n` for n repeats), columns of
 * published data (`set.column`, `set`, `set(a;b)`), a step of the working (`CALL(…)#symbol`) and a row of a column result
 * (`CALL(…)@1`). Just enough to write checks as data; it is not the formula language.
 */
export function evaluate(formula: string, extras: Readonly<Record<string, Extra>> = {}): Outcome | Argument {
  let rest = formula.trim().replace(/^=/, '');
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const match = pattern.exec(rest);
    if (match?.index !== 0) return null;
    rest = rest.slice(match[0].length).trimStart();
    return match;
  };
  const expect = (pattern: RegExp): RegExpExecArray => {
    const match = take(pattern);
    if (!match) throw new Error(`${formula}: cannot read "${rest}".`);
    return match;
  };
  const value = (): Argument => {
    if (/^[,)]/.test(rest)) return undefined;
    const number = take(/^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?(%?)/);
    if (number) return Number(number[0].replace('%', '')) / (number[3] ? 100 : 1);
    const text = take(/^"((?:[^"]|"")*)"/);
    if (text) return text[1]!.replaceAll('""', '"');
    if (take(/^TRUE\b/)) return true;
    if (take(/^FALSE\b/)) return false;
    if (rest.startsWith('{')) return array();
    const name = expect(/^[A-Za-z][A-Za-z0-9_.-]*/)[0];
    if (!take(/^\(/)) {
      const [set, column] = name.split('.');
      if (column === undefined) return block(readBlock(set!));
      return block(readColumn(set!, column).map((v) => [v]));
    }
    if (!registry.has(name) && !(name in extras)) return columns(name);
    const args: Argument[] = [];
    while (!take(/^\)/)) {
      args.push(value());
      if (!take(/^,/) && !rest.startsWith(')')) throw new Error(`${formula}: cannot read "${rest}".`);
      else if (rest.startsWith(')') && formula.at(-rest.length - 1) === ',') args.push(undefined);
    }
    const extra = extras[name];
    if (extra) return extra(...args);
    const step = take(/^#(\w+)/)?.[1];
    if (step) return stepOf(name, args, step);
    const outcome = invoke(registry.get(name)!, args);
    const row = take(/^@(\d+)/)?.[1];
    if (row === undefined || !isMatrix(outcome)) return outcome as Argument;
    return outcome.values[Number(row) - 1] ?? null;
  };
  const array = (): Range => {
    const inside = expect(/^\{([^}]*)\}/)[1]!;
    const rows: (number | string | boolean | null)[][] = [];
    for (const part of inside.split(/;(?![^(]*\))/)) {
      const [, group, single, times] = /^\s*(?:\(([^)]*)\)|([^*]*))(?:\*(\d+))?$/.exec(part)!;
      for (let n = Number(times ?? 1); n > 0; n--)
        for (const row of (group ?? single!).split(';')) rows.push(row.split(',').map(cell));
    }
    return block(rows);
  };
  const columns = (set: string): Range => {
    const names = expect(/^([\w;]+)\)/)[1]!.split(';');
    const each = names.map((name) => readColumn(set, name));
    return block(each[0]!.map((_, i) => each.map((column) => column[i]!)));
  };
  const outcome = value();
  if (rest !== '') throw new Error(`${formula}: cannot read "${rest}".`);
  return outcome;
}

function cell(text: string): number | string | boolean | null {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (trimmed === 'TRUE' || trimmed === 'FALSE') return trimmed === 'TRUE';
  const quoted = /^"(.*)"$/.exec(trimmed);
  if (quoted) return quoted[1]!;
  const number = Number(trimmed);
  if (Number.isNaN(number)) throw new Error(`An inline array cannot hold ${trimmed}.`);
  return number;
}

const block = (rows: readonly (readonly (number | string | boolean | null)[])[]): Range =>
  rangeOf(rows.length, rows[0]?.length ?? 0, rows.flat());

function stepOf(name: string, args: readonly Argument[], symbol: string): Argument {
  const definition = registry.get(name)!;
  const handed = definition.parameters.map(
    (parameter, i) => args[i] ?? ('fallback' in parameter ? parameter.fallback : undefined),
  );
  const steps = definition.steps?.(...(handed as never[])) ?? [];
  const found = steps.find((step) => step.symbol === symbol);
  if (!found) throw new Error(`${name} has no step ${symbol}.`);
  return found.value;
}

/** An error value's code, a matrix as rows, anything else as it is. */
export function plainly(outcome: Outcome | Argument): unknown {
  if (isIssue(outcome)) return outcome.code;
  if (isRange(outcome) || !isMatrix(outcome)) return outcome;
  return Array.from({ length: outcome.rows }, (_, r) =>
    outcome.values.slice(r * outcome.columns, (r + 1) * outcome.columns),
  );
}

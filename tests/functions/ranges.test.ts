import { describe, expect, test } from 'vitest';
import type { AnyDefinition } from '../../functions/core/define.ts';
import { invoke } from '../../functions/core/invoke.ts';
import { type Issue, isIssue } from '../../functions/core/issue.ts';
import type { RangeParameter } from '../../functions/core/parameter.ts';
import {
  type Argument,
  columnRange,
  isRange,
  type Range,
  rangeOf,
  type Value,
  valueAt,
} from '../../functions/core/value.ts';
import { registry } from '../../functions/registry.ts';
import { expectIssue } from './sentence.ts';

interface Case {
  readonly name: string;
  readonly parameter: string;
  readonly definition: AnyDefinition;
  readonly at: number;
  readonly range: RangeParameter<unknown>;
}

/** Every range parameter of every function, from the definitions. */
const cases: readonly Case[] = [...registry.values()].flatMap((definition) =>
  definition.parameters.flatMap((parameter, at) =>
    parameter.kind === 'range'
      ? [{ name: definition.name, parameter: parameter.name, definition, at, range: parameter }]
      : [],
  ),
);
const required = cases.filter(({ range }) => !range.optional);
const numbers = required.filter(({ range }) => range.holds === 'number');
const paired = required.filter(
  ({ definition, range }) =>
    range.together &&
    definition.parameters.some((p) => p.kind === 'range' && p !== range && p.together === range.together),
);

const typical = ({ definition }: Case): Argument[] =>
  definition.parameters.map((_, i) => {
    const value = definition.typical[i];
    return Array.isArray(value) ? columnRange(...value) : (value as Argument);
  });
const asRange = (arg: Argument): Range => (isRange(arg) ? arg : rangeOf(1, 1, [arg as Value]));
const cells = (range: Range): Value[] => Array.from(range.kinds, (_, i) => valueAt(range, i));

/** The typical call with the cells of one range changed. */
function withCells(one: Case, change: (cells: Value[]) => Value[]): Argument[] {
  const args = typical(one);
  const range = asRange(args[one.at]);
  const changed = change(cells(range));
  args[one.at] = rangeOf(changed.length / range.columns, range.columns, changed);
  return args;
}
const replaceFirst = (value: Value) => (all: Value[]) => [value, ...all.slice(1)];

describe('ranges of every function', () => {
  test('there are some, and their typical call has a result', () => {
    expect(cases.length).toBeGreaterThan(50);
    for (const one of cases) {
      const outcome = invoke(one.definition, typical(one));
      if (isIssue(outcome)) expect.fail(`${one.name} on its typical arguments: ${outcome.reason}`);
    }
  });

  test.each(required)('$name: a blank instead of "$parameter" gives #N/A', (one) => {
    const args = typical(one);
    for (const blank of [null, undefined, '']) {
      args[one.at] = blank;
      expectIssue(invoke(one.definition, args), '#N/A', one.parameter);
    }
  });

  test.each(required)('$name: an error among the cells of "$parameter" is passed on', (one) => {
    const error: Issue = { code: '#REF!', reason: 'lost' };
    expect(invoke(one.definition, withCells(one, replaceFirst(error)))).toBe(error);
  });

  test.each(required.filter(({ range }) => range.holds !== 'text'))(
    '$name: text or a yes/no among the cells of "$parameter" gives #VALUE! with the row',
    (one) => {
      for (const stranger of ['tall', true]) {
        const outcome = invoke(one.definition, withCells(one, replaceFirst(stranger)));
        expect(expectIssue(outcome, '#VALUE!', one.parameter).details?.row).toBe(1);
      }
    },
  );

  test.each(numbers)('$name: text that reads as a number counts in "$parameter"', (one) => {
    const args = withCells(one, (all) => all.map((cell, i) => (i === 0 ? ` ${cell} ` : cell)));
    expect(invoke(one.definition, args)).toEqual(invoke(one.definition, typical(one)));
  });

  test.each(required.filter(({ range }) => range.holds === 'date'))(
    '$name: text is no date in "$parameter", even if it reads as a number',
    (one) => {
      expectIssue(invoke(one.definition, withCells(one, replaceFirst('46001'))), '#VALUE!', one.parameter);
    },
  );

  test.each(paired)('$name: "$parameter" one cell longer than its partner gives #VALUE!', (one) => {
    const outcome = invoke(
      one.definition,
      withCells(one, (all) => [...all, 1]),
    );
    expect(expectIssue(outcome, '#VALUE!').reason).toBe('unequal-lengths');
  });

  test.each(numbers)('$name: a blank row changes nothing in "$parameter"', (one) => {
    const args = typical(one).map((arg, i) => {
      const parameter = one.definition.parameters[i]!;
      const along =
        i === one.at ||
        (parameter.kind === 'range' && one.range.together && parameter.together === one.range.together) ||
        (one.name === 'COHORT.REGRESS' && parameter.kind === 'range');
      if (!along || arg === undefined) return arg;
      const range = asRange(arg);
      // The partners keep a value there: a pair with a blank on either side is left out.
      const extra = Array.from(
        { length: range.columns },
        (_, j): Value => (i === one.at ? null : valueAt(range, range.kinds.length - range.columns + j)),
      );
      return rangeOf(range.rows + 1, range.columns, [...cells(range), ...extra]);
    });
    expect(invoke(one.definition, args)).toEqual(invoke(one.definition, typical(one)));
  });

  test.each(required)(
    '$name: "$parameter" without any value answers an error or what its help says',
    (one) => {
      const outcome = invoke(
        one.definition,
        withCells(one, (all) => all.map(() => null)),
      );
      // Plates: the bar alone remains.
      if (one.name === 'STRENGTH.LOADABLE') expect(outcome).toBe(20);
      else expectIssue(outcome, '#N/A');
    },
  );

  test.each(required.filter(({ range }) => range.cells))(
    '$name: each bound of the cells of "$parameter" holds below, at and above it',
    (one) => {
      const { min, max, above } = one.range.cells!;
      const trial = (value: number) => invoke(one.definition, withCells(one, replaceFirst(value)));
      const refused = (value: number) => expectIssue(trial(value), '#NUM!', one.parameter);
      const taken = (value: number) => {
        const outcome = trial(value);
        if (isIssue(outcome)) expect(outcome.reason).not.toBe('out-of-bounds');
      };
      if (min !== undefined) {
        refused(min - 0.01);
        taken(min);
      }
      if (max !== undefined) {
        refused(max + 0.01);
        taken(max);
      }
      if (above !== undefined) {
        refused(above);
        taken(above + 0.01);
      }
    },
  );
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AnyDefinition } from '../../../functions/core/define.ts';
import { invoke } from '../../../functions/core/invoke.ts';
import { isIssue, issue } from '../../../functions/core/issue.ts';
import { prepare } from '../../../functions/core/prepare.ts';
import { type Argument, isRange, Kind, rangeOf } from '../../../functions/core/value.ts';
import { expectIssue } from '../sentence.ts';
import { definitions, typicalOf } from '../typical.ts';

const anyValue = fc.oneof(
  { weight: 4, arbitrary: fc.double({ min: -100, max: 300, noNaN: true }) },
  fc.double(),
  fc.integer({ min: -20, max: 400 }),
  fc.constantFrom(
    null,
    '',
    true,
    false,
    0,
    -0,
    1,
    15,
    80,
    90,
    'F',
    'female',
    'front',
    'goblet',
    'arms-forward',
    '12.5',
    ' 7 ',
    'x',
  ),
  fc.constant(issue('#REF!', 'lost')),
);
const anyArgument = fc.oneof(
  { weight: 8, arbitrary: anyValue },
  fc.constant(undefined),
  fc.array(anyValue, { minLength: 1, maxLength: 6 }).map((cells) => rangeOf(cells.length, 1, cells)),
);

/** Typical arguments, some of them changed into anything. */
const argumentsOf = (definition: AnyDefinition): fc.Arbitrary<Argument[]> =>
  fc.tuple(
    ...typicalOf(definition).map((usual) =>
      fc.oneof({ weight: 3, arbitrary: fc.constant(usual) }, anyArgument),
    ),
  );

/** What a loop over columns does with a row: see `prepare`. Undefined when the row is not plain. */
function fast(definition: AnyDefinition, args: readonly Argument[]): unknown {
  const prepared = prepare(definition, args.length);
  if (isIssue(prepared)) return undefined;
  const handed: unknown[] = [];
  for (let i = 0; i < prepared.parameters.length; i++) {
    const arg = args[i];
    if (arg === undefined || arg === null) {
      if (prepared.required[i]) return undefined;
      handed.push(prepared.fallback[i]);
    } else if (typeof arg === 'number') {
      if (!(arg >= prepared.least[i]! && arg <= prepared.most[i]!)) return undefined;
      if (prepared.whole[i] && !Number.isInteger(arg)) return undefined;
      if (prepared.notZero[i] && arg === 0) return undefined;
      handed.push(arg);
    } else if (typeof arg === 'string') {
      const word = prepared.word(i, arg);
      if (word === undefined) return undefined;
      handed.push(word);
    } else return undefined;
  }
  const outcome = prepared.call(...(handed as never[]));
  if (typeof outcome === 'number') return Number.isFinite(outcome) ? outcome : undefined;
  return typeof outcome === 'object' ? undefined : outcome;
}

describe('any arguments', () => {
  test.each(definitions.map((d) => [d.name, d] as const))(
    '%s answers with a finite value or an issue with a whole sentence, and the column loop with the same',
    (_, definition) => {
      let plain = 0;
      fc.assert(
        fc.property(argumentsOf(definition), (args) => {
          const outcome = invoke(definition, args);
          if (isIssue(outcome)) {
            expect(outcome.reason).not.toBe('fault');
            if (outcome.reason !== 'lost') expectIssue(outcome, outcome.code);
          } else if (typeof outcome === 'number') expect(Number.isFinite(outcome)).toBe(true);
          else if (typeof outcome === 'string' && definition.result.oneOf)
            expect(definition.result.oneOf).toContain(outcome);
          const loop = fast(definition, args);
          if (loop === undefined) return;
          plain++;
          expect(loop).toBe(outcome);
        }),
        { numRuns: 150 },
      );
      // ranges are handed to invoke; everything else must be plain often
      if (!definition.parameters.some((p) => p.kind === 'range' || p.kind === 'text' || p.kind === 'yes-no'))
        expect(plain).toBeGreaterThan(0);
    },
  );
});

describe('prepare', () => {
  const named = (name: string) => definitions.find((d) => d.name === name)!;
  test('turns bounds that are out themselves into the next number inside', () => {
    const muscle = prepare(named('BACK.MUSCLE'), 6);
    if (isIssue(muscle)) expect.fail(muscle.reason);
    expect(muscle.least[5]).toBe(Number.MIN_VALUE);
    expect(muscle.most[5]).toBe(20);
    const limit = prepare(named('TEST.MDC'), 2);
    if (isIssue(limit)) expect.fail(limit.reason);
    expect(limit.most[1]).toBe(1 - Number.EPSILON / 2);
  });
  test('refuses a wrong count as invoke does', () => {
    for (const count of [0, 9])
      expect(prepare(named('LEAN.PARALLEL'), count)).toEqual(
        invoke(named('LEAN.PARALLEL'), new Array(count).fill(1)),
      );
  });
  test('lays out parameters that repeat', () => {
    const arms = prepare(named('MOMENT.ARMS'), 8);
    if (isIssue(arms)) expect.fail(arms.reason);
    expect(arms.parameters.map((p) => p.name).slice(5)).toEqual(['weight3', 'arm3', 'weight4', 'arm4']);
    expect([...arms.required]).toEqual([1, 1, 1, 0, 0, 0, 0, 0, 0]);
  });
  test('has no plain number for a range', () => {
    const pick = prepare(named('LIFT.PICK'), 2);
    if (isIssue(pick)) expect.fail(pick.reason);
    expect(5 >= pick.least[1]! && 5 <= pick.most[1]!).toBe(false);
  });
  test('knows a kind by its number, as the columns write it', () => {
    expect(Kind).toEqual({ blank: 0, number: 1, date: 2, text: 3, yesNo: 4, error: 5 });
    expect(isRange(rangeOf(1, 1, [1]))).toBe(true);
  });
});

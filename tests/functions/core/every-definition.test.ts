import { describe, expect, test } from 'vitest';
import type { AnyDefinition } from '../../../functions/core/define.ts';
import { invoke } from '../../../functions/core/invoke.ts';
import { isIssue, issue } from '../../../functions/core/issue.ts';
import {
  type NumberParameter,
  type OptionParameter,
  type Parameter,
  within,
} from '../../../functions/core/parameter.ts';
import type { Argument } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import { expectIssue } from '../sentence.ts';
import { definitions, typicalOf, typicalWith } from '../typical.ts';

// The working of these ends in the function's own result; statistics tell the figures it is made of.
const ours = /^(SEG|ANKLE|LEAN|JOINT|LIFT|MOMENT|BACK|FOOT|STANCE)\./;

interface Place<P extends Parameter = Parameter> {
  readonly title: string;
  readonly definition: AnyDefinition;
  readonly at: number;
  readonly parameter: P;
}

/** Every parameter of a kind, of every function. */
function places<K extends Parameter['kind']>(...kinds: readonly K[]): Place<Parameter & { kind: K }>[] {
  return definitions.flatMap((definition) =>
    definition.parameters.flatMap((parameter, at) =>
      (kinds as readonly string[]).includes(parameter.kind)
        ? [
            {
              title: `${definition.name}, ${parameter.name}`,
              definition,
              at,
              parameter: parameter as Parameter & { kind: K },
            },
          ]
        : [],
    ),
  );
}
const numbers = places('number') as Place<NumberParameter<unknown>>[];
const options = places('option') as Place<OptionParameter<unknown>>[];
const all = places('number', 'option', 'text', 'yes-no', 'range');
const call = ({ definition, at }: Place, arg: Argument) =>
  invoke(definition, typicalWith(definition, at, arg));
const titled = <P extends { readonly title: string }>(list: readonly P[]) =>
  list.map((one) => [one.title, one] as const);

describe('every function', () => {
  test.each(definitions.map((d) => [d.name, d] as const))(
    '%s has a value for its typical arguments',
    (_, d) => {
      expect(d.typical.length).toBeLessThanOrEqual(d.parameters.length);
      const outcome = invoke(d, typicalOf(d));
      if (isIssue(outcome)) expect.fail(`${outcome.code} ${outcome.reason}`);
      if (d.result.is === 'number') expect(outcome).toBeTypeOf('number');
      if (d.result.is === 'text') expect(d.result.oneOf).toContain(outcome);
    },
  );

  test.each(definitions.map((d) => [d.name, d] as const))('%s counts its arguments', (_, d) => {
    const args = typicalOf(d);
    const required = d.parameters.filter((p) => !p.optional).length;
    if (required > 0) expectIssue(invoke(d, args.slice(0, required - 1)), '#N/A');
    expect(d.parameters.slice(required).every((p) => p.optional)).toBe(true);
    if (!d.repeats) expectIssue(invoke(d, [...args, 1]), '#N/A');
  });

  test.each(definitions.map((d) => [d.name, d] as const))('%s is described whole', (_, d) => {
    expect(d.summary).toMatch(/^[A-Z][^.]*\.$/);
    expect(d.searchWords?.length).toBeGreaterThan(0);
    expect(d.rule.length).toBeGreaterThan(3);
    expect(d.examples.length).toBeGreaterThanOrEqual(2);
    for (const { formula } of d.examples) expect(formula).toMatch(/^=[A-Z]/);
    expect(d.seeAlso.length).toBeGreaterThan(0);
    for (const other of d.seeAlso) {
      expect(registry.has(other), `see also ${other}`).toBe(true);
      expect(other).not.toBe(d.name);
    }
    for (const text of [...(d.notes ?? []), ...(d.cautions ?? [])]) expect(text).toMatch(/[.)]$/);
    const names = d.parameters.map((p) => p.name);
    expect(new Set(names).size).toBe(names.length);
    for (const p of d.parameters) expect(p.about.length, p.name).toBeGreaterThan(3);
  });

  test.each(definitions.map((d) => [d.name, d] as const))('%s says where each number comes from', (_, d) => {
    expect(d.sources.length).toBeGreaterThan(0);
    for (const source of [...d.sources, ...(d.constants ?? []).map((c) => c.source)]) {
      expect(source.citation.length, source.status).toBeGreaterThan(3);
    }
    const names = (d.constants ?? []).map((c) => c.name);
    expect(new Set(names).size, names.join()).toBe(names.length);
    for (const c of d.constants ?? []) expect(Number.isFinite(c.value), c.name).toBe(true);
    for (const p of d.parameters) {
      if (p.kind !== 'number') continue;
      const { because, ...limits } = p.bounds;
      if (Object.keys(limits).length > 0) expect(because?.length, `${p.name}: why`).toBeGreaterThan(3);
    }
  });

  test.each(definitions.filter((d) => d.steps).map((d) => [d.name, d] as const))(
    '%s tells its working, and the result is in it',
    (_, d) => {
      const handed = d.parameters.map(
        (p, i) => typicalOf(d)[i] ?? ('fallback' in p ? p.fallback : undefined),
      );
      const steps = d.steps!(...(handed as never[]));
      expect(steps.length).toBeGreaterThan(0);
      for (const step of steps) {
        expect(step.name.length).toBeGreaterThan(0);
        if (typeof step.value === 'number') expect(Number.isFinite(step.value), step.name).toBe(true);
      }
      if (!ours.test(d.name)) return;
      const result = invoke(d, typicalOf(d));
      const told = steps.some(({ value }) =>
        typeof value === 'number' && typeof result === 'number'
          ? Math.abs(value - result) <= 1e-9 * Math.max(1, Math.abs(result))
          : value === result,
      );
      expect(told, `${String(result)} among ${steps.map((s) => s.value).join(', ')}`).toBe(true);
    },
  );
});

describe('each argument of every function', () => {
  test.each(titled(all))('%s: an error is passed on as it is', (_, place) => {
    const error = issue('#REF!', 'lost', { details: { name: 'femur' } });
    expect(call(place, error)).toBe(error);
  });

  test.each(titled(all))('%s: a blank is missed or takes its default', (_, place) => {
    for (const blank of [null, undefined, '']) {
      const outcome = call(place, blank);
      if (!place.parameter.optional) expectIssue(outcome, '#N/A', place.parameter.name);
      else if ('fallback' in place.parameter && place.parameter.fallback !== undefined)
        expect(outcome).toEqual(call(place, place.parameter.fallback as Argument));
      else if (isIssue(outcome)) expect(outcome.code).toBe('#N/A');
    }
  });

  test.each(titled(numbers))(
    '%s: text and yes/no are refused, text that reads as a number is one',
    (_, place) => {
      for (const wrong of ['x', '12 cm', '1,5', '--1', true, false])
        expectIssue(call(place, wrong), '#VALUE!', place.parameter.name);
      const number = typicalOf(place.definition)[place.at];
      if (typeof number !== 'number') return;
      if (place.parameter.unit === 'date')
        expectIssue(call(place, `${number}`), '#VALUE!', place.parameter.name);
      else {
        const expected = call(place, number);
        for (const text of [`${number}`, `  ${number} `, `${number}e0`])
          expect(call(place, text)).toEqual(expected);
      }
    },
  );

  test.each(titled(options))('%s: words in any case, no other word', (_, place) => {
    for (const wrong of ['no such word', true])
      expectIssue(call(place, wrong), '#VALUE!', place.parameter.name);
    for (const word of place.parameter.words)
      expect(call(place, ` ${word.toUpperCase()} `)).toEqual(call(place, word));
    for (const [alias, word] of Object.entries(place.parameter.aliases ?? {}))
      expect(call(place, alias.toUpperCase())).toEqual(call(place, word));
    for (const [word, remedy] of Object.entries(place.parameter.refused ?? {}))
      expect(expectIssue(call(place, word), '#VALUE!', place.parameter.name).remedy).toBe(remedy);
  });

  const bounded = numbers.filter(({ parameter }) => Object.keys(parameter.bounds).length > 0);
  test.each(titled(bounded))('%s: just outside a bound is #NUM!, on it is not', (_, place) => {
    const { min, max, above, below } = place.parameter.bounds;
    const past = (limit: number, way: 1 | -1) =>
      place.parameter.whole ? limit + way : limit + way * 1e-9 * Math.max(1, Math.abs(limit));
    const out = [
      min === undefined ? undefined : past(min, -1),
      max === undefined ? undefined : past(max, 1),
      above,
      below,
    ];
    for (const value of out)
      if (value !== undefined) {
        const wrong = expectIssue(call(place, value), '#NUM!', place.parameter.name);
        expect(wrong.reason).toBe('out-of-bounds');
      }
    const inside = [
      min,
      max,
      above !== undefined ? above + 1e-9 : undefined,
      below !== undefined ? below - 1e-9 : undefined,
    ];
    for (const value of inside) {
      if (value === undefined || place.parameter.whole) continue;
      const outcome = call(place, value);
      if (isIssue(outcome)) expect(outcome.reason, `${value}`).not.toBe('out-of-bounds');
    }
  });

  test.each(titled(numbers.filter(({ parameter }) => parameter.whole)))('%s: a whole number', (_, place) => {
    const number = Number(typicalOf(place.definition)[place.at] ?? place.parameter.fallback);
    expect(expectIssue(call(place, number + 0.5), '#NUM!', place.parameter.name).reason).toBe('not-whole');
  });

  test.each(titled(numbers.filter(({ parameter }) => parameter.divisor)))(
    '%s: 0 does not divide',
    (_, place) => {
      expectIssue(call(place, 0), '#DIV/0!', place.parameter.name);
      expectIssue(call(place, -1), '#NUM!', place.parameter.name);
    },
  );
});

describe('declared directions', () => {
  const declared = definitions.flatMap((definition) =>
    Object.entries(definition.directions ?? {}).map(([name, way]) => ({
      title: `${definition.name}: more ${name}, ${way > 0 ? 'more' : 'less'}`,
      definition,
      at: definition.parameters.findIndex((p) => p.name === name),
      name,
      way,
    })),
  );
  test.each(titled(declared))('%s', (_, { definition, at, name, way }) => {
    const parameter = definition.parameters[at]!;
    const fallback = 'fallback' in parameter ? parameter.fallback : undefined;
    const here = typicalOf(definition)[at] ?? fallback;
    if (typeof here !== 'number') expect.fail(`${name} has no typical number`);
    const whole = parameter.kind === 'number' && (parameter.whole || parameter.unit === 'date');
    const size = whole ? 1 : Math.max(1, Math.abs(here)) * 0.02;
    const limits = parameter.kind === 'number' ? parameter.bounds : {};
    const at1 = (value: number) => invoke(definition, typicalWith(definition, at, value));
    const up = within(here + size, limits) ? here + size : here;
    const down = within(here - size, limits) ? here - size : here;
    const [more, less] = [at1(up), at1(down)];
    if (typeof more !== 'number' || typeof less !== 'number') expect.fail('no number on a side');
    expect(Math.sign(more - less)).toBe(way);
  });
});

import { describe, expect, test } from 'vitest';
import { registry } from '../../../functions/registry.ts';
import { expectAgreement } from '../agreement.ts';
import { evaluate, plainly } from '../formula.ts';

const definitions = [...registry.values()].filter(({ name }) => /^(STRENGTH|TRAIN|TEST|COHORT)\./.test(name));
const examples = definitions.flatMap(({ name, examples }) =>
  examples.map((example) => ({ name, ...example })),
);

describe('examples of strength, log, reliability and groups', () => {
  test.each(examples)('$formula', ({ formula, gives }) => {
    expectAgreement(plainly(evaluate(formula)), gives);
  });
});

describe('help of strength, log, reliability and groups', () => {
  test.each(definitions.map((d) => [d.name, d] as const))('%s is whole', (_, definition) => {
    expect(definition.summary).toMatch(/^[A-Z].*\.$/);
    expect(definition.examples.length).toBeGreaterThanOrEqual(2);
    expect(definition.sources.length).toBeGreaterThan(0);
    expect(definition.rule.length).toBeGreaterThan(3);
    expect(definition.seeAlso.length).toBeGreaterThan(0);
    for (const other of definition.seeAlso)
      expect(registry.has(other), `${definition.name} → ${other}`).toBe(true);
    for (const text of [...(definition.notes ?? []), ...(definition.cautions ?? [])])
      expect(text).toMatch(/\.$/);
  });

  const says = (name: string, pattern: RegExp) => {
    const { cautions = [], notes = [], sources } = registry.get(name)!;
    expect([...cautions, ...notes, ...sources.map(({ citation }) => citation)].join('\n')).toMatch(pattern);
  };
  test('says where the ratio of recent to earlier load stops', () => {
    for (const name of ['TRAIN.ACWR', 'TRAIN.EWMA.RATIO']) {
      says(name, /not shown to predict or prevent injury/);
      says(name, /No band .* none is drawn/);
      says(name, /Lolli.*53:921[\s\S]*Impellizzeri.*51:581/);
    }
  });
  test('warns above ten repetitions, of uncertain constants and of ratings below seven', () => {
    for (const name of ['STRENGTH.MAX', 'STRENGTH.LOAD', 'STRENGTH.REPS']) says(name, /Above 10 repetitions/);
    says('STRENGTH.SINCLAIR', /2025 .* from memory: confirm/);
    says('STRENGTH.RIR', /Below 7 the scale is a band/);
  });
  test('says which way a difference is taken', () => {
    for (const name of ['COHORT.D', 'COHORT.G']) says(name, /The sign is b − a/);
    for (const name of ['COHORT.WELCH', 'TEST.BIAS']) says(name, /The sign is a − b/);
    says('TEST.SIDES', /right − left/);
  });
});

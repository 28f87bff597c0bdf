import { describe, expect, test } from 'vitest';
import { describe as helpOf } from '../../functions/core/describe.ts';
import { registry } from '../../functions/registry.ts';
import { answering } from '../../src/app/panels/search.ts';

const all = [...registry.values()].map(helpOf);
const names = (question: string) => answering(all, question).map(({ name }) => name);

describe('the guide’s search', () => {
  // What each question is about, by the summaries that the functions themselves give.
  test.each([
    ['how much heel', /^LIFT\.FOR\.LEAN/],
    ['what heel lift do I need for a target lean', /^LIFT\.FOR\./],
    ['real change', /^TEST\.(CHANGE|MDC)/],
    ['smallest worthwhile change', /^TEST\.SWC/],
    ['knees over toes', /^LEAN\.KNEE\.AHEAD/],
    ['what limits depth', /^LEAN\.(LIMITER|DEEPEST)/],
    ['estimate one rep max', /^STRENGTH\./],
    ['Hip torque', /^MOMENT\./],
    ['acute chronic workload', /^TRAIN\.(ACWR|EWMA)/],
    ['effect size', /^COHORT\./],
  ])('%s', (question, best) => {
    expect(names(question)[0]).toMatch(best);
  });

  test('finds every function first by its own name, and by each of its search words', () => {
    for (const { name, searchWords } of all) {
      expect(names(name)[0]).toBe(name);
      for (const words of searchWords) expect(names(words), words).toContain(name);
    }
  });

  test('leaves everything in its order for a blank question, and answers nothing for words that mean nothing', () => {
    expect(answering(all, '  ')).toBe(all);
    expect(names('xyzzy plugh')).toEqual([]);
  });
});

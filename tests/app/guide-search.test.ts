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

  // What a coach would expect of a word or two: common practice, no published source.
  test.each([
    ['heel', ['LIFT.FOR.LEAN', 'LIFT.PICK', 'LIFT.CHANGE'], ['LIFT.NET', 'LIFT.PITCH']],
    ['how much heel', ['LIFT.FOR.LEAN'], ['LIFT.NET', 'LIFT.PITCH']],
    ['raise the heel', ['LIFT.FOR.LEAN', 'LIFT.PICK'], ['LIFT.NET', 'LIFT.PITCH']],
    ['real change', ['TEST.CHANGE', 'TEST.MDC'], ['LIFT.CHANGE']],
    ['ankle', ['ANKLE.FROM.WALL', 'ANKLE.NEEDED'], ['LIFT.AS.ANKLE']],
    ['stiff ankle', ['ANKLE.FROM.WALL', 'LEAN.LIMITER'], ['LEAN.ERROR']],
    ['knee to wall', ['ANKLE.FROM.WALL'], ['ANKLE.TO.WALL', 'MOMENT.KNEE']],
    ['lean', ['LEAN.PARALLEL'], ['LIFT.FOR.LEAN', 'LEAN.FROM.POINTS']],
    ['forward lean', ['LEAN.PARALLEL', 'LEAN.AT'], ['LIFT.FOR.LEAN']],
    ['1RM', ['STRENGTH.MAX'], ['STRENGTH.LOAD', 'STRENGTH.FROM.VELOCITY']],
    ['reliability', ['TEST.ICC'], ['TEST.BIAS']],
    ['percentile', ['SEG.PERCENTILE', 'COHORT.PERCENTILE'], ['STRENGTH.LOAD']],
    ['low back', ['MOMENT.BACK'], ['TEST.ICC.LOW']],
    ['lower back', ['MOMENT.BACK'], ['SEG.TRUNK']],
    ['depth', ['LEAN.DEEPEST', 'LIFT.FOR.DEPTH'], ['LEAN.HIP']],
    ['training load', ['TRAIN.SESSION'], ['STRENGTH.LOAD']],
    ['femur', ['SEG.FEMUR'], ['LIFT.AS.FEMUR']],
    ['compare groups', ['COHORT.WELCH'], ['STRENGTH.DOTS']],
  ])('%s: what answers it stands before what mentions it', (question, answers, mentions) => {
    const found = names(question);
    expect([...found.slice(0, answers.length)].sort()).toEqual([...answers].sort());
    for (const mention of mentions)
      if (found.includes(mention)) expect(found.indexOf(mention)).toBeGreaterThanOrEqual(answers.length);
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

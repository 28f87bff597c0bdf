import { expect } from 'vitest';
import { type Issue, isIssue } from '../../functions/core/issue.ts';
import { functionSentences } from '../../functions/core/sentence.ts';

/** The issue that a call must have given, with a whole sentence that names the function and the argument. */
export function expectIssue(outcome: unknown, code: string, parameter?: string): Issue {
  if (!isIssue(outcome)) expect.fail(`expected ${code}, got ${String(outcome)}`);
  expect(outcome.code).toBe(code);
  if (parameter) expect(outcome.parameter).toBe(parameter);
  const sentence = functionSentences[outcome.reason]?.(outcome);
  if (!sentence) expect.fail(`there is no sentence for ${outcome.reason}`);
  expect(sentence).toContain(outcome.function);
  if (outcome.parameter) expect(sentence).toContain(`"${outcome.parameter}"`);
  expect(sentence).toMatch(/\.$/);
  expect(sentence).not.toMatch(/undefined|NaN|\[object/);
  return outcome;
}

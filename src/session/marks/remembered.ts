/** Remembers results for as long as their inputs are the same. */
import type { Calculation } from '../../calc/api.ts';

interface Known {
  readonly inputs: readonly unknown[];
  readonly answer: unknown;
}
const known = new WeakMap<Calculation, Map<string, Known>>();

/** What `make` gives, kept under the key for as long as every input is the same object: a range is another one when a value of it is. */
export function remembered<T>(
  calculation: Calculation,
  key: string,
  inputs: readonly unknown[],
  make: () => T,
): T {
  const answers = known.get(calculation) ?? new Map<string, Known>();
  known.set(calculation, answers);
  const before = answers.get(key);
  if (before && before.inputs.length === inputs.length && inputs.every((one, i) => one === before.inputs[i]))
    return before.answer as T;
  const answer = make();
  answers.set(key, { inputs, answer });
  return answer;
}

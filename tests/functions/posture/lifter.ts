import fc from 'fast-check';
import { invoke } from '../../../functions/core/invoke.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import type { Argument, Outcome } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';

/** What a function of the registry gives. */
export function give(name: string, ...args: readonly Argument[]): Outcome {
  const definition = registry.get(name);
  if (!definition) throw new Error(`There is no ${name}.`);
  return invoke(definition, args);
}

/** The same where a number is certain; anything else ends the test. */
export function number(name: string, ...args: readonly Argument[]): number {
  const outcome = give(name, ...args);
  if (typeof outcome === 'number') return outcome;
  throw new Error(`${name}(${args.join(', ')}) gave ${JSON.stringify(outcome)}.`);
}

/** True when a posture holds. */
export const holds = (name: string, ...args: readonly Argument[]): boolean => !isIssue(give(name, ...args));

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

export const placements = ['high-bar', 'low-bar', 'front', 'arms-forward'] as const;

/** Lifters as they come, a little beyond the survey's; lengths cm, angles deg. */
export const lifters = fc.record({
  femur: between(32, 54),
  tibia: between(32, 52),
  trunk: between(40, 66),
  ankle: between(5, 50),
  lift: fc.oneof(fc.constant(0), between(0, 4)),
  depth: between(-40, 60),
  placement: fc.constantFrom(...placements),
  foot: fc.oneof(fc.constant(undefined), between(20, 33)),
  stance: fc.oneof(fc.constant(0), between(0, 50)),
});
export type Someone = typeof lifters extends fc.Arbitrary<infer T> ? T : never;

export const build = (l: Someone) => [l.femur, l.tibia, l.trunk, l.ankle] as const;
export const setup = (l: Someone) => [l.placement, l.foot, l.stance] as const;
export { between };

import { invoke } from '../../../functions/core/invoke.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import { type Argument, isRange, Kind } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import { definitions, typicalOf } from '../../functions/typical.ts';
import { bitsOf, drawing } from './drawn.ts';

/** What one argument of a call is varied to: numbers somewhat off, sometimes much; words as they are. */
function varied(argument: Argument, draw: () => number): Argument {
  if (typeof argument === 'number') {
    if (Number.isInteger(argument) && draw() < 0.3) return argument;
    return argument * (0.75 + 0.5 * draw()) + (draw() < 0.1 ? 10 * draw() - 5 : 0);
  }
  if (!isRange(argument)) return argument;
  const numbers = argument.numbers.map((value, i) =>
    argument.kinds[i] === Kind.number ? (varied(value, draw) as number) : value,
  );
  return { ...argument, numbers };
}

/** The outcomes of many calls over all functions, with seeded arguments: bits of numbers, codes of errors, words. */
export function outcomesOfCalls(count: number): string[] {
  const draw = drawing(20250908);
  return Array.from({ length: count }, (_, i) => {
    const definition = definitions[i % registry.size]!;
    const outcome = invoke(
      definition,
      typicalOf(definition).map((argument) => varied(argument, draw)),
    );
    const said =
      typeof outcome === 'number'
        ? bitsOf(outcome)
        : isIssue(outcome)
          ? outcome.code
          : JSON.stringify(outcome, (_key, v) => (typeof v === 'number' ? bitsOf(v) : v));
    return `${definition.name} ${said}`;
  });
}

import type { AnyDefinition } from '../../functions/core/define.ts';
import { type Argument, columnRange } from '../../functions/core/value.ts';
import { registry } from '../../functions/registry.ts';

export const definitions: readonly AnyDefinition[] = [...registry.values()];

/** The arguments that a definition names as typical, one a parameter. */
export const typicalOf = (definition: AnyDefinition): Argument[] =>
  definition.parameters.map((_, i) => {
    const value = definition.typical[i];
    return Array.isArray(value) ? columnRange(...value) : (value as Argument);
  });

/** The typical call with one argument changed. */
export function typicalWith(definition: AnyDefinition, at: number, arg: Argument): Argument[] {
  const args = typicalOf(definition);
  args[at] = arg;
  return args;
}

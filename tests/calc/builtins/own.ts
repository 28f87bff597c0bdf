import type { Own } from '../../../src/calc/builtins/builtin.ts';
import { builtIns } from '../../../src/calc/builtins/index.ts';

/** The functions whose body reads its arguments itself, by each of their names. */
export const owns: ReadonlyMap<string, Own> = new Map(
  [...builtIns].flatMap(([name, { implementation }]) =>
    implementation.own ? [[name, implementation.own] as const] : [],
  ),
);

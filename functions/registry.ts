import type { AnyDefinition } from './core/define.ts';

// A function exists because its file does: nothing else has to be told.
const files = import.meta.glob<AnyDefinition>(
  ['./*/*.ts', '!./core/**', '!./posture/**', '!./tables/**', '!./statistics/**', '!./log/**'],
  { eager: true, import: 'default' },
);

/** All function definitions by name, in alphabetical order. */
export const registry: ReadonlyMap<string, AnyDefinition> = new Map(
  Object.values(files)
    .map((definition) => [definition.name, definition] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1)),
);

/** File of each definition, for the test that holds folder and names together. */
export const definitionFiles: ReadonlyMap<string, AnyDefinition> = new Map(Object.entries(files));

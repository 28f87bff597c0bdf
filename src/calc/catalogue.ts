/** The functions of the language: those of the domain by their definitions, the built-in ones by their records. */
import { registry } from '../../functions/registry.ts';
import { builtIns } from './builtins/index.ts';

let known: ReadonlySet<string> | undefined;

/** Every function of the language, in capitals and in alphabetical order. */
export function functionNames(): ReadonlySet<string> {
  known ??= new Set([...registry.keys(), ...builtIns.keys()].sort());
  return known;
}

export const isFunction = (name: string): boolean => functionNames().has(name.toUpperCase());

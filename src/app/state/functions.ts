/** The functions that the page knows of, loaded when they are first asked for. */
import { computed, signal } from '@preact/signals';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import type { Page } from './page.ts';

/** The functions of the domain, as the session tells them: one list for completion, signature and guide. */
export const functionHelp = signal<readonly FunctionHelp[]>([]);
/** Those of spreadsheets at large; asked for when somebody writes a formula or looks for a function. */
export const builtInHelp = signal<readonly FunctionHelp[]>([]);

const byName = computed(
  () =>
    new Map(
      [...functionHelp.value, ...builtInHelp.value].flatMap((help) =>
        [help.name, ...(help.aliases ?? [])].map((name) => [name, help] as const),
      ),
    ),
);
/** The function of a name, or of another name of it. */
export const helpNamed = (name: string): FunctionHelp | undefined => byName.value.get(name);

let asked: Promise<void> | null = null;
let askedBuiltIns: Promise<void> | null = null;

export function loadFunctions(page: Page): Promise<void> {
  asked ??= page.service.functions().then((list) => {
    functionHelp.value = list;
  });
  return asked;
}

/** The words about built-in functions are no part of the first load: not before they are wanted. */
export function loadBuiltIns(page: Page): Promise<void> {
  askedBuiltIns ??= page.service.builtInFunctions().then((list) => {
    builtInHelp.value = list;
  });
  return askedBuiltIns;
}

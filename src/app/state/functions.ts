/** The functions that the page knows of, loaded when they are first asked for. */
import { computed, signal } from '@preact/signals';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import type { Page } from './page.ts';

const all = signal<readonly FunctionHelp[]>([]);

/** The functions of the domain, as the session tells them: one list for completion, signature and guide. */
export const functionHelp = computed(() => all.value.filter(({ builtIn }) => !builtIn));
/** Those of spreadsheets at large. */
export const builtInHelp = computed(() => all.value.filter(({ builtIn }) => builtIn));

const byName = computed(
  () =>
    new Map(all.value.flatMap((help) => [help.name, ...(help.aliases ?? [])].map((name) => [name, help]))),
);
/** The function of a name, or of another name of it. */
export const helpNamed = (name: string): FunctionHelp | undefined => byName.value.get(name);

let asked: Promise<void> | null = null;

export function loadFunctions(page: Page): Promise<void> {
  asked ??= page.service.functions().then((list) => {
    all.value = list;
  });
  return asked;
}

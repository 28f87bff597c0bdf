import { signal } from '@preact/signals';
import type { FunctionHelp } from '../../../functions/core/describe.ts';
import type { Page } from './page.ts';

/** The functions of the formula language, as the session tells them: one list for completion, signature and guide. */
export const functionHelp = signal<readonly FunctionHelp[]>([]);

let asked: Promise<void> | null = null;

export function loadFunctions(page: Page): Promise<void> {
  asked ??= page.service.functions().then((list) => {
    functionHelp.value = list;
  });
  return asked;
}

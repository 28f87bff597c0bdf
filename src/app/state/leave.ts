import type { Page } from './page.ts';

/** Work that nothing keeps is not thrown away without a word. */
export function mayLeave(page: Page): boolean {
  if (page.keeping.value?.state !== 'not kept' || !page.unsaved.value) return true;
  return globalThis.confirm(
    'This book has changes that are not saved in this browser or a file. Leave without saving?',
  );
}

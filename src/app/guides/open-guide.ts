import type { Page } from '../state/page.ts';

/** Shows a guide beside the sheet. */
export function openGuide(page: Page, guide: string): void {
  page.guide.value = null;
  if (page.way.value?.guide !== guide) page.way.value = { guide, step: null };
  page.contentsOpen.value = false;
  page.side.value = 'guide';
}

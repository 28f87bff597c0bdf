import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellOf, launch, runCommand, sheetShown } from './browser.ts';
import { pageAddress } from './in-browser.ts';
import { summaryOfLean } from './marking.ts';

/** The texts of a column from top to bottom, with those of the column of sexes beside them. */
const columnTexts = (page: Page, heading: string): Promise<readonly string[]> =>
  page.evaluate((wanted) => {
    const th = [...document.querySelectorAll('.sheet-grid .ht_clone_top thead th')].find(
      (one) => one.querySelector('.heading-words')?.textContent === wanted,
    );
    const index = th?.getAttribute('aria-colindex');
    const texts = new Map<number, string>();
    for (const part of ['.ht_master', '.ht_clone_bottom'])
      for (const td of document.querySelectorAll(`.sheet-grid ${part} tbody td[aria-colindex="${index}"]`))
        texts.set(Number(td.closest('tr')?.getAttribute('aria-rowindex')), (td.textContent ?? '').trim());
    return [...texts].sort(([a], [b]) => a - b).map(([, text]) => text);
  }, heading);

/** The middle of some numbers: the mean of the two in the middle where they are even (any textbook). */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1 ? sorted[Math.floor(half)]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

test('a column shows a formula of its own below the sheet, and below each group of rows', async () => {
  // All rows and columns fit, so that every figure can be read off the page.
  const { page, faults, close } = await launch(pageAddress(), { viewport: { width: 3800, height: 1600 } });
  try {
    await sheetShown(page);
    await summaryOfLean(page);
    const told = page.getByRole('dialog').getByRole('status');
    await expect.poll(() => told.textContent()).toMatch(/^For the visible rows: \d+\.\d°$/);
    await page.keyboard.press('Enter');
    await page.locator('.dialogue').waitFor({ state: 'detached' });
    await page.locator('td.summary .summary-what').first().waitFor();

    const all = await columnTexts(page, 'Minimum lean (model)');
    const line = all.at(-1)!;
    expect(line).toMatch(/^median \d+\.\d$/);
    const shown = all.filter((text) => /^\d+$/.test(text)).map(Number);
    expect(shown).toHaveLength(24);
    // Whole degrees are on show: their median is at most half a degree from that of the values.
    expect(Math.abs(Number(line.slice(7)) - median(shown))).toBeLessThanOrEqual(0.5);
    // The other columns keep the figure of the line.
    expect((await columnTexts(page, 'Ankle range used')).at(-1)).toMatch(/^\d+\.\d$/);

    await (await cellOf(page, 1, 'Sex')).click();
    await runCommand(page, 'Group by');
    // Two groups, and all of them.
    await expect.poll(() => page.locator('.ht_master td.summary .summary-what').count()).toBe(3);
    // The rows of the groups come after their lines.
    await expect.poll(() => columnTexts(page, 'Minimum lean (model)')).not.toContain('');
    const grouped = await columnTexts(page, 'Minimum lean (model)');
    let group: number[] = [];
    const groups: (readonly [number, number])[] = [];
    for (const text of grouped.slice(0, -1)) {
      if (!text.startsWith('median ')) group.push(Number(text));
      else {
        groups.push([Number(text.slice(7)), median(group)]);
        group = [];
      }
    }
    expect(groups).toHaveLength(2);
    for (const [told, worked] of groups) expect(Math.abs(told - worked)).toBeLessThanOrEqual(0.5);
    expect(grouped.at(-1)).toBe(line);
    expect(faults).toEqual([]);
  } finally {
    await close();
  }
});

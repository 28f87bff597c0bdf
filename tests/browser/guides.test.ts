import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { guides, stepsOf } from '../../src/guides/index.ts';
import { launch, runCommand, sheetShown } from './browser.ts';
import { pageAddress } from './in-browser.ts';

/** Rules of WCAG 2.0 to 2.2, levels A and AA, as axe-core checks them (W3C Recommendation 2023-10-05). */
const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  const results = await page.evaluate(
    (tags) =>
      (window as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run({
        runOnly: { type: 'tag', values: tags },
      }),
    levels,
  );
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id}: ${help} at ${target.join(' ')}`),
  );
}

const step = (page: Page, text: string) => page.locator('.way-step', { hasText: text });

test('the books page and the Help menu lead to the guides, and each step’s button where it says', async () => {
  const { page, faults, close } = await launch(pageAddress());
  await sheetShown(page);
  await page.keyboard.press('Alt+b');
  await page.getByRole('button', { name: /^For the coach/ }).click();
  await page.getByRole('heading', { name: 'For the coach' }).waitFor();
  // In the book of the sample the sheets are there already; in another book the guide says where to begin.
  await step(page, 'Press Leverbook').getByRole('button', { name: 'Open it' }).click();
  await page.locator('.status').getByText('0 rows').waitFor();
  await step(page, 'roster.csv').getByRole('button', { name: 'Preview this file' }).click();
  await page.locator('.intake-counts').getByText('24 of 24 rows').waitFor();
  await page.getByRole('button', { name: 'Add 24 rows' }).click();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await step(page, 'Una Bellamy: Minimum lean').getByRole('button', { name: 'Show me' }).click();
  await page.locator('[data-part="line"]').getByText('LEAN.PARALLEL').first().waitFor();
  await step(page, 'Target lean').first().getByRole('button', { name: 'Show me' }).click();
  await expect
    .poll(() =>
      page.evaluate(() => document.activeElement?.closest('[data-setting]')?.getAttribute('data-setting')),
    )
    .toBe('target_lean');
  await step(page, 'Lean and ankle range').getByRole('button', { name: 'Show me' }).click();
  await page.locator('.chart-place svg').first().waitFor();
  // Another panel, and back: the guide is where it was.
  await page.getByRole('tab', { name: 'Figure' }).click();
  await page.getByRole('tab', { name: 'Guide' }).click();
  await expect.poll(() => page.locator('[aria-current="step"]').isVisible()).toBe(true);
  expect(await page.locator('[aria-current="step"]').textContent()).toContain('Lean and ankle range');
  // A picture is loaded when it is asked for.
  await page.locator('.way-step summary').first().click();
  const picture = page.locator('.way-step details[open] img');
  await expect
    .poll(() => picture.evaluate((image: HTMLImageElement) => image.naturalWidth))
    .toBeGreaterThan(600);
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'retest.csv' }).click(),
  ]);
  expect(file.suggestedFilename()).toBe('retest.csv');
  expect(await readFile(await file.path(), 'utf8')).toContain('Carla Nise,');
  await runCommand(page, 'Open the guide: for the lifter');
  await page.getByRole('heading', { name: 'For the lifter' }).waitFor();
  await step(page, 'At a glance').getByRole('button', { name: 'Show me' }).click();
  await page.getByText('is not in this book').waitFor();
  expect(faults).toEqual([]);
  await close();
});

test.each([
  ['at a desk', { viewport: { width: 1280, height: 800 } }],
  ['in the dark', { viewport: { width: 1280, height: 800 }, colorScheme: 'dark' }],
  ['on a phone', { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
] as const)(
  'the guides %s break no rule of WCAG 2.2 AA that can be checked by machine',
  async (_, options) => {
    const { page, faults, close } = await launch(pageAddress(), options);
    await sheetShown(page);
    for (const guide of guides) {
      await page.keyboard.press('Alt+b');
      await page.getByRole('button', { name: new RegExp(`^${guide.title}`) }).click();
      await page.getByRole('heading', { name: guide.title }).waitFor();
      expect(await page.locator('.way-step').count()).toBe(stepsOf(guide).length);
      expect(await violations(page)).toEqual([]);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
      expect(wide).toBe(false);
    }
    expect(faults).toEqual([]);
    await close();
  },
);

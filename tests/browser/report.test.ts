import { readFile } from 'node:fs/promises';
import { beforeAll, expect, test } from 'vitest';
import { squadFile } from '../session/charts/squad.ts';
import { violations } from './axe.ts';
import { runCommand, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';

const watched = inBrowser({ viewport: { width: 1280, height: 900 }, first: withoutFileAccess });
beforeAll(async () => {
  const { page } = watched;
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Control+o')]);
  const buffer = Buffer.from(squadFile());
  await chooser.setFiles({ name: 'squad.leverbook.json', mimeType: 'application/json', buffer });
  await page.locator('.contents-item', { hasText: 'Monthly maxima' }).waitFor();
});

test('the report is shown with its tables and figures, and saved as a document of its own', async () => {
  const { page, faults } = watched;
  await runCommand(page, 'Make the cohort report');
  await page.locator('.report h1').waitFor();
  expect(await page.locator('.report h1').textContent()).toBe('Winter squad, a year: cohort report');
  expect(await page.locator('.report figure').count()).toBe(8);
  expect(await violations(page)).toEqual([]);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as HTML' }).click(),
  ]);
  const text = await readFile(await download.path(), 'utf8');
  expect(text.startsWith('<!doctype html>')).toBe(true);
  expect(text.includes('Reliability of repeated trials')).toBe(true);
  await page.keyboard.press('Escape');
  await page.locator('.report').waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
});

test('what it holds is chosen in a form and kept in the book: three trials, one figure', async () => {
  const { page, faults } = watched;
  await runCommand(page, 'Edit report contents');
  const set = page.getByRole('group', { name: 'Trials 1' });
  await set.waitFor();
  expect(await set.getByRole('checkbox', { name: 'First test' }).isChecked()).toBe(true);
  await set.getByRole('checkbox', { name: 'After ten weeks' }).check();
  await page.getByRole('combobox', { name: /Form of the ICC/ }).selectOption('2,k');
  const figures = page.getByRole('group', { name: 'Figures' });
  for (const box of await figures.getByRole('checkbox').all()) await box.uncheck();
  await figures.getByRole('checkbox', { name: 'Lean against ankle range' }).check();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Save and show the report' }).click();
  await page.locator('.report h1').waitFor();
  expect(await page.locator('.report figure').count()).toBe(1);
  const row = page
    .locator('.report table', { hasText: 'Reliability of repeated trials' })
    .locator('tbody tr');
  expect(await row.count()).toBe(1);
  expect(
    await page.locator('.report caption', { hasText: 'of form 2,k with its 95 % interval' }).count(),
  ).toBe(1);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+z');
  await runCommand(page, 'Make the cohort report');
  await expect.poll(() => page.locator('.report figure').count()).toBe(8);
  await page.keyboard.press('Escape');
  expect(faults).toEqual([]);
});

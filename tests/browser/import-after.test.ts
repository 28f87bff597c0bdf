import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { cellOf, runCommand, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { contents, open } from './journeys/journey.ts';
import { savedBook } from './workbook.ts';

const watched = inBrowser({ each: true, viewport: { width: 1880, height: 900 }, first: withoutFileAccess });

async function importRows(page: Page, name: string, text: string): Promise<void> {
  await runCommand(page, 'Import CSV');
  await page.locator('.intake input[type=file]').setInputFiles({
    name,
    mimeType: 'text/csv',
    buffer: Buffer.from(text),
  });
  await page.locator('.intake-counts').waitFor();
}

const shown = async (page: Page, row: number, heading: string): Promise<string> =>
  (await (await cellOf(page, row, heading)).textContent()) ?? '';

describe('a log whose exercise the book does not look for', () => {
  test('offers the exercises found, after the import and in the cell of the setting', async () => {
    const { page } = watched;
    await page.getByRole('button', { name: /^Leverbook/ }).click();
    await page.getByRole('button', { name: /^My training and my build/ }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await contents(page, 'At a glance').waitFor();
    await open(page, 'Training');
    await importRows(
      page,
      'log.csv',
      'Date,Exercise,Sets,Reps,Load (kg)\n2026-03-02,Front squat,3,5,80\n2026-03-04,Front squat,3,5,82.5\n2026-03-06,Pause squat,3,3,70\n',
    );
    await page.locator('.intake-decide button[type=submit]').click();
    const question = page.locator('.intake-question').filter({ hasText: 'main lift' });
    await question.getByRole('button', { name: 'Use Front squat' }).click();
    await question.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });

    await open(page, 'Settings');
    const cell = await cellOf(page, 7, 'Word');
    await expect.poll(() => cell.textContent()).toBe('Front squat');
    expect(await cell.getAttribute('aria-invalid')).toBeNull();
    await cell.click();
    await page.keyboard.press('F2');
    const list = page.getByRole('listbox', { name: 'Choices' });
    await list.waitFor();
    expect(await list.getByRole('option').allTextContents()).toEqual(['Front squat', 'Pause squat']);
    await page.keyboard.press('Escape');
    await list.waitFor({ state: 'detached' });

    // A text that no row has is taken, and said to match nothing.
    await page.keyboard.type('Leg press');
    await page.keyboard.press('Enter');
    await expect.poll(() => cell.textContent()).toBe('Leg press');
    await expect.poll(() => cell.getAttribute('aria-invalid')).toBe('true');
    await cell.click();
    await page.locator('.status-sentence').getByText('no row of Training has that exercise').waitFor();
  });
});

describe('unreadable cells after an import', () => {
  const log = [
    'Day,Exercise,Sets,Reps,Load (kg)',
    ...Array.from({ length: 20 }, (_, i) => `2026-03-${String(i + 1).padStart(2, '0')},Squat,3,5,${90 + i}`),
    '2026-03-21,Squat,3,5,heavy',
    '2026-03-22,Squat,3,5,heavy',
    '2026-03-23,Squat,3,lots,100',
    '2026-03-24,Squat,3,5,?!',
  ].join('\n');

  test('are listed by text and reason; all of a group are read, cleared or left, and each can be reached', async () => {
    const { page } = watched;
    await importRows(page, 'log.csv', log);
    await page.getByLabel('Into', { exact: true }).selectOption('');
    await expect
      .poll(() => page.locator('.intake-decide button[type=submit]').textContent())
      .toBe('Add 24 rows');
    await page.locator('.intake-decide button[type=submit]').click();
    const group = (text: string) => page.locator('.intake-unreadable li').filter({ hasText: text });
    await group('“heavy” in 2 cells').waitFor();
    await page.getByRole('heading', { name: '4 cells unreadable' }).waitFor();
    await group('heavy').getByLabel('Read as, for Load, heavy').fill('110');
    await group('heavy').getByRole('button', { name: 'Apply' }).click();
    await group('heavy').waitFor({ state: 'detached' });
    await group('?!').getByRole('button', { name: 'Clear the cell' }).click();
    await group('?!').waitFor({ state: 'detached' });
    await group('lots').getByRole('button', { name: 'Leave' }).click();
    await page.getByText('One group is left as it came and stays under Checks.').waitFor();
    await page.getByRole('button', { name: 'Show again' }).click();
    await group('lots').getByRole('button', { name: 'Reps, row 23' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.locator('.status-sentence').getByText('"lots"').waitFor();
    expect(await shown(page, 21, 'Load')).toBe('110');
    expect(await shown(page, 24, 'Load')).toBe('');

    // The import history lists what is left.
    await page.locator('.came-from').click();
    await group('lots').waitFor();
  });
});

test('an import of 60,000 rows is undone after a reload, and the book is the same to the byte', async () => {
  const { page } = watched;
  const before = await savedBook(page);
  const days = Array.from({ length: 60_000 }, (_, i) => {
    const day = new Date(Date.UTC(1990, 0, 1 + Math.floor(i / 6))).toISOString().slice(0, 10);
    return `${day},Squat,3,${(i % 6) + 1},${60 + (i % 90)}`;
  });
  await importRows(page, 'log.csv', ['Day,Exercise,Sets,Reps,Load (kg)', ...days].join('\n'));
  await page.getByLabel('Into', { exact: true }).selectOption('');
  const submit = page.locator('.intake-decide button[type=submit]');
  await expect.poll(() => submit.textContent()).toBe('Add 60,000 rows');
  await submit.click();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await expect.poll(() => shown(page, 1, 'Load')).toBe('60');
  await page.getByText('Saved in this browser').waitFor();

  await page.reload();
  await sheetShown(page);
  const undo = page.getByRole('button', { name: /^Undo/ });
  await expect.poll(() => undo.isEnabled()).toBe(true);
  expect(await savedBook(page)).not.toBe(before);
  await undo.click();
  await expect.poll(() => undo.isDisabled()).toBe(true);
  expect(await savedBook(page)).toBe(before);
});

import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { cellOf, runCommand } from './browser.ts';
import { inBrowser } from './in-browser.ts';

const watched = inBrowser({ each: true, viewport: { width: 1280, height: 900 } });

const submitOf = (page: Page): Locator => page.locator('.intake-decide button[type=submit]');

async function choose(page: Page, name: string, text: string): Promise<void> {
  await runCommand(page, 'Import CSV');
  await page.locator('.intake input[type=file]').setInputFiles({
    name,
    mimeType: 'text/csv',
    buffer: Buffer.from(text),
  });
  await page.locator('.intake-counts, .intake-problem').first().waitFor();
}

async function take(page: Page): Promise<void> {
  await submitOf(page).click();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

async function shot(page: Page, name: string): Promise<void> {
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/${name}.png` });
}

const shown = async (page: Page, row: number, heading: string): Promise<string | null> => {
  const cell = await cellOf(page, row, heading);
  await cell.waitFor();
  await expect.poll(() => cell.getAttribute('class')).not.toContain('waiting');
  return cell.textContent();
};

const into = (page: Page) => page.getByLabel('Into', { exact: true }).locator('option:checked').textContent();
const head = 'Lifter name,Stature (cm),Weight today (kg)';
const men = `${head}\nAdam Berg,180,80\nBo Lind,175,75\n`;
const women = `${head}\nAda Holm,168,62\nEva Moe,171,66\nIda Lund,165,60\n`;

describe('two files with the same headings', () => {
  test('go to the sheet on screen; where that is neither, the page asks; rows of another file are replaced only when confirmed', async () => {
    const { page } = watched;
    await choose(page, 'men.csv', men);
    await page.getByLabel('Into', { exact: true }).selectOption('');
    await expect.poll(() => into(page)).toContain('new sheet');
    await take(page);
    await choose(page, 'women.csv', women);
    // The men’s sheet is on screen and wins; a sheet of their own is chosen for the women.
    expect(await into(page)).toBe('men');
    await page.getByLabel('Into', { exact: true }).selectOption('');
    await expect.poll(() => submitOf(page).textContent()).toBe('Add 3 rows');
    await take(page);
    await choose(page, 'women.csv', `${women}Una Berg,170,61\n`);
    expect(await into(page)).toBe('women');
    expect(await submitOf(page).textContent()).toBe('Add 1 row');
    await page.keyboard.press('Escape');
    await page.locator('.intake').waitFor({ state: 'detached' });

    await page.locator('.contents-item').first().click();
    await choose(page, 'next.csv', women);
    const which = page.getByRole('group', { name: 'The file fits several sheets. Which is it for?' });
    await which.waitFor();
    expect(await submitOf(page).isDisabled()).toBe(true);
    await shot(page, 'which-sheet');
    await which.getByRole('button', { name: /^men/ }).click();
    await expect.poll(() => into(page)).toBe('men');
    await page.getByLabel('Rows', { exact: true }).selectOption('replace');
    const replace = page.getByRole('group', { name: 'Replace all 2 rows of men?' });
    await replace.waitFor();
    expect(await replace.textContent()).toContain('men.csv');
    expect(await submitOf(page).isDisabled()).toBe(true);
    await shot(page, 'replace');
    await replace.getByRole('button', { name: 'Replace 2 rows' }).click();
    await expect.poll(() => submitOf(page).textContent()).toBe('Replace 2 rows with 3');
  });

  test('a file that lacks a column its settings need offers a new sheet and other settings', async () => {
    const { page } = watched;
    await choose(page, 'men.csv', men);
    await page.getByLabel('Into', { exact: true }).selectOption('');
    await expect.poll(() => into(page)).toContain('new sheet');
    await take(page);
    await choose(page, 'short.csv', 'Lifter name,Stature (cm)\nX Y,170\nZ W,172\n');
    await page.locator('.intake-problem').waitFor();
    await shot(page, 'stuck');
    await page.getByRole('button', { name: 'Match columns of men by heading' }).click();
    await expect.poll(() => submitOf(page).textContent()).toBe('Add 2 rows');
    await take(page);
    expect(await shown(page, 3, 'Lifter name')).toBe('X Y');
  });
});

describe('a log with units, set numbers and words in its cells', () => {
  test('asks whether a row is a set, takes each row’s unit, and reads all cells of one text alike', async () => {
    const { page } = watched;
    const rows = [
      '2026-03-02,Squat,1,225,lb,5',
      '2026-03-02,Squat,2,100,kg,5',
      '2026-03-02,Squat,3,heavy,kg,3',
      '2026-03-04,Squat,1,heavy,kg,3',
      ...Array.from({ length: 8 }, (_, i) => `2026-03-0${(i % 5) + 4},Squat,${i + 2},${90 + i},kg,5`),
    ];
    await choose(page, 'log.csv', `Day,Exercise,Set,Weight,Unit,Reps\n${rows.join('\n')}\n`);
    const question = page.getByRole('group', { name: 'Is each row one set?' });
    await question.waitFor();
    await shot(page, 'log-asks');
    await question.getByRole('button', { name: /^yes/ }).click();
    await question.waitFor({ state: 'detached' });
    await page.getByText('Unreadable cells: 2').click();
    await page.getByLabel('Read as, for Weight, heavy').fill('110');
    await page.getByLabel('Read as, for Weight, heavy').press('Enter');
    await page.getByText('is read as 110').waitFor();
    await page.locator('.intake').evaluate((e) => e.parentElement!.scrollTo(0, 300));
    await shot(page, 'log-answered');
    expect(await submitOf(page).textContent()).toBe('Add 12 rows');
    await take(page);
    await shot(page, 'log-sheet');
    // 225 lb are 102.058 kg (1 lb = 0.45359237 kg), shown in the unit that most rows have.
    expect(Number(await shown(page, 1, 'Load'))).toBeCloseTo(102.058, 2);
    expect(await shown(page, 2, 'Load')).toBe('100');
    expect(await shown(page, 3, 'Load')).toBe('110');
    expect(await shown(page, 3, 'Sets')).toBe('1');
  });
});

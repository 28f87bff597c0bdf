import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { cellOf, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import {
  active,
  blankBook,
  columnByKeys,
  editorLoaded,
  heading,
  keys,
  opened,
  paste,
  perform,
  rowsShow,
  sampleBook,
  savedBook,
  shown,
} from './workbook.ts';

/** Whole tasks over a table: a messy block comes in, a column is renamed, rows are sorted, shown in part and grouped. */

const watched = inBrowser({
  viewport: { width: 3500, height: 1000 },
  locale: 'de-DE',
  first: withoutFileAccess,
  ready: [sheetShown, editorLoaded],
});
beforeEach(async () => {
  await watched.page.reload();
  await opened(watched.page);
});

test('a messy block is pasted: quotes, line breaks, decimal comma, units, dates; what does not fit is held', async () => {
  const { page, faults } = watched;
  await blankBook(page);
  await columnByKeys(page, 'Femur', { measures: 'length' });
  await columnByKeys(page, 'Tested', { kind: 'Date' });
  await (await cellOf(page, 1, 'Athlete')).click();
  const block = [
    ['"Ona ""the\ttall"" K."', '17 in', '03.04.2025'],
    ['"Piet\r\nsecond line"', '43,5', '2025-04-05'],
    ['Ruta', 'about 44', 'some day'],
    ['=1+1', '445 mm', '6.4.2025'],
  ];
  await paste(page, `${block.map((row) => row.join('\t')).join('\r\n')}\r\n`);
  // 1 in is 2.54 cm exactly (NIST Special Publication 811, 2008, appendix B.8).
  await rowsShow(
    page,
    ['Femur', 'Tested'],
    [
      ['43,18', '3 Apr 2025'],
      ['43,5', '5 Apr 2025'],
      ['about 44', 'some day'],
      ['44,5', '6 Apr 2025'],
    ],
  );
  expect(await shown(page, 1, 'Athlete')).toBe('Ona "the\ttall" K.');
  // What came in is chosen, from where it went in.
  const status = page.locator('.status');
  await expect.poll(() => status.textContent()).toContain('4 × 3 cells selected');
  expect(await active(page)).toBe('2,2');
  expect(await shown(page, 2, 'Athlete')).toMatch(/^Piet\r?\nsecond line$/);
  // A text that looks like a formula stays the text that it is.
  expect(await shown(page, 4, 'Athlete')).toBe('=1+1');
  const held = await cellOf(page, 3, 'Femur');
  expect(await held.getAttribute('aria-invalid')).toBe('true');
  await expect
    .poll(() => page.locator('.notices').textContent())
    .toContain('2 texts do not fit the column and are unreadable.');
  // It is put right where it stands; one undo takes the whole block back.
  await held.click();
  await keys(page, 'F2', 'Home', 'Delete', 'Delete', 'Delete', 'Delete', 'Delete', 'Delete', 'Enter');
  await expect.poll(async () => (await cellOf(page, 3, 'Femur')).getAttribute('aria-invalid')).toBeNull();
  await expect.poll(() => shown(page, 3, 'Femur')).toBe('44');
  await keys(page, 'Control+z', 'Control+z');
  await expect.poll(() => page.locator('.status').textContent()).toContain('0 rows');
  expect(faults).toEqual([]);
});

test('ten thousand cells are pasted: a bar shows meanwhile, all of them land, one undo gives the same file back', async () => {
  const { page, faults } = watched;
  await blankBook(page);
  for (const label of ['Femur', 'Tibia', 'Torso', 'Hip', 'Knee', 'Ankle', 'Load', 'Reps'])
    await columnByKeys(page, label);
  await columnByKeys(page, 'Remark', { kind: 'Text' });
  await (await cellOf(page, 1, 'Athlete')).click();
  const before = await savedBook(page);
  const block = Array.from({ length: 1000 }, (_, row) => [
    `Lifter ${row + 1}`,
    ...Array.from({ length: 8 }, (_, column) => String(row * 8 + column)),
    `set ${row % 7}`,
  ]);
  // The bar may be gone before one that asks now and then has seen it.
  await page.evaluate(() => {
    new MutationObserver(() => {
      if (document.querySelector('.notices progress')) document.body.dataset.sawBar = 'yes';
    }).observe(document.body, { childList: true, subtree: true });
  });
  await paste(page, block.map((row) => row.join('\t')).join('\n'));
  await expect.poll(() => page.locator('.status').textContent()).toMatch(/1.000 rows/);
  await page.locator('.notices progress').waitFor({ state: 'detached' });
  expect(await page.evaluate(() => document.body.dataset.sawBar)).toBe('yes');
  await expect.poll(() => page.locator('.status').textContent()).toContain('1000 × 10 cells selected');
  const [saved] = await Promise.all([page.waitForEvent('download'), perform(page, 'Save this sheet as CSV')]);
  const lines = (await readFile(await saved.path(), 'utf8')).trim().split(/\r?\n/);
  expect(lines.slice(1).map((line) => line.split(/[,;]/))).toEqual(block);
  await keys(page, 'Control+z');
  await expect.poll(() => page.locator('.status').textContent()).toMatch(/^0 rows/);
  expect(await savedBook(page)).toBe(before);
  expect(faults).toEqual([]);
});

test('a large paste is stopped while it is read, and nothing has changed', async () => {
  const { page, faults } = watched;
  await blankBook(page);
  await (await cellOf(page, 1, 'Athlete')).click();
  const before = await savedBook(page);
  await page.evaluate(() => {
    new MutationObserver((_, watching) => {
      const stop = document.querySelector<HTMLElement>('.notice-stop');
      if (!stop) return;
      watching.disconnect();
      stop.click();
    }).observe(document.body, { childList: true, subtree: true });
  });
  await paste(page, Array.from({ length: 90_000 }, (_, row) => `Lifter ${row + 1}`).join('\n'));
  await expect.poll(() => page.locator('.notices').textContent()).toContain('nothing was changed');
  expect(await page.locator('.notices progress').count()).toBe(0);
  expect(await page.locator('.status').textContent()).toContain('0 rows');
  expect(await savedBook(page)).toBe(before);
  // The keys are the sheet's again.
  await page.keyboard.type('Ona');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, 1, 'Athlete')).toBe('Ona');
  await keys(page, 'Control+z');
  expect(faults).toEqual([]);
});

test('a column that three formulas use gets another name: all follow, and the page says how many', async () => {
  const { page, faults } = watched;
  await blankBook(page);
  await columnByKeys(page, 'Femur');
  await columnByKeys(page, 'Tibia');
  await columnByKeys(page, 'Ratio', { formula: 'femur / tibia' });
  await columnByKeys(page, 'Sum', { formula: 'femur + tibia' });
  await columnByKeys(page, 'Longest', { formula: 'MAX(roster.femur)' });
  await (await cellOf(page, 1, 'Femur')).click();
  for (const value of ['42', '45']) {
    await page.keyboard.type(value);
    await keys(page, 'Enter');
  }
  await heading(page, 'Femur').click();
  await keys(page, 'Alt+Enter');
  const dialogue = page.getByRole('dialog');
  await dialogue.getByRole('textbox', { name: /^Name/ }).fill('thigh');
  await keys(page, 'Enter');
  await dialogue.waitFor({ state: 'detached' });
  await expect.poll(() => page.locator('.notices').textContent()).toContain('3 formulas');
  const formula = (label: string) => heading(page, label).locator('.heading-formula').textContent();
  await expect.poll(() => formula('Ratio')).toBe('= thigh / tibia');
  expect(await formula('Sum')).toBe('= thigh + tibia');
  expect(await formula('Longest')).toBe('= MAX(roster.thigh)');
  await expect.poll(() => shown(page, 1, 'Longest')).toBe('45');
  await keys(page, 'Control+z');
  await expect.poll(() => formula('Sum')).toBe('= femur + tibia');
  expect(faults).toEqual([]);
});

/** What a column shows, from the first line of the grid on, summaries left out. */
async function column(page: Page, label: string): Promise<readonly string[]> {
  const index = await heading(page, label).getAttribute('aria-colindex');
  return page.evaluate(
    (at) =>
      [...document.querySelectorAll(`.sheet-grid .ht_master tbody tr td[aria-colindex="${at}"]`)]
        .filter((cell) => !cell.matches('.summary, .new-row'))
        .map((cell) => cell.textContent ?? ''),
    index,
  );
}
const number = (text: string): number => Number(text.replace(',', '.'));

test('rows are sorted, shown in part and grouped with a summary each, and the data stay in their order', async () => {
  const { page, faults } = watched;
  await sampleBook(page);
  await expect.poll(() => page.locator('.status').textContent()).toContain('24 rows');
  await expect.poll(() => shown(page, 24, 'Femur')).toMatch(/^\d/);
  const [femurs, sexes] = [(await column(page, 'Femur')).map(number), await column(page, 'Sex')];
  expect(femurs).toHaveLength(24);
  const file = JSON.parse(await savedBook(page)) as { sheets: unknown };

  await heading(page, 'Femur').click();
  // The blank row at the end is no row yet.
  await expect.poll(() => page.locator('.status').textContent()).toContain('24 × 1 cells selected');
  await (await cellOf(page, 1, 'Femur')).click();
  await keys(page, 'Alt+Shift+d');
  await expect
    .poll(async () => (await column(page, 'Femur')).map(number))
    .toEqual([...femurs].sort((a, b) => b - a));
  // The same cell is chosen still; a second click on it so soon would be a double one.
  await expect.poll(() => page.locator('.scope').textContent()).toContain('femur, whole column');
  await keys(page, 'Alt+Shift+f');
  const dialogue = page.getByRole('dialog');
  await dialogue.getByLabel('Rows where Femur').selectOption('from to');
  await dialogue.getByRole('textbox', { name: 'From' }).fill('40');
  await keys(page, 'Enter');
  await dialogue.waitFor({ state: 'detached' });
  const long = femurs.filter((femur) => femur >= 40);
  await expect
    .poll(async () => (await column(page, 'Femur')).map(number))
    .toEqual([...long].sort((a, b) => b - a));
  expect(await page.locator('.view-strip').textContent()).toContain(`${long.length} of 24 rows`);
  await (await cellOf(page, 1, 'Sex')).click();
  await perform(page, 'Group by Sex');
  // The mean of each group, from the values that were read at the start.
  const mean = (sex: string) => {
    const group = femurs.filter((femur, row) => femur >= 40 && sexes[row] === sex);
    return group.reduce((sum, femur) => sum + femur, 0) / group.length;
  };
  const at = await heading(page, 'Femur').getAttribute('aria-colindex');
  const summaries = async () =>
    (await page.locator(`.sheet-grid .ht_master td.summary[aria-colindex="${at}"]`).allTextContents()).map(
      number,
    );
  await expect.poll(async () => (await summaries()).length).toBe(2);
  const [female, male] = await summaries();
  expect(female).toBeCloseTo(mean('female'), 1);
  expect(male).toBeCloseTo(mean('male'), 1);
  // Only the way of looking was kept with the book.
  expect((JSON.parse(await savedBook(page)) as { sheets: unknown }).sheets).toEqual(file.sheets);
  await perform(page, 'Clear sort, filter and groups');
  await expect.poll(async () => (await column(page, 'Femur')).map(number)).toEqual(femurs);
  expect(faults).toEqual([]);
});

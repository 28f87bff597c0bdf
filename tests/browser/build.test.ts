import type { Locator, Page } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { cellOf, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import {
  blankBook,
  columnByKeys,
  editorLoaded,
  heading,
  headings,
  keys,
  opened,
  perform,
  rowsShow,
  savedBook,
} from './workbook.ts';

/**
 * A monitoring sheet from nothing: who trained when, for how long and how hard. The load of a session is its rated
 * exertion times its minutes (Foster et al. 2001, J Strength Cond Res 15(1):109-115). Names and figures are invented.
 */

const watched = inBrowser({
  viewport: { width: 2280, height: 900 },
  first: withoutFileAccess,
  ready: [sheetShown, editorLoaded],
});
beforeEach(async () => {
  await watched.page.reload();
  await opened(watched.page);
});

const sessions = [
  ['Ona', '60', '7'],
  ['Piet', '45', '6'],
  ['Ruta', '30', '8'],
  ['Ona', '75', '4'],
] as const;
const labels = ['Athlete', 'Minutes', 'Exertion', 'Load'] as const;
/** Worked out by hand. */
const loads = ['420', '270', '240', '300'];
const meanLoad = 307.5;
const table = sessions.map((row, index) => [...row, loads[index]!]);

const footer = async (page: Page) =>
  (await page.locator('.sheet-grid .ht_clone_bottom tbody td').allTextContents()).map(Number);

/** The book that came of it, as its file has it. */
async function check(page: Page): Promise<void> {
  const book = JSON.parse(await savedBook(page)) as {
    sheets: { rows: number; columns: { name: string; formula?: string }[] }[];
  };
  expect(book.sheets).toHaveLength(1);
  expect(book.sheets[0]!.rows).toBe(4);
  expect(book.sheets[0]!.columns.map(({ name, formula }) => [name, formula])).toEqual([
    ['athlete', undefined],
    ['minutes', undefined],
    ['exertion', undefined],
    ['load', 'minutes * exertion'],
  ]);
}

test('by the keyboard alone', async () => {
  const { page, faults } = watched;
  await blankBook(page);
  for (const [name] of sessions) {
    await page.keyboard.type(name);
    await keys(page, 'Enter');
  }
  await columnByKeys(page, 'Minutes');
  for (const [, minutes] of sessions) {
    await page.keyboard.type(minutes);
    await keys(page, 'Enter');
  }
  await columnByKeys(page, 'Exertion');
  for (const [, , exertion] of sessions) {
    await page.keyboard.type(exertion);
    await keys(page, 'Enter');
  }
  await columnByKeys(page, 'Load', { formula: 'minutes * exertion' });
  await headings(page, labels);
  await rowsShow(page, labels, table);
  await perform(page, 'Summary row: mean');
  await expect.poll(() => footer(page)).toContain(meanLoad);
  await check(page);
  expect(faults).toEqual([]);
});

test('with the mouse, the keyboard for words and figures only', async () => {
  const { page, faults } = watched;
  await page.getByRole('button', { name: /Leverbook/ }).click();
  await page.getByRole('button', { name: /^Start blank/ }).click();
  await headings(page, ['Athlete']);
  const menu = async (name: string, item: RegExp) => {
    await page.locator('.menus').getByRole('button', { name, exact: true }).click();
    await page.locator('[role^="menuitem"]').filter({ hasText: item }).click();
  };
  const add = async (label: string) => {
    await menu('Column', /^Add a column after/);
    await page.getByLabel('Label').click();
    await page.keyboard.type(label);
    await page.getByRole('button', { name: 'Add column', exact: true }).click();
  };
  await add('Exertion');
  await add('Minutes');
  await headings(page, ['Athlete', 'Exertion', 'Minutes']);
  // Each value is written into the cell that was clicked; the next click takes it.
  for (const [row, line] of sessions.entries())
    for (const [column, text] of line.entries()) {
      await (await cellOf(page, row + 1, labels[column]!)).dblclick();
      await page.keyboard.type(text);
    }
  await heading(page, 'Minutes').click();
  await add('Load');
  await heading(page, 'Load').dblclick();
  await heading(page, 'Minutes').click();
  await page.keyboard.type(' * ');
  await heading(page, 'Exertion').click();
  await page.getByRole('button', { name: 'Enter the formula' }).click();
  await rowsShow(page, labels, table);
  // A column is pulled by its heading to where it belongs.
  await heading(page, 'Minutes').click();
  await pull(page, heading(page, 'Minutes'), heading(page, 'Exertion'));
  await headings(page, labels);
  await rowsShow(page, labels, table);
  await menu('Sheet', /Summary row: mean/);
  await expect.poll(() => footer(page)).toContain(meanLoad);
  await check(page);

  // The edge of a heading sets its width, the handle of a cell fills, the other button has the commands of a row.
  const before = (await heading(page, 'Load').boundingBox())!;
  await page.mouse.move(before.x + before.width - 2, before.y + 10);
  await page.mouse.down();
  await page.mouse.move(before.x + before.width + 58, before.y + 10, { steps: 5 });
  await page.mouse.up();
  await expect.poll(async () => (await heading(page, 'Load').boundingBox())!.width - before.width).toBe(60);
  await (await cellOf(page, 1, 'Exertion')).click();
  await pull(
    page,
    page.locator('.sheet-grid .wtBorder.corner:visible').first(),
    await cellOf(page, 3, 'Exertion'),
  );
  await rowsShow(
    page,
    ['Exertion', 'Load'],
    [
      ['7', '420'],
      ['7', '315'],
      ['7', '210'],
      ['4', '300'],
    ],
  );
  await page.locator('.ht_clone_inline_start tbody tr[aria-rowindex="2"] th').click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Add a row below' }).click();
  await rowsShow(page, ['Athlete'], [['Ona'], [''], ['Piet']]);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await rowsShow(page, ['Athlete'], [['Ona'], ['Piet']]);
  expect(faults).toEqual([]);
});

async function pull(page: Page, from: Locator, to: Locator): Promise<void> {
  const [a, b] = [(await from.boundingBox())!, (await to.boundingBox())!];
  await page.mouse.move(a.x + a.width / 2, a.y + a.height / 2);
  await page.mouse.down();
  await page.mouse.move(b.x + b.width / 2, b.y + b.height / 2, { steps: 6 });
  await page.mouse.move(b.x + 6, b.y + b.height / 2, { steps: 3 });
  await page.mouse.up();
}

import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { sheetShown } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { editorLoaded, headings, keys } from './workbook.ts';

/** At the rack: a phone, 390 pixels wide, fingers only. The keys are those of the keyboard on its screen. */

const watched = inBrowser({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 2,
  ready: [],
});

test('rows and values, a column with a formula and the figure, by touch', async () => {
  const { page, faults } = watched;
  await sheetShown(page);
  await editorLoaded(page);
  const tap = async (of: Locator) => {
    // Where a finger would find it: in view, and at rest.
    await of.scrollIntoViewIfNeeded();
    const { x, y, width, height } = (await of.boundingBox())!;
    await page.touchscreen.tap(x + width / 2, y + height / 2);
  };
  const cell = (row: number, column: number) =>
    page
      .locator(
        `.sheet-grid :is(.ht_master, .ht_clone_inline_start) tr[aria-rowindex="${row + 1}"] td[aria-colindex="${column + 1}"]:visible`,
      )
      .last();
  const find = async (words: string) => {
    await tap(page.locator('.narrow-bar').getByRole('button', { name: 'Commands' }));
    await page.locator('.finder[open]').waitFor();
    await page.keyboard.type(words);
    await tap(page.getByRole('option').first());
  };
  await tap(page.locator('.head .mark'));
  await tap(page.getByRole('button', { name: /^Start blank/ }));
  await headings(page, ['Athlete']);

  const add = async (label: string, formula?: string) => {
    await find('Add a column after');
    const dialogue = page.getByRole('dialog');
    await tap(dialogue.getByLabel('Label'));
    await page.keyboard.type(label);
    if (formula) {
      await dialogue.getByLabel('Column formula').scrollIntoViewIfNeeded();
      await tap(dialogue.getByLabel('Column formula'));
      await page.keyboard.type(formula);
    }
    await dialogue.getByRole('button', { name: 'Add column' }).scrollIntoViewIfNeeded();
    await tap(dialogue.getByRole('button', { name: 'Add column' }));
    await dialogue.waitFor({ state: 'detached' });
  };
  await add('Femur');
  await add('Tibia');
  await find('Add a row at the end');
  await expect.poll(() => page.locator('.status').textContent()).toContain('1 row,');
  const write = async (row: number, column: number, text: string) => {
    await tap(cell(row, column));
    await tap(cell(row, column));
    await page.locator('.handsontableInputHolder textarea:focus').waitFor();
    await page.keyboard.type(text);
    await keys(page, 'Enter');
    await expect.poll(() => cell(row, column).textContent()).toBe(text);
  };
  await write(1, 1, 'Ona');
  await write(1, 2, '42');
  await write(1, 3, '40');
  await tap(page.locator('.sheet-grid .ht_clone_top thead th[aria-colindex="4"]'));
  await add('Ratio', 'femur / tibia');
  // 42 to 40, by hand.
  await expect.poll(() => cell(1, 4).textContent()).toBe('1.05');

  await tap(page.locator('.narrow-bar').getByRole('button', { name: 'Figure' }));
  await page.getByRole('tabpanel').waitFor();
  await tap(page.locator('.narrow-bar').getByRole('button', { name: 'Figure' }));
  await page.getByRole('tabpanel').waitFor({ state: 'detached' });
  // Every target of a finger is 24 pixels or more in both directions (WCAG 2.2, success criterion 2.5.8).
  const small = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, input, select, [role="tab"]')]
      .filter((one) => one.checkVisibility() && !one.classList.contains('unseen'))
      .map((one) => ({ one, box: one.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
      .map(({ one }) => one.outerHTML.slice(0, 80)),
  );
  expect(small).toEqual([]);
  expect(faults).toEqual([]);
});

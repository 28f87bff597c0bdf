import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { launch, runCommand, sheetShown, type Watched } from './browser.ts';
import { pageAddress } from './in-browser.ts';
import { markByKeyboard, summaryOfLean } from './marking.ts';

/** Every screen, and how to come to it. */
const screens: readonly (readonly [name: string, come: (page: Page) => Promise<unknown>])[] = [
  ['the sheet with the figure', async () => {}],
  ['the working of a cell', (page) => page.keyboard.press('Alt+2')],
  ['the guide', (page) => page.keyboard.press('Alt+3')],
  [
    'a page of the guide',
    async (page) => {
      await page.keyboard.press('Alt+3');
      await page.getByRole('button', { name: /^LEAN\.PARALLEL/ }).click();
    },
  ],
  ['the doubts', (page) => page.keyboard.press('Alt+4')],
  ['the picture', (page) => page.keyboard.press('Alt+5')],
  ['the command finder', (page) => page.keyboard.press('F1')],
  ['all keys', (page) => runCommand(page, 'Show all keys')],
  ['the books', (page) => page.keyboard.press('Alt+b')],
  ['bringing a file in', (page) => runCommand(page, 'Import CSV')],
  ['versions', (page) => runCommand(page, 'Versions')],
  ['a column', (page) => page.keyboard.press('Alt+Enter')],
  ['a new sheet', (page) => runCommand(page, 'Add a sheet')],
  ['a filter', (page) => runCommand(page, 'Filter by')],
  ['find and replace', (page) => page.keyboard.press('Control+f')],
  ['a name', (page) => runCommand(page, 'Name this cell')],
  ['marks being made', markByKeyboard],
  ['a summary', summaryOfLean],
  [
    'marked cells',
    async (page) => {
      await markByKeyboard(page);
      await page.keyboard.press('Enter');
      await page.locator('td.marked').first().waitFor();
    },
  ],
  [
    'an open menu',
    async (page) => {
      const menu = page.locator('.menus').getByRole('button', { name: 'Column', exact: true });
      if (await menu.isVisible()) await menu.click();
    },
  ],
  [
    'a formula being written',
    async (page) => {
      await page.keyboard.press('Shift+F2');
      await page.keyboard.type('LEAN.PARALLEL(femur, nobody');
      await page.locator('.formula-below').waitFor();
      await page.waitForTimeout(200);
    },
  ],
];

/** Screens whose look differs most between light and dark, wide and narrow. */
const telling = screens.filter(([name]) =>
  /figure|working|page of the guide|doubts|finder|books|a column|formula|mark|summary/.test(name),
);

/** Those with the most different colours. */
const coloured = telling.filter(([name]) => /figure|doubts|books|formula|mark/.test(name));

describe.each([
  ['a desk, light', screens, { viewport: { width: 1280, height: 800 }, colorScheme: 'light' }],
  ['a desk, dark', telling, { viewport: { width: 1280, height: 800 }, colorScheme: 'dark' }],
  ['a desk, light, high contrast', coloured, { viewport: { width: 1280, height: 800 }, contrast: 'more' }],
  [
    'a desk, dark, high contrast',
    coloured,
    { viewport: { width: 1280, height: 800 }, colorScheme: 'dark', contrast: 'more' },
  ],
  [
    'a phone, light',
    telling,
    { viewport: { width: 390, height: 844 }, colorScheme: 'light', hasTouch: true },
  ],
] as const)('on %s', (_name, shown, options) => {
  let watched: Watched;
  beforeAll(async () => {
    watched = await launch(pageAddress(), options);
    await sheetShown(watched.page);
  });
  afterAll(() => watched?.close());

  test.each(shown)(
    '%s breaks no rule of WCAG 2.2 AA that can be checked by machine',
    async (_screen, come) => {
      const { page, faults } = watched;
      await page.reload();
      await sheetShown(page);
      await come(page);
      await page.waitForTimeout(100);
      expect(await violations(page, { enhanced: 'contrast' in options })).toEqual([]);
      expect(faults).toEqual([]);
    },
  );
});

import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { beforeAll, beforeEach, expect, test } from 'vitest';
import { cellOf, runCommand, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';

/** Keys pressed while something else has the page: they never reach the sheet behind it. */

const watched = inBrowser({ first: withoutFileAccess });
beforeAll(async () => {
  const { page } = watched;
  // A first change gives the book a journal, and rows that were imported a place where that is shown.
  await (await cellOf(page, 2, 'Athlete')).click();
  await page.keyboard.type('Somebody');
  await page.keyboard.press('Enter');
  await runCommand(page, 'Add a chart');
  await page.getByRole('dialog', { name: 'New chart' }).getByRole('button', { name: 'Create chart' }).click();
  await page.locator('.chart-stage .chart-svg').first().waitFor();
  await page.getByRole('button', { name: 'Back to the sheet' }).click();
  await changes(page).then((count) => expect(count).toBeGreaterThan(0));
});
beforeEach(async () => {
  await (await cellOf(watched.page, 1, 'Athlete')).click();
});

/** How many changes the journals of this browser's books contain. */
const changes = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        const asked = indexedDB.open('leverbook');
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const books = asked.result.transaction('books').objectStore('books').getAll();
          books.onsuccess = () => {
            asked.result.close();
            resolve(books.result.reduce((sum: number, { head }: { head: number }) => sum + head, 0));
          };
        };
      }),
  );

interface View {
  /** As the page's own record of dialogues names it, where it is one. */
  readonly is?: string;
  readonly open: (page: Page) => Promise<unknown>;
  /** What is there once it is open. */
  readonly shows: string;
  /** How it is closed; Escape where nothing is said. */
  readonly close?: (page: Page) => Promise<unknown>;
  /** The sheet can be seen beside it: what is done to its rows by the page's own keys is seen, too. */
  readonly beside?: true;
}

const byCommand = (words: string) => (page: Page) => runCommand(page, words);
const dialogue = (is: string, words: string): View => ({ is, open: byCommand(words), shows: 'dialog[open]' });
const closePanel = (page: Page) => page.locator('.side .close').click();
const panel = (name: string): View => ({
  open: (page) => page.getByRole('tab', { name }).click(),
  shows: '.side [role="tabpanel"]',
  close: closePanel,
  beside: true,
});
const backToSheet = (page: Page) => page.getByRole('button', { name: 'Back to the sheet' }).click();
const closePreview = (page: Page) =>
  page.locator('.handout-tools').getByRole('button', { name: 'Close' }).click();

const views: Readonly<Record<string, View>> = {
  'a chart from the contents': {
    open: (page) =>
      page
        .locator('.contents .contents-item')
        .filter({ has: page.locator('svg') })
        .last()
        .click(),
    shows: '.chart-place .chart-svg',
    close: backToSheet,
  },
  'a new chart': {
    open: async (page) => {
      await runCommand(page, 'Add a chart');
      await page.locator('dialog[open]').getByRole('button', { name: 'Create chart' }).click();
    },
    shows: '.chart-place .chart-svg',
    close: backToSheet,
  },
  'handouts as they print': {
    open: byCommand('Make a handout for this athlete'),
    shows: '.handout h1',
    close: closePreview,
  },
  'the report as it prints': {
    open: byCommand('Make the cohort report'),
    shows: '.handout-view h1',
    close: closePreview,
  },
  'the figure panel': panel('Figure'),
  'the working panel': panel('Working'),
  'the guide panel': panel('Guide'),
  'the panel of checks': panel('Checks'),
  'the command finder': { open: (page) => page.keyboard.press('F1'), shows: '.finder[open]' },
  'a menu of the head': {
    open: (page) => page.locator('.head .menus button').filter({ hasText: 'Edit' }).click(),
    shows: '.head .menu',
    close: (page) => page.locator('.status, .status-line').first().click(),
    beside: true,
  },
  'the menu over a cell': {
    open: async (page) => (await cellOf(page, 3, 'Athlete')).click({ button: 'right' }),
    shows: '.context-menu',
    close: (page) => page.locator('.status, .status-line').first().click(),
    beside: true,
  },
  'all keys': dialogue('keys', 'Show all keys'),
  'a column': { ...dialogue('column', ''), open: (page) => page.keyboard.press('Alt+Enter') },
  'a sheet': dialogue('sheet', 'Change this sheet'),
  'where rows came from': dialogue('imports', 'Import history'),
  'the form of a chart': dialogue('chart', 'Add a chart'),
  'a summary of a column': dialogue('summary', 'Set the summary of'),
  'marks of a column': { ...dialogue('marks', ''), open: (page) => page.keyboard.press('Alt+Shift+M') },
  'a filter': { ...dialogue('filter', ''), open: (page) => page.keyboard.press('Alt+Shift+F') },
  'find and replace': { ...dialogue('find', ''), open: (page) => page.keyboard.press('Control+f') },
  'all books': { ...dialogue('books', ''), open: (page) => page.keyboard.press('Alt+b') },
  'an import': dialogue('import', 'Import CSV, XLSX or ODS'),
  versions: dialogue('versions', 'Versions of this book'),
  'texts of handouts': dialogue('handout rules', 'Edit handout text'),
  'parts of the report': dialogue('report', 'Edit report contents'),
  'the name of a cell': dialogue('name', 'Name this cell'),
  'a question before something is done': {
    ...dialogue('confirm', ''),
    open: async (page) => {
      await (await cellOf(page, 1, 'Athlete')).click();
      await runCommand(page, 'Delete Athlete');
    },
  },
  'rack mode': {
    open: byCommand('Rack mode'),
    shows: '[data-part="rack"]',
    close: (page) => page.locator('[data-part="rack"]').getByRole('button', { name: 'Close' }).click(),
  },
};

test('every dialogue of the page is among those tried here', async () => {
  const source = await readFile('src/app/shell/Dialogues.tsx', 'utf8');
  const all = [...source.matchAll(/case '([^']+)':/g)].map(([, is]) => is!);
  expect(all.length).toBeGreaterThan(10);
  expect(Object.values(views).flatMap(({ is }) => is ?? [])).toEqual(expect.arrayContaining(all));
});

test.each(Object.entries(views))(
  'with %s on show and the focus nowhere, letters, Delete, paste and fill leave the book as it is',
  async (_name, { open, shows, close, beside }) => {
    const { page } = watched;
    await open(page);
    await page.locator(shows).first().waitFor();
    const before = await changes(page);
    const written = ['T', 'Enter', 'Delete', 'Backspace', '=', 'Enter', 'paste'];
    for (const key of [...written, ...(beside ? [] : ['Control+d', 'Control+Enter'])]) {
      await page.evaluate(() => {
        const { activeElement } = document;
        if (activeElement instanceof HTMLElement) activeElement.blur();
      });
      expect(await page.evaluate(() => document.activeElement === document.body)).toBe(true);
      if (key === 'paste')
        await page.evaluate(() => {
          const clipboardData = new DataTransfer();
          clipboardData.setData('text/plain', 'pasted');
          document.body.dispatchEvent(
            new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
          );
        });
      else await page.keyboard.press(key);
      expect(await page.locator('.sheet-grid .handsontableInput:focus').count(), `typing after ${key}`).toBe(
        0,
      );
    }
    if (close) await close(page);
    else await page.keyboard.press('Escape');
    // A change that is meant is the only one.
    await (await cellOf(page, 4, 'Athlete')).click();
    await page.keyboard.type(`Somebody ${before}`);
    await page.keyboard.press('Enter');
    await expect
      .poll(async () => (await cellOf(page, 4, 'Athlete')).textContent())
      .toBe(`Somebody ${before}`);
    await expect.poll(() => changes(page)).toBe(before + 1);
    expect(await (await cellOf(page, 1, 'Athlete')).textContent()).not.toBe('');
    expect(watched.faults).toEqual([]);
  },
);

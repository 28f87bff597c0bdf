import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { cellOf } from './browser.ts';
import { inBrowser } from './in-browser.ts';

/** Keys typed faster than the page answers: what is meant for a dialogue never gets into the sheet behind it. */

let name: string | null;
const watched = inBrowser({
  first: async (context) => {
    // What the page asks its worker is on the way for as long as `slow` says, as from a machine that is busy.
    await context.addInitScript(() => {
      const own = MessagePort.prototype.postMessage;
      MessagePort.prototype.postMessage = function (this: MessagePort, ...told: unknown[]) {
        const post = () => Reflect.apply(own, this, told);
        const { slow } = globalThis as { slow?: number };
        if (slow) setTimeout(post, slow);
        else post();
      };
      const ask = Worker.prototype.postMessage;
      Worker.prototype.postMessage = function (this: Worker, ...told: unknown[]) {
        const post = () => Reflect.apply(ask, this, told);
        const { slow } = globalThis as { slow?: number };
        if (slow) setTimeout(post, slow);
        else post();
      };
    });
  },
});
beforeEach(async () => {
  const cell = await cellOf(watched.page, 1, 'Athlete');
  await cell.click();
  name = await cell.textContent();
  expect(name).not.toBe('');
});
afterEach(async () => {
  await slow(watched.page, 0);
});

const slow = (page: Page, by: number): Promise<void> =>
  page.evaluate((ms) => {
    (globalThis as { slow?: number }).slow = ms;
  }, by);

/** The name that was in the first row is there, and is not being written over. */
async function nameIsThere(page: Page, expected = name): Promise<void> {
  expect(await (await cellOf(page, 1, 'Athlete')).textContent()).toBe(expected);
  expect(await page.locator('.sheet-grid .handsontableInput:focus').count()).toBe(0);
}

const dialogue = (page: Page, named: string | RegExp) => page.getByRole('dialog', { name: named });

test('a command found by its key while a dialogue is being saved runs once that is saved', async () => {
  const { page } = watched;
  await page.keyboard.press('Alt+Enter');
  await dialogue(page, 'Column Athlete').waitFor();
  await dialogue(page, 'Column Athlete').getByLabel('Note').fill('Names are invented.');
  await dialogue(page, 'Column Athlete').getByLabel('Label').focus();
  await slow(page, 400);
  await page.keyboard.press('Enter');
  await page.keyboard.press('F1');
  await page.keyboard.type('Show all keys');
  await page.keyboard.press('Enter');
  await dialogue(page, 'Column Athlete').waitFor({ state: 'detached' });
  await dialogue(page, 'Keys').waitFor();
  await page.keyboard.press('Escape');
  await nameIsThere(page);
});

test('where the dialogue is not closed after all, the key and what was typed after it are dropped', async () => {
  const { page } = watched;
  await page.keyboard.press('Alt+Enter');
  await dialogue(page, 'Column Athlete').waitFor();
  await page.locator('dialog[open] input.formula').fill('1 no name');
  await slow(page, 400);
  await page.keyboard.press('Enter');
  await page.keyboard.press('F1');
  await page.keyboard.type('undo');
  await page.locator('.notice').waitFor();
  // The next key is the dialogue's own again.
  await page.waitForFunction(() => (document.activeElement as HTMLInputElement)?.value === '1 no name');
  await page.keyboard.press('End');
  await expect
    .poll(async () => {
      await page.keyboard.type('x');
      return page.locator('dialog[open] input.formula').inputValue();
    })
    .toMatch(/^1 no namex+$/);
  expect(await page.locator('.finder[open]').count()).toBe(0);
  await page.keyboard.press('Escape');
  await dialogue(page, 'Column Athlete').waitFor({ state: 'detached' });
  await nameIsThere(page);
});

test('letters typed before a dialogue has its content do not reach the sheet', async () => {
  const { page } = watched;
  await slow(page, 400);
  await page.keyboard.press('Alt+Shift+M');
  await page.keyboard.type('Te');
  await dialogue(page, /^Marks on Athlete/).waitFor();
  await nameIsThere(page);
  await page.keyboard.press('Escape');
  await dialogue(page, /^Marks on/).waitFor({ state: 'detached' });
  await nameIsThere(page);
});

test('letters typed after a dialogue has gone are the sheet’s', async () => {
  const { page } = watched;
  await page.keyboard.press('Alt+Enter');
  await dialogue(page, 'Column Athlete').waitFor();
  await page.keyboard.press('Escape');
  await dialogue(page, 'Column Athlete').waitFor({ state: 'detached' });
  await page.waitForFunction(() => document.activeElement?.closest('.sheet-grid'));
  await page.keyboard.type('Somebody else');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await cellOf(page, 1, 'Athlete')).textContent()).toBe('Somebody else');
});

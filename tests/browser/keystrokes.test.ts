import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellOf, sheetShown } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import {
  blankBook,
  editorLoaded,
  inCellText,
  keys,
  lineText,
  rowsShow,
  sampleBook,
  shown,
} from './workbook.ts';

/** Nothing that is typed is lost or goes elsewhere, however slow the page is. */

const row = 2;
const watched = inBrowser({ viewport: { width: 3500, height: 900 }, ready: [sheetShown, editorLoaded] });

/** The ratio that the sample's column shows, the other way round. */
async function tibiaToFemur(page: Page): Promise<string> {
  const [femur, tibia] = [await shown(page, row, 'Femur'), await shown(page, row, 'Tibia')];
  return (Number(tibia) / Number(femur)).toFixed(3);
}

test('keys that come before the formula editor has loaded are kept and go on in it', async () => {
  const { page, faults } = watched;
  let send = () => {};
  const held = new Promise<void>((resolve) => {
    send = resolve;
  });
  await page.route('**/editor-*.js', async (route) => {
    await held;
    await route.continue();
  });
  await page.reload();
  await sheetShown(page);
  const ratio = await cellOf(page, row, 'Femur / tibia');
  await ratio.click();
  await keys(page, 'Shift+F2', 'Control+a');
  await page.keyboard.type('tibia / fem');
  expect(await lineText(page)).toBe('tibia / fem');
  send();
  await editorLoaded(page);
  await page.unroute('**/editor-*.js');
  await page.keyboard.type('ur');
  expect(await lineText(page)).toBe('tibia / femur');
  const wanted = await tibiaToFemur(page);
  await keys(page, 'Escape', 'Shift+F2', 'Control+a');
  await page.keyboard.type('tibia / femur');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, row, 'Femur / tibia')).toBe(wanted);
  await keys(page, 'Control+z');
  expect(faults).toEqual([]);
});

test('a formula typed into a cell before the formula editor has loaded loses no key, and goes on in it', async () => {
  const { page, faults } = watched;
  let send = () => {};
  const held = new Promise<void>((resolve) => {
    send = resolve;
  });
  await page.route('**/editor-*.js', async (route) => {
    await held;
    await route.continue();
  });
  await page.reload();
  await sheetShown(page);
  const before = [await shown(page, row, 'Stature'), await shown(page, row + 1, 'Stature')];
  await (await cellOf(page, row, 'Stature')).click();
  // One formula whole, the next begun; nothing is waited for.
  await page.keyboard.type('=100+61');
  await keys(page, 'Enter');
  await page.keyboard.type('=200-2');
  expect(await inCellText(page)).toBe('=200-2');
  expect(await lineText(page)).toBe('=200-2');
  await keys(page, 'ArrowLeft');
  send();
  await editorLoaded(page);
  await page.unroute('**/editor-*.js');
  await page.locator('.cell-formula-editor .cm-content').waitFor();
  await page.keyboard.type('1');
  expect(await inCellText(page)).toBe('=200-12');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, row, 'Stature')).toBe('161.0');
  await expect.poll(() => shown(page, row + 1, 'Stature')).toBe('188.0');
  await keys(page, 'Control+z', 'Control+z');
  await expect
    .poll(async () => [await shown(page, row, 'Stature'), await shown(page, row + 1, 'Stature')])
    .toEqual(before);
  expect(faults).toEqual([]);
});

test('keys that come before the text of the cell wait for it in their order, in a value and in a formula', async () => {
  const { page, context, faults } = watched;
  await page.reload();
  await sheetShown(page);
  await editorLoaded(page);
  const driver = await context.newCDPSession(page);
  await driver.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const before = await shown(page, row, 'Femur');
  await (await cellOf(page, row, 'Femur')).click();
  await page.keyboard.type('47.25');
  await keys(page, 'Enter', 'ArrowUp', 'F2', 'Backspace', 'Backspace', 'Backspace');
  await page.keyboard.type('.5');
  await keys(page, 'Home', 'Delete');
  await page.keyboard.type('3');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, row, 'Femur')).toBe('37.5');
  // All of it gone, at once.
  await keys(page, 'ArrowUp', 'F2', 'Control+a', 'Delete', 'Enter');
  await expect.poll(() => shown(page, row, 'Femur')).toBe('');
  await keys(page, 'ArrowUp');
  await page.keyboard.type('=40+2');
  await keys(page, 'Enter', 'ArrowUp', 'F2', 'Backspace');
  await page.keyboard.type('15');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, row, 'Femur')).toBe('55.0');
  // Escape before it has come leaves everything as it was.
  await keys(page, 'ArrowUp', 'F2', 'Backspace', 'Escape');
  await page.waitForTimeout(300);
  expect(await shown(page, row, 'Femur')).toBe('55.0');
  await driver.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  for (let step = 0; step < 5; step++) await keys(page, 'Control+z');
  await expect.poll(() => shown(page, row, 'Femur')).toBe(before);
  expect(faults).toEqual([]);
});

test('a command typed while the browser is closing a dialogue runs, and what follows goes into the one it opens', async () => {
  const { page } = watched;
  await page.keyboard.press('F1');
  await page.keyboard.type('Change this sheet');
  await page.keyboard.press('Enter');
  await page.locator('dialog.dialogue').waitFor();
  // Closed by the browser, whose event comes a turn later: the keys below come between the two.
  await page.evaluate(() => {
    (document.querySelector('dialog.dialogue') as HTMLDialogElement).close();
    for (const key of ['F1', ...'Find and replace'])
      (document.activeElement ?? document.body).dispatchEvent(
        new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }),
      );
  });
  await expect.poll(() => page.locator('.finder input').inputValue()).toBe('Find and replace');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').getByLabel('Find', { exact: true }).waitFor();
  await page.keyboard.press('Escape');
});

test('formulas typed one below the other at the end of the sheet make a row each', async () => {
  const { page, faults } = watched;
  await page.reload();
  await sheetShown(page);
  await editorLoaded(page);
  await (await cellOf(page, 1, 'Stature')).click();
  await keys(page, 'Control+ArrowDown');
  for (const formula of ['=100+1', '=100+2', '=100+3']) {
    await page.keyboard.type(formula);
    await keys(page, 'Enter');
  }
  await expect.poll(() => page.locator('.status').textContent()).toContain('27 rows');
  await expect
    .poll(() => Promise.all([25, 26, 27].map((at) => shown(page, at, 'Stature'))))
    .toEqual(['101.0', '102.0', '103.0']);
  await keys(page, 'Control+z', 'Control+z', 'Control+z');
  await expect.poll(() => page.locator('.status').textContent()).toContain('24 rows');
  expect(faults).toEqual([]);
});

test('a row typed at the end shows its text and its number, though its values come before the page knows of it', async () => {
  const { page, context, faults } = watched;
  // The worker's word that a row is there comes late; the texts of its cells do not.
  await context.addInitScript(() => {
    const listen = Worker.prototype.addEventListener;
    Worker.prototype.addEventListener = function (this: Worker, kind: string, heard: EventListener) {
      const late = (event: Event) => {
        const { value } = (event as MessageEvent<{ value?: { outline?: unknown } }>).data;
        if (value?.outline && document.body.dataset.late) setTimeout(() => heard.call(this, event), 500);
        else heard.call(this, event);
      };
      listen.call(this, kind, kind === 'message' ? late : heard);
    } as typeof listen;
  });
  await page.reload();
  await blankBook(page);
  await page.evaluate(() => {
    document.body.dataset.late = 'yes';
  });
  await (await cellOf(page, 1, 'Athlete')).click();
  await page.keyboard.type('Ona');
  await keys(page, 'Enter');
  await expect.poll(() => page.locator('.status').textContent()).toContain('1 row');
  await expect.poll(() => shown(page, 1, 'Athlete')).toBe('Ona');
  const numbers = () =>
    page.locator('.sheet-grid .ht_clone_inline_start tbody th .rowHeader').allTextContents();
  await expect.poll(numbers).toEqual(['1', '+']);
  expect(faults).toEqual([]);
});

test('with frames that come late, what is typed over a chosen text replaces it whole', async () => {
  const { page, faults } = watched;
  await page.reload();
  await sampleBook(page);
  // Frames and short waits come a quarter of a second late, as on a machine that is busy with something else.
  await page.evaluate(() => {
    const frame = window.requestAnimationFrame.bind(window);
    const wait = window.setTimeout.bind(window);
    window.requestAnimationFrame = (work) => {
      wait(() => frame(work), 250);
      return 0;
    };
    window.setTimeout = ((work: () => void, after = 0) =>
      wait(work, after > 0 ? after + 250 : 0)) as typeof window.setTimeout;
  });
  for (const heading of ['Femur', 'Femur / tibia', 'Minimum lean (model)', 'Femur / tibia']) {
    await (await cellOf(page, row, heading)).click();
    await keys(page, 'Shift+F2', 'Control+a');
    await page.keyboard.type('t');
    await page.waitForTimeout(300);
    await page.keyboard.type('ibia / femur');
    expect(await lineText(page)).toBe('tibia / femur');
    await keys(page, 'Escape', 'Escape', 'Escape');
  }
  expect(faults).toEqual([]);
});

test('on a slow processor no key is lost between the sheet and the line, and none goes to the wrong cell', async () => {
  const { page, context, faults } = watched;
  await page.reload();
  await sampleBook(page);
  const driver = await context.newCDPSession(page);
  await driver.send('Emulation.setCPUThrottlingRate', { rate: 6 });
  const before = [await shown(page, row, 'Femur'), await shown(page, row + 1, 'Femur')];
  await (await cellOf(page, row, 'Femur')).click();
  // A formula, a number and a formula, without waiting for anything.
  await page.keyboard.type('=40+1');
  await keys(page, 'Enter');
  await page.keyboard.type('42.5');
  await keys(page, 'Enter');
  await page.keyboard.type('=40+4');
  await keys(page, 'Enter');
  await rowsShow(page, ['Femur'], [[await shown(page, 1, 'Femur')], ['41.0'], ['42.5'], ['44.0']]);
  // A number changed at its end.
  await (await cellOf(page, row + 1, 'Femur')).click();
  await keys(page, 'F2');
  await page.keyboard.type('25');
  await keys(page, 'Enter', 'ArrowUp', 'F2', 'Home');
  await page.keyboard.type('1');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, row + 1, 'Femur')).toBe('142.5');
  await driver.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  await keys(page, 'Control+z', 'Control+z', 'Control+z', 'Control+z', 'Control+z');
  await expect
    .poll(async () => [await shown(page, row, 'Femur'), await shown(page, row + 1, 'Femur')])
    .toEqual(before);
  expect(faults).toEqual([]);
});

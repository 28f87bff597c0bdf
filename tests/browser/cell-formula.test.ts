import type { Locator, Page } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { cellOf, sheetShown } from './browser.ts';
import { inBrowser, pageAddress } from './in-browser.ts';
import {
  active,
  editorLoaded,
  heading,
  inCellText,
  keys,
  lineText,
  placeOf,
  shown,
  sizeShown,
} from './workbook.ts';

/** The formula editor that opens over a cell: the same as the line above the sheet, with the same text. */

const watched = inBrowser({ viewport: { width: 3500, height: 900 } });
beforeEach(async () => {
  const { page, faults } = watched;
  faults.splice(0);
  await page.setViewportSize({ width: 2900, height: 900 });
  await page.reload();
  await sheetShown(page);
  await editorLoaded(page);
});

const number = async (page: Page, row: number, label: string) => Number(await shown(page, row, label));
const middle = async (of: Locator): Promise<readonly [number, number]> => {
  const { x, y, width, height } = (await of.boundingBox())!;
  return [x + width / 2, y + height / 2];
};
/** From the first cell of the sheet to one by arrows alone. */
const walk = async (page: Page, row: number, label: string) => {
  const { index } = await placeOf(page, label);
  await keys(page, 'Control+Home');
  for (let at = 1; at < row; at++) await keys(page, 'ArrowDown');
  for (let at = 2; at < index; at++) await keys(page, 'ArrowRight');
};
/** The column and row of a cell, as `active` says them. */
const cellAt = async (page: Page, row: number, label: string) =>
  `${(await placeOf(page, label)).index},${row + 1}`;
/** What the browser says has the focus: the editor in the cell, the one in the line, or something else. */
const hands = (page: Page) =>
  page.evaluate(() => {
    const { activeElement } = document;
    if (activeElement?.closest('.cell-formula')) return 'cell';
    if (activeElement?.closest('.formula-line')) return 'line';
    return activeElement?.closest('.sheet-grid') ? 'sheet' : 'elsewhere';
  });

test('by keys alone: completion, signature, preview, arrows that point, and Enter goes on below', async () => {
  const { page, faults } = watched;
  await (await cellOf(page, 1, 'Athlete')).click();
  await walk(page, 2, 'Stature');
  const before = await shown(page, 2, 'Stature');
  const [femurAt, tibiaAt, trunkAt] = [
    (await placeOf(page, 'Femur')).letter,
    (await placeOf(page, 'Tibia')).letter,
    (await placeOf(page, 'Trunk')).letter,
  ];
  const range = `=SEG.RATIO(femur, MAX(${tibiaAt}2:${trunkAt}3))`;
  const whole = `${range} * 1`;
  await page.keyboard.type('=SEG.RA');
  const list = page.locator('.cell-formula-editor .cm-tooltip-autocomplete');
  await list.getByText('SEG.RATIO').first().waitFor();
  // The list takes keys only once it has been seen.
  await page.waitForTimeout(150);
  await keys(page, 'Tab');
  expect(await inCellText(page)).toBe('=SEG.RATIO()');
  expect(await lineText(page)).toBe('=SEG.RATIO()');
  await expect.poll(() => page.locator('.cell-formula .signature .here').textContent()).toBe('a');
  // Said once: the line has the text and not the hands.
  expect(await page.locator('.formula-below').count()).toBe(1);
  // One to the right in the same row is the column's name; one further down is an address; and on from there.
  await keys(page, 'ArrowRight');
  expect(await inCellText(page)).toBe('=SEG.RATIO(femur)');
  await keys(page, 'ArrowDown');
  expect(await inCellText(page)).toBe(`=SEG.RATIO(${femurAt}3)`);
  await expect.poll(() => page.locator('.sheet-grid td.pointed').count()).toBe(1);
  await keys(page, 'ArrowUp');
  await page.keyboard.type(', MA');
  // Functions that every spreadsheet has are offered after the domain's own, and explained in the same way.
  await list.getByText('MAXIFS').first().waitFor();
  await page.keyboard.type('X(');
  await expect.poll(() => page.locator('.cell-formula .signature .here').textContent()).toBe('numbers');
  await keys(page, 'ArrowRight', 'ArrowRight', 'Shift+ArrowDown', 'Shift+ArrowRight');
  expect(await inCellText(page)).toBe(range);
  await expect.poll(() => page.locator('.sheet-grid td.pointed').count()).toBe(4);
  // Where no name is missing, an arrow moves the caret.
  await page.keyboard.type(')');
  await keys(page, 'ArrowLeft', 'ArrowRight');
  await page.keyboard.type(') * 1');
  expect(await inCellText(page)).toBe(whole);
  const all = [2, 3].flatMap((row) => ['Tibia', 'Trunk'].map((of) => number(page, row, of)));
  const wanted = (await number(page, 2, 'Femur')) / Math.max(...(await Promise.all(all)));
  const said = async () => Number((await page.locator('.cell-formula .gives strong').textContent()) ?? '');
  await expect.poll(said).toBeCloseTo(wanted, 2);
  await keys(page, 'Enter');
  expect(await inCellText(page)).toBeNull();
  await expect.poll(() => active(page)).toBe(await cellAt(page, 3, 'Stature'));
  await expect.poll(() => number(page, 2, 'Stature')).toBeCloseTo(wanted, 1);

  // F2 has it back, the caret at its end; Escape leaves it as it was, and nothing to undo but the first change.
  await keys(page, 'ArrowUp', 'F2');
  await expect.poll(() => inCellText(page)).toBe(whole);
  await page.keyboard.type(' + 1');
  await keys(page, 'Escape');
  expect(await inCellText(page)).toBeNull();
  expect(await hands(page)).toBe('sheet');
  expect(await number(page, 2, 'Stature')).toBeCloseTo(wanted, 1);
  expect(await lineText(page)).toBe(whole);
  await keys(page, 'Control+z');
  await expect.poll(() => shown(page, 2, 'Stature')).toBe(before);
  await expect.poll(() => page.getByRole('button', { name: /^Undo/ }).first().isDisabled()).toBe(true);
  expect(faults).toEqual([]);
});

test('Tab, Shift+Tab and Shift+Enter take the formula and go where they point; a whole word needs no second Enter', async () => {
  const { page, faults } = watched;
  await (await cellOf(page, 1, 'Athlete')).click();
  await walk(page, 3, 'Stature');
  await page.keyboard.type('=40+1');
  await keys(page, 'Tab');
  await expect.poll(() => active(page)).toBe(await cellAt(page, 3, 'Femur'));
  await page.keyboard.type('=40+2');
  await keys(page, 'Shift+Tab');
  await expect.poll(() => active(page)).toBe(await cellAt(page, 3, 'Stature'));
  await keys(page, 'ArrowDown');
  await page.keyboard.type('=40+3');
  await keys(page, 'Shift+Enter');
  await expect.poll(() => active(page)).toBe(await cellAt(page, 3, 'Stature'));
  await expect.poll(() => number(page, 3, 'Stature')).toBe(41);
  await expect.poll(() => number(page, 3, 'Femur')).toBe(42);
  await expect.poll(() => number(page, 4, 'Stature')).toBe(43);
  await page.keyboard.type('=tibia');
  await page.locator('.cell-formula-editor .cm-tooltip-autocomplete').waitFor();
  await page.waitForTimeout(100);
  await keys(page, 'Enter');
  await expect.poll(() => active(page)).toBe(await cellAt(page, 4, 'Stature'));
  await expect.poll(() => number(page, 3, 'Stature')).toBe(await number(page, 3, 'Tibia'));
  // Opened and left as it is: nothing was done.
  const undo = page.getByRole('button', { name: /^Undo/ }).first();
  const last = await undo.getAttribute('aria-label');
  await keys(page, 'ArrowUp', 'Enter');
  await expect.poll(() => inCellText(page)).toBe('=tibia');
  await keys(page, 'Enter');
  await expect.poll(() => active(page)).toBe(await cellAt(page, 4, 'Stature'));
  expect(await undo.getAttribute('aria-label')).toBe(last);
  await keys(page, 'Control+z', 'Control+z', 'Control+z', 'Control+z');
  await expect.poll(() => undo.isDisabled()).toBe(true);
  expect(faults).toEqual([]);
});

test('Ctrl+Enter puts the formula into all chosen cells, and they stay chosen', async () => {
  const { page, faults } = watched;
  await (await cellOf(page, 2, 'Femur')).click();
  const before = await Promise.all([2, 3, 4].map((row) => shown(page, row, 'Femur')));
  await keys(page, 'Shift+ArrowDown', 'Shift+ArrowDown');
  await page.keyboard.type('=40+2');
  await keys(page, 'Control+Enter');
  const three = () => Promise.all([2, 3, 4].map((row) => shown(page, row, 'Femur')));
  await expect.poll(three).toEqual(['42.0', '42.0', '42.0']);
  expect(await page.locator('.status').textContent()).toContain('24 rows, 30 columns3 × 1 cells selected');
  await keys(page, 'Control+z');
  await expect.poll(three).toEqual(before);
  expect(faults).toEqual([]);
});

test('by mouse: cells pulled over and headings go into the cell, and the text goes on in the line and back', async () => {
  const { page, faults } = watched;
  const stature = await cellOf(page, 3, 'Stature');
  const before = await stature.textContent();
  const range = `${(await placeOf(page, 'Femur')).letter}4:${(await placeOf(page, 'Tibia')).letter}6`;
  await stature.click();
  await page.keyboard.type('=MAX(');
  await page.mouse.move(...(await middle(await cellOf(page, 4, 'Femur'))));
  await page.mouse.down();
  await page.mouse.move(...(await middle(await cellOf(page, 6, 'Tibia'))), { steps: 5 });
  await expect.poll(() => page.locator('.sheet-grid td.pointed').count()).toBe(6);
  await page.mouse.up();
  expect(await inCellText(page)).toBe(`=MAX(${range})`);
  await page.keyboard.type(', ');
  await heading(page, 'Trunk').click();
  expect(await inCellText(page)).toBe(`=MAX(${range}, trunk)`);
  expect(await hands(page)).toBe('cell');

  // A click into the line goes on there, with the same text, and the cell shows what is written.
  await page.locator('.formula-editor').click({ position: { x: 400, y: 14 } });
  await expect.poll(() => hands(page)).toBe('line');
  await keys(page, 'End');
  await page.keyboard.type(' + 1');
  expect(await lineText(page)).toBe(`=MAX(${range}, trunk) + 1`);
  expect(await inCellText(page)).toBe(`=MAX(${range}, trunk) + 1`);
  await page.locator('.cell-formula-editor').click({ position: { x: 14, y: 12 } });
  await expect.poll(() => hands(page)).toBe('cell');
  await keys(page, 'End');
  await page.keyboard.type('0');
  expect(await lineText(page)).toBe(`=MAX(${range}, trunk) + 10`);

  // And by a key: what is chosen is chosen on the other side.
  await keys(page, 'Shift+ArrowLeft', 'F2');
  expect(await hands(page)).toBe('line');
  await page.keyboard.type('2');
  expect(await inCellText(page)).toBe(`=MAX(${range}, trunk) + 12`);
  await keys(page, 'F2');
  expect(await hands(page)).toBe('cell');
  await keys(page, 'Backspace');
  expect(await lineText(page)).toBe(`=MAX(${range}, trunk) + 1`);
  await page.getByRole('button', { name: 'Enter the formula' }).click();
  const cells = [4, 5, 6].flatMap((row) => ['Femur', 'Tibia'].map((of) => number(page, row, of)));
  const most = Math.max(...(await Promise.all([...cells, number(page, 3, 'Trunk')])));
  await expect.poll(() => stature.textContent()).toBe((most + 1).toFixed(1));
  // The keys are the sheet's again.
  await keys(page, 'ArrowDown');
  await expect.poll(() => active(page)).toBe(await cellAt(page, 4, 'Stature'));
  await keys(page, 'Control+z');
  await expect.poll(() => stature.textContent()).toBe(before);
  expect(faults).toEqual([]);
});

test("a column's formula opens in its cell, says that it is every row's, and can be turned into this cell's own", async () => {
  const { page, faults } = watched;
  const ratio = await cellOf(page, 2, 'Femur / tibia');
  const before = await ratio.textContent();
  await ratio.dblclick();
  await expect.poll(() => inCellText(page)).toBe('SEG.RATIO(femur, tibia)');
  expect(await page.locator('.cell-formula .equals').count()).toBe(1);
  await expect
    .poll(() => page.locator('.scope input:checked + span').textContent())
    .toContain('whole column');
  await page
    .locator('.scope')
    .getByText(/^Only /)
    .click();
  await expect.poll(() => inCellText(page)).toBe('=SEG.RATIO(femur, tibia)');
  await page.locator('.cell-formula-editor').click();
  await keys(page, 'End');
  await page.keyboard.type(' + 1');
  await keys(page, 'Enter');
  await expect.poll(() => ratio.textContent()).toBe((Number(before) + 1).toFixed(3));
  expect(await shown(page, 3, 'Femur / tibia')).not.toBe(await ratio.textContent());
  await keys(page, 'Control+z');
  await expect.poll(() => ratio.textContent()).toBe(before);
  expect(faults).toEqual([]);
});

test('what is wrong is underlined where it is and said below, and the page has no fault of access while it is open', async () => {
  const { page, faults } = watched;
  await (await cellOf(page, 2, 'Stature')).click();
  await page.keyboard.type('=femur / tibbia ');
  await expect.poll(() => page.locator('.cell-formula .wrong').textContent()).toContain('tibbia');
  const marked = page.locator('.cell-formula-editor .problem');
  await expect.poll(() => marked.allTextContents()).toEqual(['tibbia']);
  expect(await marked.evaluate((one) => getComputedStyle(one).textDecorationLine)).toBe('underline');
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    expect(await violations(page)).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: 'light' });
  // And with the list of completions and the signature.
  await page.keyboard.type('+ SEG.RATIO(ti');
  await page.locator('.cell-formula-editor .cm-tooltip-autocomplete').waitFor();
  await page.locator('.cell-formula .signature').waitFor();
  expect(await violations(page)).toEqual([]);
  await keys(page, 'Escape', 'Escape');
  expect(await inCellText(page)).toBeNull();
  expect(faults).toEqual([]);
});

test('the editor grows to the right and down with its text, stays inside the window, and follows its cell', async () => {
  const { page, faults } = watched;
  await page.setViewportSize({ width: 1280, height: 700 });
  const box = () => page.locator('.cell-formula-box').boundingBox();
  // With the first columns scrolled away there is room to the right of it.
  await page.mouse.move(600, 400);
  await page.mouse.wheel(450, 0);
  await heading(page, 'Tested').waitFor();
  await (await cellOf(page, 3, 'Tested')).click();
  const at = await cellAt(page, 3, 'Tested');
  await page.keyboard.type('=1');
  const small = (await box())!;
  const cell = (await (await cellOf(page, 3, 'Tested')).boundingBox())!;
  expect(Math.abs(small.x - cell.x)).toBeLessThan(3);
  expect(Math.abs(small.y - cell.y)).toBeLessThan(3);
  await page.keyboard.type(' + 1 + 1 + 1 + 1 + 1 + 1 + 1 + 1');
  await expect.poll(async () => (await box())!.width).toBeGreaterThan(small.width + 60);
  expect((await box())!.height).toBe(small.height);
  await page.keyboard.type(' + 1'.repeat(40));
  await expect.poll(async () => (await box())!.height).toBeGreaterThan(small.height + 40);
  // It goes with its cell, and stays at the edge when that has gone.
  await page.mouse.move(500, 500);
  const { y } = (await box())!;
  await page.mouse.wheel(0, 31);
  await expect.poll(async () => (await box())!.y).toBeLessThan(y - 20);
  await page.mouse.wheel(0, 3000);
  await page.waitForTimeout(200);
  const inside = async () => {
    const { x, y: top, width, height } = (await box())!;
    const room = (await page.locator('.sheet-place').boundingBox())!;
    expect(x).toBeGreaterThanOrEqual(room.x);
    expect(x + width).toBeLessThanOrEqual(room.x + room.width);
    expect(top).toBeGreaterThanOrEqual(room.y);
    expect(top + height).toBeLessThanOrEqual(room.y + room.height);
  };
  await inside();
  await keys(page, 'Escape');
  await expect.poll(() => active(page)).toBe(at);
  // In the last corner of the sheet, the row in which a new one begins included.
  await keys(page, 'Control+End');
  const [rows, columns] = await sizeShown(page);
  await expect.poll(() => active(page)).toBe(`${columns + 1},${rows + 2}`);
  await page.keyboard.type('=');
  await page.keyboard.type('1 + '.repeat(30));
  await expect.poll(async () => (await box())!.height).toBeGreaterThan(40);
  await inside();
  await keys(page, 'Escape');
  expect(faults).toEqual([]);
});

test('another sheet is pointed into from the line, and the formula lands where it was begun', async () => {
  const { page, faults } = watched;
  const stature = await cellOf(page, 2, 'Stature');
  const before = await stature.textContent();
  await stature.click();
  await page.keyboard.type('=1 + ');
  await page.getByRole('button', { name: /^Settings/ }).click();
  await expect.poll(() => page.locator('.sheet-place').getAttribute('aria-label')).toBe('Settings');
  await expect.poll(() => inCellText(page)).toBeNull();
  const value = page.locator('.ht_master tbody tr[aria-rowindex="2"] td[aria-colindex="3"]');
  await expect.poll(() => value.textContent()).not.toBe('');
  await value.click();
  expect(await hands(page)).toBe('line');
  expect(await lineText(page)).toMatch(/^=1 \+ assumptions![A-Z]1$/);
  const wanted = 1 + Number(await value.textContent());
  await keys(page, 'Enter');
  await expect.poll(() => page.locator('.sheet-place').getAttribute('aria-label')).toBe('Roster');
  await expect.poll(async () => Number(await stature.textContent())).toBe(wanted);
  await expect.poll(() => active(page)).toBe(await cellAt(page, 2, 'Stature'));
  await keys(page, 'Control+z');
  await expect.poll(() => stature.textContent()).toBe(before);
  expect(faults).toEqual([]);
});

test('in a narrow window a formula is written in the line, which has the width for it', async () => {
  const { page, faults } = watched;
  // Narrow from its start: what the wide page was loading is not stopped half-way.
  await page.goto('about:blank');
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(pageAddress());
  await sheetShown(page);
  await editorLoaded(page);
  await page.locator('.ht_master tbody tr[aria-rowindex="3"] td[aria-colindex="3"]').click();
  await page.keyboard.type('=40+');
  expect(await inCellText(page)).toBeNull();
  expect(await lineText(page)).toBe('=40+');
  expect(await hands(page)).toBe('line');
  expect(await violations(page)).toEqual([]);
  await keys(page, 'Escape');
  expect(faults).toEqual([]);
});

import type { Locator } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { cellOf, sheetShown } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { active, editorLoaded, heading, keys, lineText, placeOf, shown } from './workbook.ts';

/** While a formula is being written, the mouse puts names into it, and nothing that was written is lost. */

const watched = inBrowser({ viewport: { width: 3500, height: 900 }, ready: [sheetShown, editorLoaded] });
beforeEach(async () => {
  const { page, faults } = watched;
  faults.splice(0);
  await page.reload();
  await sheetShown(page);
  await editorLoaded(page);
});

const middle = async (of: Locator): Promise<readonly [number, number]> => {
  const { x, y, width, height } = (await of.boundingBox())!;
  return [x + width / 2, y + height / 2];
};

test('headings and cells pointed at go into the formula; another one takes the place of the last', async () => {
  const { page, faults } = watched;
  const ratio = await cellOf(page, 2, 'Femur / tibia');
  await ratio.click();
  await keys(page, 'Shift+F2', 'Control+a');
  // The bracket that belongs to it comes by itself.
  await page.keyboard.type('x');
  await keys(page, 'Backspace');
  await page.keyboard.type('(');
  await heading(page, 'Tibia').click();
  // Missed: the next click puts it right.
  await heading(page, 'Femur').click();
  await page.keyboard.type(' + ');
  await (await cellOf(page, 2, 'Trunk')).click();
  await page.keyboard.type(') / ti');
  // A word that is no name yet gives way to the one pointed at.
  await heading(page, 'Tibia').click();
  expect(await lineText(page)).toBe('(femur + trunk) / tibia');
  await keys(page, 'Enter');
  const [femur, trunk, tibia] = await Promise.all(
    ['Femur', 'Trunk', 'Tibia'].map(async (label) => Number(await shown(page, 2, label))),
  );
  await expect.poll(() => ratio.textContent()).toBe(((femur! + trunk!) / tibia!).toFixed(3));
  await keys(page, 'Control+z');
  expect(faults).toEqual([]);
});

test('cells pulled over show themselves and go in as one range, also from another sheet', async () => {
  const { page, faults } = watched;
  const [from, to] = [await placeOf(page, 'Femur'), await placeOf(page, 'Trunk')];
  const range = `MAX(${from.letter}2:${to.letter}4`;
  await (await cellOf(page, 1, 'Stature')).click();
  await page.keyboard.type('=MAX(');
  await page.mouse.move(...(await middle(await cellOf(page, 2, 'Femur'))));
  await page.mouse.down();
  await page.mouse.move(...(await middle(await cellOf(page, 3, 'Tibia'))), { steps: 4 });
  await page.mouse.move(...(await middle(await cellOf(page, 4, 'Trunk'))), { steps: 4 });
  await expect.poll(() => page.locator('.sheet-grid td.pointed').count()).toBeGreaterThanOrEqual(9);
  expect(await lineText(page)).toContain(`=${range}`);
  await page.mouse.up();
  await expect.poll(() => page.locator('.sheet-grid td.pointed').count()).toBe(0);
  await page.keyboard.type(') - ');
  await page.getByRole('button', { name: /^Settings/ }).click();
  await expect.poll(() => page.locator('.sheet-place').getAttribute('aria-label')).toBe('Settings');
  await page.locator('.ht_master tbody tr[aria-rowindex="2"] td[aria-colindex="3"]').click();
  expect((await lineText(page)).split(' - ')).toEqual([
    `=${range})`,
    expect.stringMatching(/^assumptions![A-Z]1$/),
  ]);
  await keys(page, 'Escape');
  expect(faults).toEqual([]);
});

test('a click where no name can stand takes what is written, and then chooses', async () => {
  const { page, faults } = watched;
  const stature = await cellOf(page, 3, 'Stature');
  const before = await stature.textContent();
  await stature.click();
  await page.keyboard.type('=100+71.5');
  await (await cellOf(page, 5, 'Femur')).click();
  await expect.poll(() => stature.textContent()).toBe('171.5');
  await expect.poll(() => active(page)).toBe(`${(await placeOf(page, 'Femur')).index},6`);
  await keys(page, 'Control+z');
  await expect.poll(() => stature.textContent()).toBe(before);

  // A formula that cannot be read is kept as it is, marked, and can be mended or taken back.
  const ratio = await cellOf(page, 2, 'Femur / tibia');
  const shownBefore = await ratio.textContent();
  await ratio.click();
  await keys(page, 'Shift+F2', 'Control+a');
  await page.keyboard.type('femur / )');
  await (await cellOf(page, 5, 'Femur')).click();
  await expect.poll(() => ratio.getAttribute('aria-invalid')).toBe('true');
  await ratio.click();
  await keys(page, 'Shift+F2');
  expect(await lineText(page)).toBe('femur / )');
  await keys(page, 'Escape', 'Control+z');
  await expect.poll(() => ratio.textContent()).toBe(shownBefore);
  expect(faults).toEqual([]);
});

test('a formula begun in the field of a plain value goes on in the formula editor, and is pointed into in the same way', async () => {
  const { page, faults } = watched;
  const stature = await cellOf(page, 2, 'Stature');
  const written = `=2*femur+${(await placeOf(page, 'Tibia')).letter}4`;
  await stature.click();
  // The field in the cell is open already when the sign of a formula comes.
  await keys(page, 'F2', 'Control+a');
  await page.keyboard.type('=2*');
  await heading(page, 'Femur').click();
  expect(await lineText(page)).toBe('=2*femur');
  await page.keyboard.type('+');
  await (await cellOf(page, 4, 'Tibia')).click();
  expect(await lineText(page)).toBe(written);
  await keys(page, 'Enter');
  const wanted = 2 * Number(await shown(page, 2, 'Femur')) + Number(await shown(page, 4, 'Tibia'));
  await expect.poll(() => stature.textContent()).toBe(wanted.toFixed(1));
  // And again by double click, from the formula that is there now.
  await stature.dblclick();
  await expect.poll(() => lineText(page)).toBe(written);
  await page.keyboard.type('/2');
  await keys(page, 'Enter');
  await expect
    .poll(() => stature.textContent())
    .toBe((2 * Number(await shown(page, 2, 'Femur')) + Number(await shown(page, 4, 'Tibia')) / 2).toFixed(1));
  await keys(page, 'Control+z', 'Control+z');
  expect(faults).toEqual([]);
});

test('a text being written in a cell outlives a scroll that takes the cell out of view', async () => {
  const { page, faults } = watched;
  await page.setViewportSize({ width: 2900, height: 420 });
  const name = await cellOf(page, 1, 'Athlete');
  const before = await name.textContent();
  await name.click();
  await page.keyboard.type('Somebody else');
  await page.mouse.move(1200, 300);
  await page.mouse.wheel(0, 3000);
  await page.waitForTimeout(200);
  await keys(page, 'Enter');
  await keys(page, 'Control+Home');
  await expect.poll(() => shown(page, 1, 'Athlete')).toBe('Somebody else');
  await keys(page, 'Control+z');
  await expect.poll(() => shown(page, 1, 'Athlete')).toBe(before);
  await page.setViewportSize({ width: 2900, height: 900 });
  expect(faults).toEqual([]);
});

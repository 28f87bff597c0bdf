import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { beforeEach, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { cellOf, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';

/** Row of the roster that is looked at, from 1. */
const row = 2;
const watched = inBrowser({ each: true, viewport: { width: 3500, height: 1000 }, first: withoutFileAccess });
beforeEach(async () => {
  await (await cellOf(watched.page, row, 'Minimum lean (model)')).click();
});

const tab = (page: Page, name: string) => page.getByRole('tab', { name }).click();
const field = (page: Page, name: string) => page.getByRole('spinbutton', { name });
const tryOut = async (page: Page, name: string, value: string) => {
  await field(page, name).fill(value);
  await field(page, name).press('Enter');
};
const rad = (degrees: number): number => (degrees * Math.PI) / 180;

test('the figure tries set-ups out without touching the data, and a heel lift that is saved stays in the row until undo', async () => {
  const { page } = watched;
  const lift = await cellOf(page, row, 'Heel lift used');
  const before = await lift.textContent();
  await tryOut(page, 'Heel lift, cm', '1.3');
  await expect.poll(() => page.locator('.figure-numbers thead').textContent()).toContain('1.3 cm heel lift');
  expect(await lift.textContent()).toBe(before);

  // The bar stands over mid-foot to half a pixel, and the trunk leans as the closed form says: bar rule with a high bar
  // (1.00 along the trunk, .09 behind it: working assumption), plane geometry of the flat foot.
  await tryOut(page, 'Heel lift, cm', '0');
  const shown = async (heading: string) => Number(await (await cellOf(page, row, heading)).textContent());
  const [femur, tibia, trunk, foot] = [
    await shown('Femur'),
    await shown('Tibia'),
    await shown('Trunk'),
    await shown('Foot'),
  ];
  await tryOut(page, 'Ankle range, degrees', '30');
  const hip = -0.25 * foot! + tibia! * Math.sin(rad(30)) - femur!;
  const reach = trunk! * Math.hypot(1, 0.09);
  const lean = (Math.asin(-hip / reach) + Math.atan2(0.09, 1)) * (180 / Math.PI);
  await expect
    .poll(() => page.locator('.figure-numbers .main-row td').first().textContent())
    .toContain(`${Math.round(lean)}°`);
  const [bar, mid] = await page.evaluate(() => {
    const middle = (selector: string) => {
      const box = document.querySelector(selector)!.getBoundingClientRect();
      return box.left + box.width / 2;
    };
    return [middle('.drawing .bar circle'), middle('.drawing .midfoot path')];
  });
  expect(Math.abs(bar! - mid!)).toBeLessThan(0.5);

  await page.getByRole('button', { name: 'Reset to this row' }).click();
  await tryOut(page, 'Heel lift, cm', '1.3');
  await page.getByRole('button', { name: 'Save this heel lift' }).click();
  await expect.poll(() => lift.textContent()).toBe('1.3');
  await page.keyboard.press('Control+z');
  await expect.poll(() => lift.textContent()).toBe(before);
});

test('the figure says moments where the load is known, is stepped down, and is saved as SVG and PNG', async () => {
  const { page } = watched;
  expect(await page.locator('.drawing .moments').count()).toBe(0);
  await tryOut(page, 'Bar load, kg', '100');
  await page.locator('.drawing .moments').waitFor();
  expect(await page.locator('.drawing').getAttribute('aria-label')).toContain('newton metres');
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Step down' }).click();
  await expect
    .poll(() => page.locator('.drawing').getAttribute('aria-label'))
    .toContain('60 degrees above parallel');
  await page.locator('.descent').getByRole('button', { name: 'Close', exact: true }).click();
  for (const [button, start] of [
    ['Save SVG', '<svg'],
    ['Save PNG', '\u0089PNG'],
  ] as const) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: button }).click(),
    ]);
    const bytes = await readFile(await download.path());
    expect(bytes.toString('latin1').startsWith(start)).toBe(true);
    expect(bytes.length).toBeGreaterThan(4000);
    if (button === 'Save SVG') expect(bytes.toString('utf8')).not.toMatch(/var\(|color\(|light-dark/);
  }
});

test('the lifter is drawn before and after, from a later test in another sheet', async () => {
  const { page } = watched;
  const beside = page.locator('label.slider', { hasText: 'Compare with' }).locator('select');
  const later = beside.locator('optgroup[label="Other tests of this lifter"] option').first();
  await beside.selectOption(await later.getAttribute('value'));
  await page.locator('.drawing .ghost.beside').waitFor();
  expect(await page.locator('.figure-panel').textContent()).toContain('as tested');
  expect(await page.locator('.drawing').getAttribute('aria-label')).toContain('the same lifter');
  expect(await page.locator('.drawing .plate').count()).toBe(1);
  expect(await violations(page)).toEqual([]);
  await beside.selectOption('');
  await expect.poll(() => page.locator('.drawing .ghost.beside').count()).toBe(0);
});

test('who wants less motion steps through the descent and is offered no playing', async () => {
  const { page } = watched;
  expect(await page.getByRole('button', { name: 'Play' }).count()).toBe(1);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.reload();
  await sheetShown(page);
  await page.getByRole('button', { name: 'Step down' }).waitFor();
  expect(await page.getByRole('button', { name: 'Play' }).count()).toBe(0);
});

test('the working tells steps and sources, and jumps to where a value comes from', async () => {
  const { page } = watched;
  await tab(page, 'Working');
  await page.locator('.steps').waitFor();
  expect(await page.locator('.working').textContent()).toContain('Hip ahead of mid-foot');
  await page.getByText(/^Constants \(/).click();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: `Femur, row ${row}` }).click();
  await expect.poll(() => page.locator('.working h3').textContent()).toBe(`Femur, row ${row}`);
  await page.getByRole('button', { name: /^Minimum lean \(model\), row/ }).click();
  await expect.poll(() => page.locator('.working h3').textContent()).toBe(`Minimum lean (model), row ${row}`);
});

test('the guide answers a question, shows the function with the chosen row and puts it into the line', async () => {
  const { page } = watched;
  await tab(page, 'Guide');
  await page.getByRole('searchbox').fill('how much heel');
  await expect.poll(() => page.locator('.guide-item code').first().textContent()).toBe('LIFT.FOR.LEAN');
  await page.locator('.guide-item').first().click();
  const live = page.locator('.guide-live');
  await live.waitFor();
  expect(await live.textContent()).toContain('femur, tibia, trunk, ankle');
  expect(await violations(page)).toEqual([]);
  await live.getByRole('button', { name: 'Insert formula' }).click();
  await expect
    .poll(() => page.locator('[data-part="line"] .cm-content').textContent())
    .toContain('LIFT.FOR.LEAN(');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'All functions' }).click();
  await page.getByRole('searchbox').fill('');
  for (const title of ['Known limits', 'Where sources differ']) {
    await page.getByRole('button', { name: title }).click();
    await page.getByRole('heading', { name: title }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'All functions' }).click();
  }
});

test('a doubt is accepted with a reason, no longer counts, and undo brings it back', async () => {
  const { page } = watched;
  // Where there is no doubt, there is no count: a text without digits is 0.
  const counted = async () =>
    Number((await page.getByRole('tab', { name: /Checks/ }).textContent())!.replace(/\D/g, ''));
  const before = await counted();
  await (await cellOf(page, row, 'Femur')).click();
  await page.keyboard.type('58');
  await page.keyboard.press('Enter');
  await expect.poll(counted).toBeGreaterThan(before);
  const doubted = await counted();
  await tab(page, 'Checks');
  const jump = page.getByRole('button', { name: `Accept: Roster, Femur, row ${row}` });
  await jump.click();
  await page.getByLabel('Reason').fill('measured twice');
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Accept', exact: true }).click();
  await expect.poll(counted).toBe(doubted - 1);
  await page.getByText(/^Accepted \(1\)/).click();
  expect(await page.locator('.doubt-accepted').textContent()).toContain('measured twice');
  await page
    .getByRole('button', { name: `Roster, Femur, row ${row}`, exact: true })
    .first()
    .click();
  await page.keyboard.press('Control+z');
  await expect.poll(counted).toBe(doubted);
});

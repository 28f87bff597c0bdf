import { beforeEach, expect, test } from 'vitest';
import { cellOf, sheetShown } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import {
  active,
  columnByKeys,
  editorLoaded,
  heading,
  keys,
  perform,
  placeOf,
  shown,
  shownHeadings,
} from './workbook.ts';

/** What is chosen and what is shown stay true when a sheet changes its shape. */

const watched = inBrowser({ viewport: { width: 1280, height: 800 }, ready: [sheetShown, editorLoaded] });
beforeEach(async () => {
  const { page, faults } = watched;
  faults.splice(0);
  await page.reload();
  await sheetShown(page);
  await editorLoaded(page);
  await (await cellOf(page, 1, 'Athlete')).click();
});

/** The sheet's count of rows and what is chosen, as the status line says. */
const status = async () => (await watched.page.locator('.status').textContent()) ?? '';
/** Row numbers of the grid that stand on the page, the blank row's sign included. */
const numbers = () => watched.page.locator('.ht_clone_inline_start tbody th').allTextContents();
const scope = () => watched.page.locator('.scope').textContent();

test('when the last rows go, the choice moves to what is left, and undo brings the rows back as they were', async () => {
  const { page, faults } = watched;
  await keys(page, 'Control+End', 'Home', 'ArrowUp');
  await expect.poll(() => active(page)).toBe('2,25');
  await keys(page, 'Shift+ArrowUp', 'Shift+ArrowUp');
  const names = [await shown(page, 22, 'Athlete'), await shown(page, 24, 'Athlete')];
  await perform(page, 'Delete 3 rows');
  await expect.poll(status).toContain('21 rows');
  expect((await numbers()).slice(-2)).toEqual(['21', '+']);
  // What is chosen now is within the sheet, and the line speaks of it.
  await expect
    .poll(status)
    .toMatch(/21 rows, 30 columns(one cell selected|. × 1 cells selected|a new row starts here)/);
  await keys(page, 'ArrowUp');
  await expect.poll(scope).toMatch(/Only A\d+$/);
  await keys(page, 'Control+z');
  await expect.poll(status).toContain('24 rows');
  await keys(page, 'Control+End');
  await expect
    .poll(async () => [await shown(page, 22, 'Athlete'), await shown(page, 24, 'Athlete')])
    .toEqual(names);
  expect(faults).toEqual([]);
});

test('a filter, and taking it off, keep the chosen athlete chosen and show no row that is not there', async () => {
  const { page, faults } = watched;
  await (await cellOf(page, 8, 'Athlete')).click();
  const name = await shown(page, 8, 'Athlete');
  await (await cellOf(page, 8, 'Sex')).click();
  await keys(page, 'Alt+Shift+f');
  const dialogue = page.getByRole('dialog');
  await dialogue.getByRole('checkbox', { name: /^female/ }).check();
  await keys(page, 'Enter');
  await dialogue.waitFor({ state: 'detached' });
  await expect.poll(() => page.locator('.view-strip').textContent()).toContain('Filtered: Sex: female');
  const shownNames = page.locator('.ht_clone_inline_start tbody td');
  const listed = async () => (await shownNames.allTextContents()).filter(Boolean);
  await expect.poll(async () => (await numbers()).includes('1')).toBe(false);
  expect(await listed()).toContain(name);
  await expect.poll(scope).toContain(`Only ${(await placeOf(page, 'Sex')).letter}8`);
  const line = page.locator('.sheet-grid td.current').first();
  await expect.poll(() => line.textContent()).toBe('female');
  // The row itself is taken out while it is chosen.
  await perform(page, 'Delete row');
  await expect.poll(status).toContain('23 rows');
  expect(await listed()).not.toContain(name);
  await keys(page, 'Control+z');
  await expect.poll(status).toContain('24 rows');
  await expect.poll(listed).toContain(name);
  await page.getByRole('button', { name: /^Remove: Filtered: Sex/ }).click();
  await expect.poll(async () => (await numbers()).slice(0, 3)).toEqual(['1', '2', '3']);
  await keys(page, 'Control+z', 'Control+z');
  expect(faults).toEqual([]);
});

test('taking the column away that the rows are filtered by shows all rows again', async () => {
  const { page, faults } = watched;
  await (await cellOf(page, 2, 'Sex')).click();
  await keys(page, 'Alt+Shift+f');
  await page
    .getByRole('dialog')
    .getByRole('checkbox', { name: /^female/ })
    .check();
  await keys(page, 'Enter');
  await expect.poll(async () => (await numbers()).includes('1')).toBe(false);
  await perform(page, 'Delete Sex');
  // Formulas use it: that is said first.
  await page.getByRole('dialog').getByRole('button', { name: 'Delete', exact: true }).click();
  await expect.poll(async () => (await numbers()).slice(0, 2)).toEqual(['1', '2']);
  await expect.poll(() => shown(page, 1, 'Tested')).toMatch(/^\d/);
  await keys(page, 'Control+z', 'Control+z');
  await expect.poll(() => shown(page, 1, 'Sex')).toMatch(/male/);
  expect(faults).toEqual([]);
});

test('columns that are kept in view and columns that are hidden leave the chosen cell chosen, and it is typed into', async () => {
  const { page, faults } = watched;
  // Wide enough to see the columns beside those that are frozen.
  await page.setViewportSize({ width: 2280, height: 800 });
  await sheetShown(page);
  await heading(page, 'Stature').waitFor();
  const frozen = () =>
    page.locator('.sheet-grid .ht_clone_inline_start tbody tr[aria-rowindex="2"] td').allTextContents();
  const all = await shownHeadings(page);
  const upTo = (label: string) => all.slice(0, all.indexOf(label) + 1);
  const first = await Promise.all(upTo('Tested').map((label) => shown(page, 1, label)));
  const [sex, tested] = [await placeOf(page, 'Sex'), await placeOf(page, 'Tested')];
  expect(tested.index).toBe(sex.index + 1);
  const around = async () => (await shownHeadings(page)).slice(0, upTo('Stature').length);
  await (await cellOf(page, 1, 'Tested')).click();
  await perform(page, 'Freeze columns up to Tested');
  await expect.poll(frozen).toEqual(first);
  expect(await active(page)).toBe(`${tested.index},2`);
  await (await cellOf(page, 1, 'Sex')).click();
  await perform(page, 'Hide the selected columns');
  await expect
    .poll(async () => (await shownHeadings(page)).slice(0, upTo('Stature').length - 1))
    .toEqual(upTo('Stature').filter((label) => label !== 'Sex'));
  await perform(page, 'Show the 1 hidden column');
  await expect.poll(around).toEqual(upTo('Stature'));
  await perform(page, 'Unfreeze columns');
  await expect.poll(frozen).toEqual([]);
  await expect.poll(() => heading(page, 'Sex').getAttribute('aria-colindex')).toBe(String(sex.index));
  await (await cellOf(page, 2, 'Sex')).click();
  await perform(page, 'Freeze columns up to Sex');
  await expect.poll(frozen).toEqual(first.slice(0, upTo('Sex').length));
  await page.keyboard.type('f');
  await keys(page, 'Enter');
  await expect.poll(() => active(page)).toBe(`${sex.index},4`);
  expect(await page.locator('.notice.wrong').count()).toBe(0);
  await page.setViewportSize({ width: 1280, height: 800 });
  expect(faults).toEqual([]);
});

test('Home goes to the first column though it is frozen, Ctrl+Home to the first cell, Shift chooses the way', async () => {
  const { page, faults } = watched;
  await keys(page, 'Control+ArrowRight', 'Control+ArrowDown');
  const first = heading(page, (await shownHeadings(page))[1]!);
  await expect.poll(() => active(page)).not.toBe('2,2');
  await keys(page, 'Home');
  await expect.poll(() => active(page)).toBe('2,26');
  // The rest has scrolled back, so that the column beside it is in view.
  await expect.poll(async () => (await first.boundingBox())?.x ?? 0).toBeGreaterThan(300);
  await keys(page, 'Control+Home');
  await expect.poll(() => active(page)).toBe('2,2');
  await keys(page, 'ArrowRight', 'ArrowRight', 'ArrowDown', 'Shift+Home');
  await expect.poll(status).toContain('1 × 3 cells selected');
  await keys(page, 'Control+Shift+Home');
  await expect.poll(status).toContain('2 × 3 cells selected');
  expect(faults).toEqual([]);
});

test('a new column, and a copy of one, is chosen and in view', async () => {
  const { page, faults } = watched;
  await keys(page, 'Control+ArrowRight');
  await columnByKeys(page, 'Second look');
  const made = heading(page, 'Second look');
  await expect.poll(() => page.locator('.scope').textContent()).toContain('second_look, whole column');
  const inView = async () => {
    const box = await made.boundingBox();
    const place = await page.locator('.sheet-grid').boundingBox();
    return box !== null && place !== null && box.x + box.width <= place.x + place.width + 1;
  };
  await expect.poll(inView).toBe(true);
  await expect.poll(() => made.getAttribute('class')).toContain('active');
  // The hands can go on at once.
  await page.keyboard.type('12');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, 1, 'Second look')).toBe('12');
  await perform(page, 'Duplicate the column');
  await expect.poll(() => page.locator('.scope').textContent()).toContain('second_look_2, whole column');
  await keys(page, 'Control+z', 'Control+z', 'Control+z');
  expect(faults).toEqual([]);
});

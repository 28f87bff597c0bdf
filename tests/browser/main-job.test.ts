import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { cellOf, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { editorLoaded } from './workbook.ts';

/** The lifter whose femur is edited: the second of the sample book's roster. */
const row = 2;

/** All cm. */
interface Lengths {
  readonly femur: number;
  readonly tibia: number;
  readonly trunk: number;
  readonly foot: number;
}

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const deg = (radians: number): number => (radians * 180) / Math.PI;

/**
 * Ankle range from knee-to-wall, by plane geometry: the knee's axis stands 5 cm behind its front (working assumption), the
 * ankle a quarter of the foot ahead of the heel (working assumption).
 */
const ankleFromWall = (distance: number, { tibia, foot }: Lengths): number =>
  deg(Math.asin((distance + 0.75 * foot - 5) / tibia));

/**
 * Trunk lean with the thigh level and a high bar (1.00 along the trunk, .09 behind it: working assumption) over mid-foot
 * (common practice, no published source), flat foot, feet straight ahead. Plane geometry, written out anew here: with
 * x_hip = x_knee − femur and the bar at x_hip + T sin β − .09 T cos β = 0.
 */
function leanAtParallel({ femur, tibia, trunk, foot }: Lengths, ankle: number): number {
  const xAnkle = 0.25 * foot;
  const xKnee = xAnkle - 0.5 * foot + tibia * Math.sin(rad(ankle));
  const xHip = xKnee - femur;
  const along = trunk;
  const ahead = -0.09 * trunk;
  return deg(Math.asin(-xHip / Math.hypot(along, ahead)) - Math.atan2(ahead, along));
}

const watched = inBrowser({
  viewport: { width: 3500, height: 900 },
  first: withoutFileAccess,
  ready: [sheetShown, editorLoaded],
});

test('editing a length in the grid changes the lean as plane geometry says, undo takes it back, and a saved book opens again', async () => {
  const { page, faults } = watched;
  await sheetShown(page);
  const name = await (await cellOf(page, row, 'Athlete')).textContent();
  const shown = async (heading: string) => Number(await (await cellOf(page, row, heading)).textContent());
  const before: Lengths = {
    femur: await shown('Femur'),
    tibia: await shown('Tibia'),
    trunk: await shown('Trunk'),
    foot: await shown('Foot'),
  };
  // The stiffer ankle ends the shin's way.
  const ankle = Math.min(
    ankleFromWall(await shown('Knee to wall, left'), before),
    ankleFromWall(await shown('Knee to wall, right'), before),
  );
  const lean = await cellOf(page, row, 'Minimum lean (model)');
  const leanShown = async () => (await lean.textContent())?.trim();
  const wholeDegrees = (lengths: Lengths) => leanAtParallel(lengths, ankle).toFixed(0);
  expect(await leanShown()).toBe(wholeDegrees(before));

  // A femur 3 cm longer, typed over the old one.
  const after = { ...before, femur: before.femur + 3 };
  expect(wholeDegrees(after)).not.toBe(wholeDegrees(before));
  await (await cellOf(page, row, 'Femur')).click();
  await page.keyboard.type(String(after.femur));
  await page.keyboard.press('Enter');
  await expect.poll(leanShown).toBe(wholeDegrees(after));
  // The figure follows too; its words carry the same angle.
  await page.keyboard.press('ArrowUp');
  await expect
    .poll(() => page.locator('.drawing').getAttribute('aria-label'))
    .toContain(`${name}, to scale. On the flat: lean ${wholeDegrees(after)} `);

  // All the figures of the lean, from the sheet saved as CSV.
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  const [csv] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('menuitem', { name: 'Save this sheet as CSV' }).click(),
  ]);
  const table = (await readFile(await csv.path(), 'utf8')).split('\r\n').map((line) => line.split(/,(?! )/));
  const column = table[0]!.findIndex((heading) => heading.startsWith('Minimum lean (model)'));
  expect(Number(table[row]![column])).toBeCloseTo(leanAtParallel(after, ankle), 9);

  await page.keyboard.press('Control+z');
  await expect.poll(leanShown).toBe(wholeDegrees(before));
  await page.keyboard.press('Control+y');
  await expect.poll(leanShown).toBe(wholeDegrees(after));

  const [saved] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
  expect(saved.suggestedFilename()).toMatch(/\.leverbook\.json$/);
  const file = await saved.path();
  // The browser keeps the book by itself; the sample is as it was.
  await page.reload();
  await sheetShown(page);
  const femur = async () => (await cellOf(page, row, 'Femur')).textContent();
  await expect.poll(femur).toBe(after.femur.toFixed(1));
  await page.keyboard.press('Alt+b');
  await page.getByRole('button', { name: /^Squat screening A club/ }).click();
  await expect.poll(femur).toBe(before.femur.toFixed(1));
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Control+o')]);
  await chooser.setFiles({
    name: saved.suggestedFilename(),
    mimeType: 'application/json',
    buffer: await readFile(file),
  });
  await expect
    .poll(async () => (await cellOf(page, row, 'Femur')).textContent())
    .toBe(after.femur.toFixed(1));
  await expect
    .poll(async () => (await (await cellOf(page, row, 'Minimum lean (model)')).textContent())?.trim())
    .toBe(wholeDegrees(after));
  expect(faults).toEqual([]);
});

test('changing the target among the settings recalculates the lift that every lifter needs', async () => {
  const { page, faults } = watched;
  await page.reload();
  await sheetShown(page);
  const lift = await cellOf(page, row, 'Heel lift needed');
  const lean = Number(await (await cellOf(page, row, 'Minimum lean (model)')).textContent());
  const target = page.locator('[data-setting="target_lean"] input');
  await target.fill(String(lean + 5));
  await target.press('Enter');
  // Already below the target: no lift at all.
  await expect.poll(() => lift.textContent()).toBe('none needed');
  await target.fill(String(lean - 4));
  await target.press('Enter');
  await expect.poll(async () => Number(await lift.textContent())).toBeGreaterThan(0);
  expect(faults).toEqual([]);
});

test('a column formula is changed in the line above the sheet, for every row', async () => {
  const { page, faults } = watched;
  await page.reload();
  await sheetShown(page);
  const ratio = await cellOf(page, row, 'Femur / tibia');
  const femur = Number(await (await cellOf(page, row, 'Femur')).textContent());
  const tibia = Number(await (await cellOf(page, row, 'Tibia')).textContent());
  await ratio.click();
  await page.keyboard.press('Shift+F2');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('tibia / femur');
  await expect
    .poll(() => page.locator('.formula-below .gives').textContent())
    .toContain((tibia / femur).toFixed(3));
  await page.keyboard.press('Enter');
  await expect.poll(() => ratio.textContent()).toBe((tibia / femur).toFixed(3));
  // What is wrong is said where it is written, and nothing is lost by Escape.
  await page.keyboard.press('Shift+F2');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('tibia / femoor');
  await expect.poll(() => page.locator('.formula-below .wrong').textContent()).toContain('femoor');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  expect(await ratio.textContent()).toBe((tibia / femur).toFixed(3));
  await page.keyboard.press('Control+z');
  await expect.poll(() => ratio.textContent()).toBe((femur / tibia).toFixed(3));
  expect(faults).toEqual([]);
});

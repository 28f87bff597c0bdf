import { expect, test } from 'vitest';
import { cellOf, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';
import { columnByKeys, editorLoaded, heading, keys, perform, savedBook, shown } from './workbook.ts';

/** Going back and forth: many steps undone and redone, and units that change nothing but what is shown. */

const watched = inBrowser({
  viewport: { width: 3500, height: 1400 },
  first: withoutFileAccess,
  ready: [sheetShown, editorLoaded],
});

test('fifty steps of many kinds are undone and done again, and the book is the same to the byte', async () => {
  const { page, faults } = watched;
  const before = await savedBook(page);
  const undo = page.getByRole('button', { name: /^Undo/ });
  const type = async (row: number, column: string, text: string) => {
    await (await cellOf(page, row, column)).click();
    await page.keyboard.type(text);
    await keys(page, 'Enter');
  };
  let steps = 0;
  for (let round = 0; round < 5; round++) {
    await type(round + 1, 'Femur', String(40 + round));
    await type(round + 2, 'Tibia', `${15 + round} in`);
    await type(round + 3, 'Athlete', `Somebody ${round}`);
    await type(round + 4, 'Trunk', 'not measured');
    await type(round + 5, 'Stature', `=${160 + round}+0.5`);
    await keys(page, 'Control+Enter');
    await (await cellOf(page, round + 1, 'Athlete')).click();
    await keys(page, 'Delete');
    await perform(page, 'Add a row above');
    await (await cellOf(page, round + 2, 'Femur / tibia')).click();
    await keys(page, 'Shift+F2', 'Control+a');
    await page.keyboard.type(`tibia / femur + ${round}`);
    await keys(page, 'Enter');
    await (await cellOf(page, 1, 'Femur')).click();
    await perform(page, round % 2 ? 'Move the column to the left' : 'Move the column to the right');
    steps += 10;
  }
  expect(steps).toBe(50);
  const after = await savedBook(page);
  expect(after).not.toBe(before);
  for (let step = 0; step < 50; step++) await keys(page, 'Control+z');
  await expect.poll(() => undo.isDisabled()).toBe(true);
  expect(await savedBook(page)).toBe(before);
  for (let step = 0; step < 50; step++) await keys(page, 'Control+y');
  await expect.poll(() => page.getByRole('button', { name: /^Redo/ }).isDisabled()).toBe(true);
  expect(await savedBook(page)).toBe(after);
  for (let step = 0; step < 50; step++) await keys(page, 'Control+z');
  await expect.poll(() => undo.isDisabled()).toBe(true);
  expect(faults).toEqual([]);
});

test('lengths in inches, loads in pounds and back: other figures are shown, and nothing has changed', async () => {
  const { page, faults } = watched;
  const unit = async (label: string, to: string) => {
    await heading(page, label).click();
    await keys(page, 'Alt+Enter');
    const dialogue = page.getByRole('dialog');
    await dialogue.getByLabel('Shown and typed in').selectOption(to);
    await keys(page, 'Enter');
    await dialogue.waitFor({ state: 'detached' });
  };
  const femur = Number(await shown(page, 2, 'Femur'));
  const lean = await shown(page, 2, 'Minimum lean (model)');
  const before = await savedBook(page);
  await unit('Femur', 'in');
  // 1 in is 2.54 cm, 1 lb is 0.45359237 kg, both exactly (NIST Special Publication 811, 2008, appendix B.8).
  await expect.poll(() => shown(page, 2, 'Femur')).toBe((femur / 2.54).toFixed(1));
  expect(await shown(page, 2, 'Minimum lean (model)')).toBe(lean);
  expect(await heading(page, 'Femur').locator('.heading-unit').textContent()).toBe('in');
  await unit('Femur', 'cm');
  await expect.poll(() => shown(page, 2, 'Femur')).toBe(femur.toFixed(1));
  expect(await savedBook(page)).toBe(before);

  await heading(page, 'Femur').click();
  await columnByKeys(page, 'Body mass', { measures: 'mass' });
  await page.keyboard.type('80');
  await keys(page, 'Enter');
  await expect.poll(() => shown(page, 1, 'Body mass')).toBe('80');
  const weighed = await savedBook(page);
  await unit('Body mass', 'lb');
  await expect.poll(async () => Number(await shown(page, 1, 'Body mass'))).toBeCloseTo(80 / 0.45359237, 1);
  await unit('Body mass', 'kg');
  await expect.poll(() => shown(page, 1, 'Body mass')).toBe('80');
  expect(await savedBook(page)).toBe(weighed);
  expect(faults).toEqual([]);
});

import type { Page } from 'playwright-core';
import { runCommand } from './browser.ts';

/** Degrees above which the first rule holds: beyond the sample's target, and below its largest leans. */
export const FAR = 37.5;

/** Makes three rules on the lean at parallel of the sample book, by keyboard alone. */
export async function markByKeyboard(page: Page): Promise<void> {
  const { keyboard } = page;
  const tab = async (times: number): Promise<void> => {
    for (let i = 0; i < times; i++) await keyboard.press('Tab');
  };
  await openMarks(page);
  // The first rule is there: its number, then past the mark to the words.
  await tab(1);
  await keyboard.type(String(FAR));
  await tab(2);
  await keyboard.type('far more than aimed at');
  // Past this rule's buttons ("Move up" and "Move down" of an only rule cannot be pressed) to "Add rule".
  await tab(2);
  await keyboard.press('Enter');
  await page.locator('.mark-rule').nth(1).locator('select:focus').first().waitFor();
  await keyboard.type('makes');
  await tab(1);
  await keyboard.type('AND(lean > target_lean + 0.5, lift_needed <> "none needed")');
  await tab(1);
  await keyboard.type('watch');
  await tab(1);
  // Of the last rule "Move up" and "Remove" can be pressed.
  await tab(3);
  await keyboard.press('Enter');
  await page.locator('.mark-rule').nth(2).locator('select:focus').first().waitFor();
  await keyboard.type('is at most');
  await tab(1);
  await keyboard.type('target_lean + 0.5');
  await tab(1);
  await keyboard.type('good');
  // To its words: Enter keeps the marks from there.
  await tab(1);
}

/** Opens the marks of the lean at parallel, once those that the sample book has are taken off. */
export async function openMarks(page: Page): Promise<void> {
  await goToLean(page);
  const opened = async () => {
    await page.keyboard.press('Alt+Shift+M');
    await page.locator('.mark-rule').first().waitFor();
  };
  await opened();
  const off = page.getByRole('button', { name: 'Remove all' });
  if (!(await off.isVisible())) return;
  await off.click();
  await page.locator('.dialogue').waitFor({ state: 'detached' });
  await opened();
}

/** Goes to the lean at parallel of the sample book by keyboard. */
export async function goToLean(page: Page): Promise<void> {
  const { keyboard } = page;
  // From part to part of the page until it is the sheet.
  for (let i = 0; i < 6; i++) {
    await keyboard.press('F6');
    if (await page.evaluate(() => document.activeElement?.closest('[data-part="sheet"]') != null)) break;
  }
  await keyboard.press('Home');
  // The line above the sheet says which column it is.
  const here = page.getByText('lean, whole column', { exact: true });
  for (let i = 0; i < 40 && !(await here.isVisible()); i++) {
    await keyboard.press('ArrowRight');
    await page.waitForTimeout(30);
  }
}

/** Opens the summary of the lean at parallel and writes a formula for it. */
export async function summaryOfLean(page: Page): Promise<void> {
  await goToLean(page);
  await runCommand(page, 'Set the summary of');
  await page.getByRole('dialog', { name: 'Summary of Minimum lean (model)' }).waitFor();
  await page.keyboard.type('a formula');
  await page.keyboard.press('Tab');
  await page.keyboard.type('MEDIAN(lean)');
}

import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import { runCommand, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';

const watched = inBrowser({ viewport: { width: 1280, height: 900 }, first: withoutFileAccess });

test('the parts of a handout are chosen, kept in the book, and taken back by undo', async () => {
  const { page, faults } = watched;
  await runCommand(page, 'Edit handout text');
  const parts = page.getByRole('group', { name: 'Sections' });
  await parts.getByRole('checkbox', { name: 'Figure, flat and lifted' }).uncheck();
  await parts.getByRole('checkbox', { name: 'Next test' }).uncheck();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('dialog').getByRole('button', { name: 'Save', exact: true }).click();
  await runCommand(page, 'Make a handout for this athlete');
  await page.locator('.handout h1').first().waitFor();
  expect(await page.locator('.handout .drawing').count()).toBe(0);
  expect((await page.locator('.handout').allTextContents()).join()).not.toContain('Next test');
  expect(await violations(page)).toEqual([]);
  await page.locator('.handout-tools').getByRole('button', { name: 'Close' }).click();
  await page.locator('.handout').first().waitFor({ state: 'detached' });
  await page.keyboard.press('Control+z');
  await runCommand(page, 'Make a handout for this athlete');
  await expect.poll(() => page.locator('.handout .drawing').count()).toBeGreaterThan(0);
  await page.locator('.handout-tools').getByRole('button', { name: 'Close' }).click();
  await page.locator('.handout').first().waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
});

test('a rule is tried while it is typed: what is wrong with it stands below its formula', async () => {
  const { page, faults } = watched;
  await runCommand(page, 'Edit handout text');
  const formula = page.getByLabel('Formula of sentence 1', { exact: true });
  const below = page.locator('#rule-tried-1');
  await expect.poll(() => below.textContent()).toMatch(/^True in \d+ of 24 rows\.$/);
  await formula.fill('leen > 30');
  await expect.poll(() => below.textContent()).toContain('leen');
  expect(await formula.getAttribute('aria-invalid')).toBe('true');
  expect(await violations(page)).toEqual([]);
  if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/rules.png` });
  await formula.fill('lean');
  await expect.poll(() => below.textContent()).toContain('not true or false');
  // No lean is above 90 degrees: a trunk that leans as far lies level.
  await formula.fill('lean < 90');
  await expect.poll(() => below.textContent()).toBe('True in 24 of 24 rows.');
  expect(await formula.getAttribute('aria-invalid')).toBeNull();
  await page.getByRole('dialog').getByRole('button', { name: 'Cancel' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
});

// ISO 216: A4 is 210 × 297 mm; US Letter is 8.5 × 11 in (ANSI/ASME Y14.1, size A); a point is 1/72 in.
test.each([
  ['A4', (210 / 25.4) * 72, (297 / 25.4) * 72],
  ['Letter', 8.5 * 72, 11 * 72],
])(
  'all athletes print on one page each, and an observed squat on another, on %s',
  async (paper, width, height) => {
    const { page, faults } = watched;
    await runCommand(page, 'Make handouts for all athletes');
    await page.getByRole('combobox', { name: 'Paper' }).selectOption({ label: paper });
    // The style sheet of the paper is put in after the next frame.
    await page.waitForTimeout(400);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(await page.locator('.handout').count());
    const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!;
    expect(Math.abs(Number(box[1]) - width)).toBeLessThan(1);
    expect(Math.abs(Number(box[2]) - height)).toBeLessThan(1);
    await page.locator('.handout-tools').getByRole('button', { name: 'Close' }).click();
    await page.locator('.handout').first().waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  },
);

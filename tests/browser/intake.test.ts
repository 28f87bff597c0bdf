import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { cellOf, launch, runCommand, sheetShown } from './browser.ts';
import { inBrowser, pageAddress } from './in-browser.ts';

/** Rules of WCAG 2.0 to 2.2, levels A and AA, as axe-core checks them (W3C Recommendation 2023-10-05). */
const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  const results = await page.evaluate(
    (tags) =>
      (window as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run({
        runOnly: { type: 'tag', values: tags },
      }),
    levels,
  );
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${help} at ${target.join(' ')} (${failureSummary})`),
  );
}

const watched = inBrowser({ each: true, viewport: { width: 2500, height: 1000 } });

const dialogueOf = (page: Page): Locator => page.getByRole('dialog');
const submitOf = (page: Page): Locator => page.locator('.intake-decide button[type=submit]');
const counts = (page: Page): Promise<string | null> => page.locator('.intake-counts').textContent();

/** Chooses a file in the dialogue for bringing files in. */
async function choose(page: Page, name: string, text: string | Uint8Array): Promise<void> {
  await runCommand(page, 'Import CSV');
  await page.locator('.intake input[type=file]').setInputFiles({
    name,
    mimeType: 'text/csv',
    buffer: Buffer.from(text),
  });
  await page.locator('.intake-counts').waitFor();
}

/** Brings in what was looked at, and leaves the report. */
async function take(page: Page): Promise<void> {
  await submitOf(page).click();
  await page.getByRole('button', { name: 'Done' }).click();
  await dialogueOf(page).waitFor({ state: 'detached' });
}

const shown = async (page: Page, row: number, heading: string): Promise<string | null> => {
  const cell = await cellOf(page, row, heading);
  await cell.waitFor();
  await expect.poll(() => cell.getAttribute('class')).not.toContain('waiting');
  return cell.textContent();
};

/** As a spreadsheet of a country with decimal commas writes it: semicolons, day first, a title line, a total. */
const bars = [
  'Training log; Tuesday group',
  'Name;Session date;Thigh (mm);Load (kg);Note',
  'Åsa Berg;25.03.2026;415,5;102,5;',
  'Tomás Ruiz;26.03.2026;438,0;85,0;"slow; but clean"',
  'Ilse Vonk;27.03.2026;402,25;97,5;',
  '',
].join('\r\n');

describe('a file on its way in', () => {
  test('with semicolons, decimal commas and dates day first comes in with the values it means, and undo takes it back', async () => {
    const { page } = watched;
    const before = await page.locator('.contents-item').count();
    // ISO-8859-1, as such files often are: one byte a letter.
    await choose(page, 'tuesday.csv', Buffer.from(bars, 'latin1'));
    expect(await counts(page)).toContain('3 of 3 rows to import (3 new)');
    await take(page);
    // By hand: 415,5 mm is shown in the unit it came in; the second date is the 26th of March.
    expect(await shown(page, 1, 'Name')).toBe('Åsa Berg');
    expect(await shown(page, 1, 'Thigh')).toBe('415.5');
    expect(await shown(page, 3, 'Thigh')).toBe('402.25');
    expect(await shown(page, 1, 'Load')).toBe('102.5');
    expect(await shown(page, 2, 'Session date')).toBe('26 Mar 2026');
    expect(await shown(page, 2, 'Note')).toBe('slow; but clean');
    expect(await page.locator('.came-from').textContent()).toContain('tuesday.csv');
    await page.locator('.sheet-grid').click({ position: { x: 300, y: 300 } });
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.locator('.contents-item').count()).toBe(before);
  });

  test('asks in which order its dates are written when every one of them could be either', async () => {
    const { page } = watched;
    await choose(page, 'dates.csv', 'Lifter,Day,Load (kg)\nA,03/04/2026,100\nB,05/06/2026,90\n');
    const question = page.getByRole('group', { name: 'In which order are the dates written?' });
    await question.waitFor();
    expect(await submitOf(page).isDisabled()).toBe(true);
    await question.getByRole('button', { name: /^month, day, year/ }).click();
    await question.waitFor({ state: 'detached' });
    await take(page);
    // 03/04/2026 with the month first is the 4th of March, which the page writes 4 Mar 2026.
    expect(await shown(page, 1, 'Day')).toBe('4 Mar 2026');
    expect(await shown(page, 2, 'Day')).toBe('6 May 2026');
  });

  test('shows a cell and a row that do not fit, says why, and imports the row once it is fixed', async () => {
    const { page } = watched;
    const rows = Array.from({ length: 8 }, (_, i) => `Lifter ${i},${80 + i},5`);
    rows[3] = 'Lifter 3,heavy,5';
    rows[6] = 'Lifter 6,86,5,what is this';
    await choose(page, 'held.csv', ['Lifter,Load (kg),Reps', ...rows, ''].join('\n'));
    expect(await counts(page)).toContain(
      '7 of 8 rows to import (7 new); 1 row not imported; 1 cell unreadable',
    );
    expect(await page.locator('.intake-verdict').textContent()).toBe(
      '7 of 8 rows, 1 row to fix, 1 cell to fix',
    );
    expect(await page.locator('.intake-part[open]').count()).toBe(0);
    expect(await page.locator('.intake-table td.held').first().textContent()).toContain('heavy');
    await submitOf(page).click();
    await page.getByRole('button', { name: 'Load, row 4' }).waitFor();
    await page.getByRole('button', { name: 'Fix them' }).click();
    const row = page.getByLabel('Row of line 8');
    expect(await row.inputValue()).toBe('Lifter 6,86,5,what is this');
    await row.fill('Lifter 6,86,5');
    await page.getByRole('button', { name: 'Import 1 fixed' }).click();
    await expect.poll(() => counts2(page)).toContain('8 of 8 rows imported (8 new)');
    await page.locator('.decide').getByRole('button', { name: 'Close' }).click();
    expect(await shown(page, 4, 'Load')).toContain('heavy');
    expect(await shown(page, 8, 'Lifter')).toBe('Lifter 6');
    expect(await shown(page, 8, 'Load')).toBe('86');
  });

  const counts2 = (page: Page) => page.locator('.intake-import p').first().textContent();

  test('is recognised the next week, and only its new rows are added', async () => {
    const { page } = watched;
    const week = ['Lifter,Day,Load (kg)', 'A,2026-03-02,100', 'B,2026-03-02,90', 'C,2026-03-03,80'];
    await choose(page, 'week-1.csv', `${week.join('\n')}\n`);
    await take(page);
    // Another sheet is on show; the file finds its own.
    await page.locator('.contents-item').first().click();
    expect(await shown(page, 1, 'Athlete')).toBe('Bram Oduya');
    await choose(page, 'week-2.csv', `${[...week, 'A,2026-03-09,102.5', 'D,2026-03-10,70'].join('\n')}\n`);
    await page.getByText('Read like the file before it').waitFor();
    expect(await counts(page)).toContain('5 of 5 rows to import (2 new, 3 already there)');
    await take(page);
    expect(await page.locator('.status').textContent()).toContain('5 rows');
    expect(await shown(page, 4, 'Load')).toBe('102.5');
    expect(await shown(page, 5, 'Lifter')).toBe('D');
    // By key, what changes is shown before it is written.
    await choose(page, 'week-2.csv', `${week[0]}\nD,2026-03-10,72.5\n`);
    await page.getByLabel('Rows', { exact: true }).selectOption('update');
    await page.getByRole('region', { name: 'What would change' }).waitFor();
    expect(await page.getByRole('region', { name: 'What would change' }).textContent()).toContain('72.5');
    expect(await counts(page)).toContain('1 updated');
    await take(page);
    expect(await shown(page, 5, 'Load')).toBe('72.5');
  });

  test('asks who is meant by names that the roster spells otherwise, and adds the ones it lacks', async () => {
    const { page } = watched;
    const roster = await page.locator('.contents-item').first().textContent();
    const log = ['Athlete,Load (kg)', 'Bram Oduya,100', 'Carla Nise,80', 'Edda Pires,70', 'Nobody Known,60'];
    await choose(page, 'sets.csv', `${log.join('\n')}\n`);
    await page.getByText('Nobody Known').first().waitFor();
    await page.getByRole('button', { name: 'Same as Carla Nisse' }).click();
    await page.getByText('you said so').waitFor();
    await page.getByRole('button', { name: /^Add to/ }).click();
    await page.getByText(/is added to/).waitFor();
    await take(page);
    expect(await shown(page, 2, 'Athlete')).toBe('Carla Nisse');
    await page.locator('.contents-item').first().click();
    const rows = (text: string | null) => Number(/\d+$/.exec(text ?? '')?.[0]);
    await expect
      .poll(async () => rows(await page.locator('.contents-item').first().textContent()))
      .toBe(rows(roster) + 1);
  });

  test('shows at once what another unit, another mark and another column make of it', async () => {
    const { page } = watched;
    await choose(
      page,
      'units.csv',
      'Athlete,Femur,Tibia (cm)\nBram Oduya,"0,415",40\nCarla Nisse,"0,438",41\n',
    );
    await page.getByText('Columns: 3').click();
    await page.getByText('First rows, as they would appear').click();
    const first = page.getByRole('region', { name: 'First rows' });
    // Headings of the roster on show: the file goes there unless somebody says otherwise.
    expect(await page.getByLabel('Into', { exact: true }).locator('option:checked').textContent()).toBe(
      'Roster',
    );
    await page.getByLabel('Unit of Femur').selectOption('m');
    // 0.415 m is 41.5 cm.
    await expect.poll(() => first.textContent()).toContain('41.5');
    await page.getByLabel('Into', { exact: true }).selectOption({ index: 0 });
    await page.getByLabel('Where Tibia (cm) goes').selectOption('left out');
    await expect.poll(() => first.textContent()).not.toContain('Tibia');
    await page.getByText('How the file is read').click();
    await page.getByLabel('Cells are split at').selectOption(';');
    await expect.poll(() => first.locator('thead th').count()).toBe(2);
  });

  test('opens how the file is read where many of its cells are unreadable', async () => {
    const { page } = watched;
    const rows = Array.from({ length: 10 }, (_, i) => `Lifter ${i},${i % 2 ? 'heavy' : 80 + i}`);
    await choose(page, 'many.csv', ['Lifter,Load (kg)', ...rows, ''].join('\n'));
    expect(await page.locator('.intake-verdict').textContent()).toBe('10 of 10 rows, 5 cells to fix');
    await page.getByLabel('Header rows').waitFor();
  });

  test('can be left while it is read: nothing is written, and the page goes on', async () => {
    const { page } = watched;
    const before = await page.locator('.contents-item').count();
    await page.evaluate(() => {
      const lines = Array.from(
        { length: 400_000 },
        (_, i) => `Athlete ${i % 500},${60 + (i % 120)}.5,${i % 9}\n`,
      );
      const data = new DataTransfer();
      data.items.add(new File(['Athlete,Load (kg),Reps\n', ...lines], 'long.csv', { type: 'text/csv' }));
      document.body.dispatchEvent(
        new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }),
      );
    });
    await page.locator('.intake-status progress').waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.locator('.intake').waitFor({ state: 'detached' });
    expect(await page.locator('.contents-item').count()).toBe(before);
    // The worker is free: it reads and writes another file.
    await choose(page, 'short.csv', 'Athlete,Load (kg)\nA,100\n');
    await take(page);
    expect(await shown(page, 1, 'Load')).toBe('100');
  });

  test('never becomes markup, whatever its headings and cells hold', async () => {
    const { page } = watched;
    const nasty = '<img src=x onerror="window.hit=1">';
    const quoted = `"${nasty.replaceAll('"', '""')}"`;
    await choose(page, `${'<b>'}name.csv`, `${quoted},Load\n${quoted},100\n=HYPERLINK("x"),90\n`);
    expect(await dialogueOf(page).locator('img, b').count()).toBe(0);
    expect(await dialogueOf(page).textContent()).toContain('<img src=x');
    await take(page);
    await sheetShown(page);
    expect(await page.locator('.sheet-grid img').count()).toBe(0);
    expect(await page.evaluate(() => 'hit' in window)).toBe(false);
  });

  test('can be dropped on the page, several one after the other', async () => {
    const { page } = watched;
    await page.evaluate(() => {
      const data = new DataTransfer();
      data.items.add(new File(['Lifter,Load (kg)\nA,100\n'], 'one.csv', { type: 'text/csv' }));
      data.items.add(new File(['Item,Height (cm)\nB,2\n'], 'two.csv', { type: 'text/csv' }));
      document.body.dispatchEvent(
        new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }),
      );
    });
    await page.locator('.intake-counts').waitFor();
    await submitOf(page).click();
    await page.getByRole('button', { name: 'Continue with two.csv' }).click();
    await page.getByRole('heading', { name: 'Import two.csv' }).waitFor();
    await page.locator('.intake-counts').waitFor();
    await take(page);
    expect(await page.locator('.came-from').textContent()).toContain('two.csv');
  });

  test('goes the whole way by keyboard, and breaks no rule of WCAG 2.2 AA that can be checked by machine', async () => {
    const { page } = watched;
    await runCommand(page, 'Import CSV');
    await page.locator('.intake textarea').waitFor();
    expect(await violations(page)).toEqual([]);
    // From the file field to the pasted rows.
    await page.keyboard.press('Tab');
    await page.keyboard.insertText(
      'Lifter;Day;Load (kg)\nA;03/04/2026;100,5\nB;05/06/2026;heavy\nC;07/08/2026;90,5\n',
    );
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.locator('.intake-question').waitFor();
    expect(await violations(page)).toEqual([]);
    await tabTo(page, /^day, month, year/);
    await page.keyboard.press('Enter');
    await page.locator('.intake-question').waitFor({ state: 'detached' });
    await tabTo(page, /^Add 3 rows/);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Done' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await tabTo(page, /^Done/);
    await page.keyboard.press('Enter');
    expect(await shown(page, 1, 'Load')).toBe('100.5');
    expect(await shown(page, 1, 'Day')).toBe('3 Apr 2026');
    await runCommand(page, 'Import history');
    await page.locator('.intake-import').waitFor();
    expect(await violations(page)).toEqual([]);
  });
});

describe.each([
  ['in the dark', { viewport: { width: 1280, height: 800 }, colorScheme: 'dark' }],
  ['on a phone', { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
] as const)('a file looked at %s', (_where, options) => {
  test('breaks no rule of WCAG 2.2 AA that can be checked by machine, and fits the width', async () => {
    const { page, close } = await launch(pageAddress(), options);
    await sheetShown(page);
    const text = 'Athlete;Day;Load (kg)\nBram Oduya;03/04/2026;100,5\nCarla Nise;05/06/2026;heavy\nX;1;2;3\n';
    await page.evaluate((rows) => {
      const data = new DataTransfer();
      data.items.add(new File([rows], 'log.csv', { type: 'text/csv' }));
      document.body.dispatchEvent(
        new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }),
      );
    }, text);
    await page.locator('.intake-question').waitFor();
    expect(await violations(page)).toEqual([]);
    const wide = await page
      .locator('.dialogue:has(.intake)')
      .evaluate((dialogue) => dialogue.scrollWidth - dialogue.clientWidth);
    expect(wide).toBeLessThanOrEqual(0);
    await close();
  });
});

/** Goes on by the Tab key until what has the focus is called so. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab');
    const text = await page.evaluate(() => document.activeElement?.textContent ?? '');
    if (name.test(text)) return;
  }
  throw new Error(`Tab never came to ${name}`);
}

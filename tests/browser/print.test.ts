import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { cellOf, launch, runCommand, sheetShown, type Watched } from './browser.ts';
import { pageAddress } from './in-browser.ts';

let watched: Watched;
afterEach(() => watched?.close());

/** The page with its dialogue of printing left out: what would be printed stands there until a PDF is made of it. */
async function printing(): Promise<Page> {
  watched = await launch(pageAddress(), {}, async (context) => {
    await context.addInitScript(() => {
      window.print = () => undefined;
    });
  });
  await sheetShown(watched.page);
  return watched.page;
}

/** Size of each page of a PDF in points (ISO 32000-1, 7.7.3.3: MediaBox). */
const pagesOf = (pdf: Buffer): [width: number, height: number][] =>
  [...pdf.toString('latin1').matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/g)].map(
    ([, w, h]) => [Math.round(Number(w)), Math.round(Number(h))],
  );

test('a wide sheet is printed on the long side in parts: no column lost, the first on every part, notes and cautions after', async () => {
  const page = await printing();
  const rows = await page.evaluate(() => document.querySelectorAll('.sheet-grid .ht_master tbody tr').length);
  expect(rows).toBeGreaterThan(5);
  await page.keyboard.press('Control+p');
  await page.locator('.print-notes').waitFor({ state: 'attached' });
  const tables = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLTableElement>('.print-sheet table')].map((table) => ({
      title: table.tHead!.rows[0]!.textContent!,
      head: [...table.tHead!.rows[1]!.cells].map((cell) => cell.textContent!),
      first: [...table.tBodies[0]!.rows].map((row) => row.cells[0]!.textContent!),
      rows: table.tBodies[0]!.rows.length,
    })),
  );
  expect(tables.length).toBeGreaterThan(1);
  for (const [i, { title, head, first, rows }] of tables.entries()) {
    expect(title).toContain('Squat screening, Quernhallow Barbell Circle: Roster');
    expect(title).toContain(`part ${i + 1} of ${tables.length}`);
    expect(title).toContain(String(new Date().getFullYear()));
    expect(head[0]).toBe('Athlete');
    expect(first[0]).toBe('Bram Oduya');
    expect(rows).toBe(24);
  }
  const printed = tables.flatMap(({ head }, i) => (i === 0 ? head : head.slice(1)));
  expect(new Set(printed).size).toBe(printed.length);
  expect(printed).toEqual(expect.arrayContaining(['Femur cm', 'Minimum lean (model) °', 'Depth limited by']));
  const notes = await page.locator('.print-notes').textContent();
  expect(notes).toContain('= LEAN.PARALLEL(femur, tibia, trunk, ankle, 0, placement, foot)');
  expect(notes).toContain('not for diagnosis');
  expect(notes).toContain('stop and see a licensed clinician');

  // A4 is 595 × 842 points, here on its long side.
  const pages = pagesOf(await page.pdf({ format: 'A4', printBackground: false }));
  expect(pages.length).toBeGreaterThanOrEqual(tables.length);
  for (const [width, height] of pages) expect(width).toBeGreaterThan(height);
  // When it is over, the page is as it was.
  await page.locator('.print-sheet').waitFor({ state: 'detached' });
  expect(watched.faults).toEqual([]);
});

test('a filtered sheet is printed as it is shown, and a small one stands upright', async () => {
  const page = await printing();
  await page.locator('.contents-item').filter({ hasText: 'Available heel lifts' }).click();
  await page.keyboard.press('Control+p');
  await page.locator('.print-notes').waitFor({ state: 'attached' });
  expect(await page.locator('.print-sheet table').count()).toBe(1);
  const [[width, height]] = pagesOf(await page.pdf({ format: 'Letter' })) as [[number, number]];
  expect([width, height]).toEqual([612, 792]);
  await page.locator('.print-sheet').waitFor({ state: 'detached' });

  await page.locator('.contents-item').filter({ hasText: 'Roster' }).first().click();
  await (await cellOf(page, 1, 'Sex')).click();
  await runCommand(page, 'Filter by');
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('checkbox', { name: /^female/ }).check();
  await dialog.getByRole('button', { name: 'Apply filter' }).click();
  await page.locator('.sheet-grid td').getByText('Bram Oduya').first().waitFor({ state: 'detached' });
  await page.keyboard.press('Control+p');
  await page.locator('.print-notes').waitFor({ state: 'attached' });
  const table = page.locator('.print-sheet table').first();
  expect(await table.locator('tbody tr').count()).toBe(12);
  expect(await table.locator('thead').textContent()).toContain('12 of 24 rows');
  expect(watched.faults).toEqual([]);
});

import { readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { prepare } from '../../src/intake/index.ts';
import { Session } from '../../src/session/session.ts';
import { cellOf, runCommand, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';

const watched = inBrowser({ viewport: { width: 3500, height: 900 }, first: withoutFileAccess, ready: [] });

test('the book is saved as XLSX from the Book menu, with what the page shows', async () => {
  const { page, faults } = watched;
  await sheetShown(page);
  const shown = await (await cellOf(page, 1, 'Minimum lean (model)')).textContent();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    // It is said for some seconds only.
    page.getByText(/^Exported as .*\.xlsx/).waitFor(),
    (async () => {
      await page.getByRole('button', { name: 'Book', exact: true }).click();
      await page.getByRole('menuitem', { name: /^Export as XLSX/ }).click();
    })(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.xlsx$/);
  const bytes = await readFile(await download.path());
  const { bytes: table } = await prepare(bytes, { name: 'a.xlsx', table: 'Roster' });
  const [headings, first] = Papa.parse<string[]>(new TextDecoder().decode(table)).data;
  const lean = Number(first![headings!.indexOf('Minimum lean (model) (deg)')]);
  // A marked cell has its sign before the number.
  expect(lean.toFixed(0)).toBe(shown?.trim());
  expect(faults).toEqual([]);
});

test('writing a large book shows its progress and is stopped by its button, and the page goes on', async () => {
  const { page, faults } = watched;
  const session = Session.create();
  const columns = Array.from({ length: 12 }, (_, i) => `x_${i}`);
  session.execute({ do: 'add-sheet', name: 'large', columns: columns.map((name) => ({ name })) });
  const [sheet] = session.outline().sheets;
  session.writePlanned({
    edit: {
      do: 'add-rows',
      sheet: sheet!.id,
      row: 0,
      count: 60_000,
      cells: columns.map((_, c) => Array.from({ length: 60_000 }, (_, row) => row + c / 8)),
    },
    words: 'rows',
  });
  const path = join(tmpdir(), `leverbook-large-${process.pid}.leverbook.json`);
  await writeFile(path, session.save());
  const choosing = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await choosing).setFiles(path);
  await page.getByText('60,000 rows, 12 columns').waitFor();
  await rm(path);
  await runCommand(page, 'Export as XLSX');
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.getByText('The XLSX export was stopped; no file was written.').waitFor();
  await page.getByRole('button', { name: 'Stop', exact: true }).waitFor({ state: 'detached' });
  // What was stopped can be done again.
  const [download] = await Promise.all([page.waitForEvent('download'), runCommand(page, 'Export as XLSX')]);
  const { bytes: table } = await prepare(await readFile(await download.path()), {
    name: 'a.xlsx',
    table: 'large',
  });
  const rows = new TextDecoder().decode(table).trimEnd().split('\n');
  expect(rows).toHaveLength(60_001);
  expect(rows.at(-1)!.split(',')[3]).toBe('59999.375');
  expect(faults).toEqual([]);
});

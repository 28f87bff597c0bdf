import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { cellOf, runCommand, sheetShown } from './browser.ts';

/** Steps that the tests of the workbook share. */

/** Presses keys one after another. */
export async function keys(page: Page, ...pressed: readonly string[]): Promise<void> {
  for (const key of pressed) await page.keyboard.press(key);
}

/** The text of an editor of formulas, whichever stands there; null where it is not open. */
const textIn = (page: Page, editor: string): Promise<string | null> =>
  page.evaluate((of) => {
    const place = document.querySelector<HTMLElement>(of);
    if (!place?.checkVisibility()) return null;
    const early = place.querySelector('textarea');
    if (early) return early.value;
    const lines = place.shadowRoot?.querySelectorAll('.cm-line') ?? [];
    return [...lines]
      .map((line) => (line.querySelector('.cm-placeholder') ? '' : line.textContent))
      .join('\n');
  }, editor);

/** The text of the formula line. */
export const lineText = async (page: Page): Promise<string> => (await textIn(page, '.formula-editor')) ?? '';

/** The text of the editor that is open over a cell; null where none is. */
export const inCellText = (page: Page): Promise<string | null> => textIn(page, '.cell-formula-editor');

/** Waits until the formula editor is there, and not the plain field before it. */
export const editorLoaded = (page: Page): Promise<unknown> =>
  page.waitForFunction(() =>
    document.querySelector('.formula-editor')?.shadowRoot?.querySelector('.cm-content'),
  );

/** Waits until a book stands on the page, even one without rows, with the editors that belong to it. */
export async function opened(page: Page): Promise<void> {
  await page.locator('.sheet-grid .heading:visible').first().waitFor();
  await editorLoaded(page);
}

/** A blank book by the keyboard, with nothing kept before. */
export async function blankBook(page: Page): Promise<void> {
  await opened(page);
  await keys(page, 'Alt+b');
  const blank = page.getByRole('button', { name: /^Start blank/ });
  await blank.focus();
  await keys(page, 'Enter');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await headings(page, ['Athlete']);
}

/** The sample of a screening once more, whatever was opened before. */
export async function sampleBook(page: Page): Promise<void> {
  await opened(page);
  await keys(page, 'Alt+b');
  await page.getByRole('button', { name: /^Squat screening A club/ }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await heading(page, 'Femur').waitFor();
  await sheetShown(page);
}

/** Waits until the sheet on show has these headings, as far as they are in view. */
export async function headings(page: Page, wanted: readonly string[]): Promise<void> {
  await expect.poll(() => shownHeadings(page)).toEqual(wanted);
}

export async function shownHeadings(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found = new Map<number, string>();
    for (const th of document.querySelectorAll<HTMLElement>('.sheet-grid thead th[aria-colindex]')) {
      const words = th.querySelector('.heading-words')?.textContent;
      if (words) found.set(Number(th.getAttribute('aria-colindex')), words);
    }
    return [...found].sort(([a], [b]) => a - b).map(([, words]) => words);
  });
}

/** The heading of a column. */
export const heading = (page: Page, label: string): Locator =>
  page
    .locator('.sheet-grid .ht_clone_top thead th, .sheet-grid .ht_clone_top_inline_start_corner thead th')
    .filter({ has: page.locator('.heading-words').getByText(label, { exact: true }) })
    .first();

/** The number of a column as the grid states it, and its letter in addresses. */
export async function placeOf(page: Page, label: string): Promise<{ index: number; letter: string }> {
  const index = Number(await heading(page, label).getAttribute('aria-colindex'));
  // The numbers of the rows are the grid's first column. Letters from Z on are not needed here.
  expect(index).toBeGreaterThan(1);
  expect(index).toBeLessThan(28);
  return { index, letter: String.fromCharCode(63 + index) };
}

/** What a cell shows. */
export const shown = async (page: Page, row: number, label: string): Promise<string> =>
  (await (await cellOf(page, row, label)).textContent()) ?? '';

/** Rows and columns of the sheet on show, as the status line counts them. */
export async function sizeShown(page: Page): Promise<readonly [rows: number, columns: number]> {
  const words = await page.getByText(/^\d+ rows?, \d+ columns?$/).textContent();
  const [rows, columns] = words!.match(/\d+/g)!.map(Number);
  return [rows!, columns!];
}

/** Waits until the rows of some columns show these texts. */
export async function rowsShow(
  page: Page,
  labels: readonly string[],
  wanted: readonly (readonly string[])[],
): Promise<void> {
  await expect
    .poll(async () =>
      Promise.all(wanted.map((_, row) => Promise.all(labels.map((label) => shown(page, row + 1, label))))),
    )
    .toEqual(wanted);
}

/** Presses Tab until the field with this label has the focus. */
export async function tabTo(page: Page, label: string): Promise<void> {
  for (let tries = 0; tries < 20; tries++) {
    const at = await page.evaluate(() => {
      const field = document.activeElement as HTMLInputElement | null;
      return field?.labels?.[0]?.textContent ?? field?.textContent ?? '';
    });
    if (at.startsWith(label)) return;
    await keys(page, 'Tab');
  }
  throw new Error(`Tab does not come to "${label}"`);
}

/** A column made in the dialogue, by keys alone. Beginning letters choose in the lists, as the platform has it. */
export async function columnByKeys(
  page: Page,
  label: string,
  parts: { readonly kind?: string; readonly measures?: string; readonly formula?: string } = {},
): Promise<void> {
  await keys(page, 'Alt+Insert');
  const dialogue = page.getByRole('dialog', { name: 'New column' });
  await dialogue.waitFor();
  await page.keyboard.type(label);
  for (const [field, text] of [
    ['Kind', parts.kind],
    ['Measures', parts.measures],
    ['Column formula', parts.formula],
  ] as const) {
    if (text === undefined) continue;
    await tabTo(page, field);
    await page.keyboard.type(text);
  }
  await tabTo(page, 'Add column');
  await keys(page, 'Enter');
  await dialogue.waitFor({ state: 'detached' });
}

/** The book as the text of its file. */
export async function savedBook(page: Page): Promise<string> {
  const [saved] = await Promise.all([page.waitForEvent('download'), keys(page, 'Control+s')]);
  return readFile(await saved.path(), 'utf8');
}

/** Runs a command by its words and waits until the finder is gone. */
export async function perform(page: Page, words: string): Promise<void> {
  await runCommand(page, words);
  await page.locator('.finder[open]').waitFor({ state: 'detached' });
}

/** Pastes a text into the sheet, as the browser does when the keys for it are pressed. */
export async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((plain) => {
    const data = new DataTransfer();
    data.setData('text/plain', plain);
    const event = new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true });
    (document.activeElement ?? document.body).dispatchEvent(event);
  }, text);
}

/** What the status line says is chosen, with the row and column of the active cell. */
export const active = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const cell = document.querySelector('.sheet-grid td.current.highlight, .sheet-grid td.current');
    const row = cell?.closest('tr')?.getAttribute('aria-rowindex');
    return cell ? `${cell.getAttribute('aria-colindex')},${row}` : '';
  });

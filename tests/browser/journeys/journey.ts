import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { type Guide, stepsOf } from '../../../src/guides/index.ts';
import { cellOf } from '../browser.ts';

/** Called at the moment of a step that its picture shows; a step that never calls it is shown when it is done. */
export type Look = () => Promise<void>;

/** Does what a step of a guide says, as a person would. */
export type Doing = (page: Page, look: Look) => Promise<void>;

/** A guide with what a person does at each of its steps, by the step's id. */
export interface Journey {
  readonly guide: Guide;
  readonly does: Readonly<Record<string, Doing>>;
}

/** Steps that the guide has and the journey does not do, or the other way round. */
export function missingSteps({ guide, does }: Journey): readonly string[] {
  const steps = stepsOf(guide).map(({ id }) => id);
  return [...steps.filter((id) => !(id in does)), ...Object.keys(does).filter((id) => !steps.includes(id))];
}

export const sampleFile = (book: string, name: string): URL =>
  new URL(`../../../sample-books/${book}/${name}`, import.meta.url);

/** Opens a menu and presses an item. */
export async function menu(page: Page, group: string, item: string): Promise<void> {
  await page.locator('.menus').getByRole('button', { name: group, exact: true }).click();
  await page.getByRole('menuitem', { name: item }).click();
}

/** A sheet or chart in the contents on the left. */
export const contents = (page: Page, label: string): Locator =>
  page
    .locator('.contents-item')
    .filter({ has: page.locator('.contents-label').getByText(label, { exact: true }) });

export async function open(page: Page, label: string): Promise<void> {
  await contents(page, label).click();
  await page.locator('.sheet-grid td:not(.waiting)').first().waitFor();
}

/** Brings a file of the guide in: names that are asked about are answered, and the rows come in. */
export async function importFile(
  page: Page,
  file: URL,
  rows: number,
  answers: readonly string[] = [],
  look: Look = async () => {},
): Promise<void> {
  await menu(page, 'Book', 'Import CSV');
  await page.locator('.intake input[type=file]').setInputFiles({
    name: file.pathname.split('/').at(-1)!,
    mimeType: 'text/csv',
    buffer: readFileSync(file),
  });
  await page.locator('.intake-counts').waitFor();
  for (const answer of answers) {
    await page.getByRole('button', { name: answer }).click();
    await page.getByText('you said so').waitFor();
  }
  await look();
  await page.getByRole('button', { name: `Add ${rows} rows` }).click();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

/** Chooses a cell of the sheet on show and types into it. */
export async function typeInto(
  page: Page,
  row: number,
  heading: string,
  ...texts: readonly string[]
): Promise<void> {
  await (await cellOf(page, row, heading)).click();
  for (const text of texts) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
}

export async function setName(page: Page, name: string, text: string): Promise<void> {
  const field = page.locator(`[data-setting="${name}"] input`);
  await field.fill(text);
  await field.press('Enter');
}

export const undo = (page: Page): Promise<void> =>
  page.locator('.head-tools').getByRole('button', { name: /^Undo/ }).click();

/** Where a doubt stands, in the panel of doubts. */
export const doubt = (page: Page, place: string): Locator =>
  page.locator('.side').getByRole('button', { name: place, exact: true });

/** Goes to where a doubt is about, and is there. */
export async function goToDoubt(page: Page, place: string): Promise<void> {
  await doubt(page, place).click();
  await page.waitForFunction(() => document.activeElement?.closest('.sheet-grid') !== null);
}

/** The sheet on show, saved as CSV: its text, and its rows by heading without the unit. */
export async function saved(page: Page): Promise<{ readonly text: string; readonly rows: readonly Row[] }> {
  await page.locator('.menus').getByRole('button', { name: 'Sheet', exact: true }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('menuitem', { name: 'Save this sheet as CSV' }).click(),
  ]);
  const text = await readFile(await download.path(), 'utf8');
  return { text, rows: rowsOf(text) };
}

export type Row = Readonly<Record<string, string>>;

/** Rows of a CSV text by their headings without units. */
export function rowsOf(text: string, delimiter = ','): readonly Row[] {
  const [headings = [], ...rows] = cellsOf(text, delimiter);
  const names = headings.map((heading) => heading.replace(/ \([^)]*\)$/, ''));
  return rows.map((cells) => Object.fromEntries(names.map((name, i) => [name, cells[i] ?? ''])));
}

/** RFC 4180: cells between delimiters, quoted ones with doubled quotes. */
function cellsOf(text: string, delimiter: string): readonly (readonly string[])[] {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .filter((line) => line !== '');
  const cell = new RegExp(`(?:^|${delimiter})(?:"((?:[^"]|"")*)"|([^${delimiter}]*))`, 'g');
  return lines.map((line) =>
    [...line.matchAll(cell)].map(([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? ''),
  );
}

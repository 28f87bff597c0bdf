import { readFile } from 'node:fs/promises';
import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { cellOf, launch, runCommand, sheetShown, type Watched, withoutFileAccess } from './browser.ts';
import { pageAddress } from './in-browser.ts';
import { blankBook, keys } from './workbook.ts';

let watched: Watched;
afterEach(() => watched?.close());

/**
 * The dialogues that ask for a file cannot be clicked in a browser without a window: here they hand out files of the
 * origin's private file system, which are written through the same File System Access API.
 */
async function withPrivateFiles(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const asked: string[] = [];
    const given = async (name: string) =>
      (await navigator.storage.getDirectory()).getFileHandle(name, { create: true });
    Object.assign(window, {
      asked,
      showSaveFilePicker: async ({ suggestedName }: { suggestedName: string }) => {
        asked.push(`save ${suggestedName}`);
        return given(`${asked.length}-${suggestedName}`);
      },
      showOpenFilePicker: async () => {
        asked.push('open');
        return [await given('1-squat-screening.leverbook.json')];
      },
    });
  });
}
const asked = (page: Page): Promise<string[]> =>
  page.evaluate(() => (window as unknown as { asked: string[] }).asked);
const inFile = (page: Page, name: string): Promise<string> =>
  page.evaluate(
    async (file) =>
      (await (await (await navigator.storage.getDirectory()).getFileHandle(file)).getFile()).text(),
    name,
  );
const firstFemur = (text: string): number =>
  JSON.parse(text).sheets[0].columns.find(({ name }: { name: string }) => name === 'femur').cells[0];

/** Types over the first femur; once more, the cell is the one above. */
async function typeFemur(page: Page, text: string, again = false): Promise<void> {
  if (again) await page.keyboard.press('ArrowUp');
  else await (await cellOf(page, 1, 'Femur')).click();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await page.waitForFunction(
    (typed) => [...document.querySelectorAll('.sheet-grid td')].some((td) => td.textContent === typed),
    Number(text).toFixed(1),
  );
}

/** Drops files that the page made itself anywhere on it. */
const drop = (page: Page, ...files: { name: string; text: string }[]): Promise<void> =>
  page.evaluate((all) => {
    const dataTransfer = new DataTransfer();
    for (const { name, text } of all) dataTransfer.items.add(new File([text], name));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, files);

describe('where the browser lets a page write files', () => {
  beforeEach(async () => {
    watched = await launch(pageAddress(), { viewport: { width: 3500, height: 900 } }, withPrivateFiles);
    await sheetShown(watched.page);
  });

  test('saving asks for a file once and then writes the same one; saving as another file asks again', async () => {
    const { page, faults } = watched;
    await typeFemur(page, '41.5');
    await page.keyboard.press('Control+s');
    await page.getByText('file up to date').waitFor();
    const [first] = await asked(page);
    const name = `1-${first!.slice('save '.length)}`;
    expect(firstFemur(await inFile(page, name))).toBe(41.5);

    await typeFemur(page, '42.5', true);
    await page.getByText('file not up to date').waitFor();
    await page.keyboard.press('Control+s');
    await page.getByText('file up to date').waitFor();
    expect(await asked(page)).toHaveLength(1);
    expect(firstFemur(await inFile(page, name))).toBe(42.5);

    await page.keyboard.press('Control+Shift+s');
    await page.getByText(/^Saved as 2-/).waitFor();
    expect(await asked(page)).toHaveLength(2);
    expect(firstFemur(await inFile(page, `2-${name}`))).toBe(42.5);
    expect(faults).toEqual([]);
  });

  test('a book that was opened from a file is saved to it without asking, and a file that is gone is said', async () => {
    const { page } = watched;
    const text = await readFile('sample-books/squat-screening.leverbook.json', 'utf8');
    await page.evaluate(async (content) => {
      const folder = await navigator.storage.getDirectory();
      const file = await folder.getFileHandle('1-squat-screening.leverbook.json', { create: true });
      const stream = await file.createWritable();
      await stream.write(content);
      await stream.close();
    }, text);
    await page.keyboard.press('Control+o');
    await page.getByText('file up to date').waitFor();
    // The strip over the sample goes, and the sheet moves up.
    await page.getByRole('button', { name: 'Start your own book' }).waitFor({ state: 'detached' });
    await sheetShown(page);
    await typeFemur(page, '44.5');
    await page.keyboard.press('Control+s');
    await page.getByText('file up to date').waitFor();
    expect(await asked(page)).toEqual(['open']);
    expect(firstFemur(await inFile(page, '1-squat-screening.leverbook.json'))).toBe(44.5);

    await page.evaluate(async () => {
      const folder = await navigator.storage.getDirectory();
      const file = await folder.getFileHandle('1-squat-screening.leverbook.json');
      Object.assign(Object.getPrototypeOf(file), {
        createWritable: async () => {
          throw new DOMException('gone', 'NotFoundError');
        },
      });
    });
    await typeFemur(page, '45.5', true);
    await page.keyboard.press('Control+s');
    await page.getByText(/was not written: the file is no longer there\. Save a copy\./).waitFor();
    await page.getByText('file not up to date').waitFor();
  });
});

describe('where it does not', () => {
  beforeEach(async () => {
    watched = await launch(pageAddress(), { viewport: { width: 3500, height: 900 } }, withoutFileAccess);
    await sheetShown(watched.page);
  });

  test('saving downloads the book, and says so', async () => {
    const { page, faults } = watched;
    await typeFemur(page, '41.5');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
    expect(firstFemur(await readFile(await download.path(), 'utf8'))).toBe(41.5);
    await page.getByText('file up to date').waitFor();
    expect(faults).toEqual([]);
  });

  test('a book file that is dropped opens, a table that is dropped is brought in, and both at once is refused', async () => {
    const { page, faults } = watched;
    const book = await readFile('sample-books/survey-lengths.leverbook.json', 'utf8');
    const title = JSON.parse(book).title as string;
    const csv = { name: 'club.csv', text: 'Athlete,Femur (cm)\nAda,41\nBo,43\n' };
    await drop(page, { name: 'survey.leverbook.json', text: book }, csv);
    await page.getByText('is a book: drop it alone to open it.').waitFor();
    await drop(page, { name: 'survey.leverbook.json', text: book });
    await page.getByRole('heading', { level: 1, name: title }).waitFor();
    await page.getByText('file up to date').waitFor();
    await drop(page, csv);
    await page.getByRole('dialog').getByText('club.csv').first().waitFor();
    await page.keyboard.press('Escape');
    await drop(page, { name: 'other.json', text: '{"no":"book"}' });
    await page.locator('.notice.wrong').waitFor();
    expect(faults).toEqual([]);
  });
});

test('who comes first finds a sample with the way to a book of their own; who comes back finds their book', async () => {
  watched = await launch(pageAddress());
  const { page, faults } = watched;
  await sheetShown(page);
  await page.getByRole('button', { name: 'Start your own book' }).click();
  const books = page.getByRole('dialog', { name: 'Books' });
  await books.getByText('Nothing yet.').waitFor();
  await books.getByRole('button', { name: /^Start blank/ }).click();
  await page.getByRole('heading', { level: 1, name: 'New book' }).waitFor();
  await page.getByText('No rows yet.').waitFor();
  expect(await page.getByRole('button', { name: 'Start your own book' }).count()).toBe(0);
  await page.locator('.sheet-grid td').first().click();
  await page.keyboard.type('Ada');
  await page.keyboard.press('Enter');
  await page.getByText('1 row').waitFor();
  await page.getByText('No rows yet.').waitFor({ state: 'detached' });
  await page.getByText('Saved in this browser').waitFor();

  await page.reload();
  await page.getByRole('heading', { level: 1, name: 'New book' }).waitFor();
  await page.locator('.sheet-grid td').getByText('Ada').first().waitFor();
  expect(await page.getByRole('button', { name: 'Start your own book' }).count()).toBe(0);
  await runCommand(page, 'All books');
  await books.getByRole('button', { name: /^New book/ }).waitFor();
  await books.getByRole('button', { name: /^Squat screening/ }).waitFor();
  expect(faults).toEqual([]);
});

test('a blank book offers ready-made sheets; one press makes a sheet with formulas, and one undo takes it away', async () => {
  watched = await launch(pageAddress());
  const { page, faults } = watched;
  await blankBook(page);
  await page.getByRole('button', { name: /^Add body lengths/ }).click();
  await page.getByRole('button', { name: 'Body lengths 0' }).waitFor();
  await page
    .locator('.sheet-grid .heading-words:visible')
    .getByText('Minimum lean (model)')
    .first()
    .waitFor();
  // The untouched sheet made room, and the offers are gone with it.
  expect(await page.getByRole('button', { name: 'Roster 0' }).count()).toBe(0);
  expect(await page.getByRole('list', { name: 'Ready-made sheets' }).count()).toBe(0);
  await runCommand(page, 'Add a wall test');
  await page.getByRole('button', { name: 'Wall test 0' }).waitFor();
  await keys(page, 'Control+z');
  await page.getByRole('button', { name: 'Wall test 0' }).waitFor({ state: 'detached' });
  await keys(page, 'Control+z');
  await page.getByRole('button', { name: 'Roster 0' }).waitFor();
  await page.getByRole('list', { name: 'Ready-made sheets' }).waitFor();
  expect(faults).toEqual([]);
});

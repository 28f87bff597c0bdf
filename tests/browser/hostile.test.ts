import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { runCommand, sheetShown, withoutFileAccess } from './browser.ts';
import { inBrowser } from './in-browser.ts';

/** What would become elements, run as a script or be followed as a link, were it ever taken for more than a text. */
const MARK =
  '"\'><leak-mark></leak-mark><img src=leak onerror="leaked=1"><script>leaked=1</script><a href="javascript:leaked=1">x</a>';
const LINK = 'javascript:leaked=1';

interface File {
  title: string;
  sheets: {
    name: string;
    label: string;
    note?: string;
    columns: {
      name: string;
      label: string;
      kind: string;
      note?: string;
      choices?: string[];
      formula?: string;
      unit?: string;
      cells?: unknown[];
    }[];
  }[];
  names: { note?: string }[];
  parts?: Record<string, Record<string, unknown>>;
}

/** The sample book with the mark in every text that a file may hold: title, labels, notes, texts, choices, charts, handouts. */
async function hostileBook(): Promise<string> {
  const path = join(import.meta.dirname, '../../sample-books/squat-screening.leverbook.json');
  const book = JSON.parse(await readFile(path, 'utf8')) as File;
  const marked = (text: unknown): string => `${text}${MARK}`;
  book.title = marked('Title');
  for (const sheet of book.sheets) {
    sheet.label = marked(sheet.label);
    sheet.note = marked(sheet.note);
    for (const column of sheet.columns) {
      column.label = marked(column.label);
      column.note = marked(column.note);
      if (sheet.name === 'assumptions' && column.name !== 'why') continue;
      if (column.choices) column.choices = column.choices.map(marked);
      if (column.cells && /text|choice/.test(column.kind))
        column.cells = column.cells.map((cell) => (typeof cell === 'string' ? marked(cell) : cell));
    }
  }
  const [roster] = book.sheets;
  roster!.columns.push(
    { name: 'link', label: LINK, kind: 'text', cells: Array(24).fill(LINK) },
    { name: 'made', label: marked('Made'), kind: 'text', formula: `athlete & "<leak-mark>" & "${LINK}"` },
    {
      name: 'unitless',
      label: marked('Held'),
      kind: 'number',
      cells: Array(24).fill({ held: MARK, reason: MARK }),
    },
  );
  for (const name of book.names) name.note = marked('Note');
  const chart = (kind: string, columns: string[], by?: string) => ({
    title: marked(kind),
    kind,
    sheet: 'roster',
    columns,
    by,
  });
  book.parts = {
    charts: {
      [marked('c1')]: chart('scatter', ['femur', 'lean'], 'sex'),
      c2: { ...chart('scatter', ['femur', 'lean'], 'sex'), panels: true },
      c3: chart('agreement', ['wall_left', 'wall_right'], 'athlete'),
      c4: chart('pairs', ['wall_left', 'wall_right'], 'athlete'),
      c5: chart('distribution', ['lean'], 'sex'),
      c6: chart('trend', ['tested', 'lean'], 'athlete'),
    },
    handouts: {
      settings: {
        contact: MARK,
        numbers: [{ column: 'femur' }],
        rules: [{ part: 'finding', when: 'femur > 0', say: marked('Found {athlete} {link}') }],
      },
    },
    marks: { [MARK]: MARK },
  };
  return JSON.stringify(book);
}

/** Runs in the page before it: whatever appears anywhere in it that only the mark could have made is noted. */
function lookForLeaks(): void {
  const leaks: string[] = [];
  Object.assign(globalThis, { leaks });
  const made = 'leak-mark, [onerror], [onload], [src="leak"], [href^="javascript:" i], iframe, object, embed';
  const check = (node: Node): void => {
    if (!(node instanceof Element)) return;
    for (const element of [node, ...node.querySelectorAll('*')])
      if (element.matches(made)) leaks.push(element.outerHTML.slice(0, 200));
  };
  const watch = (root: Node): void =>
    new MutationObserver((records) => {
      for (const { addedNodes, target } of records) for (const node of [...addedNodes, target]) check(node);
    }).observe(root, { subtree: true, childList: true, attributes: true });
  const attach = Element.prototype.attachShadow;
  Element.prototype.attachShadow = function (init) {
    const root = attach.call(this, init);
    watch(root);
    return root;
  };
  watch(document);
}

const watched = inBrowser({
  each: true,
  viewport: { width: 2300, height: 1000 },
  first: async (context) => {
    await withoutFileAccess(context);
    await context.addInitScript(lookForLeaks);
  },
});
beforeEach(async () => {
  const { page } = watched;
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    runCommand(page, 'Open a book file'),
  ]);
  await chooser.setFiles({
    name: `${MARK.replaceAll('/', '')}.leverbook.json`,
    mimeType: 'application/json',
    buffer: Buffer.from(await hostileBook()),
  });
  await expect.poll(() => page.locator('.book-title').textContent()).toContain('<leak-mark>');
  await sheetShown(page);
});
afterEach(async () => {
  await untouched(watched.page);
});

async function untouched(page: Page): Promise<void> {
  const found = await page.evaluate(() => ({
    leaks: (globalThis as unknown as { leaks: string[] }).leaks,
    leaked: 'leaked' in globalThis,
    polluted: Object.keys(Object.prototype),
  }));
  expect(found).toEqual({ leaks: [], leaked: false, polluted: [] });
}

/** Waits until the mark stands there as the text that it is. */
async function seenIn(where: Locator): Promise<void> {
  await expect.poll(async () => (await where.allTextContents()).join(' ')).toContain('<leak-mark>');
}

const dialogue = (page: Page): Locator => page.getByRole('dialog');
async function leave(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await dialogue(page).waitFor({ state: 'detached' });
}
const side = (page: Page, name: string): Promise<void> => page.getByRole('tab', { name }).click();

test('markup, scripts and links in a book stay texts in its sheets, panels and menus', async () => {
  const { page } = watched;
  await seenIn(page.locator('.contents'));
  await seenIn(page.locator('.sheet-grid thead'));
  await seenIn(page.locator('.sheet-grid tbody'));
  for (const item of await page.locator('.contents-item').all()) {
    await item.click();
    await page.waitForTimeout(150);
  }
  await page.locator('.contents-item').first().click();
  await sheetShown(page);
  await page.locator('.sheet-grid .ht_clone_inline_start tbody td').first().click();
  await side(page, 'Figure');
  await seenIn(page.locator('.side'));
  await side(page, 'Working');
  await seenIn(page.locator('.side'));
  await side(page, 'Checks');
  await seenIn(page.locator('.side'));
  await side(page, 'Guide');
  await page.getByRole('searchbox').fill(MARK);
  await page.getByRole('searchbox').fill('lean');
  // A cell's own editor, the line above the sheet, its completion and what it says of a mistake.
  await page.locator('.sheet-grid .ht_clone_inline_start tbody td').first().dblclick();
  await expect.poll(() => page.locator('textarea.handsontableInput').inputValue()).toContain('<leak-mark>');
  await page.keyboard.press('Escape');
  await page.locator('.formula-editor').click();
  await page.waitForTimeout(300);
  await page.keyboard.press('Control+a');
  await page.keyboard.type('=made & <leak-mark></leak-mark> & athl');
  await page.locator('.formula-below p').first().waitFor();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  // Menus by the other button, on a heading and on a cell; the finder.
  await page.locator('.sheet-grid .ht_clone_top thead th').nth(3).click({ button: 'right' });
  await page.keyboard.press('Escape');
  await page.locator('.sheet-grid .ht_master tbody td').nth(3).click({ button: 'right' });
  await page.keyboard.press('Escape');
  await page.keyboard.press('F1');
  await page.keyboard.type(MARK);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await page.reload();
  await sheetShown(page);
  await seenIn(page.locator('.book-title'));
});

test('they stay texts in every dialogue, and in what a change is refused with', async () => {
  const { page } = watched;
  await page.locator('.sheet-grid .ht_clone_inline_start tbody td').first().click();
  for (const words of [
    'Change Athlete',
    'All books',
    'Versions of this book',
    'Edit handout text',
    'Change this sheet',
    'Find and replace',
    'Filter',
    'Name this cell',
    'Import history',
    'Add a chart',
    'Show all keys',
  ]) {
    await runCommand(page, words);
    await dialogue(page).waitFor();
    if (words === 'All books' || words === 'Change Athlete' || words === 'Edit handout text')
      await seenInFields(page);
    if (words === 'Versions of this book') {
      await dialogue(page).getByRole('textbox').first().fill(MARK);
      await dialogue(page).getByRole('button', { name: 'Save', exact: true }).click();
      await seenIn(dialogue(page));
      await dialogue(page).getByRole('button', { name: 'Show changes' }).click();
    }
    await untouched(page);
    await leave(page);
  }
  // A name that no column may have: the refusal repeats it.
  await runCommand(page, 'Name this cell');
  await dialogue(page).getByRole('textbox').first().fill('<leak-mark>');
  await page.keyboard.press('Enter');
  await seenIn(page.locator('[role=alert], .notice'));
});

async function seenInFields(page: Page): Promise<void> {
  await expect
    .poll(() =>
      dialogue(page).evaluate((box) =>
        [
          box.textContent,
          ...[...box.querySelectorAll('input, textarea')].map((field) => (field as HTMLInputElement).value),
        ].join(' '),
      ),
    )
    .toContain('<leak-mark>');
}

test('they stay texts in charts of every kind, their tables and the files they are saved as', async () => {
  const { page } = watched;
  const charts = await page
    .locator('.contents-item')
    .filter({ hasText: /scatter|agreement|pairs|distribution|trend/ })
    .all();
  expect(charts).toHaveLength(6);
  for (const chart of charts) {
    await chart.click();
    await page.locator('.chart-stage svg').first().waitFor();
    await seenIn(page.locator('.chart-place'));
    await page.locator('.chart-stage').hover();
    await page.locator('[role=application]').focus();
    await page.keyboard.press('ArrowRight');
    const [svg] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('.chart-tools').getByRole('button', { name: 'SVG' }).click(),
    ]);
    expect(svg.suggestedFilename()).not.toMatch(/[<>"':/\\]/);
    expect(await elementsOf(page, await readFile(await svg.path(), 'utf8'), 'image/svg+xml')).toEqual([]);
    await page.locator('.chart-tools button').first().click();
    await page.locator('.chart-place table').waitFor();
    await untouched(page);
    await page.locator('.chart-tools button').first().click();
  }
});

test('they stay texts in handouts, on the page and in the document that is saved', async () => {
  const { page } = watched;
  await runCommand(page, 'Make handouts for all athletes');
  const frame = page.getByRole('dialog', { name: 'Handouts' });
  await seenIn(frame);
  await seenIn(frame.locator('h1').first());
  await seenIn(frame.locator('.handout-contact').first());
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    frame.getByRole('button', { name: 'Save as HTML' }).click(),
  ]);
  expect(file.suggestedFilename()).not.toMatch(/[<>"':/\\]/);
  const html = await readFile(await file.path(), 'utf8');
  expect(html).toContain('&lt;leak-mark&gt;');
  expect(await elementsOf(page, html, 'text/html')).toEqual([]);
});

/** What in a document of its own only the mark could have made; nothing in it runs. */
async function elementsOf(page: Page, text: string, type: 'text/html' | 'image/svg+xml') {
  const reader = await page.context().newPage();
  const found = await reader.evaluate(
    ([text, type]) => {
      const document = new DOMParser().parseFromString(text, type);
      if (document.querySelector('parsererror')) return ['it cannot be read'];
      return [...document.querySelectorAll('*')]
        .filter(
          (element) =>
            element.matches('leak-mark, script, img, iframe, a[href]') ||
            [...element.attributes].some(
              ({ name, value }) => /^on/i.test(name) || /^\s*javascript:/i.test(value),
            ),
        )
        .map(({ outerHTML }) => outerHTML.slice(0, 200));
    },
    [text, type] as const,
  );
  await reader.close();
  return found;
}

test('they stay texts when a file comes in: its name, its headings, its cells, its questions and its report', async () => {
  const { page } = watched;
  const quoted = `"${MARK.replaceAll('"', '""')}"`;
  await runCommand(page, 'Import CSV');
  await page.locator('.intake input[type=file]').setInputFiles({
    name: `${MARK.replaceAll('/', '')}.csv`,
    mimeType: 'text/csv',
    buffer: Buffer.from(
      `${quoted},Load (kg),${LINK},Day\n${Array.from({ length: 8 }, (_, i) => `${quoted},${i === 3 ? quoted : 100 + i},${LINK},0${i + 1}/04/2026`).join('\n')}\n`,
    ),
  });
  await seenIn(page.locator('.intake'));
  await untouched(page);
  const question = page.getByRole('group', { name: /order are the dates/ });
  if (await question.count()) await question.getByRole('button').first().click();
  await page.locator('.intake-decide button[type=submit]:not([disabled])').click();
  await page.getByRole('button', { name: 'Done' }).waitFor();
  await untouched(page);
  await page.getByRole('button', { name: 'Done' }).click();
  await seenIn(page.locator('.came-from'));
  await runCommand(page, 'Import history');
  await seenIn(dialogue(page));
});

import type { Paste } from '../../session/commands/paste-text.ts';
import { spread, widthOf } from '../../session/text/block.ts';
import { parseTsv, writeTsv } from '../../session/text/tsv.ts';
import type { GridSelection } from '../grid/host.ts';
import { guarded, run, runAll } from './actions.ts';
import { keysInWords } from './keys.ts';
import type { Page } from './page.ts';
import { say } from './page.ts';

/** Cells that are copied at once at most: a clipboard is no file. */
const most = 200_000;

/** The shown texts of the chosen cells, line by line. */
async function textsOf(page: Page, selection: GridSelection): Promise<readonly (readonly string[])[]> {
  const sheet = page.outline.value?.sheets.find(({ id }) => id === selection.sheet);
  if (!sheet) return [];
  const indexes = selection.columns.map((id) => sheet.columns.findIndex((column) => column.id === id));
  const from = Math.min(...indexes);
  const width = Math.max(...indexes) - from + 1;
  const lines: string[][] = [];
  for (const { row, count } of selection.runs) {
    const tile = await page.service.tile(sheet.id, row, count, from, width);
    for (let r = 0; r < tile.rows; r++)
      lines.push(
        indexes.map((index) => {
          const at = r * tile.columns + (index - from);
          return tile.bare?.[at] ?? tile.texts[at] ?? '';
        }),
      );
  }
  return lines;
}

/**
 * Copies the chosen cells as other programs read them. The browser is given a promise of the text, since the page holds
 * only the part of the sheet that is in view.
 */
export async function copy(page: Page, selection: GridSelection, event?: ClipboardEvent): Promise<boolean> {
  const cells = selection.rows * selection.columns.length;
  if (cells > most) {
    say(
      page,
      `${cells} cells are too many for the clipboard (at most ${most}). Save the sheet as CSV instead.`,
      'wrong',
    );
    return false;
  }
  event?.preventDefault();
  return guarded(page, async () => {
    const text = textsOf(page, selection).then(writeTsv);
    try {
      await write(text);
    } catch (reason) {
      if (!isRefused(reason)) throw reason;
      const keys = keysInWords('Mod+C');
      say(page, `The browser blocked copying. Click a cell, then press ${keys}.`, 'wrong');
      return false;
    }
    const rows = rowsThere(selection.runs, sheetRows(page, selection.sheet));
    const { length } = selection.columns;
    say(page, rows * length === 1 ? 'Copied one cell' : `Copied ${rows} × ${length} cells`);
    return true;
  });
}

async function write(text: Promise<string>): Promise<void> {
  const { clipboard } = navigator as Partial<Navigator>;
  if (!clipboard) throw new DOMException('no clipboard', 'NotAllowedError');
  if (typeof ClipboardItem === 'undefined') return clipboard.writeText(await text);
  const blob = text.then((plain) => new Blob([plain], { type: 'text/plain' }));
  return clipboard.write([new ClipboardItem({ 'text/plain': blob })]);
}

/** True where the browser, or who uses it, keeps the clipboard from the page. Pages that came unsecured have none. */
const isRefused = (reason: unknown): boolean =>
  reason instanceof DOMException && ['NotAllowedError', 'SecurityError'].includes(reason.name);

/** Pastes what is on the clipboard, as a menu asks for it. With the keys the browser hands it over unasked. */
export async function pasteFromClipboard(page: Page): Promise<boolean> {
  return guarded(page, async () => {
    const { clipboard } = navigator as Partial<Navigator>;
    try {
      if (!clipboard?.readText) throw new DOMException('no clipboard', 'NotAllowedError');
      return await paste(page, await clipboard.readText());
    } catch (reason) {
      if (!isRefused(reason)) throw reason;
      const keys = keysInWords('Mod+V');
      say(page, `The browser blocked pasting. Click a cell, then press ${keys}.`, 'wrong');
      return false;
    }
  });
}

/** How many of the chosen rows are there: a blank one after the last is not. */
export const rowsThere = (runs: GridSelection['runs'], rows: number): number =>
  runs.reduce((all, { row, count }) => all + Math.max(0, Math.min(row + count, rows) - row), 0);

const sheetRows = (page: Page, sheet: string): number =>
  page.outline.value?.sheets.find(({ id }) => id === sheet)?.rows ?? 0;

/** Characters from which on a paste shows how far it is, and can be stopped: it takes longer than an eye blinks. */
const long = 10_000;

/** Puts a text from the clipboard into the sheet, from the first chosen cell on, and chooses what it filled. */
export async function paste(page: Page, text: string, widened = false): Promise<boolean> {
  const { selection, sheet } = page;
  if (!selection.value || !sheet.value || text === '') return false;
  const before = selection.value;
  const { columns: chosen, runs, row, rows } = before;
  const shown = sheet.value.columns.filter(({ hidden }) => !hidden);
  const columns = shown.slice(shown.findIndex(({ id }) => id === chosen[0])).map(({ id }) => id);
  const first = runs[0]?.row ?? row;
  const pasted: Paste = {
    sheet: sheet.value.id,
    text,
    columns,
    runs: linesFrom(page, first, Math.max(mostLines(text), rows)),
    over: { rows: Math.max(rows, 1), columns: chosen.length },
  };
  return guarded(page, async () => {
    const width = text.length > long ? 0 : sizeOf(pasted).width;
    if (width > columns.length && !widened) {
      offerColumns(page, text, width - columns.length);
      return false;
    }
    const size = text.length > long ? await read(page, pasted) : sizeOf(pasted);
    if (!size || !(await run(page, { do: 'paste-text', ...pasted }))) return false;
    // Who has gone on elsewhere meanwhile is left there.
    const now = selection.value;
    if (now?.sheet === before.sheet && now.row === before.row && now.column === before.column)
      page.grid.current?.selectBlock(first, columns[0]!, size.lines, size.width);
    return true;
  });
}

/** The text is wider than the sheet: says so, and offers the columns that are missing. */
function offerColumns(page: Page, text: string, missing: number): void {
  const sheet = page.sheet.peek();
  if (!sheet) return;
  const columns = `${missing} ${missing === 1 ? 'column' : 'columns'}`;
  page.dialogue.value = {
    is: 'confirm',
    title: `Add ${columns}?`,
    text: `What you paste is ${columns} wider than ${sheet.label} from here on.`,
    label: 'Add and paste',
    act: () => void addAndPaste(page, sheet.id, text, missing),
  };
}

async function addAndPaste(page: Page, sheet: string, text: string, missing: number): Promise<void> {
  const { columns = [] } = page.outline.peek()?.sheets.find(({ id }) => id === sheet) ?? {};
  const block = parseTsv(text);
  const width = widthOf(block);
  const added = Array.from({ length: missing }, (_, i) => {
    const values = block.map((line) => line[width - missing + i]?.trim() ?? '').filter(Boolean);
    const numbers = values.filter((value) => /^[-+−]?\d[\d.,\s]*$|^[-+−]?[.,]\d+$/.test(value)).length;
    const kind = numbers * 2 > values.length ? ('number' as const) : ('text' as const);
    const at = columns.length + i;
    return { do: 'add-column' as const, sheet, index: at, column: { label: `Column ${at + 1}`, kind } };
  });
  if (await runAll(page, `Add ${missing} columns`, added)) await paste(page, text, true);
}

interface Size {
  readonly lines: number;
  readonly width: number;
}

function sizeOf({ text, over }: Paste): Size {
  const block = spread(parseTsv(text), over.rows, over.columns);
  return { lines: block.length, width: widthOf(block) };
}

/** Has a large text read by the worker, which can be stopped; null when it was, or when it cannot be pasted. */
async function read(page: Page, pasted: Paste): Promise<Size | null> {
  page.busy.value = `Pasting ${mostLines(pasted.text).toLocaleString('en')} lines`;
  let stopped = false;
  page.stop.value = () => {
    stopped = true;
    void page.service.stopPaste();
    page.grid.current?.focus();
  };
  try {
    const answer = await page.service.readPaste(pasted);
    if (answer.ok && !stopped) return answer;
    if (stopped) say(page, 'Pasting was stopped; nothing was changed.');
    else if (!answer.ok) say(page, answer.sentence, 'wrong');
    return null;
  } finally {
    page.busy.value = null;
    page.stop.value = null;
  }
}

/** Lines of a text at most: some of its breaks may stand inside quotes. */
function mostLines(text: string): number {
  let lines = 1;
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) lines++;
  for (let at = text.indexOf('\r'); at !== -1; at = text.indexOf('\r', at + 1))
    if (text[at + 1] !== '\n') lines++;
  return /[\r\n]$/.test(text) ? lines - 1 : lines;
}

/** The sheet rows that so many lines from a row on show; past the last one, rows that are yet to be made. */
function linesFrom(page: Page, row: number, count: number) {
  const lines = page.shown.value?.lines;
  const line = lines?.lineOf(row);
  if (!lines || lines.plain || line === undefined) return [{ row, count }];
  const runs = lines
    .runs(line, Math.min(line + count, lines.count) - 1)
    .filter((run) => run.row < lines.total);
  const covered = runs.reduce((all, run) => all + run.count, 0);
  return covered < count ? [...runs, { row: lines.total, count: count - covered }] : runs;
}

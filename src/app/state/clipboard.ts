import { writeTsv } from '../../session/tsv.ts';
import type { GridSelection } from '../grid/host.ts';
import { guarded, run } from './actions.ts';
import type { Page } from './page.ts';
import { say } from './page.ts';

/** Cells that are copied at once at most: a clipboard is no file. */
const most = 200_000;

/** The shown texts of the chosen cells, line by line. */
export async function textsOf(page: Page, selection: GridSelection): Promise<readonly (readonly string[])[]> {
  const sheet = page.outline.value?.sheets.find(({ id }) => id === selection.sheet);
  if (!sheet) return [];
  const indexes = selection.columns.map((id) => sheet.columns.findIndex((column) => column.id === id));
  const from = Math.min(...indexes);
  const width = Math.max(...indexes) - from + 1;
  const lines: string[][] = [];
  for (const { row, count } of selection.runs) {
    const tile = await page.service.tile(sheet.id, row, count, from, width);
    for (let r = 0; r < tile.rows; r++)
      lines.push(indexes.map((index) => tile.texts[r * tile.columns + (index - from)] ?? ''));
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
      `${cells} cells are more than a clipboard takes (${most}). Save the sheet as CSV instead.`,
      'wrong',
    );
    return false;
  }
  event?.preventDefault();
  return guarded(page, async () => {
    const text = textsOf(page, selection).then(writeTsv);
    if (typeof ClipboardItem === 'undefined') await navigator.clipboard.writeText(await text);
    else {
      const blob = text.then((plain) => new Blob([plain], { type: 'text/plain' }));
      await navigator.clipboard.write([new ClipboardItem({ 'text/plain': blob })]);
    }
    say(
      page,
      cells === 1 ? 'Copied one cell' : `Copied ${selection.rows} × ${selection.columns.length} cells`,
    );
    return true;
  });
}

/** Characters from which on it is said that a paste is under way: it takes longer than an eye blinks. */
const long = 10_000;

/** Puts a text from the clipboard into the sheet, from the first chosen cell on. The worker takes it apart. */
export async function paste(page: Page, text: string): Promise<boolean> {
  const { selection, sheet } = page;
  if (!selection.value || !sheet.value || text === '') return false;
  const { columns: chosen, runs, row, rows } = selection.value;
  const shown = sheet.value.columns.filter(({ hidden }) => !hidden);
  const columns = shown.slice(shown.findIndex(({ id }) => id === chosen[0])).map(({ id }) => id);
  const lines = mostLines(text);
  if (text.length > long) page.busy.value = `Pasting ${lines.toLocaleString('en')} lines`;
  try {
    return await run(page, {
      do: 'paste-text',
      sheet: sheet.value.id,
      text,
      columns,
      runs: linesFrom(page, runs[0]?.row ?? row, Math.max(lines, rows)),
      over: { rows: Math.max(rows, 1), columns: chosen.length },
    });
  } finally {
    page.busy.value = null;
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

import { batch } from '@preact/signals';
import type { Place } from '../../session/api.ts';
import type { Command } from '../../session/commands/index.ts';
import type { Opened } from '../../worker/protocol.ts';
import type { BookFile } from '../files/files.ts';
import type { Page } from './page.ts';
import { say, settle } from './page.ts';

/**
 * Commands that change values and no shape. What they come to is asked for in the same breath: the worker has it before
 * it has stored the change, which is what its answer waits for.
 */
const onlyValues: ReadonlySet<Command['do']> = new Set(['set-cells', 'clear-cells', 'fill', 'set-formula']);

/** Runs a command of the book. Answers whether it was done; a refusal is said on the page. */
export async function run(page: Page, command: Command): Promise<boolean> {
  return guarded(page, async () => {
    const done = page.service.run(command);
    if (onlyValues.has(command.do)) page.grid.current?.refresh();
    return settle(page, await done);
  });
}

/** Runs several commands of the book as one step. */
export async function runAll(page: Page, words: string, commands: readonly Command[]): Promise<boolean> {
  return guarded(page, async () => settle(page, await page.service.runAll(words, commands)));
}

/** Deletes; where formulas, charts or other parts of the book would lose something by it, that is said first. */
export async function runAfterWarning(
  page: Page,
  words: string,
  commands: readonly Command[],
): Promise<void> {
  const act = () =>
    void (commands.length === 1 && commands[0] ? run(page, commands[0]) : runAll(page, words, commands));
  const losses = await page.service.losses(commands);
  if (losses.length === 0) return act();
  page.dialogue.value = {
    is: 'confirm',
    title: `${words}?`,
    text: `${losses.join(' ')} Undo brings everything back.`,
    label: 'Delete',
    act,
  };
}

export async function undo(page: Page): Promise<void> {
  await guarded(page, async () => settle(page, await page.service.undo()));
}

export async function redo(page: Page): Promise<void> {
  await guarded(page, async () => settle(page, await page.service.redo()));
}

/** Opens a book in place of the one on show. */
export async function openBook(
  page: Page,
  text: string,
  file: BookFile | null,
  name: string,
  sample = false,
): Promise<boolean> {
  return guarded(page, async () => {
    page.busy.value = `Opening ${name}`;
    try {
      const opened = take(page, await page.service.open(text, name, { sample }), file);
      if (opened) page.sample.value = sample;
      return opened;
    } finally {
      page.busy.value = null;
    }
  });
}

/** Opens a book that this browser keeps; taken over, another tab that writes it stops. */
export async function openKept(page: Page, id: string, takeOver = false): Promise<boolean> {
  return guarded(page, async () => take(page, await page.service.openStored(id, { takeOver }), null));
}

export async function newBook(page: Page): Promise<boolean> {
  return guarded(page, async () => take(page, await page.service.blank(), null));
}

function take(page: Page, opened: Opened, file: BookFile | null): boolean {
  page.progress.value = null;
  if (!opened.ok) {
    say(page, opened.sentence, 'wrong');
    return false;
  }
  const { outline } = opened;
  batch(() => {
    page.selection.value = null;
    page.chart.value = null;
    page.rack.value = null;
    page.cell.value = null;
    page.sheetId.value = outline.sheets[0]?.id ?? null;
    page.outline.value = outline;
    page.savedAt.value = outline.changed;
    page.file.value = file;
    page.sample.value = false;
  });
  if (opened.notes.length > 0) say(page, opened.notes.join(' '), 'wrong');
  return true;
}

/** Shows a place: its sheet, and the cell or column in it. */
export function goTo(page: Page, place: Place): void {
  page.contentsOpen.value = false;
  page.sheetId.value = place.sheet;
  page.chart.value = null;
  page.rack.value = null;
  // The grid takes in the new sheet first.
  requestAnimationFrame(() => {
    if (place.row === undefined) page.grid.current?.selectColumn(place.column);
    else page.grid.current?.select(place.row, place.column);
  });
}

/** Chooses the column of a sheet that was not among those before, and brings it into view. */
export function showNewColumn(page: Page, sheet: string, before: ReadonlySet<string>): void {
  const columns = page.outline.value?.sheets.find(({ id }) => id === sheet)?.columns;
  const made = columns?.find(({ id }) => !before.has(id));
  if (made) goTo(page, { sheet, column: made.id });
}

/** Runs something that may fail for reasons nobody foresaw; such a failure is said, not swallowed. */
export async function guarded(page: Page, work: () => Promise<boolean>): Promise<boolean> {
  page.working.value = page.working.peek() + 1;
  try {
    return await work();
  } catch (reason) {
    say(page, reason instanceof Error ? reason.message : String(reason), 'wrong');
    return false;
  } finally {
    page.working.value = page.working.peek() - 1;
  }
}

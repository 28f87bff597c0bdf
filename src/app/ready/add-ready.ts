import type { SheetOutline } from '../../session/api.ts';
import type { Command } from '../../session/commands/index.ts';
import { goTo, runAll } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import { type Ready, readySheet } from './ready-sheets.ts';

/** The sheet that a blank book begins with, while nobody has done anything to it. */
const untouched = ({ rows, columns }: SheetOutline): boolean =>
  rows === 0 && columns.length === 1 && columns[0]?.name === 'athlete';

/** Adds such a sheet as one step and shows it; the untouched sheet of a blank book makes room for it. */
export async function addReady(page: Page, which: Ready): Promise<void> {
  const sheets = page.outline.peek()?.sheets ?? [];
  const [first] = sheets;
  const blank = sheets.length === 1 && first && untouched(first) ? first : null;
  const before = new Set(sheets.map(({ id }) => id));
  const commands: Command[] = [readySheet(which, blank ? [] : sheets)];
  if (blank) commands.push({ do: 'remove-sheet', sheet: blank.id });
  if (!(await runAll(page, `Add ${which === 'body lengths' ? which : `a ${which}`}`, commands))) return;
  const made = page.outline.peek()?.sheets.find(({ id }) => !before.has(id));
  const [column] = made?.columns ?? [];
  if (made && column) goTo(page, { sheet: made.id, column: column.id, row: 0 });
}

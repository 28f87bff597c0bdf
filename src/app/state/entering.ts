import type { Command } from '../../session/commands/index.ts';
import type { GridEntry, GridSelection } from '../grid/host.ts';
import { run, runAll } from './actions.ts';
import type { Page } from './page.ts';

/** Runs a command for each run of rows, as one step. */
export async function runOver(
  page: Page,
  selection: GridSelection,
  words: string,
  make: (row: number, rows: number) => Command,
): Promise<boolean> {
  const commands = selection.runs.map(({ row, count }) => make(row, count));
  const [only] = commands;
  if (!only) return false;
  return commands.length === 1 ? run(page, only) : runAll(page, words, commands);
}

/** Puts typed or pasted texts into the book. Lines beyond the rows there are make new rows. */
export async function enter(page: Page, sheet: string, entry: GridEntry): Promise<boolean> {
  const commands: Command[] = [];
  let line = 0;
  for (const { row, count } of entry.runs) {
    const texts = entry.texts.slice(line, line + count).map((texts) => [...texts]);
    line += count;
    if (texts.length > 0)
      commands.push({
        do: 'set-cells',
        sheet,
        row,
        columns: [...entry.columns],
        texts,
        formulas: entry.formulas,
      });
  }
  const [only] = commands;
  if (!only) return false;
  return commands.length === 1 ? run(page, only) : runAll(page, 'Change cells', commands);
}

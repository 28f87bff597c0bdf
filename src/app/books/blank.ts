/** What a blank book begins with, as commands. */
import type { Command } from '../../session/commands/index.ts';
import { newBook, runAll } from '../state/actions.ts';
import type { Page } from '../state/page.ts';

const commands: readonly Command[] = [
  { do: 'set-title', title: 'New book' },
  {
    do: 'add-sheet',
    name: 'roster',
    label: 'Roster',
    purpose: 'gathered',
    columns: [{ label: 'Athlete', kind: 'text', width: 160 }],
  },
];

/** A new book with one empty sheet. */
export async function openBlank(page: Page): Promise<boolean> {
  return (await newBook(page)) && runAll(page, 'Start with a blank book', commands);
}

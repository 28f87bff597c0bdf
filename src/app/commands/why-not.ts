import type { Page } from '../state/page.ts';
import type { PageCommand } from './command.ts';
import { isEnabled } from './command.ts';

/** Reasons that the state of the page alone does not give. */
const own: Readonly<Record<string, string>> = {
  undo: 'Nothing to undo.',
  redo: 'Nothing to redo.',
  'fill-down': 'Select two rows or more.',
  'fill-series': 'Select three rows or more; the first two start the series.',
  'release-cells': 'This cell is not an override.',
  'arrange-again': 'No sort, filter or grouping is on.',
  'view-off': 'No sort, filter or grouping is on.',
  'rack-mode': 'Add a sheet with a column of athletes and a column of numbers first.',
  'sort-for-good': 'Sort or group the rows first.',
  'unfreeze-columns': 'No columns are frozen.',
  'show-columns': 'No columns are hidden.',
  'hide-columns': 'One column must stay visible.',
  'remove-sheet': 'A book needs at least one sheet.',
  'move-rows-up': 'Select rows below the first, with no sort, filter or grouping on.',
  'move-rows-down': 'Select rows above the last, with no sort, filter or grouping on.',
  'move-column-left': 'This column is already the first.',
  'move-column-right': 'This column is already the last.',
  'move-sheet-up': 'This sheet is already the first.',
  'move-sheet-down': 'This sheet is already the last.',
};

/** Why a command cannot be run now, one sentence; undefined when it can. */
export function whyNot(command: PageCommand, page: Page): string | undefined {
  if (isEnabled(command, page)) return undefined;
  if (page.outline.value === null) return 'Open a book first.';
  if (page.chart.value !== null && (command.over || ['Column', 'Row'].includes(command.group)))
    return 'Close the chart first.';
  if (page.rack.value !== null && (command.over || ['Column', 'Row'].includes(command.group)))
    return 'Close rack mode first.';
  if (page.sheet.value === null) return 'Add a sheet first.';
  if (page.selection.value === null && ['Edit', 'Column', 'Row'].includes(command.group) && !own[command.id])
    return 'Select a cell first.';
  return own[command.id] ?? 'Not available for this selection.';
}

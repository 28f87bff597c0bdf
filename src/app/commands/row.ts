/** Commands about the selected rows. */
import { run, runAll } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const chosen = ({ selection }: Page): boolean => selection.value !== null;
const many = ({ selection }: Page): number => Math.max(1, selection.value?.rows ?? 1);
/** The selected rows when they follow each other and are all there. */
const block = ({ selection, sheet }: Page) => {
  const [run, ...more] = selection.value?.runs ?? [];
  return run && more.length === 0 && run.row + run.count <= (sheet.value?.rows ?? 0) ? run : undefined;
};
const rows = (count: number): string => (count === 1 ? 'row' : `${count} rows`);

const add = (id: string, where: string, after: boolean): PageCommand => ({
  id,
  group: 'Row',
  label: (page) => `Add ${many(page) === 1 ? 'a row' : rows(many(page))} ${where}`,
  icon: 'plus',
  searchWords: 'insert new',
  over: ['rows'],
  enabled: (page) => block(page) !== undefined,
  run: async (page) => {
    const selection = page.selection.value;
    const rows = block(page);
    if (!selection || !rows) return;
    const { sheet, column } = selection;
    const row = after ? rows.row + rows.count : rows.row;
    if (await run(page, { do: 'add-rows', sheet, row, count: rows.count }))
      page.grid.current?.select(row, column);
  },
});

const shift = (id: string, label: string, step: number, key: string): PageCommand => ({
  id,
  group: 'Row',
  label,
  keys: [key],
  searchWords: 'reorder position',
  over: ['rows'],
  enabled: (page) => {
    const rows = block(page);
    if (!rows || !page.shown.value?.lines.plain) return false;
    return step < 0 ? rows.row > 0 : rows.row + rows.count < (page.sheet.value?.rows ?? 0);
  },
  run: async (page) => {
    const selection = page.selection.value;
    const rows = block(page);
    if (!selection || !rows) return;
    const to = rows.row + step;
    if (await run(page, { do: 'move-rows', sheet: selection.sheet, row: rows.row, count: rows.count, to }))
      page.grid.current?.select(to, selection.column);
  },
});

export const rowCommands: readonly PageCommand[] = [
  add('add-rows-above', 'above', false),
  add('add-rows-below', 'below', true),
  {
    id: 'add-rows-end',
    group: 'Row',
    label: 'Add a row at the end',
    keys: ['Mod+Enter'],
    searchWords: 'insert new append',
    enabled: ({ sheet }) => sheet.value !== null,
    run: async (page) => {
      const sheet = page.sheet.value;
      if (sheet && (await run(page, { do: 'add-rows', sheet: sheet.id, count: 1 })))
        page.grid.current?.select(sheet.rows, sheet.columns.find(({ hidden }) => !hidden)?.id ?? '');
    },
  },
  shift('move-rows-up', 'Move the rows up', -1, 'Alt+Shift+ArrowUp'),
  shift('move-rows-down', 'Move the rows down', 1, 'Alt+Shift+ArrowDown'),
  {
    id: 'remove-rows',
    apart: true,
    group: 'Row',
    label: (page) => `Delete ${rows(many(page))}`,
    searchWords: 'remove',
    over: ['rows'],
    enabled: (page) => chosen(page) && (page.sheet.value?.rows ?? 0) > 0,
    run: async (page) => {
      const selection = page.selection.value;
      if (!selection) return;
      const { sheet, runs } = selection;
      // From the last one up, so that the rows that are still to go keep their numbers.
      const commands = runs
        .map(({ row, count }) => ({ do: 'remove-rows' as const, sheet, row, count }))
        .sort((a, b) => b.row - a.row);
      await runAll(page, `Delete ${rows(many(page))}`, commands);
    },
  },
];

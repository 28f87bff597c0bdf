import { run } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const chosen = ({ selection }: Page): boolean => selection.value !== null;
const many = ({ selection }: Page): number =>
  selection.value ? selection.value.toRow - selection.value.fromRow + 1 : 1;
const rows = (count: number): string => (count === 1 ? 'row' : `${count} rows`);

const add = (id: string, where: string, after: boolean): PageCommand => ({
  id,
  group: 'Row',
  label: (page) => `New ${rows(many(page))} ${where}`,
  icon: 'plus',
  searchWords: 'insert add',
  over: ['rows'],
  enabled: chosen,
  run: async (page) => {
    const selection = page.selection.value;
    if (!selection) return;
    const { sheet, fromRow, toRow, column } = selection;
    const row = after ? toRow + 1 : fromRow;
    if (await run(page, { do: 'add-rows', sheet, row, count: toRow - fromRow + 1 }))
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
    const { selection, sheet } = page;
    if (!selection.value || !sheet.value) return false;
    return step < 0 ? selection.value.fromRow > 0 : selection.value.toRow < sheet.value.rows - 1;
  },
  run: async (page) => {
    const selection = page.selection.value;
    if (!selection) return;
    const { sheet, fromRow, toRow, column } = selection;
    if (
      await run(page, {
        do: 'move-rows',
        sheet,
        row: fromRow,
        count: toRow - fromRow + 1,
        to: fromRow + step,
      })
    )
      page.grid.current?.select(fromRow + step, column);
  },
});

export const rowCommands: readonly PageCommand[] = [
  add('add-rows-above', 'above', false),
  add('add-rows-below', 'below', true),
  {
    id: 'add-rows-end',
    group: 'Row',
    label: 'New row at the end',
    keys: ['Mod+Enter'],
    searchWords: 'insert add append',
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
    group: 'Row',
    label: (page) => `Delete ${rows(many(page))}`,
    searchWords: 'remove',
    over: ['rows'],
    enabled: (page) => chosen(page) && (page.sheet.value?.rows ?? 0) > 0,
    run: async (page) => {
      const selection = page.selection.value;
      if (!selection) return;
      const { sheet, fromRow, toRow } = selection;
      await run(page, { do: 'remove-rows', sheet, row: fromRow, count: toRow - fromRow + 1 });
    },
  },
];

import { redo, run, undo } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const chosen = (page: Page): boolean => page.selection.value !== null;

export const editCommands: readonly PageCommand[] = [
  {
    id: 'undo',
    group: 'Edit',
    label: ({ outline }) => (outline.value?.undo ? `Undo: ${outline.value.undo}` : 'Undo'),
    keys: ['Mod+Z'],
    icon: 'undo',
    enabled: ({ outline }) => outline.value?.undo != null,
    run: undo,
  },
  {
    id: 'redo',
    group: 'Edit',
    label: ({ outline }) => (outline.value?.redo ? `Redo: ${outline.value.redo}` : 'Redo'),
    keys: ['Mod+Y', 'Mod+Shift+Z'],
    icon: 'redo',
    enabled: ({ outline }) => outline.value?.redo != null,
    run: redo,
  },
  {
    id: 'edit-cell',
    group: 'Edit',
    label: 'Edit this cell',
    keys: ['F2'],
    inGrid: true,
    over: ['cells'],
    enabled: chosen,
    run: (page) => page.grid.current?.edit(),
  },
  {
    id: 'name-cell',
    group: 'Edit',
    label: ({ cell }) => (cell.value?.name ? `Name of this cell: ${cell.value.name}…` : 'Name this cell…'),
    icon: 'named',
    searchWords: 'rename named variable',
    over: ['cells'],
    enabled: ({ selection, sheet }) =>
      (selection.value?.row ?? 0) < (sheet.value?.rows ?? 0) && selection.value !== null,
    run: ({ dialogue, selection, cell }) => {
      if (!selection.value) return;
      const { sheet, column, row } = selection.value;
      dialogue.value = { is: 'name', place: { sheet, column, row }, name: cell.value?.name ?? null };
    },
  },
  {
    id: 'clear-cells',
    group: 'Edit',
    label: 'Clear the chosen cells',
    keys: ['Delete', 'Backspace'],
    inGrid: true,
    searchWords: 'delete empty erase',
    over: ['cells', 'columns', 'rows'],
    enabled: chosen,
    run: async (page) => {
      const selection = page.selection.value;
      if (!selection) return;
      await run(page, {
        do: 'clear-cells',
        sheet: selection.sheet,
        row: selection.fromRow,
        rows: selection.toRow - selection.fromRow + 1,
        columns: [...selection.columns],
      });
    },
  },
  {
    id: 'release-cells',
    group: 'Edit',
    label: "Give the chosen cells back to the column's formula",
    searchWords: 'release override own value',
    over: ['cells'],
    enabled: (page) => activeColumn(page)?.formula !== undefined && (page.cell.value?.override ?? false),
    run: async (page) => {
      const selection = page.selection.value;
      if (!selection) return;
      await run(page, {
        do: 'release-cells',
        sheet: selection.sheet,
        row: selection.fromRow,
        rows: selection.toRow - selection.fromRow + 1,
        columns: [...selection.columns],
      });
    },
  },
];

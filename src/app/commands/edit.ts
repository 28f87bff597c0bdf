/** Commands that edit cells: undo, copy, paste, clear, fill and find. */
import { redo, run, undo } from '../state/actions.ts';
import { copy, pasteFromClipboard } from '../state/clipboard.ts';
import { runOver } from '../state/entering.ts';
import type { Page } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const chosen = (page: Page): boolean => page.selection.value !== null;

async function clear(page: Page): Promise<void> {
  const selection = page.selection.value;
  if (!selection) return;
  await runOver(page, selection, 'Clear cells', (row, rows) => ({
    do: 'clear-cells',
    sheet: selection.sheet,
    row,
    rows,
    columns: [...selection.columns],
  }));
}

async function fill(page: Page, series: boolean): Promise<void> {
  const selection = page.selection.value;
  const [first] = selection?.runs ?? [];
  if (!selection || !first) return;
  // The line that makes a new row is no row to fill.
  const rows = { ...first, count: Math.min(first.count, (page.sheet.value?.rows ?? 0) - first.row) };
  const fromRows = series ? 2 : 1;
  if (rows.count <= fromRows) return;
  await run(page, {
    do: 'fill',
    sheet: selection.sheet,
    columns: [...selection.columns],
    from: rows.row,
    fromRows,
    row: rows.row + fromRows,
    rows: rows.count - fromRows,
    series,
  });
}

export const editCommands: readonly PageCommand[] = [
  {
    id: 'undo',
    group: 'Edit',
    label: ({ outline }) => (outline.value?.undo ? `Undo: ${outline.value.undo}` : 'Undo'),
    keys: ['Mod+Z'],
    icon: 'undo',
    hint: ({ outline }) => outline.value?.undoEnd,
    // Where undo has ended before its time, pressing it says why.
    enabled: ({ outline }) => outline.value?.undo != null || outline.value?.undoEnd !== undefined,
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
    id: 'cut',
    apart: true,
    group: 'Edit',
    label: 'Cut',
    keys: ['Mod+X'],
    inGrid: true,
    over: ['cells', 'columns', 'rows'],
    enabled: chosen,
    run: async (page) => {
      if (page.selection.value && (await copy(page, page.selection.value))) await clear(page);
    },
  },
  {
    id: 'copy',
    group: 'Edit',
    label: 'Copy',
    keys: ['Mod+C'],
    inGrid: true,
    over: ['cells', 'columns', 'rows'],
    enabled: chosen,
    run: async (page) => {
      if (page.selection.value) await copy(page, page.selection.value);
    },
  },
  {
    id: 'paste',
    group: 'Edit',
    label: 'Paste',
    keys: ['Mod+V'],
    inGrid: true,
    over: ['cells'],
    enabled: chosen,
    run: async (page) => {
      await pasteFromClipboard(page);
    },
  },
  {
    id: 'fill-down',
    apart: true,
    group: 'Edit',
    label: 'Fill down',
    keys: ['Mod+D'],
    searchWords: 'copy repeat',
    over: ['cells'],
    enabled: ({ selection }) => (selection.value?.rows ?? 0) > 1 && selection.value?.runs.length === 1,
    run: (page) => fill(page, false),
  },
  {
    id: 'fill-series',
    group: 'Edit',
    label: 'Continue the series',
    searchWords: 'fill continue count',
    over: ['cells'],
    enabled: ({ selection }) => (selection.value?.rows ?? 0) > 2 && selection.value?.runs.length === 1,
    run: (page) => fill(page, true),
  },
  {
    id: 'find',
    apart: true,
    group: 'Edit',
    label: 'Find and replace…',
    keys: ['Mod+F'],
    icon: 'find',
    searchWords: 'search substitute',
    enabled: ({ sheet }) => sheet.value !== null,
    run: ({ dialogue }) => {
      dialogue.value = { is: 'find' };
    },
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
    label: ({ cell }) =>
      cell.value?.name ? `Edit the setting ${cell.value.name}…` : 'Name this cell as a setting…',
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
    label: 'Clear the selected cells',
    keys: ['Delete', 'Backspace'],
    inGrid: true,
    searchWords: 'delete empty erase',
    over: ['cells', 'columns', 'rows'],
    enabled: chosen,
    run: clear,
  },
  {
    id: 'release-cells',
    group: 'Edit',
    label: 'Restore the column formula here',
    searchWords: 'release override give back',
    over: ['cells'],
    enabled: (page) => activeColumn(page)?.formula !== undefined && (page.cell.value?.override ?? false),
    run: async (page) => {
      const selection = page.selection.value;
      if (!selection) return;
      await runOver(page, selection, 'Restore the column formula', (row, rows) => ({
        do: 'release-cells',
        sheet: selection.sheet,
        row,
        rows,
        columns: [...selection.columns],
      }));
    },
  },
];

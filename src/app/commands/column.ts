/** Commands about the active column. */
import { run, runAfterWarning, runAll, showNewColumn } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const has = (page: Page): boolean => activeColumn(page) !== null;

/** Where the active column stands in its sheet, hidden ones counted. */
const place = (page: Page): number =>
  page.sheet.value?.columns.findIndex(({ id }) => id === page.selection.value?.column) ?? -1;

const insert = (id: string, label: string, after: number, key: string): PageCommand => ({
  id,
  group: 'Column',
  label,
  keys: [key],
  icon: 'plus',
  searchWords: 'add new insert',
  over: ['columns'],
  enabled: (page) => page.sheet.value !== null,
  run: (page) => {
    const sheet = page.sheet.value;
    if (!sheet) return;
    const at = place(page);
    page.dialogue.value = {
      is: 'column',
      sheet: sheet.id,
      index: at < 0 ? sheet.columns.length : at + after,
    };
  },
});

const shift = (id: string, label: string, step: number, key: string): PageCommand => ({
  id,
  group: 'Column',
  label,
  keys: [key],
  searchWords: 'reorder position',
  over: ['columns'],
  enabled: (page) => {
    const to = place(page) + step;
    return has(page) && to >= 0 && to < (page.sheet.value?.columns.length ?? 0);
  },
  run: async (page) => {
    const { sheet, selection } = page;
    if (!sheet.value || !selection.value) return;
    const { column, row } = selection.value;
    await run(page, { do: 'move-column', sheet: sheet.value.id, column, index: place(page) + step });
    page.grid.current?.select(row, column);
  },
});

export const columnCommands: readonly PageCommand[] = [
  {
    id: 'edit-column-formula',
    group: 'Column',
    label: (page) => {
      const column = activeColumn(page);
      return column ? `Edit the column formula of ${column.label}` : 'Edit the column formula';
    },
    keys: ['Shift+F2'],
    icon: 'column',
    searchWords: 'column formula compute',
    over: ['columns', 'cells'],
    enabled: has,
    run: (page) => {
      page.scopeChoice.value = 'column';
      page.line.current?.focus();
    },
  },
  {
    id: 'change-column',
    group: 'Column',
    label: (page) => {
      const column = activeColumn(page);
      return column ? `Change ${column.label}: name, kind, unit…` : 'Change the column…';
    },
    keys: ['Alt+Enter'],
    searchWords: 'rename unit kind format digits choices dimension note properties',
    over: ['columns'],
    enabled: has,
    run: (page) => {
      const { sheet, selection } = page;
      if (sheet.value && selection.value)
        page.dialogue.value = {
          is: 'column',
          sheet: sheet.value.id,
          column: selection.value.column,
          index: place(page),
        };
    },
  },
  {
    id: 'marks',
    group: 'Column',
    label: (page) => {
      const column = activeColumn(page);
      return column ? `Mark cells of ${column.label}…` : 'Mark cells of the column…';
    },
    keys: ['Alt+Shift+M'],
    searchWords: 'marks on rule condition colour highlight symbol flag bar scale trend line small chart',
    over: ['columns', 'cells'],
    enabled: has,
    run: ({ sheet, selection, dialogue }) => {
      if (sheet.value && selection.value)
        dialogue.value = { is: 'marks', sheet: sheet.value.id, column: selection.value.column };
    },
  },
  insert('insert-column-before', 'Add a column before this one…', 0, 'Alt+Shift+Insert'),
  insert('insert-column-after', 'Add a column after this one…', 1, 'Alt+Insert'),
  {
    id: 'duplicate-column',
    apart: true,
    group: 'Column',
    label: 'Duplicate the column',
    searchWords: 'copy',
    over: ['columns'],
    enabled: has,
    run: async (page) => {
      const { sheet, selection } = page;
      if (!sheet.value || !selection.value) return;
      const { id, columns } = sheet.value;
      const before = new Set(columns.map((column) => column.id));
      if (await run(page, { do: 'duplicate-column', sheet: id, column: selection.value.column }))
        showNewColumn(page, id, before);
    },
  },
  shift('move-column-left', 'Move the column to the left', -1, 'Alt+Shift+ArrowLeft'),
  shift('move-column-right', 'Move the column to the right', 1, 'Alt+Shift+ArrowRight'),
  {
    id: 'hide-columns',
    apart: true,
    group: 'Column',
    label: 'Hide the selected columns',
    over: ['columns'],
    enabled: (page) =>
      has(page) &&
      (page.sheet.value?.columns.filter(({ hidden }) => !hidden).length ?? 0) >
        (page.selection.value?.columns.length ?? 0),
    run: async (page) => {
      const { selection } = page;
      if (!selection.value) return;
      const { sheet, columns } = selection.value;
      await runAll(
        page,
        columns.length > 1 ? `Hide ${columns.length} columns` : 'Hide a column',
        columns.map((column) => ({ do: 'change-column', sheet, column, change: { hidden: true } })),
      );
    },
  },
  {
    id: 'show-columns',
    group: 'Column',
    label: ({ sheet }) => {
      const count = sheet.value?.columns.filter(({ hidden }) => hidden).length ?? 0;
      return count ? `Show the ${count} hidden ${count === 1 ? 'column' : 'columns'}` : 'Show hidden columns';
    },
    searchWords: 'unhide',
    over: ['columns'],
    enabled: ({ sheet }) => sheet.value?.columns.some(({ hidden }) => hidden) ?? false,
    run: async (page) => {
      const sheet = page.sheet.value;
      if (!sheet) return;
      await runAll(
        page,
        'Show hidden columns',
        sheet.columns
          .filter(({ hidden }) => hidden)
          .map(({ id }) => ({ do: 'change-column', sheet: sheet.id, column: id, change: { hidden: null } })),
      );
    },
  },
  {
    id: 'remove-columns',
    group: 'Column',
    label: (page) => {
      const many = page.selection.value?.what === 'columns' ? page.selection.value.columns.length : 1;
      const column = activeColumn(page);
      return many > 1 ? `Delete ${many} columns` : `Delete ${column ? column.label : 'the column'}`;
    },
    searchWords: 'remove',
    over: ['columns'],
    enabled: has,
    run: async (page) => {
      const { selection } = page;
      if (!selection.value) return;
      const { sheet, what, columns, column } = selection.value;
      const ids = what === 'columns' ? columns : [column];
      await runAfterWarning(
        page,
        ids.length > 1 ? `Delete ${ids.length} columns` : `Delete ${activeColumn(page)?.label ?? 'a column'}`,
        ids.map((one) => ({ do: 'remove-column', sheet, column: one })),
      );
    },
  },
];

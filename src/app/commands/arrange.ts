/** Commands that arrange a sheet's rows for looking: sort, filter, group and freeze. */
import { type Statistic, statistics } from '../../session/sheet/sheet-view.ts';
import { statisticNames } from '../../session/sheet/statistic-names.ts';
import { run } from '../state/actions.ts';
import { changeRows, changeView } from '../state/change-view.ts';
import { orderInWords } from '../state/order-words.ts';
import type { Page } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';
import { arrangeAgain, arranges } from '../state/shown.ts';
import type { PageCommand } from './command.ts';

const has = (page: Page): boolean => activeColumn(page) !== null;
const viewed = (page: Page): boolean => arranges(page.sheet.value?.view?.rows);
const labelOf = (page: Page): string => activeColumn(page)?.label ?? 'this column';

const sort = (id: string, descending: boolean, key: string): PageCommand => ({
  id,
  apart: !descending,
  group: 'Column',
  label: (page) => `Sort by ${labelOf(page)}: ${orderInWords(activeColumn(page)?.kind, descending)}`,
  keys: [key],
  searchWords: 'show sorted order ascending descending rank view',
  over: ['columns'],
  enabled: has,
  run: async (page) => {
    const column = activeColumn(page);
    if (column)
      await changeRows(page, `Sort by ${column.label}`, (rows) => ({
        ...rows,
        sort: [
          { column: column.id, ...(descending ? { descending } : {}) },
          ...(rows.sort ?? []).filter((one) => one.column !== column.id),
        ].slice(0, 3),
      }));
  },
});

const summary = (statistic: Statistic): PageCommand => ({
  id: `summary-${statistic}`,
  apart: statistic === 'count',
  group: 'Sheet',
  label: `Summary row: ${statisticNames[statistic]}`,
  searchWords: 'total average footer statistics',
  enabled: ({ sheet }) => sheet.value !== null,
  on: ({ sheet }) => sheet.value?.view?.statistic === statistic,
  run: async (page) => {
    await changeView(page, 'Change the summary row', ({ statistic: now, ...view }) =>
      now === statistic ? view : { ...view, statistic },
    );
  },
});

/** Ways to look at a sheet that leave its data and their order alone. */
export const arrangeCommands: readonly PageCommand[] = [
  sort('sort-up', false, 'Alt+Shift+U'),
  sort('sort-down', true, 'Alt+Shift+D'),
  {
    id: 'filter',
    group: 'Column',
    label: (page) => `Filter by ${labelOf(page)}…`,
    keys: ['Alt+Shift+F'],
    icon: 'filter',
    searchWords: 'filter where condition hide rows',
    over: ['columns', 'cells'],
    enabled: has,
    run: (page) => {
      const { sheet, selection } = page;
      if (sheet.value && selection.value)
        page.dialogue.value = { is: 'filter', sheet: sheet.value.id, column: selection.value.column };
    },
  },
  {
    id: 'group',
    group: 'Column',
    label: (page) => `Group by ${labelOf(page)}`,
    searchWords: 'subtotal per each view',
    over: ['columns'],
    enabled: has,
    run: async (page) => {
      const column = activeColumn(page);
      if (column)
        await changeRows(page, `Group by ${column.label}`, (rows) => ({ ...rows, group: column.id }));
    },
  },
  {
    id: 'arrange-again',
    apart: true,
    group: 'Sheet',
    label: 'Re-apply sort, filter and groups',
    searchWords: 'refresh reapply view',
    enabled: viewed,
    run: () => {
      arrangeAgain.value++;
    },
  },
  {
    id: 'view-off',
    group: 'Sheet',
    label: 'Clear sort, filter and groups',
    searchWords: 'clear filter sort group reset view',
    enabled: viewed,
    run: async (page) => {
      await changeRows(page, 'Clear sort, filter and groups', () => ({}));
    },
  },
  {
    id: 'sort-for-good',
    group: 'Sheet',
    label: 'Make this row order permanent',
    searchWords: 'sort reorder data',
    enabled: (page) =>
      Boolean(page.sheet.value?.view?.rows?.sort?.length || page.sheet.value?.view?.rows?.group),
    run: async (page) => {
      const sheet = page.sheet.value;
      const { sort = [], group } = sheet?.view?.rows ?? {};
      if (!sheet) return;
      const by =
        group === undefined ? sort : [{ column: group }, ...sort.filter(({ column }) => column !== group)];
      await run(page, {
        do: 'sort-rows',
        sheet: sheet.id,
        by: by.map(({ column, descending }) => ({ column, ...(descending ? { descending } : {}) })),
      });
    },
  },
  {
    id: 'column-summary',
    apart: true,
    group: 'Column',
    label: (page) => `Set the summary of ${labelOf(page)}…`,
    searchWords: 'median total average formula statistics summary row footer group',
    over: ['columns'],
    enabled: has,
    run: ({ sheet, selection, dialogue }) => {
      if (sheet.value && selection.value)
        dialogue.value = { is: 'summary', sheet: sheet.value.id, column: selection.value.column };
    },
  },
  ...statistics.map(summary),
  {
    id: 'freeze-columns',
    apart: true,
    group: 'Column',
    label: (page) => `Freeze columns up to ${labelOf(page)}`,
    searchWords: 'keep in view fix pin',
    over: ['columns'],
    enabled: has,
    run: async (page) => {
      const shown = page.sheet.value?.columns.filter(({ hidden }) => !hidden) ?? [];
      const count = shown.findIndex(({ id }) => id === page.selection.value?.column) + 1;
      await changeView(page, 'Freeze columns', (view) => ({ ...view, frozen: count }));
    },
  },
  {
    id: 'unfreeze-columns',
    group: 'Column',
    label: 'Unfreeze columns',
    searchWords: 'scroll unpin',
    enabled: (page) => (page.shown.value?.frozen ?? 0) > 0,
    run: async (page) => {
      await changeView(page, 'Unfreeze columns', (view) => ({ ...view, frozen: 0 }));
    },
  },
];

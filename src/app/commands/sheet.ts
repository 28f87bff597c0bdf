/** Commands about the sheet on show. */
import type { Ready } from '../ready/ready-sheets.ts';
import { run, runAfterWarning } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import type { IconName } from '../theme/icons.tsx';
import type { PageCommand } from './command.ts';

const open = ({ sheet }: Page): boolean => sheet.value !== null;
const index = ({ outline, sheetId }: Page): number =>
  outline.value?.sheets.findIndex(({ id }) => id === sheetId.value) ?? -1;

const shift = (id: string, label: string, step: number): PageCommand => ({
  id,
  group: 'Sheet',
  label,
  searchWords: 'reorder position',
  enabled: (page) => {
    const to = index(page) + step;
    return open(page) && to >= 0 && to < (page.outline.value?.sheets.length ?? 0);
  },
  run: async (page) => {
    if (page.sheet.value)
      await run(page, { do: 'move-sheet', sheet: page.sheet.value.id, index: index(page) + step });
  },
});

const ready = (which: Ready, label: string, icon: IconName, searchWords: string): PageCommand => ({
  id: `add-${which.replace(' ', '-')}`,
  group: 'Sheet',
  label,
  icon,
  searchWords: `new table ${searchWords}`,
  enabled: ({ outline }) => outline.value !== null,
  run: async (page) => (await import('../ready/add-ready.ts')).addReady(page, which),
});

export const sheetCommands: readonly PageCommand[] = [
  {
    id: 'add-sheet',
    group: 'Sheet',
    label: 'Add a sheet…',
    icon: 'plus',
    searchWords: 'new table',
    enabled: ({ outline }) => outline.value !== null,
    run: (page) => {
      page.dialogue.value = { is: 'sheet' };
    },
  },
  ready('body lengths', 'Add body lengths', 'figure', 'roster femur tibia trunk anthropometry'),
  ready('training log', 'Add a training log', 'chart', 'sessions sets reps load RPE'),
  ready('wall test', 'Add a wall test', 'gathered', 'ankle knee dorsiflexion trials'),
  {
    id: 'change-sheet',
    group: 'Sheet',
    label: 'Change this sheet: name, purpose, note…',
    searchWords: 'rename label',
    enabled: open,
    run: (page) => {
      if (page.sheet.value) page.dialogue.value = { is: 'sheet', sheet: page.sheet.value.id };
    },
  },
  {
    id: 'duplicate-sheet',
    group: 'Sheet',
    label: 'Duplicate this sheet',
    searchWords: 'copy',
    enabled: open,
    run: async (page) => {
      if (page.sheet.value) await run(page, { do: 'duplicate-sheet', sheet: page.sheet.value.id });
    },
  },
  shift('move-sheet-up', 'Move this sheet up in the contents', -1),
  shift('move-sheet-down', 'Move this sheet down in the contents', 1),
  {
    id: 'remove-sheet',
    group: 'Sheet',
    label: ({ sheet }) => `Delete ${sheet.value?.label ?? 'this sheet'}`,
    searchWords: 'remove',
    enabled: (page) => open(page) && (page.outline.value?.sheets.length ?? 0) > 1,
    run: async (page) => {
      const { value: sheet } = page.sheet;
      if (sheet)
        await runAfterWarning(page, `Delete ${sheet.label}`, [{ do: 'remove-sheet', sheet: sheet.id }]);
    },
  },
];

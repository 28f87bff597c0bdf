import { activeColumn } from '../state/page.ts';
import type { PageCommand } from './command.ts';

export const columnCommands: readonly PageCommand[] = [
  {
    id: 'edit-column-formula',
    group: 'Column',
    label: (page) => {
      const column = activeColumn(page);
      return column ? `Formula for every row of ${column.label}` : 'Formula for every row';
    },
    keys: ['Shift+F2'],
    icon: 'column',
    searchWords: 'column formula compute',
    over: ['columns', 'cells'],
    enabled: (page) => activeColumn(page) !== null,
    run: (page) => {
      page.scopeChoice.value = 'column';
      page.line.current?.focus();
    },
  },
];

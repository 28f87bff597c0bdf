import type { PageCommand } from './command.ts';

export const helpCommands: readonly PageCommand[] = [
  {
    id: 'find-command',
    group: 'Help',
    label: 'Find a command',
    keys: ['F1'],
    icon: 'find',
    searchWords: 'search actions',
    run: (page) => {
      page.finderOpen.value = !page.finderOpen.value;
    },
  },
  {
    id: 'keys',
    group: 'Help',
    label: 'All keys',
    searchWords: 'shortcuts keyboard',
    run: (page) => {
      page.dialogue.value = { is: 'keys' };
    },
  },
];

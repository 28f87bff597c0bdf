/** Commands that help: keys, guides and what Leverbook is. */
import { guides } from '../../guides/index.ts';
import { openGuide } from '../guides/open-guide.ts';
import type { PageCommand } from './command.ts';

export const helpCommands: readonly PageCommand[] = [
  {
    id: 'find-command',
    group: 'Help',
    label: 'Find a command, sheet or function',
    keys: ['F1'],
    icon: 'find',
    searchWords: 'search actions',
    run: (page) => {
      page.finderOpen.value = !page.finderOpen.value;
    },
  },
  ...guides.map(
    ({ id, title, lead }, index): PageCommand => ({
      id: `guide-${id}`,
      apart: index === 0,
      group: 'Help',
      label: `Open the guide: ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
      icon: 'guide',
      searchWords: `step by step tutorial begin start ${lead}`,
      run: (page) => openGuide(page, id),
    }),
  ),
  {
    id: 'keys',
    apart: true,
    group: 'Help',
    label: 'Show all keys',
    searchWords: 'shortcuts keyboard',
    run: (page) => {
      page.dialogue.value = { is: 'keys' };
    },
  },
];

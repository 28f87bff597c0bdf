/** Commands about charts. */
import { run } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const shown = (page: Page): boolean => page.chart.value !== null;

export const chartCommands: readonly PageCommand[] = [
  {
    id: 'add-chart',
    apart: true,
    group: 'Book',
    label: 'Add a chart…',
    icon: 'chart',
    searchWords: 'new plot graph scatter trend agreement distribution load draw',
    enabled: (page) => page.outline.value !== null && page.outline.value.sheets.length > 0,
    run: ({ dialogue }) => {
      dialogue.value = { is: 'chart' };
    },
  },
  {
    id: 'change-chart',
    group: 'Book',
    label: 'Change this chart…',
    searchWords: 'edit plot graph columns',
    enabled: shown,
    run: ({ dialogue, chart }) => {
      if (chart.value !== null) dialogue.value = { is: 'chart', key: chart.value };
    },
  },
  {
    id: 'remove-chart',
    group: 'Book',
    label: 'Remove this chart',
    searchWords: 'delete plot graph',
    enabled: shown,
    run: async (page) => {
      const key = page.chart.value;
      if (key === null) return;
      page.chart.value = null;
      await run(page, { do: 'set-part', part: 'charts', key, value: null });
    },
  },
];

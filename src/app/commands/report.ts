/** Commands about the cohort report. */
import type { PageCommand } from './command.ts';

export const reportCommands: readonly PageCommand[] = [
  {
    id: 'report',
    apart: true,
    group: 'Book',
    label: 'Make the cohort report',
    searchWords: 'print pdf reliability icc methods statistics research paper',
    enabled: (page) => (page.outline.value?.sheets.length ?? 0) > 0,
    run: async (page) => (await import('../report/open-report.tsx')).openReport(page),
  },
  {
    id: 'report-holds',
    group: 'Book',
    label: 'Edit report contents…',
    searchWords: 'reliability trials icc groups figures methods choose',
    enabled: (page) => (page.outline.value?.sheets.length ?? 0) > 0,
    run: ({ dialogue }) => {
      dialogue.value = { is: 'report' };
    },
  },
];

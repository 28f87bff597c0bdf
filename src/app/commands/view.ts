/** Commands that show and hide parts of the page. */
import { chooseContrast, chooseDensity, chooseTheme, density, highContrast, theme } from '../state/look.ts';
import type { Page, Side } from '../state/page.ts';
import type { PageCommand } from './command.ts';

const side = (which: Side, label: string, key: string, searchWords: string): PageCommand => ({
  id: `side-${which}`,
  group: 'View',
  label,
  keys: [`Alt+${key}`],
  icon: which,
  searchWords,
  on: (page) => page.side.value === which,
  run: (page) => {
    page.side.value = page.side.value === which ? null : which;
  },
});

const parts = ['contents', 'line', 'sheet', 'chart', 'side'].map((part) => `[data-part="${part}"]`);

/** Moves the focus to the next part of the page that is on show. */
function nextPart(page: Page): void {
  const shown = parts.filter((part) =>
    document.querySelector(part)?.checkVisibility({ visibilityProperty: true }),
  );
  const now = shown.findIndex((part) => document.activeElement?.closest(part));
  const next = shown[(now + 1) % shown.length];
  if (next === '[data-part="sheet"]') page.grid.current?.focus();
  else
    document
      .querySelector(next ?? '')
      ?.querySelector<HTMLElement>('button:not(:disabled), input, [tabindex="0"], [contenteditable="true"]')
      ?.focus();
}

export const viewCommands: readonly PageCommand[] = [
  side('figure', 'Figure', '1', 'posture side view drawing'),
  side('picture', 'Picture', '5', 'photo film video observed lean digitise camera'),
  side('working', 'Working', '2', 'explain how computed steps'),
  side('guide', 'Guide', '3', 'functions help reference'),
  side('doubts', 'Checks', '4', 'doubts errors problems warnings unreadable'),
  {
    id: 'contents',
    group: 'View',
    label: 'Contents',
    keys: ['Alt+0'],
    icon: 'contents',
    searchWords: 'sheets list',
    run: (page) => {
      page.contentsOpen.value = !page.contentsOpen.value;
    },
  },
  {
    id: 'next-part',
    group: 'View',
    label: 'Move to next panel',
    keys: ['F6'],
    searchWords: 'focus pane keyboard',
    run: nextPart,
  },
  ...(['system', 'light', 'dark'] as const).map(
    (which): PageCommand => ({
      id: `theme-${which}`,
      apart: which === 'system',
      group: 'View',
      label: which === 'system' ? 'Match device theme' : which === 'light' ? 'Light theme' : 'Dark theme',
      searchWords: 'theme colour mode',
      on: () => theme.value === which,
      run: () => chooseTheme(which),
    }),
  ),
  {
    id: 'contrast',
    group: 'View',
    label: 'High contrast',
    searchWords: 'theme colour strong accessibility',
    on: () => highContrast.value,
    run: () => chooseContrast(highContrast.value ? 'regular' : 'high'),
  },
  ...(['compact', 'regular', 'comfortable'] as const).map(
    (which): PageCommand => ({
      id: `density-${which}`,
      apart: which === 'compact',
      group: 'View',
      label: `${which === 'compact' ? 'Tight' : which === 'regular' ? 'Regular' : 'Roomy'} rows`,
      searchWords: 'compact comfortable density height size',
      on: () => density.value === which,
      run: () => chooseDensity(which),
    }),
  ),
  {
    id: 'print-sheet',
    apart: true,
    group: 'Sheet',
    label: 'Print this sheet…',
    keys: ['Mod+P'],
    searchWords: 'pdf paper',
    enabled: (page) => page.sheet.value !== null,
    run: async (page) => {
      // A chart on show prints as it stands, by its own rules for paper.
      if (page.chart.value !== null) return globalThis.print();
      const { printSheet } = await import('../print/print.ts');
      await printSheet(page);
    },
  },
];

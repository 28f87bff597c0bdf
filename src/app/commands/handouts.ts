import type { GridSelection } from '../grid/host.ts';
import type { Page } from '../state/page.ts';
import type { PageCommand } from './command.ts';

/** Loaded when handouts are asked for. */
const open = async (page: Page, rows: readonly number[] | null): Promise<void> => {
  const { openHandouts } = await import('../handouts/open-handouts.tsx');
  const sheet = page.sheet.peek()?.id;
  await openHandouts(page, rows === null || sheet === undefined ? {} : { sheet, rows: [...rows] });
};

const chosenRows = ({ runs }: GridSelection, rows: number): readonly number[] =>
  runs
    .flatMap(({ row, count }) => Array.from({ length: count }, (_, index) => row + index))
    .filter((row) => row < rows);

const canFor = (page: Page): boolean =>
  page.sheet.value !== null &&
  (page.selection.value?.row ?? Number.POSITIVE_INFINITY) < page.sheet.value.rows;

export const handoutCommands: readonly PageCommand[] = [
  {
    id: 'handout-row',
    apart: true,
    group: 'Book',
    label: 'Make a handout for this athlete',
    searchWords: 'print page pdf report lifter',
    over: ['rows'],
    enabled: canFor,
    run: (page) => open(page, [page.selection.value?.row ?? 0]),
  },
  {
    id: 'handouts-chosen',
    group: 'Book',
    label: 'Make handouts for the selected rows',
    searchWords: 'print pages pdf selection',
    over: ['rows'],
    enabled: (page) => canFor(page) && (page.selection.value?.rows ?? 0) > 1,
    run: (page) =>
      page.selection.value
        ? open(page, chosenRows(page.selection.value, page.sheet.value?.rows ?? 0))
        : undefined,
  },
  {
    id: 'handouts-all',
    group: 'Book',
    label: 'Make handouts for all athletes',
    searchWords: 'print pages pdf everyone',
    enabled: (page) => page.outline.value !== null,
    run: (page) => open(page, null),
  },
  {
    id: 'handout-rules',
    group: 'Book',
    label: 'Edit handout text…',
    searchWords: 'rules findings sentences edit',
    enabled: (page) => page.outline.value !== null,
    run: ({ dialogue }) => {
      dialogue.value = { is: 'handout rules' };
    },
  },
];

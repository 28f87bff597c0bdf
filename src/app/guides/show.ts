/** Shows a step of a guide on the page: a file, a panel or a formula. */
import type { Guide, Show } from '../../guides/index.ts';
import { fetched, openBundled, templates } from '../books/bundled.ts';
import { perform } from '../commands/all.ts';
import { importFiles } from '../intake/file-import.ts';
import { goTo, guarded } from '../state/actions.ts';
import { mayLeave } from '../state/leave.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';

const tables = import.meta.glob<string>('../../../sample-books/*/*.csv', {
  query: '?url',
  import: 'default',
  eager: true,
});
const pictures = import.meta.glob<string>('../../../docs/pictures/guide-*.png', {
  query: '?url',
  import: 'default',
  eager: true,
});

/** Where a file of a guide can be had. */
export const fileAddress = ({ book }: Guide, name: string): string =>
  tables[`../../../sample-books/${book}/${name}`] ?? '';
export const pictureAddress = (name: string): string | undefined =>
  pictures[`../../../docs/pictures/${name}`];

/** What the button of a step is called. */
export function wordsFor(show: Show): string {
  if ('template' in show) return 'Open it';
  if ('file' in show) return 'Preview this file';
  if ('command' in show) return 'Do it';
  return 'Show me';
}

/** Goes where a step is done, or does what it says. */
export async function showStep(page: Page, guide: Guide, show: Show): Promise<void> {
  // On narrow screens the guide lies over what is to be seen.
  if (globalThis.matchMedia?.('(max-width: 860px)').matches) page.side.value = null;
  if ('template' in show) {
    const template = templates.find(({ id }) => id === show.template);
    if (template && mayLeave(page)) await openBundled(page, template);
  } else if ('file' in show) await lookAt(page, guide, show.file, show.into);
  else if ('sheet' in show) goToSheet(page, show.sheet, show.column, show.row);
  else if ('chart' in show) showChart(page, show.chart);
  else if ('name' in show) focusName(page, show.name);
  else if ('side' in show) page.side.value = show.side;
  else await perform(show.command, page);
}

async function lookAt(page: Page, guide: Guide, name: string, into: string): Promise<void> {
  const sheet = sheetNamed(page, into);
  const address = fileAddress(guide, name);
  if (!sheet || address === '') return;
  await guarded(page, async () => {
    const file = await (await fetched(address)).blob();
    page.sheetId.value = sheet.id;
    page.chart.value = null;
    importFiles(page, [{ name, file }]);
    return true;
  });
}

function goToSheet(page: Page, name: string, column = '', row = 1): void {
  const sheet = sheetNamed(page, name);
  if (!sheet) return;
  const there = sheet.columns.find((one) => one.name === column) ?? sheet.columns[0];
  if (there) goTo(page, { sheet: sheet.id, column: there.id, row: row - 1 });
}

function showChart(page: Page, key: string): void {
  if (page.outline.value?.charts.some((chart) => chart.key === key)) page.chart.value = key;
  else missing(page, 'This chart');
}

function focusName(page: Page, name: string): void {
  if (!page.outline.value?.names.some((named) => named.name === name)) {
    missing(page, `The setting ${name}`);
    return;
  }
  page.contentsOpen.value = true;
  requestAnimationFrame(() => {
    const field = document.querySelector<HTMLInputElement>(`.contents [data-setting="${name}"] input`);
    field?.scrollIntoView({ block: 'center' });
    field?.focus();
  });
}

function sheetNamed(page: Page, name: string) {
  const sheet = page.outline.value?.sheets.find((one) => one.name === name);
  if (!sheet) missing(page, `The sheet ${name}`);
  return sheet;
}

/** The book that is open is another one than the guide speaks of. */
const missing = (page: Page, what: string): void =>
  say(page, `${what} is not in this book. Open the guide’s book in its first step.`, 'wrong');

/** The athletes of the open book, for the command finder. */
import { columnInRole } from '../../book/roles/column-in-role.ts';
import type { SheetOutline } from '../../session/api.ts';
import type { Page } from '../state/page.ts';
import type { Athlete } from './finds.ts';

const MOST_ROWS = 20_000;

/** Everybody whom the sheets of data name, once each, with the first row. */
export async function athletesOf(page: Page): Promise<readonly Athlete[]> {
  const found = new Map<string, Athlete>();
  for (const sheet of page.outline.value?.sheets ?? []) {
    const index = personColumn(sheet);
    const column = sheet.columns[index];
    if (!column || sheet.rows === 0) continue;
    const { texts } = await page.service.tile(sheet.id, 0, Math.min(sheet.rows, MOST_ROWS), index, 1);
    texts.forEach((name, row) => {
      if (name.trim() !== '' && !found.has(name))
        found.set(name, { name, about: sheet.label, sheet: sheet.id, column: column.id, row });
    });
  }
  return [...found.values()];
}

const personColumn = ({ columns, purpose }: SheetOutline): number =>
  purpose === 'gathered'
    ? columns.findIndex((column) => column === columnInRole({ columns }, 'athlete'))
    : -1;

import type { Pointed } from '../grid/host.ts';
import type { Page } from '../state/page.ts';
import type { Target } from './draft.ts';

/**
 * What a formula calls the place that was pointed at: the column's name for this row's value, an address for other cells;
 * with the sheet's name before it from another sheet.
 */
export function namePointed(page: Page, draft: Target, pointed: Pointed): string | null {
  const sheet = page.sheet.value;
  if (!sheet) return null;
  const elsewhere = sheet.id !== draft.sheet;
  if (pointed.is === 'column')
    return elsewhere ? `${sheet.name}.${pointed.column.name}` : pointed.column.name;
  const { from, to, fromRow, toRow } = pointed;
  const single = from.id === to.id && fromRow === toRow;
  if (single && !elsewhere && (draft.scope === 'column' || fromRow === draft.row)) return from.name;
  const place = elsewhere ? `${sheet.name}!` : '';
  const start = `${place}${from.address}${fromRow + 1}`;
  return single ? start : `${start}:${to.address}${toRow + 1}`;
}

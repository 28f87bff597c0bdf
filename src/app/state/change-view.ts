import type { Json } from '../../book/model.ts';
import type { Condition, RowView } from '../../session/sheet/row-view.ts';
import type { SheetView } from '../../session/sheet/sheet-view.ts';
import { run } from './actions.ts';
import type { Page } from './page.ts';

/** Changes how the sheet on show is looked at; undo takes it back. */
export async function changeView(
  page: Page,
  words: string,
  change: (view: SheetView) => SheetView,
): Promise<boolean> {
  const sheet = page.sheet.value;
  if (!sheet) return false;
  const next = change(sheet.view ?? {});
  const rows = tidy(next.rows ?? {});
  const { rows: _, ...rest } = next;
  const value = JSON.parse(JSON.stringify({ ...rest, ...(rows ? { rows } : {}) })) as Record<string, Json>;
  return run(page, {
    do: 'set-part',
    part: 'views',
    key: sheet.id,
    value: Object.keys(value).length ? value : null,
    words,
  });
}

/** Changes which rows are shown, in which order. */
export const changeRows = (page: Page, words: string, change: (rows: RowView) => RowView): Promise<boolean> =>
  changeView(page, words, (view) => ({ ...view, rows: change(view.rows ?? {}) }));

function tidy({ where, sort, group }: RowView): RowView | null {
  const view: RowView = {
    ...(where?.length ? { where } : {}),
    ...(sort?.length ? { sort } : {}),
    ...(group === undefined ? {} : { group }),
  };
  return Object.keys(view).length ? view : null;
}

/** A condition in words, for the strip above the sheet. */
export function conditionInWords(condition: Condition, label: string): string {
  switch (condition.is) {
    case 'containing':
      return `${label} contains “${condition.text}”`;
    case 'one of':
      return condition.texts.length <= 3
        ? `${label}: ${condition.texts.map((text) => text || 'blank').join(', ')}`
        : `${label}: ${condition.texts.length} values`;
    case 'from to':
      if (condition.from && condition.to) return `${label} ${condition.from} to ${condition.to}`;
      return condition.from ? `${label} from ${condition.from}` : `${label} up to ${condition.to ?? ''}`;
    case 'blank':
      return `${label} is blank`;
    case 'filled':
      return `${label} is filled in`;
    case 'held':
      return `${label} is unreadable`;
    case 'error':
      return `${label} is an error`;
    case 'marked':
      return `${label} is marked by a rule`;
    case 'own value':
      return `${label} is an override`;
  }
}

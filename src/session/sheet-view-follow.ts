import type { Edit } from '../book/edit.ts';
import type { Book, Json } from '../book/model.ts';
import { type OwnSummary, type SheetView, sheetViewOf } from './sheet-view.ts';

/*
 * What happens to the views of sheets when what they name changes. An edit of a view replaces the whole record, so each
 * change here starts from what the edits before it leave.
 */

type SetPart = Extract<Edit, { do: 'set-part' }>;

function edit(sheet: string, view: SheetView): SetPart {
  const value = JSON.parse(JSON.stringify(view)) as Record<string, Json>;
  return { do: 'set-part', part: 'views', key: sheet, value: Object.keys(value).length ? value : null };
}

const withFormulas = (view: SheetView, change: (formula: string, column: string) => string): SheetView => ({
  ...view,
  ...(view.summaries
    ? {
        summaries: view.summaries.map(
          (one): OwnSummary =>
            'formula' in one ? { ...one, formula: change(one.formula, one.column) } : one,
        ),
      }
    : {}),
});

/** The edits that rewrite the formulas of all lines of summaries, and how many changed. */
export function rewrittenViews(
  book: Book,
  rewrite: (formula: string, home: { readonly sheet: string; readonly column: string }) => string,
): { edits: readonly Edit[]; count: number } {
  const edits: Edit[] = [];
  let count = 0;
  for (const { id } of book.sheets) {
    const view = sheetViewOf(book, id);
    if (!view?.summaries) continue;
    const before = count;
    const after = withFormulas(view, (formula, column) => {
      const text = rewrite(formula, { sheet: id, column });
      if (text !== formula) count++;
      return text;
    });
    if (count > before) edits.push(edit(id, after));
  }
  return { edits, count };
}

/** The view of a sheet as these edits will leave it. */
function viewAfter(book: Book, edits: readonly Edit[], sheet: string): SheetView | undefined {
  const last = edits.findLast(
    (one): one is SetPart => one.do === 'set-part' && one.part === 'views' && one.key === sheet,
  );
  if (!last) return sheetViewOf(book, sheet);
  return sheetViewOf({ ...book, parts: { ...book.parts, views: new Map([[sheet, last.value]]) } }, sheet);
}

/** These edits, and one that takes a column that goes out of its sheet's conditions, order, groups and summaries. */
export function losingInView(
  book: Book,
  edits: readonly Edit[],
  sheet: string,
  column: string,
): readonly Edit[] {
  const view = viewAfter(book, edits, sheet);
  if (!view) return edits;
  const { rows, summaries, ...rest } = view;
  const others = <T extends { readonly column: string }>(list: readonly T[] | undefined): T[] | undefined => {
    const left = list?.filter((one) => one.column !== column);
    return left?.length ? left : undefined;
  };
  const { where, sort, group } = rows ?? {};
  const left = {
    where: others(where),
    sort: others(sort),
    group: group === column ? undefined : group,
  };
  const after = {
    ...rest,
    ...(left.where || left.sort || left.group !== undefined ? { rows: left } : {}),
    summaries: others(summaries),
  } as SheetView;
  return JSON.stringify(edit(sheet, after)) === JSON.stringify(edit(sheet, view))
    ? edits
    : [...edits, edit(sheet, after)];
}

/** The edits that take the view of a sheet away with it: another sheet may be given its id. */
export const losingView = (book: Book, edits: readonly Edit[], sheet: string): readonly Edit[] =>
  book.parts.views.has(sheet)
    ? [...edits, { do: 'set-part', part: 'views', key: sheet, value: null }]
    : edits;

/** These edits, and one that gives a copied column the summary of the first. */
export function copyingSummary(
  book: Book,
  edits: readonly Edit[],
  sheet: string,
  from: string,
  to: string,
  rewrite: (formula: string) => string,
): readonly Edit[] {
  const view = viewAfter(book, edits, sheet);
  const own = view?.summaries?.find(({ column }) => column === from);
  if (!view || !own) return edits;
  const copy = withFormulas({ summaries: [{ ...own, column: to }] }, rewrite).summaries ?? [];
  return [...edits, edit(sheet, { ...view, summaries: [...(view.summaries ?? []), ...copy] })];
}

/** The edits that give a copy of a sheet the view of the first. */
export function copiedView(
  book: Book,
  from: string,
  to: string,
  rewrite: (formula: string) => string,
): readonly Edit[] {
  const view = sheetViewOf(book, from);
  return view ? [edit(to, withFormulas(view, rewrite))] : [];
}

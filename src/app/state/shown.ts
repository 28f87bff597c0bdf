import { effect, signal } from '@preact/signals';
import type { SheetOutline } from '../../session/api.ts';
import type { ColumnSummary } from '../../session/sheet/column-summary.ts';
import type { RowView } from '../../session/sheet/row-view.ts';
import type { OwnSummary, Statistic } from '../../session/sheet/sheet-view.ts';
import { statisticNames } from '../../session/sheet/statistic-names.ts';
import type { BookService } from '../../worker/protocol.ts';
import type { Shown, SummaryText } from '../grid/host.ts';
import type { RowGroup } from '../grid/rows.ts';
import { Lines } from '../grid/rows.ts';
import type { Page } from './page.ts';
import { say } from './page.ts';

/** Rows whose group is read at once. */
const step = 50_000;

/** Grows when a view is to be worked out again though nothing about it changed. */
export const arrangeAgain = signal(0);

/**
 * Keeps `page.shown` true: the sheet, its lines as its view says, the summaries. A view is worked out when it changes and
 * when rows come or go, not with every value: rows would run away under the hands that edit them.
 */
export function followSheet(page: Page): () => void {
  let turn = 0;
  let key = '';
  let lines = Lines.all(0, false, false);
  return effect(() => {
    const sheet = page.sheet.value;
    const again = arrangeAgain.value;
    const version = page.outline.value?.version;
    if (!sheet || version === undefined) {
      page.shown.value = null;
      key = '';
      return;
    }
    const now = ++turn;
    const rows = sheet.view?.rows;
    const summed = isSummed(sheet);
    const wanted = JSON.stringify([sheet.id, sheet.rows, sheet.view, sheet.purpose, again]);
    const before = page.shown.peek();
    const work = async () => {
      if (wanted !== key) {
        const made = arranges(rows)
          ? await arranged(page.service, sheet, rows!, summed)
          : Lines.all(sheet.rows, sheet.purpose !== 'worked', summed);
        if (now !== turn) return;
        key = wanted;
        lines = made;
      }
      const summaries = await summariesOf(page.service, sheet, lines);
      if (now === turn) page.shown.value = { sheet, version, lines, summaries, frozen: frozenOf(sheet) };
    };
    // What needs no asking is shown at once.
    const sameLines = wanted === key || (!arranges(rows) && !summed);
    if (sameLines) {
      if (wanted !== key) {
        lines = Lines.all(sheet.rows, sheet.purpose !== 'worked', summed);
        key = wanted;
      }
      const summaries = before?.sheet.id === sheet.id ? before.summaries : [];
      page.shown.value = { sheet, version, lines, summaries, frozen: frozenOf(sheet) };
      if (lines.groups.length === 0 && !lines.summed) return;
    }
    work().catch((reason) => {
      if (now !== turn) return;
      // A view that cannot be worked out must not keep the sheet from being seen.
      lines = Lines.all(sheet.rows, sheet.purpose !== 'worked', false);
      key = wanted;
      page.shown.value = { sheet, version, lines, summaries: [], frozen: frozenOf(sheet) };
      say(
        page,
        `The rows could not be sorted, filtered or grouped: ${reason}. All rows are shown in their own order.`,
        'wrong',
      );
    });
  });
}

/** True where a summary row is below the sheet. */
const isSummed = ({ view }: SheetOutline): boolean =>
  view?.statistic !== undefined || Boolean(view?.summaries?.length);

export const arranges = (view: RowView | undefined): boolean =>
  view !== undefined && Boolean(view.group || view.sort?.length || view.where?.length);

const frozenOf = (sheet: SheetOutline): number =>
  sheet.view?.frozen ?? (sheet.columns[0]?.kind === 'text' && sheet.columns.length > 3 ? 1 : 0);

async function arranged(
  service: BookService,
  sheet: SheetOutline,
  view: RowView,
  summed: boolean,
): Promise<Lines> {
  const rows = await service.rowsInView(sheet.id, view);
  const filtered = Boolean(view.where?.length);
  if (view.group === undefined)
    return Lines.of(sheet.rows, rows, !filtered && sheet.purpose !== 'worked', summed);
  const column = sheet.columns.findIndex(({ id }) => id === view.group);
  const groups: RowGroup[] = [];
  let from = 0;
  let label: string | undefined;
  for (let at = 0; at < rows.length; at += step) {
    const { texts } = await service.tileOfRows(sheet.id, rows.slice(at, at + step), column, 1);
    for (let i = 0; i < texts.length; i++) {
      const text = texts[i] ?? '';
      if (label !== undefined && text !== label) {
        groups.push({ label, rows: rows.slice(from, at + i) });
        from = at + i;
      }
      label = text;
    }
  }
  if (label !== undefined) groups.push({ label, rows: rows.slice(from) });
  return Lines.grouped(sheet.rows, groups, summed);
}

/** The texts of each summary line: the groups' in order, then that of all rows. */
async function summariesOf(
  service: BookService,
  sheet: SheetOutline,
  lines: Lines,
): Promise<Shown['summaries']> {
  const { groups, summed } = lines;
  if (groups.length === 0 && !summed) return [];
  const statistic = sheet.view?.statistic ?? 'mean';
  const all = lines.plain
    ? null
    : Int32Array.from(
        lines
          .runs(0, lines.count - 1)
          .flatMap(({ row, count }) => Array.from({ length: count }, (_, i) => row + i))
          .filter((row) => row < lines.total),
      );
  const found = await service.summaries(sheet.id, [
    ...groups.map(({ rows }) => rows),
    ...(summed ? [all] : []),
  ]);
  return found.map((columns, index) => textsOf(sheet, columns, statistic, groups[index]?.label ?? 'All'));
}

function textsOf(
  sheet: SheetOutline,
  columns: Readonly<Record<string, ColumnSummary>>,
  statistic: Statistic,
  group: string,
): Readonly<Record<string, SummaryText>> {
  const texts: Record<string, SummaryText> = {};
  for (const { id, kind } of sheet.columns) {
    const summary = columns[id];
    const own = sheet.view?.summaries?.find(({ column }) => column === id);
    if (summary && own) texts[id] = ownText(summary, own);
    // A mean of dates says nothing that one would want to read.
    else if (summary && (kind === 'number' || ['count', 'least', 'most'].includes(statistic)))
      texts[id] = { text: textOf(summary, statistic) };
  }
  // The first column that shows no figure says what the line is about.
  const free = sheet.columns.filter(
    ({ id, hidden }) => !hidden && !sheet.view?.summaries?.some(({ column }) => column === id),
  );
  const place = free.find(({ kind }) => kind !== 'number') ?? free[0];
  if (place)
    texts[place.id] = {
      text: `${group || 'blank'}: ${statisticNames[statistic]} (${columns[place.id]?.rows ?? 0})`,
    };
  return texts;
}

/** A figure that a column has of its own says which it is. */
function ownText(summary: ColumnSummary, own: OwnSummary): SummaryText {
  if ('statistic' in own)
    return { text: textOf(summary, own.statistic), what: statisticNames[own.statistic] };
  const { text = '', sentence } = summary.own ?? {};
  return {
    text,
    what: own.says ?? nameOf(own.formula),
    about: sentence === undefined ? `= ${own.formula}` : `= ${own.formula}\n${sentence}`,
    ...(sentence === undefined ? {} : { wrong: true }),
  };
}

/** What a formula is called where nobody gave it a name: the function it begins with. */
export const nameOf = (formula: string): string =>
  /^\s*([A-Za-z][\w.]*)\s*\(/.exec(formula)?.[1]?.toLowerCase() ?? 'formula';

function textOf(summary: ColumnSummary, statistic: Statistic): string {
  switch (statistic) {
    case 'count':
      return String(summary.filled);
    case 'sum':
      return summary.sum ?? '';
    case 'mean':
      return summary.mean ?? '';
    case 'sd':
      return summary.sd ?? '';
    case 'least':
      return summary.least ?? '';
    case 'most':
      return summary.most ?? '';
  }
}

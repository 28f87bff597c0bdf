/** The tables of the report that describe groups. */
import { Kind, valueAt } from '../../../functions/core/value.ts';
import { ascending, mean, quantile, standardDeviation } from '../../../functions/statistics/describe.ts';
import type { Sheet } from '../../book/model.ts';
import { columnInRole, measuredSheet } from '../../book/roles/column-in-role.ts';
import type { ReadContext } from '../open-book.ts';
import { displayOf } from '../text/display.ts';
import { columnFound, digitsFor, fixed, labelled, numbersIn, rowsShown, sheetFound } from './found.ts';
import type { GroupSet } from './report-settings.ts';

export interface Described {
  readonly sheet: string;
  /** What tells the groups apart; null where all rows stand together. */
  readonly by: string | null;
  readonly measures: readonly {
    readonly label: string;
    readonly groups: readonly { readonly name: string; readonly cells: readonly string[] }[];
  }[];
}

export const describedAs = ['n', 'Mean', 'SD', '5th', '25th', 'Median', '75th', '95th'] as const;

/** More groups than this are no groups. */
const mostGroups = 24;

/** n, mean, SD and percentiles of each measure, all together and by group. */
export function describedOf(context: ReadContext, set: GroupSet): Described {
  const sheet = sheetFound(context.book, set.sheet);
  const rows = rowsShown(context, sheet);
  const by = set.by === undefined ? null : columnFound(sheet, set.by);
  const groups = by ? groupsIn(context, sheet, by.id, rows) : [];
  const everyone = { name: groups.length > 0 ? 'all' : '', at: [...rows.keys()] };
  return {
    sheet: sheet.label,
    by: by && groups.length > 0 ? by.label : null,
    measures: set.columns.map((wanted) => {
      const column = columnFound(sheet, wanted);
      const values = numbersIn(context, sheet, column, rows);
      return {
        label: labelled(column),
        groups: [everyone, ...groups].map(({ name, at }) => {
          const found = ascending(
            Float64Array.from(
              at.filter((i) => !Number.isNaN(values[i]!)),
              (i) => values[i]!,
            ),
          );
          const n = found.length;
          const digits = digitsFor(column, n > 0 ? mean(found) : 1);
          const write = (value: number | null): string => fixed(value, digits, context);
          return {
            name,
            cells: [
              String(n),
              write(n > 0 ? mean(found) : null),
              write(n > 1 ? standardDeviation(found) : null),
              ...[0.05, 0.25, 0.5, 0.75, 0.95].map((p) => write(n > 0 ? quantile(found, p) : null)),
            ],
          };
        }),
      };
    }),
  };
}

function groupsIn(
  context: ReadContext,
  sheet: Sheet,
  by: string,
  rows: Int32Array,
): readonly { readonly name: string; readonly at: number[] }[] {
  const range = context.calculation.column(sheet.id, by);
  const column = sheet.columns.find(({ id }) => id === by)!;
  const groups = new Map<string, { name: string; at: number[] }>();
  rows.forEach((row, i) => {
    if (range.kinds[row] === Kind.error) return;
    const name = displayOf(valueAt(range, row), column, context.locale).trim();
    if (name === '') return;
    const group = groups.get(name.toLowerCase());
    if (group) group.at.push(i);
    else groups.set(name.toLowerCase(), { name, at: [i] });
  });
  return groups.size > mostGroups ? [] : [...groups.values()];
}

/** Names that a column of groups often has. */
const grouping = ['sex', 'group', 'team', 'squad'];

/** What is described where the book does not say: the measures of the roster, by sex or group. */
export function usualGroups({ book }: ReadContext): readonly GroupSet[] {
  const gathered = book.sheets.filter(({ purpose }) => purpose === 'gathered');
  const roster = measuredSheet(gathered) ?? gathered[0];
  const columns = roster?.columns.filter(({ kind, hidden }) => kind === 'number' && !hidden) ?? [];
  if (!roster || columns.length === 0) return [];
  const by =
    grouping.map((name) => columnInRole(roster, name)).find((one) => one !== undefined) ??
    roster.columns.find(({ kind }) => kind === 'choice');
  return [{ sheet: roster.id, columns: columns.map(({ name }) => name), ...(by ? { by: by.name } : {}) }];
}

/** A chart of one person: whose rows are drawn, and who can be selected. */

import { valueAt } from '../../../functions/core/value.ts';
import { columnNamed } from '../../book/book.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { z } from '../../book/zod.ts';
import { athleteIn } from '../athlete-in.ts';
import type { ReadContext } from '../open-book.ts';
import { displayOf } from '../text/display.ts';
import { type ChartRecord, chartRoles } from './chart-record.ts';

/** By name, or the athlete of a row of any sheet. */
export const chartPerson = z.union([
  z.strictObject({ name: z.string().max(300) }),
  z.strictObject({ sheet: z.string().max(300), row: z.int().min(0) }),
]);
export type ChartPerson = z.infer<typeof chartPerson>;

/** The column that tells people apart: the athlete, else the one by which the chart does so. */
function personColumn(sheet: Sheet, { kind, by }: ChartRecord): Column | undefined {
  return (
    columnInRole(sheet, 'athlete') ??
    (by !== undefined && chartRoles[kind].by === 'Athlete' ? columnNamed(sheet, by) : undefined)
  );
}

export interface People {
  /** Everybody whom the rows name, A to Z. */
  readonly people: readonly string[];
  /** Who is drawn; null for everyone. */
  readonly person: string | null;
  /** The rows that are drawn. */
  readonly rows: Int32Array;
}

/** Whom the rows of a chart name, and the rows of the person who was asked for. A name without rows gives none. */
export function peopleIn(
  context: ReadContext,
  sheet: Sheet,
  record: ChartRecord,
  rows: Int32Array,
  wanted: ChartPerson | undefined,
): People {
  const column = personColumn(sheet, record);
  if (!column) return { people: [], person: null, rows };
  const range = context.calculation.column(sheet.id, column.id);
  const nameOf = (row: number): string => displayOf(valueAt(range, row), column, context.locale).trim();
  const names = new Map<string, string>();
  for (const row of rows) {
    const name = nameOf(row);
    if (name !== '' && !names.has(name.toLowerCase())) names.set(name.toLowerCase(), name);
  }
  const people = [...names.values()].sort(new Intl.Collator('en', { numeric: true }).compare);
  const asked = wanted && nameAsked(context, wanted);
  if (asked === undefined) return { people, person: null, rows };
  const key = asked.toLowerCase();
  return {
    people,
    person: names.get(key) ?? asked,
    rows: rows.filter((row) => nameOf(row).toLowerCase() === key),
  };
}

/** A row that names nobody asks for everyone. */
function nameAsked(context: ReadContext, wanted: ChartPerson): string | undefined {
  if ('name' in wanted) return wanted.name.trim();
  const sheet = context.book.sheets.find(({ id }) => id === wanted.sheet);
  return sheet && wanted.row < sheet.rows ? athleteIn(context, sheet, wanted.row) : undefined;
}

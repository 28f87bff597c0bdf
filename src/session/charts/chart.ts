/** A chart of the book, as it is now. */
import { refuse } from '../../book/refusal.ts';
import type { ReadContext } from '../open-book.ts';
import { barPath } from './bar-path.ts';
import { type ChartKind, type ChartRecord, chartRecord, chartRoles } from './chart-record.ts';
import type { ChartData, Content } from './data.ts';
import { distribution } from './distribution.ts';
import { leanParts } from './lean-parts.ts';
import { load, trend } from './over-time.ts';
import { agreement, equality, scatter } from './pairs.ts';
import { type ChartPerson, chartPerson } from './person.ts';
import { type Read, readChart } from './read.ts';
import { repetitions } from './repetitions.ts';

const drawings: Readonly<
  Record<ChartKind, (read: Read, record: ChartRecord, context: ReadContext) => Content>
> = {
  scatter,
  agreement,
  pairs: equality,
  sides: equality,
  trend,
  load,
  distribution,
  'lean-parts': leanParts,
  'bar-path': barPath,
  repetitions,
};

/** More drawings than this beside each other show nothing. */
const mostPanels = 60;

export type Charted = ChartData & { readonly record: ChartRecord } & Pick<Read, 'people' | 'person'>;

/** What a chart of the book shows now. @throws Refusal where the record or what it names cannot be used */
export function chartOf(context: ReadContext, key: string, wanted?: ChartPerson): Charted {
  const kept = context.book.parts.charts.get(key);
  if (kept === undefined) refuse('This chart is no longer in the book.');
  const parsed = chartRecord.safeParse(kept);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    return refuse(
      `This chart cannot be read at "${issue?.path.join('.')}": ${issue?.message}. Remove it and create it again.`,
    );
  }
  const record = parsed.data;
  const read = readChart(context, record, wanted && chartPerson.parse(wanted));
  const { panels, notes, ...axes } = drawings[record.kind](read, record, context);
  const more = panels.length - mostPanels;
  // Of one person the title says whose the only drawing is.
  const alone = read.person !== null && panels.length === 1;
  const needs = panels.some(({ points }) => points.length > 0) ? undefined : needsOf(read, record);
  return {
    record,
    title: alone ? `${record.title}: ${read.person}` : record.title,
    kind: record.kind,
    sheet: read.sheet.id,
    ...axes,
    groups: read.groups,
    people: read.people,
    person: read.person,
    panels: alone ? [{ ...panels[0]!, title: '' }] : panels.slice(0, mostPanels),
    notes: [
      ...filterNote(read),
      ...notes,
      ...(more > 0 ? [`${more} further panels are not drawn: filter the sheet to see them.`] : []),
    ],
    ...(needs === undefined ? {} : { needs }),
  };
}

/** Who reads a chart alone does not see that the sheet has a filter. */
const filterNote = ({ sheet, filtered }: Read): readonly string[] =>
  filtered === null
    ? []
    : [`The filter of ${sheet.label} applies: ${filtered} of its ${sheet.rows} rows are read.`];

/** What a chart without a point waits for. */
function needsOf({ sheet, rows, measures, person }: Read, { kind, by }: ChartRecord): string {
  if (sheet.rows === 0)
    return `The sheet ${sheet.label} has no rows yet. The chart fills in as rows are added.`;
  if (rows.length === 0 && person !== null)
    return `${sheet.label} shows no row of ${person}. Select another person.`;
  if (rows.length === 0)
    return `The filter of ${sheet.label} hides all of its rows. Widen it to see the chart.`;
  const labels = measures.map(({ column }) => `“${column.label}”`).join(' and ');
  const both = measures.length > 1 ? 'in the same row' : 'in a row';
  const group = by === undefined ? '' : `, and a text in the column of ${chartRoles[kind].by.toLowerCase()}`;
  return `This chart needs a value for ${labels} ${both}${group}; ${sheet.label} shows no such row.`;
}

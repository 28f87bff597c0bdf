import { columnRange } from '../../../functions/core/value.ts';
import { writeDate } from '../../units/date.ts';
import { ask, short } from './chart-numbers.ts';
import type { ChartRecord } from './chart-record.ts';
import type { ChartBand, ChartLine, ChartPanel, ChartPoint, Content } from './data.ts';
import { type Read, rangeFrom } from './read.ts';

/** Days that a line goes across where the chart says nothing: four weeks. Common practice, no published source. */
const usualGap = 28;

interface Entry {
  readonly day: number;
  readonly value: number;
  readonly row: number;
}

/** The dated rows of a group by day; a row with a date and no value stays, as a gap, unless its formula leaves it aside. */
function entriesOf(read: Read, group: number): readonly Entry[] {
  const [dates, values] = read.measures;
  return [...read.rows]
    .filter(
      (row) => read.groupOf[row] === group && !Number.isNaN(dates!.values[row]!) && !values!.isAside(row),
    )
    .map((row) => ({ day: dates!.values[row]!, value: values!.values[row]!, row }))
    .sort((a, b) => a.day - b.day || a.row - b.row);
}

/** Lines of each athlete, broken where a value is missing or too many days lie between. */
export function trend(read: Read, record: ChartRecord): Content {
  const gap = record.gapDays ?? usualGap;
  const mdc = read.sem === null ? null : ask('TEST.MDC', read.sem, record.confidence ?? 0.95);
  const names = read.groups.length > 0 ? read.groups : [''];
  const alone = names.length === 1 || record.panels === true;
  const each = names.map((title, group): ChartPanel => {
    const entries = entriesOf(read, group);
    const filled = entries.filter(({ value }) => !Number.isNaN(value));
    const points = filled.map(
      ({ day, value, row }): ChartPoint => ({
        x: day,
        y: value,
        group,
        name: title || read.nameOf(row),
        row,
      }),
    );
    const bands: ChartBand[] = [];
    const first = filled[0];
    const last = filled.at(-1);
    if (mdc !== null && alone && first && last && last.day > first.day)
      bands.push({
        is: 'real change',
        at: [first.day, last.day].map((day) => [day, first.value - mdc, first.value + mdc] as const),
      });
    return { title, points, lines: linesOf(entries, group, gap), bands, levels: [] };
  });
  const notes = [`A line stops where a value is missing or more than ${gap} days lie between.`];
  if (mdc !== null)
    notes.push(
      alone
        ? `The band is the first value ± ${short(mdc)}, the minimal detectable change: inside it a change may be measuring error.`
        : `The minimal detectable change is ${short(mdc)}; its band is drawn in panels, one per athlete.`,
    );
  return {
    x: { label: read.measures[0]!.label, is: 'date' },
    y: { label: read.measures[1]!.label },
    panels: record.panels ? each : [merged(each)],
    notes,
  };
}

function linesOf(entries: readonly Entry[], group: number, gap: number): readonly ChartLine[] {
  const lines: (readonly [number, number])[][] = [[]];
  let before: Entry | undefined;
  for (const entry of entries) {
    const open = lines.at(-1)!;
    const broken = Number.isNaN(entry.value) || (before !== undefined && entry.day - before.day > gap);
    if (broken && open.length > 0) lines.push([]);
    if (!Number.isNaN(entry.value)) lines.at(-1)!.push([entry.day, entry.value]);
    before = entry;
  }
  return lines.filter((at) => at.length > 1).map((at) => ({ is: 'trend' as const, group, at }));
}

const merged = (panels: readonly ChartPanel[]): ChartPanel => ({
  title: '',
  points: panels.flatMap(({ points }) => points),
  lines: panels.flatMap(({ lines }) => lines),
  bands: panels.flatMap(({ bands }) => bands),
  levels: [],
});

/** Monday of a day's week, ISO 8601; serial day 2 (1900-01-01) was a Monday. */
const mondayOf = (day: number): number => Math.floor(day) - ((((Math.floor(day) - 2) % 7) + 7) % 7);

/** More weeks than this are not drawn one by one. */
const mostWeeks = 1000;

/** Sums of weeks from Monday to Sunday, weeks without a row between others as 0, with the monotony of each. */
export function load(read: Read): Content {
  const names = read.groups.length > 0 ? read.groups : [''];
  const notes: string[] = [];
  const each = names.map((title, group): ChartPanel => {
    const entries = entriesOf(read, group).filter(({ value }) => !Number.isNaN(value));
    if (entries.length === 0) return { title, points: [], lines: [], bands: [], levels: [] };
    const dates = columnRange(...entries.map(({ day }) => day));
    const values = rangeFrom(entries.map(({ value }) => value));
    const first = mondayOf(entries[0]!.day);
    const last = mondayOf(entries.at(-1)!.day);
    const logged = new Set(entries.map(({ day }) => mondayOf(day)));
    const weeks = Math.min(mostWeeks, Math.round((last - first) / 7) + 1);
    if (weeks === mostWeeks) notes.push(`Only the first ${mostWeeks} weeks are drawn.`);
    const points = Array.from({ length: weeks }, (_, week): ChartPoint => {
      const monday = first + 7 * week;
      const sum = ask('TRAIN.SUM', dates, values, monday + 6, 7) ?? 0;
      const monotony = ask('TRAIN.MONOTONY', dates, values, monday + 6, 7);
      return {
        x: monday,
        y: sum,
        group,
        name: `${title ? `${title}, ` : ''}week from ${writeDate(monday)}`,
        row: entries.find(({ day }) => mondayOf(day) === monday)?.row ?? entries[0]!.row,
        ...(monotony === null ? {} : { beside: monotony }),
        note: !logged.has(monday)
          ? 'nothing logged'
          : monotony === null
            ? 'no monotony'
            : `monotony ${short(monotony)}`,
      };
    });
    return { title, points, lines: [], bands: [], levels: [] };
  });
  notes.unshift(
    'Weeks run from Monday to Sunday. Monotony is the mean over the SD of a week’s daily loads; a week with equal days, or one that starts before the log, has none.',
  );
  return {
    x: { label: 'Week from', is: 'date' },
    y: { label: read.measures[1]!.label },
    beside: { label: 'Monotony' },
    // Sums of several athletes do not stand in one bar.
    panels: names.length > 1 ? each : [{ ...each[0]!, title: names[0]! }],
    notes,
  };
}

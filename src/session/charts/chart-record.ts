/** The kinds of chart, and the record of a chart in the book. */
import type { Book } from '../../book/model.ts';
import { z } from '../../book/zod.ts';

export const chartKinds = [
  'scatter',
  'agreement',
  'pairs',
  'trend',
  'distribution',
  'sides',
  'load',
  'lean-parts',
  'bar-path',
  'repetitions',
] as const;
export type ChartKind = (typeof chartKinds)[number];

/** A chart as the book keeps it in its part `charts`: three choices (kind, columns, by whom) and settings. Columns by name. */
export const chartRecord = z.strictObject({
  title: z.string().max(200),
  kind: z.enum(chartKinds),
  /** Id of the sheet. */
  sheet: z.string().max(300),
  /** In the order of the kind's roles. */
  columns: z.array(z.string().min(1).max(200)).min(1).max(2),
  /** Column whose texts tell athletes or groups apart. */
  by: z.string().min(1).max(200).optional(),
  /** A small drawing for each of `by`, all to one scale. */
  panels: z.boolean().optional(),
  /**
   * Standard error of measurement for the real-change band: a number in the column's unit, or a formula of the book that
   * gives it, such as one with TEST.SEM.TRIALS. Worked out from the pairs where left out.
   */
  sem: z.union([z.number().min(0), z.string().min(1).max(2000)]).optional(),
  confidence: z.number().gt(0).lt(1).optional(),
  /** Longest stretch of days that a line goes across. */
  gapDays: z.number().min(1).max(3660).optional(),
});
export type ChartRecord = z.infer<typeof chartRecord>;

/** What each kind asks for, and in which words it is offered. */
export const chartRoles: Readonly<
  Record<
    ChartKind,
    {
      readonly name: string;
      readonly about: string;
      readonly roles: readonly ('number' | 'date')[];
      readonly labels: readonly string[];
      readonly by: string;
      /** What its columns usually are, by role. */
      readonly usual?: readonly string[];
    }
  >
> = {
  scatter: {
    name: 'Two measures',
    about: 'One measure against another, with the least-squares line and its 95 % prediction interval.',
    roles: ['number', 'number'],
    labels: ['x-axis', 'y-axis'],
    by: 'Groups',
  },
  agreement: {
    name: 'Agreement of two methods or trials',
    about: 'Difference against mean, with the mean difference and the limits of agreement.',
    roles: ['number', 'number'],
    labels: ['First', 'Second'],
    by: 'Groups',
  },
  pairs: {
    name: 'Before and after',
    about: 'Each pair with the band in which a change may be measuring error.',
    roles: ['number', 'number'],
    labels: ['Before', 'After'],
    by: 'Groups',
  },
  trend: {
    name: 'Over time',
    about: 'A measure by date, with a band for measuring error; gaps in the log stay gaps.',
    roles: ['date', 'number'],
    labels: ['Date', 'Measure'],
    by: 'Athlete',
  },
  distribution: {
    name: 'Spread by group',
    about: 'Every value, with median and quartiles.',
    roles: ['number'],
    labels: ['Measure'],
    by: 'Groups',
  },
  sides: {
    name: 'Left against right',
    about: 'Both sides of each athlete, with the line on which they are equal.',
    roles: ['number', 'number'],
    labels: ['Left', 'Right'],
    usual: ['wall_left', 'wall_right'],
    by: 'Groups',
  },
  load: {
    name: 'Load by week',
    about: 'Weekly sums with the monotony of each week.',
    roles: ['date', 'number'],
    labels: ['Date', 'Load'],
    usual: ['day', 'session_load'],
    by: 'Athlete',
  },
  'lean-parts': {
    name: 'Where observed leans come from',
    about:
      'Each observed lean as a bar of its seven parts, high to low. A small drawing for each lifter shows before and after.',
    roles: ['number'],
    labels: ['Observed lean'],
    usual: ['observed_lean'],
    by: 'Athlete',
  },
  'bar-path': {
    name: 'Bar path over mid-foot',
    about: 'How far the bar is ahead of mid-foot against its height, frames of one repetition joined.',
    roles: ['number', 'number'],
    labels: ['Ahead of mid-foot', 'Height'],
    usual: ['bar_ahead', 'bar_height'],
    by: 'Athlete',
  },
  repetitions: {
    name: 'Over repetitions',
    about: 'A measure by repetition, with the slope over the set and the interval of the slope.',
    roles: ['number', 'number'],
    labels: ['Repetition', 'Measure'],
    usual: ['repetition', 'observed_lean'],
    by: 'Athlete',
  },
};

export interface ChartOutline {
  readonly key: string;
  readonly title: string;
  readonly kind: ChartKind;
}

/** Keys end in a number that grows: chart-10 comes after chart-9. */
const inOrder = new Intl.Collator('en', { numeric: true });

/** The charts of a book that can be read, in the order of their keys: the one in which they were added. */
export function chartsOutline(book: Book): readonly ChartOutline[] {
  const all = [...book.parts.charts].sort(([a], [b]) => inOrder.compare(a, b));
  return all.flatMap(([key, kept]) => {
    const read = chartRecord.safeParse(kept);
    return read.success ? [{ key, title: read.data.title, kind: read.data.kind }] : [];
  });
}

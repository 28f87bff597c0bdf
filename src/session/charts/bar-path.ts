import { writeDate } from '../../units/date.ts';
import type { ReadContext } from '../open-book.ts';
import type { ChartRecord } from './chart-record.ts';
import type { ChartLine, ChartPanel, ChartPoint, Content } from './data.ts';
import { apart, type Frame, framesOf } from './frames.ts';
import type { Read } from './read.ts';

/**
 * The bar over mid-foot, frame by frame: how far ahead it is against how high, one line for each repetition, in the order of
 * the frames' times. A repetition of one frame is a point without a line.
 */
export function barPath(read: Read, record: ChartRecord, context: ReadContext): Content {
  const [ahead, height] = read.measures;
  const frames = framesOf(read, context);
  const names = read.groups.length > 0 ? read.groups : [''];
  const inPanel = (title: string, own: readonly Frame[]): ChartPanel => {
    const paths = apart(own, ({ group, day, repetition }) => `${group} ${day} ${repetition}`).map((path) =>
      path.toSorted((a, b) => a.time - b.time || a.row - b.row),
    );
    const points = paths.flatMap((path) =>
      path.map(({ row, group, day, repetition }): ChartPoint => {
        const on = Number.isNaN(day) ? '' : writeDate(day);
        const which = Number.isNaN(repetition) ? '' : `repetition ${repetition}`;
        return {
          x: ahead!.values[row]!,
          y: height!.values[row]!,
          group,
          name: read.nameOf(row),
          row,
          note: [on, which].filter(Boolean).join(', '),
        };
      }),
    );
    const lines = paths
      .filter(({ length }) => length > 1)
      .map(
        (path): ChartLine => ({
          is: 'trend',
          group: path[0]!.group,
          at: path.map(({ row }) => [ahead!.values[row]!, height!.values[row]!] as const),
        }),
      );
    const heights = points.map(({ y }) => y);
    if (points.length > 0)
      lines.unshift({
        is: 'mid-foot',
        group: 0,
        at: [
          [0, Math.min(...heights)],
          [0, Math.max(...heights)],
        ],
      });
    return { title, points, lines, bands: [], levels: [] };
  };
  const panels =
    record.panels && read.groups.length > 0
      ? names.flatMap((title, group) => {
          const own = frames.filter((frame) => frame.group === group);
          return own.length > 0 ? [inPanel(title, own)] : [];
        })
      : [inPanel('', frames)];
  const left = read.rows.length - frames.length;
  const notes = [
    'Right of the dotted line the bar is ahead of mid-foot, left of it behind. Frames of one repetition are joined in the order of their times.',
  ];
  if (left > 0) notes.push(`${left} of ${read.rows.length} rows are left out: a value is missing.`);
  return { x: { label: ahead!.label, is: 'number' }, y: { label: height!.label }, panels, notes };
}

import { ascending, quantile } from '../../../functions/statistics/describe.ts';
import { short } from './chart-numbers.ts';
import type { ChartLevel, ChartPoint, Content } from './data.ts';
import type { Read } from './read.ts';

/** Every value over its group, with median and quartiles (type 7 of Hyndman & Fan 1996, Am Stat 50:361–365). */
export function distribution(read: Read): Content {
  const [measure] = read.measures;
  const names = read.groups.length > 0 ? read.groups : ['all'];
  const points: ChartPoint[] = [];
  for (const row of read.rows) {
    const y = measure!.values[row]!;
    const group = read.groupOf[row]!;
    if (Number.isNaN(y) || group < 0) continue;
    points.push({ x: group, y, group, name: read.nameOf(row), row });
  }
  const levels: ChartLevel[] = [];
  const notes: string[] = [];
  names.forEach((name, group) => {
    const sorted = ascending(
      Float64Array.from(
        points.filter((point) => point.group === group),
        ({ y }) => y,
      ),
    );
    if (sorted.length === 0) return;
    const [low, middle, high] = [0.25, 0.5, 0.75].map((p) => quantile(sorted, p)) as [number, number, number];
    levels.push(
      { is: 'quartile', y: low, label: '', x: group },
      { is: 'median', y: middle, label: short(middle), x: group },
      { is: 'quartile', y: high, label: '', x: group },
    );
    notes.push(
      `${name}: ${sorted.length} values, median ${short(middle)}, quartiles ${short(low)} and ${short(high)}.`,
    );
  });
  return {
    x: { label: '', is: 'groups' },
    y: { label: measure!.label },
    panels: [{ title: '', points, lines: [], bands: [], levels }],
    notes,
  };
}

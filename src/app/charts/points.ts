import type { ChartData, ChartPoint } from '../../session/charts/data.ts';
import { isoFromSerial } from '../../units/date.ts';

const number = (value: number): string =>
  (Math.abs(value) >= 1e5 ? Math.round(value) : Number(value.toPrecision(4))).toString().replace('-', '−');

/** A point's place across as it is read. */
export function acrossOf(data: ChartData, { x }: ChartPoint): string {
  if (data.x.is === 'date') return isoFromSerial(x)?.slice(0, 10) ?? '';
  return data.x.is === 'groups' ? (data.groups[x] ?? 'all') : number(x);
}

/** A point in words. */
export function words(data: ChartData, point: ChartPoint): string {
  const group = data.x.is !== 'groups' && data.groups[point.group];
  const across =
    data.x.is === 'groups' || data.kind === 'load' ? '' : `${data.x.label} ${acrossOf(data, point)}, `;
  const whose = [point.name, group && group !== point.name && data.kind !== 'load' ? group : ''].filter(
    Boolean,
  );
  return `${whose.join(', ')}: ${across}${data.y.label} ${number(point.y)}${point.note ? `; ${point.note}` : ''}`;
}

type At = { readonly panel: number; readonly point: ChartPoint };

/** Where a key goes from a point: along the drawing, or to the next one. Undefined for other keys. */
export function nextPoint(data: ChartData, now: At | null, key: string): At | null | undefined {
  const panels = data.panels.map(({ points }) => points.toSorted((a, b) => a.x - b.x || a.y - b.y));
  const first = panels.findIndex((points) => points.length > 0);
  if (first < 0) return undefined;
  const panel = now?.panel ?? first;
  const points = panels[panel]!;
  const index = now ? points.indexOf(now.point) : -1;
  const go = (to: number): At => ({ panel, point: points[Math.max(0, Math.min(points.length - 1, to))]! });
  const over = (step: number): At | null => {
    for (let to = panel + step; to >= 0 && to < panels.length; to += step)
      if (panels[to]!.length > 0) return { panel: to, point: panels[to]![0]! };
    return now;
  };
  switch (key) {
    case 'ArrowRight':
      return go(index + 1);
    case 'ArrowLeft':
      return go(index < 0 ? points.length - 1 : index - 1);
    case 'Home':
      return go(0);
    case 'End':
      return go(points.length - 1);
    case 'ArrowDown':
      return now ? over(1) : go(0);
    case 'ArrowUp':
      return now ? over(-1) : go(0);
    default:
      return undefined;
  }
}

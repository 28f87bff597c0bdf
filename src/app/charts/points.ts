/** The points of a chart in words, in the order in which keys go through them. */
import type { ChartData, ChartPoint } from '../../session/charts/data.ts';
import { writeDate } from '../../units/date.ts';

const number = (value: number): string =>
  (Math.abs(value) >= 1e5 ? Math.round(value) : Number(value.toPrecision(4))).toString().replace('-', '−');

/** A point's place across as it is read. */
export function acrossOf(data: ChartData, { x }: ChartPoint): string {
  if (data.x.is === 'date') return writeDate(Math.floor(x));
  return data.x.is === 'groups' ? (data.groups[x] ?? 'all') : number(x);
}

/** A point in words. */
export function words(data: ChartData, point: ChartPoint): string {
  if (data.kind === 'lean-parts')
    return `${point.name}: ${data.x.label} ${number(point.x)}; ${point.note ?? ''}`;
  const group = data.x.is !== 'groups' && data.groups[point.group];
  const across =
    data.x.is === 'groups' || data.kind === 'load' ? '' : `${data.x.label} ${acrossOf(data, point)}, `;
  const whose = [point.name, group && group !== point.name && data.kind !== 'load' ? group : ''].filter(
    Boolean,
  );
  return `${whose.join(', ')}: ${across}${data.y.label} ${number(point.y)}${point.note ? `; ${point.note}` : ''}`;
}

export type At = { readonly panel: number; readonly point: ChartPoint };

/** Points that the arrow keys go along: those of a panel, or of one athlete where several share a drawing. */
interface Strand {
  readonly panel: number;
  readonly points: readonly ChartPoint[];
}

const known = new WeakMap<ChartData, readonly Strand[]>();

/** The strands of a chart, each from left to right, worked out once. */
function strandsOf(data: ChartData): readonly Strand[] {
  let strands = known.get(data);
  if (!strands) {
    const apart =
      data.kind === 'trend' && data.panels.length === 1 ? data.groups.map((_, group) => group) : [];
    strands = data.panels
      .flatMap(({ points }, panel): Strand[] =>
        apart.length > 0
          ? apart.map((of) => ({ panel, points: points.filter(({ group }) => group === of) }))
          : [{ panel, points }],
      )
      .filter(({ points }) => points.length > 0)
      .map(({ panel, points }) => ({
        panel,
        points: points.toSorted((a, b) => (data.kind === 'lean-parts' ? a.y - b.y : a.x - b.x || a.y - b.y)),
      }));
    known.set(data, strands);
  }
  return strands;
}

/** Where a key goes from a point: along its strand, or to the next one. Undefined for other keys. */
export function nextPoint(data: ChartData, now: At | null, key: string): At | null | undefined {
  const strands = strandsOf(data);
  if (strands.length === 0) return undefined;
  const found = now ? strands.findIndex(({ points }) => points.includes(now.point)) : -1;
  const strand = Math.max(0, found);
  const { panel, points } = strands[strand]!;
  const index = now ? points.indexOf(now.point) : -1;
  const go = (to: number): At => ({ panel, point: points[Math.max(0, Math.min(points.length - 1, to))]! });
  /** To the point of another strand that stands nearest across. */
  const over = (step: number): At | null => {
    const other = strands[strand + step];
    if (!now || !other) return now;
    const far = ({ x }: ChartPoint): number => Math.abs(x - now.point.x);
    const nearest = other.points.reduce((best, point) => (far(point) < far(best) ? point : best));
    return { panel: other.panel, point: nearest };
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

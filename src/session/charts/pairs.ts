/** Charts of two measures of the same rows: scatter, agreement, before and after. */
import { ask, fitOf, short, spanOf } from './chart-numbers.ts';
import type { ChartRecord } from './chart-record.ts';
import type { ChartBand, ChartLevel, ChartLine, ChartPanel, ChartPoint, Content } from './data.ts';
import { type Read, rangeFrom } from './read.ts';

type Parts = Omit<ChartPanel, 'title' | 'points'> & { readonly notes: readonly string[] };

/** Rows in which both measures have a value. */
function pairsIn(read: Read, group: number | null): readonly ChartPoint[] {
  const [first, second] = read.measures;
  const points: ChartPoint[] = [];
  for (const row of read.rows) {
    const of = read.groupOf[row]!;
    const [x, y] = [first!.values[row]!, second!.values[row]!];
    if (Number.isNaN(x) || Number.isNaN(y) || (group !== null && of !== group)) continue;
    points.push({ x, y, group: Math.max(0, of), name: read.nameOf(row), row });
  }
  return points;
}

/** The pairs in one drawing, or in one for each group. */
function inPanels(
  read: Read,
  record: ChartRecord,
  parts: (points: readonly ChartPoint[]) => Parts & { points?: readonly ChartPoint[] },
): Pick<Content, 'panels' | 'notes'> {
  const each =
    record.panels && read.groups.length > 0
      ? read.groups.map((title, group) => ({ title, group }))
      : [{ title: '', group: null }];
  const notes: string[] = [];
  const panels = each.map(({ title, group }): ChartPanel => {
    const found = pairsIn(read, group);
    const { notes: said, points = found, ...rest } = parts(found);
    notes.push(...said.map((note) => (title === '' ? note : `${title}: ${note}`)));
    return { title, points, ...rest };
  });
  const used = panels.reduce((sum, { points }) => sum + points.length, 0);
  const left = read.rows.length - used;
  if (left > 0) notes.push(`${left} of ${read.rows.length} rows are left out: a value is missing.`);
  return { panels, notes };
}

const columns = (points: readonly ChartPoint[]) =>
  [rangeFrom(points.map(({ x }) => x)), rangeFrom(points.map(({ y }) => y))] as const;

/** Points are asked one by one whether they lie outside only where names at them could be read. */
const mostNamed = 500;

const standingOut = (
  points: readonly ChartPoint[],
  is: (point: ChartPoint) => boolean,
): readonly ChartPoint[] => points.map((point) => (is(point) ? { ...point, apart: true } : point));

export function scatter(read: Read, record: ChartRecord): Content {
  const drawn = inPanels(read, record, (points) => {
    const [x, y] = columns(points);
    const span = spanOf(points.map((point) => point.x));
    const fit = span && fitOf(x, y, ...span);
    const outside = ({ x: at, y: height }: ChartPoint): boolean => {
      const low = fit?.band ? ask('COHORT.FIT', x, y, 'low', at) : null;
      const high = fit?.band ? ask('COHORT.FIT', x, y, 'high', at) : null;
      return low !== null && high !== null && (height < low || height > high);
    };
    const r2 = fit && ask('COHORT.FIT', x, y, 'r2');
    const slope = fit && ask('COHORT.FIT', x, y, 'slope');
    return {
      points: points.length > mostNamed ? points : standingOut(points, outside),
      lines: fit ? [fit.line] : [],
      bands: fit?.band ? [fit.band] : [],
      levels: [],
      notes: [
        slope === null || r2 === null
          ? `${points.length} points; too few, or all alike, for a line.`
          : `${points.length} points; slope ${short(slope)}, r² ${short(r2)}. The band is the 95 % prediction interval, where the relation is linear; do not extrapolate.`,
      ],
    };
  });
  return {
    x: { label: read.measures[0]!.label, is: 'number' },
    y: { label: read.measures[1]!.label },
    ...drawn,
  };
}

/** Bland & Altman 1986, Lancet 1:307–310: difference a − b against the mean of both. */
export function agreement(read: Read, record: ChartRecord): Content {
  const confidence = record.confidence ?? 0.95;
  const drawn = inPanels(read, record, (pairs) => {
    const [a, b] = columns(pairs);
    const points = pairs.map((pair) => ({
      ...pair,
      x: (pair.x + pair.y) / 2,
      y: pair.x - pair.y,
      note: `${short(pair.x)} and ${short(pair.y)}`,
    }));
    const bias = ask('TEST.BIAS', a, b);
    const low = ask('TEST.LIMIT.LOW', a, b, confidence);
    const high = ask('TEST.LIMIT.HIGH', a, b, confidence);
    const levels: ChartLevel[] = points.length > 0 ? [{ is: 'zero', y: 0, label: '' }] : [];
    if (bias !== null) levels.push({ is: 'bias', y: bias, label: `mean ${short(bias)}` });
    if (low !== null) levels.push({ is: 'limit', y: low, label: `limit ${short(low)}` });
    if (high !== null) levels.push({ is: 'limit', y: high, label: `limit ${short(high)}` });
    const note =
      bias === null || low === null || high === null
        ? `${points.length} pairs; limits need two or more.`
        : `${points.length} pairs; mean difference ${short(bias)}, ${Math.round(confidence * 100)} % limits of agreement ${short(low)} to ${short(high)}.`;
    const outside = ({ y }: ChartPoint) => (low !== null && y < low) || (high !== null && y > high);
    return { points: standingOut(points, outside), lines: [], bands: [], levels, notes: [note] };
  });
  const [first, second] = read.measures;
  const unit = /\(([^()]*)\)$/.exec(first!.label)?.[0] ?? '';
  return {
    x: { label: `Mean of both ${unit}`.trim(), is: 'number' },
    y: { label: `${first!.column.label} − ${second!.column.label} ${unit}`.trim() },
    ...drawn,
  };
}

/** One against the other, the line on which they are equal, and the band in which a difference may be measuring error. */
export function equality(read: Read, record: ChartRecord): Content {
  const confidence = record.confidence ?? 0.95;
  const drawn = inPanels(read, record, (points) => {
    const [a, b] = columns(points);
    // For two sides nothing tells the error from a true difference, so it must be given.
    const sem = read.sem ?? (record.kind === 'pairs' ? ask('TEST.SEM.TRIALS', a, b) : null);
    const mdc = sem === null ? null : ask('TEST.MDC', sem, confidence);
    const span = spanOf(points.flatMap(({ x, y }) => [x, y]));
    const lines: ChartLine[] = [];
    const bands: ChartBand[] = [];
    if (span) {
      lines.push({ is: 'equal', group: 0, at: span.map((place) => [place, place] as const) });
      if (mdc !== null)
        bands.push({
          is: 'real change',
          at: span.map((place) => [place, place - mdc, place + mdc] as const),
        });
    }
    const marked = points.map((point) => {
      const change = point.y - point.x;
      const real = mdc !== null && Math.abs(change) > mdc;
      return {
        ...point,
        ...(real ? { apart: true as const } : {}),
        note: `difference ${short(change)}${mdc === null ? '' : real ? ', more than measuring error' : ', within measuring error'}`,
      };
    });
    const beyond = mdc === null ? 0 : points.filter(({ x, y }) => Math.abs(y - x) > mdc).length;
    const source = read.sem === null ? ', with the standard error of measurement from these pairs' : '';
    return {
      points: marked,
      lines,
      bands,
      levels: [],
      notes: [
        mdc === null
          ? `${points.length} pairs. Give the standard error of measurement to see which differences are more than error.`
          : `${points.length} pairs; ${beyond} differ by more than ${short(mdc)}, the minimal detectable change at ${Math.round(confidence * 100)} %${source}.`,
      ],
    };
  });
  return {
    x: { label: read.measures[0]!.label, is: 'number' },
    y: { label: read.measures[1]!.label },
    ...drawn,
  };
}

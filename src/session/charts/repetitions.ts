import { tOf } from '../../../functions/statistics/distributions.ts';
import { writeDate } from '../../units/date.ts';
import { signOf } from '../../units/sign.ts';
import type { ReadContext } from '../open-book.ts';
import { ask, short } from './chart-numbers.ts';
import type { ChartRecord } from './chart-record.ts';
import type { ChartLine, ChartPanel, ChartPoint, Content } from './data.ts';
import { apart, type Frame, framesOf } from './frames.ts';
import { type Read, rangeFrom } from './read.ts';

/** A line needs three repetitions for an error of its slope. */
const FEWEST = 3;

/** A slope with its interval. */
interface Slope {
  readonly slope: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Slope of the least-squares line and its interval, slope ± t(n − 2) · see / √Σ(x − x̄)²; null for fewer than three points or
 * no spread of x. Draper & Smith, Applied Regression Analysis, 3rd ed. 1998, section 1.4.
 */
function slopeOf(xs: readonly number[], ys: readonly number[], confidence = 0.95): Slope | null {
  if (xs.length < FEWEST) return null;
  const [x, y] = [rangeFrom(xs), rangeFrom(ys)];
  const slope = ask('COHORT.FIT', x, y, 'slope');
  const see = ask('COHORT.FIT', x, y, 'see');
  const mean = xs.reduce((sum, one) => sum + one, 0) / xs.length;
  const spread = xs.reduce((sum, one) => sum + (one - mean) * (one - mean), 0);
  if (slope === null || see === null || spread === 0) return null;
  const margin = (tOf(confidence, xs.length - 2) * see) / Math.sqrt(spread);
  return { slope, low: slope - margin, high: slope + margin };
}

/**
 * A measure over the repetitions of a set, as lean or shin angle with fatigue: of each repetition its deepest frame, and for
 * each lifter and day the least-squares line with its slope per repetition and the interval of the slope.
 */
export function repetitions(read: Read, record: ChartRecord, context: ReadContext): Content {
  const [number, measure] = read.measures;
  const at = ({ row }: Frame): number => number!.values[row]!;
  const deepest = apart(framesOf(read, context), (frame) => `${frame.group} ${frame.day} ${at(frame)}`).map(
    (frames) =>
      frames.reduce((best, one) => (one.depth < best.depth || Number.isNaN(best.depth) ? one : best)),
  );
  const confidence = record.confidence ?? 0.95;
  const notes: string[] = [];
  const names = read.groups.length > 0 ? read.groups : [''];
  const inPanel = (title: string, own: readonly Frame[]): ChartPanel => {
    const sets = apart(own, ({ group, day }) => `${group} ${day}`).map((set) =>
      set.toSorted((a, b) => at(a) - at(b)),
    );
    const lines = sets.flatMap((set): ChartLine[] => {
      const { group, day } = set[0]!;
      const [xs, ys] = [set.map(at), set.map(({ row }) => measure!.values[row]!)];
      const found = slopeOf(xs, ys, confidence);
      const who = [names[group]!, Number.isNaN(day) ? '' : writeDate(day)].filter(Boolean);
      if (set.length > 1)
        notes.push(
          `${who.join(', ') || 'All'}: ${inWords(found, set.length, confidence, signOf(measure!.column))}`,
        );
      if (!found) return [];
      const [x, y] = [rangeFrom(xs), rangeFrom(ys)];
      const ends = [xs[0]!, xs.at(-1)!].flatMap((place) => {
        const height = ask('COHORT.FIT', x, y, 'predict', place);
        return height === null ? [] : [[place, height] as const];
      });
      return [{ is: 'trend', group, at: ends }];
    });
    const points = own.map(
      (frame): ChartPoint => ({
        x: at(frame),
        y: measure!.values[frame.row]!,
        group: frame.group,
        name: read.nameOf(frame.row),
        row: frame.row,
        ...(Number.isNaN(frame.day) ? {} : { note: writeDate(frame.day) }),
      }),
    );
    return { title, points, lines, bands: [], levels: [] };
  };
  const panels =
    record.panels && read.groups.length > 0
      ? names.flatMap((title, group) => {
          const own = deepest.filter((frame) => frame.group === group);
          return own.length > 0 ? [inPanel(title, own)] : [];
        })
      : [inPanel('', deepest)];
  notes.push('Of each repetition the deepest frame. A slope tells what changed over the set, not why.');
  return { x: { label: number!.label, is: 'number' }, y: { label: measure!.label }, panels, notes };
}

function inWords(found: Slope | null, count: number, confidence: number, unit: string): string {
  const told = (value: number): string => `${short(value)}${unit === '' || unit === '°' ? unit : ` ${unit}`}`;
  if (!found) return `${count} repetitions; a slope and its interval need ${FEWEST} different ones.`;
  const { slope, low, high } = found;
  const interval = `${Math.round(confidence * 100)} % interval ${told(low)} to ${told(high)}`;
  return low <= 0 && high >= 0
    ? `no change over ${count} repetitions beyond error (${interval} per repetition).`
    : `${told(slope)} per repetition over ${count} repetitions (${interval}).`;
}

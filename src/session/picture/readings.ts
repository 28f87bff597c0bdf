import { hypot } from '../../../functions/core/elementary/hypot.ts';
import { invoke } from '../../../functions/core/invoke.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import { functionSentences } from '../../../functions/core/sentence.ts';
import type { Argument } from '../../../functions/core/value.ts';
import leanHip from '../../../functions/lean/hip.ts';
import leanKnee from '../../../functions/lean/knee.ts';
import ahead from '../../../functions/photo/ahead.ts';
import depthOf from '../../../functions/photo/depth.ts';
import errorOf from '../../../functions/photo/error.ts';
import leanOf from '../../../functions/photo/lean.ts';
import levelOf from '../../../functions/photo/level.ts';
import scaleOf from '../../../functions/photo/scale.ts';
import { PLACING } from '../measuring-error.ts';
import { type Observation, POINTS, type PointId } from './points.ts';

/** A number read off the picture with its error, or why there is none yet. */
export interface Reading {
  readonly id: 'lean' | 'shin' | 'depth' | 'knee' | 'hip' | 'ahead';
  readonly label: string;
  readonly unit: 'deg' | 'cm';
  readonly value: number | null;
  /** SD from placing the points; null where no scale says how large the points' error is. */
  readonly error: number | null;
  /** Which points are missing, or what is wrong. */
  readonly why?: string;
}

export interface Readings {
  /** Deg by which the picture is turned clockwise; 0 without a line. */
  readonly level: number;
  readonly levelWhy?: string;
  /** cm for one unit of the picture; null until a length is marked. */
  readonly scale: number | null;
  readonly scaleWhy?: string;
  readonly list: readonly Reading[];
}

type Definition = Parameters<typeof invoke>[0];

/** Everything that the points placed so far say about the posture. */
export function readingsOf(seen: Observation): Readings {
  const { points, facing } = seen;
  const at = (...ids: readonly PointId[]): readonly number[] =>
    ids.flatMap((id) => [points[id]!.x, points[id]!.y]);
  const ask = (definition: Definition, ...args: readonly Argument[]): number | string => {
    const outcome = invoke(definition, args);
    if (typeof outcome === 'number') return outcome;
    return isIssue(outcome) ? (functionSentences[outcome.reason]?.(outcome) ?? outcome.code) : '';
  };
  const lacking = (ids: readonly PointId[]): string | null => {
    const none = ids.filter((id) => !points[id]);
    return none.length === 0 ? null : `Place ${inWords(none.map(labelOf))}.`;
  };
  const levelling = lacking(['level_1', 'level_2'])
    ? 0
    : ask(levelOf, ...at('level_1', 'level_2'), seen.line);
  const level = typeof levelling === 'number' ? levelling : 0;
  const scaling = lacking(['scale_1', 'scale_2'])
    ? null
    : ask(scaleOf, ...at('scale_1', 'scale_2'), seen.length, seen.camera, seen.nearer);
  const scale = typeof scaling === 'number' ? scaling : null;

  /** SD of the angle of a line between two points; null without a scale. */
  const spread = (a: PointId, b: PointId): number | null => {
    if (scale === null) return null;
    const [p, q] = [points[a]!, points[b]!];
    const length = hypot(q.x - p.x, q.y - p.y);
    const sd = length === 0 ? '' : ask(errorOf, length, PLACING / scale);
    return typeof sd === 'number' ? sd : null;
  };
  const both = (a: number | null, b: number | null): number | null =>
    a === null || b === null ? null : hypot(a, b);
  const read = (
    id: Reading['id'],
    label: string,
    needs: readonly PointId[],
    value: () => number | string,
    error: () => number | null,
    unit: Reading['unit'] = 'deg',
  ): Reading => {
    const why = lacking(needs);
    if (why) return { id, label, unit, value: null, error: null, why };
    const got = value();
    return typeof got === 'number'
      ? { id, label, unit, value: got, error: error() }
      : { id, label, unit, value: null, error: null, why: got };
  };

  const lean = read(
    'lean',
    'Observed lean',
    ['hip', 'shoulder'],
    () => ask(leanOf, ...at('hip', 'shoulder'), facing, level),
    () => spread('hip', 'shoulder'),
  );
  const shin = read(
    'shin',
    'Shin angle',
    ['ankle', 'knee'],
    () => ask(leanOf, ...at('ankle', 'knee'), facing, level),
    () => spread('ankle', 'knee'),
  );
  const depth = read(
    'depth',
    'Depth (° above parallel)',
    ['knee', 'hip'],
    () => ask(depthOf, ...at('knee', 'hip'), facing, level),
    () => spread('knee', 'hip'),
  );
  const flexion = (id: 'knee' | 'hip', label: string, upper: Reading, definition: Definition): Reading => {
    const why = upper.why ?? depth.why;
    if (upper.value === null || depth.value === null)
      return { id, label, unit: 'deg', value: null, error: null, ...(why ? { why } : {}) };
    const got = ask(definition, upper.value, depth.value);
    return typeof got === 'number'
      ? { id, label, unit: 'deg', value: got, error: both(upper.error, depth.error) }
      : { id, label, unit: 'deg', value: null, error: null, why: got };
  };
  const overFoot = read(
    'ahead',
    'Bar ahead of mid-foot',
    ['bar', 'toe', 'heel'],
    () => {
      if (scale === null) return 'Mark a known length.';
      const { toe, heel } = points;
      const middle = [(toe!.x + heel!.x) / 2, (toe!.y + heel!.y) / 2];
      return ask(ahead, ...at('bar'), ...middle, scale, facing, level);
    },
    // the bar's own error, and that of the middle of two points
    () => PLACING * Math.sqrt(1.5),
    'cm',
  );
  return {
    level,
    ...(typeof levelling === 'string' ? { levelWhy: levelling } : {}),
    scale,
    ...(typeof scaling === 'string' ? { scaleWhy: scaling } : {}),
    list: [
      lean,
      shin,
      depth,
      flexion('knee', 'Knee flexion', shin, leanKnee),
      flexion('hip', 'Hip flexion', lean, leanHip),
      overFoot,
    ],
  };
}

export const labelOf = (id: PointId): string => POINTS.find((point) => point.id === id)!.label;

const inWords = (labels: readonly string[]): string => {
  const small = labels.map((label) => label.toLowerCase());
  return small.length < 2 ? (small[0] ?? '') : `${small.slice(0, -1).join(', ')} and ${small.at(-1)}`;
};

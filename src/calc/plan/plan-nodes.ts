import type { Range, Value } from '../../../functions/core/value.ts';
import type { Source } from './api.ts';
import { gather, singleVector, Tag, Vector } from './vector.ts';

/** Rows computed at a time: small enough that all intermediate values of a formula stay in the processor's cache. */
export const BLOCK = 1024;

/** One run of a plan. What does not depend on the row is computed once a run. */
export interface Run {
  readonly source: Source;
  readonly id: number;
  /** What was computed once in this run; gone with it, so that formulas do not hold on to arrays as long as a column. */
  readonly once: Map<object, unknown>;
}

/**
 * Rows that are computed together: `count` rows from `start` on, or the `rows` listed. A frame inside another (the rows
 * that take one branch of an IF) knows which elements of it they are.
 */
export interface Frame {
  readonly run: Run;
  /** Differs from every other frame of the run. */
  readonly id: number;
  readonly start: number;
  readonly rows: Int32Array | null;
  readonly count: number;
  readonly outer: Frame | null;
  readonly indicesInOuter: Int32Array | null;
}

let ids = 0;
export const nextId = (): number => ++ids;

export const newRun = (source: Source): Run => ({ source, id: nextId(), once: new Map() });

/** The frame for what does not depend on the row. */
export const frameOfRun = (run: Run): Frame => ({
  run,
  id: -run.id,
  start: 0,
  rows: null,
  count: 1,
  outer: null,
  indicesInOuter: null,
});

/** The frame of those rows of another whose indices are in `indices`. */
export function innerFrame(frame: Frame, indices: Int32Array, count: number): Frame {
  const rows = new Int32Array(count);
  for (let i = 0; i < count; i++) rows[i] = rowAt(frame, indices[i]!);
  return { run: frame.run, id: nextId(), start: 0, rows, count, outer: frame, indicesInOuter: indices };
}

export const rowAt = (frame: Frame, index: number): number =>
  frame.rows ? frame.rows[index]! : frame.start + index;

/** Cells of a rectangle, row by row. `range` is the column or range behind it, where there is one. */
export interface Area {
  readonly rows: number;
  readonly columns: number;
  readonly vector: Vector;
  readonly range: Range | null;
}

/** How an argument is written; SUM and its kin treat a reference and a computed value differently. */
export type Written = 'reference' | 'empty' | 'value';

/** A piece of a formula that has one value in each row. */
export interface ScalarNode {
  readonly is: 'scalar';
  readonly varies: boolean;
  readonly written: Written;
  vector(frame: Frame): Vector;
}
/** A piece of a formula that is a rectangle of values; when it varies, another one in each row. */
export interface AreaNode {
  readonly is: 'area';
  readonly varies: boolean;
  /** `index` is only looked at when it varies. */
  area(frame: Frame, index: number): Area;
  /** A range as it stands in the sheet, not a computed array. */
  readonly written: Written;
  /** How many columns, where that is known beforehand. */
  readonly columns?: number;
}
export type PlanNode = ScalarNode | AreaNode;

/** A value written into the formula, or an error found while compiling. */
export function constantNode(value: Value, written: Written = 'value'): ScalarNode {
  const vector = singleVector(value);
  return { is: 'scalar', varies: false, written, vector: () => vector };
}

/** Computes `make` once a run. */
export function oncePerRun<T>(make: (frame: Frame) => T): (frame: Frame) => T {
  return (frame) => {
    const { once } = frame.run;
    const known = once.get(make);
    if (known !== undefined || once.has(make)) return known as T;
    const value = make(frameOfRun(frame.run));
    once.set(make, value);
    return value;
  };
}

/** A scalar that does not depend on the row. */
export function fixedScalar(make: (frame: Frame, out: Vector) => void): ScalarNode {
  const vector = oncePerRun((frame) => {
    const out = new Vector(1);
    make(frame, out);
    out.single = true;
    out.plain = out.tags[0] === Tag.number;
    return out;
  });
  return { is: 'scalar', varies: false, written: 'value', vector };
}

/** A scalar of each row that computes into a vector of its own. */
export function varyingScalar(fill: (frame: Frame, out: Vector) => void): ScalarNode {
  const out = new Vector(BLOCK);
  return {
    is: 'scalar',
    varies: true,
    written: 'value',
    vector(frame) {
      fill(frame, out);
      if (!out.plain) out.look(frame.count);
      return out;
    },
  };
}

/** The value of a 1×1 rectangle stands for itself; a larger one has none. */
export function scalarOfArea(area: Area): Vector | null {
  if (area.rows * area.columns !== 1) return null;
  const vector = new Vector(1);
  vector.mixed();
  vector.copy(0, area.vector, 0);
  vector.single = true;
  vector.plain = vector.tags[0] === Tag.number;
  return vector;
}

/** Values of one name given by LET: computed once a frame; rows inside a branch take theirs from the frame around it. */
export function localNode(of: ScalarNode): ScalarNode {
  if (!of.varies) return { ...of, written: 'value' };
  const kept: { id: number; vector: Vector }[] = [];
  const vectorOf = (frame: Frame, depth: number): Vector => {
    const known = kept[depth];
    if (known?.id === frame.id) return known.vector;
    const vector =
      frame.outer && frame.indicesInOuter
        ? gather(
            vectorOf(frame.outer, depth - 1),
            frame.indicesInOuter,
            frame.count,
            known?.vector ?? new Vector(BLOCK),
          )
        : of.vector(frame);
    kept[depth] = { id: frame.id, vector };
    return vector;
  };
  return {
    is: 'scalar',
    varies: true,
    written: 'value',
    vector(frame) {
      let depth = 0;
      for (let f = frame.outer; f; f = f.outer) depth++;
      return vectorOf(frame, depth);
    },
  };
}

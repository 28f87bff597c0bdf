import type { Kernel } from './operators.ts';
import {
  type Area,
  type Frame,
  fixedScalar,
  oncePerRun,
  type PlanNode,
  scalarOfArea,
  varyingScalar,
} from './plan-nodes.ts';
import { noMatch, tooManyCells } from './problems.ts';
import { singleVector, Tag, Vector } from './vector.ts';

/** Spreads an argument over the cells of the array that all make together; it may have no cell at some. */
function spread(vector: Vector, from: Area, rows: number, columns: number, none: number): Vector {
  if (from.rows === rows && from.columns === columns) return vector;
  const out = new Vector(rows * columns);
  out.unchecked = vector.unchecked;
  out.mixed();
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const i = from.rows === 1 ? 0 : r;
      const j = from.columns === 1 ? 0 : c;
      if (i < from.rows && j < from.columns) out.copy(r * columns + c, vector, i * from.columns + j);
      else if (none === Tag.error) out.setError(r * columns + c, noMatch);
      else out.tags[r * columns + c] = none;
    }
  return out;
}

/**
 * A function or operator that works on single values. With arrays among its arguments it works on each of their cells
 * and gives an array; where an array has no cell, operators give #N/A and functions take the argument as missing.
 */
export function elementwise(kernel: Kernel, args: readonly PlanNode[], none: number = Tag.error): PlanNode {
  const scalars = args.filter((arg) => arg.is === 'scalar');
  if (scalars.length === args.length) {
    if (args.every((arg) => !arg.varies))
      return fixedScalar((frame, out) =>
        kernel(
          scalars.map((arg) => arg.vector(frame)),
          1,
          out,
        ),
      );
    const handed: Vector[] = new Array(args.length);
    return varyingScalar((frame, out) => {
      for (let k = 0; k < scalars.length; k++) handed[k] = scalars[k]!.vector(frame);
      kernel(handed, frame.count, out);
    });
  }
  const compute = (frame: Frame, index: number): Area => {
    const areas = args.map((arg): Area => {
      if (arg.is === 'area') return arg.area(frame, index);
      const vector = arg.vector(frame);
      if (vector.single) return { rows: 1, columns: 1, vector, range: null };
      const one = new Vector(1);
      one.mixed();
      one.copy(0, vector, index);
      return { rows: 1, columns: 1, vector: one, range: null };
    });
    // an operator with an error value beside the array is that error, not an array of it
    if (none === Tag.error)
      for (const area of areas)
        if (area.rows * area.columns === 1 && area.vector.tags[0] === Tag.error) return area;
    const rows = Math.max(1, ...areas.map((area) => area.rows));
    const columns = Math.max(1, ...areas.map((area) => area.columns));
    const size = rows * columns;
    const tooMany = tooManyCells(size, Math.max(...areas.map((area) => area.rows * area.columns)));
    if (tooMany) return { rows: 1, columns: 1, vector: singleVector(tooMany), range: null };
    const handedAreas = areas.map((area) => {
      if (area.rows === 1 && area.columns === 1) return scalarOfArea(area)!;
      return spread(area.vector, area, rows, columns, none);
    });
    const out = new Vector(size);
    out.unchecked = size > 1;
    kernel(handedAreas, size, out);
    return { rows, columns, vector: out, range: null };
  };
  if (args.some((arg) => arg.varies)) return { is: 'area', varies: true, written: 'value', area: compute };
  const once = oncePerRun((frame) => compute(frame, 0));
  return { is: 'area', varies: false, written: 'value', area: once };
}

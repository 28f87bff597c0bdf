import { issue } from '../../../functions/core/issue.ts';
import type { Argument } from '../../../functions/core/value.ts';
import type { Bound } from '../ast.ts';
import type { Own } from '../builtins/builtin.ts';
import { areaOfMatrix, rangeOfArea } from './areas.ts';
import { settle } from './domain.ts';
import {
  type Area,
  type AreaNode,
  constantNode,
  type Frame,
  fixedScalar,
  oncePerRun,
  type PlanNode,
  rowAt,
  type ScalarNode,
  scalarOfArea,
  varyingScalar,
} from './plan-nodes.ts';
import { wrongCount } from './problems.ts';
import { Tag, Vector } from './vector.ts';

/** The arguments of one row, raw: null for a blank, undefined where one is left out, ranges whole. */
function rawArguments(
  args: readonly PlanNode[],
  vectors: readonly (Vector | null)[],
  frame: Frame,
  i: number,
): Argument[] {
  return args.map((arg, k) => {
    if (arg.written === 'empty') return undefined;
    if (arg.is === 'scalar') return vectors[k]!.valueAt(vectors[k]!.single ? 0 : i);
    const area = arg.area(frame, i);
    return scalarOfArea(area)?.valueAt(0) ?? rangeOfArea(area);
  });
}

/** A function of ours that the cell engine lacks or that stands in for one of its own. */
export function ownNode(name: string, own: Own, args: readonly PlanNode[]): PlanNode {
  if (args.length < own.minArgs || args.length > own.maxArgs) return constantNode(wrongCount);
  const varies = args.some((arg) => arg.varies);
  const vectorsOf = (frame: Frame): (Vector | null)[] =>
    args.map((arg) => (arg.is === 'scalar' ? arg.vector(frame) : null));
  if (own.size) {
    const compute = (frame: Frame, index: number): Area =>
      areaOfMatrix(own.compute(rawArguments(args, vectorsOf(frame), frame, index), name));
    const once = oncePerRun((frame) => compute(frame, 0));
    return { is: 'area', varies, written: 'value', area: varies ? compute : once };
  }
  const fill = (frame: Frame, out: Vector): void => {
    out.mixed();
    const vectors = vectorsOf(frame);
    for (let i = 0; i < frame.count; i++)
      settle(out, i, own.compute(rawArguments(args, vectors, frame, i), name));
  };
  return varies ? varyingScalar(fill) : fixedScalar(fill);
}

/** The error value that says a value is missing, as a function without arguments. */
export const missingNode = (args: readonly PlanNode[]): ScalarNode =>
  constantNode(args.length === 0 ? issue('#N/A', 'built-in') : wrongCount);

/** ROW() and ROW of a reference; undefined for anything else. */
export function rowNode(args: readonly Bound[]): ScalarNode | undefined {
  const [of] = args;
  if (args.length > 1) return undefined;
  if (of && !['row-of', 'cell-of', 'cells-of', 'named', 'column-of'].includes(of.type)) return undefined;
  const numbered = (rowOf: (frame: Frame, index: number) => number): ScalarNode =>
    varyingScalar((frame, out) => {
      for (let i = 0; i < frame.count; i++) out.numbers[i] = rowOf(frame, i) + 1;
      out.allNumbers(frame.count);
    });
  if (!of || of.type === 'row-of') return numbered(rowAt);
  if (of.type === 'named') return constantNode(of.row + 1);
  if (of.type === 'column-of') return constantNode(1);
  const row = of.type === 'cell-of' ? of.row : of.type === 'cells-of' ? of.from : 0;
  const moves = (of.type === 'cell-of' && of.rowMoves) || (of.type === 'cells-of' && of.fromMoves);
  return moves ? numbered((frame, index) => row + rowAt(frame, index)) : constantNode(row + 1);
}

/** How many rows or columns an array has. */
export function sizeNode(of: 'rows' | 'columns', args: readonly PlanNode[]): PlanNode {
  const [arg] = args;
  if (!arg || args.length > 1) return constantNode(wrongCount);
  const fill = (frame: Frame, out: Vector): void => {
    out.mixed();
    const vector = arg.is === 'scalar' ? arg.vector(frame) : null;
    for (let i = 0; i < frame.count; i++) {
      const at = vector?.single ? 0 : i;
      if (arg.is === 'area') {
        const area = arg.area(frame, i);
        out.setNumber(i, area[of], Tag.number);
      } else if (vector!.tags[at] === Tag.error) out.setError(i, vector!.errorAt(at));
      else out.setNumber(i, 1, Tag.number);
    }
  };
  return arg.varies ? varyingScalar(fill) : fixedScalar(fill);
}

/** An array written out: `{1, 2; 3, 4}`. */
export function arrayNode(rows: readonly (readonly PlanNode[])[]): AreaNode {
  const columns = rows[0]?.length ?? 0;
  const cells = rows.flat();
  const compute = (frame: Frame, index: number): Area => {
    const out = new Vector(rows.length * columns);
    out.mixed();
    cells.forEach((cell, k) => {
      const vector = cell.is === 'scalar' ? cell.vector(frame) : cell.area(frame, index).vector;
      out.copy(k, vector, cell.is === 'area' || vector.single ? 0 : index);
    });
    return { rows: rows.length, columns, vector: out, range: null };
  };
  const varies = cells.some((cell) => cell.varies);
  const once = oncePerRun((frame) => compute(frame, 0));
  return { is: 'area', varies, written: 'value', columns, area: varies ? compute : once };
}

import type { Range } from '../../../functions/core/value.ts';
import type { Bound } from '../ast.ts';
import { walk } from '../language/walk.ts';
import type { Source } from './api.ts';
import { natureOf } from './nature.ts';
import type { Area, Frame, PlanNode } from './plan-nodes.ts';
import type { Vector } from './vector.ts';

/*
 * Pieces of formulas over whole columns that mean the same are computed once for all formulas of a book, until one of
 * the columns has another value: the condition of twenty FILTERs, and each FILTER that twenty cells hold.
 */

/** Cells of results that are remembered for one book; those asked for longest ago go first. Each takes 9 to 30 bytes. */
const MOST_CELLS = 12_000_000;
/** What a result counts at the fewest, so that single values come to an end too. */
const FEWEST = 64;

interface Known<T> {
  /** The columns as they were; a range is another object when one of its values is another. */
  readonly inputs: readonly Range[];
  readonly result: T;
  readonly cells: number;
}

interface Memory {
  readonly known: Map<string, Known<unknown>>;
  cells: number;
}

const memories = new WeakMap<Source, Memory>();

/** The same node, with its result remembered for the book where that is worth it. */
export function shared(formula: Bound, node: PlanNode): PlanNode {
  if (node.varies) return node;
  const { large, locals, volatile } = natureOf(formula);
  if (!large || volatile || locals.size > 0) return node;
  const key = meaningOf(formula);
  const columns = columnsIn(formula);
  if (node.is === 'scalar') {
    const vector = (frame: Frame): Vector =>
      remembered(
        frame.run.source,
        key,
        columns,
        () => node.vector(frame),
        () => FEWEST,
      );
    return { ...node, vector };
  }
  const area = (frame: Frame, index: number): Area =>
    remembered(
      frame.run.source,
      key,
      columns,
      () => node.area(frame, index),
      ({ rows, columns: width }) => rows * width,
    );
  return { ...node, area };
}

function remembered<T>(
  source: Source,
  key: string,
  columns: readonly (readonly [sheet: string, column: string])[],
  make: () => T,
  cellsOf: (result: T) => number,
): T {
  const memory = memories.get(source) ?? { known: new Map(), cells: 0 };
  memories.set(source, memory);
  const inputs = columns.map(([sheet, column]) => source.column(sheet, column));
  const before = memory.known.get(key) as Known<T> | undefined;
  if (before) {
    forget(memory, key, before);
    if (before.inputs.every((input, k) => input === inputs[k])) {
      keep(memory, key, before);
      return before.result;
    }
  }
  const result = make();
  const inner = memory.known.get(key);
  if (inner) forget(memory, key, inner);
  keep(memory, key, { inputs, result, cells: Math.max(FEWEST, cellsOf(result)) });
  return result;
}

function keep(memory: Memory, key: string, entry: Known<unknown>): void {
  memory.known.set(key, entry);
  memory.cells += entry.cells;
  for (const [oldest, { cells }] of memory.known) {
    if (memory.cells <= MOST_CELLS) break;
    memory.known.delete(oldest);
    memory.cells -= cells;
  }
}

function forget(memory: Memory, key: string, { cells }: Known<unknown>): void {
  memory.known.delete(key);
  memory.cells -= cells;
}

/** Equal for two pieces that read and compute the same. */
const meaningOf = (formula: Bound): string =>
  JSON.stringify(formula, (key, value) => (key === 'span' || key === 'nameSpan' ? undefined : value));

function columnsIn(formula: Bound): readonly (readonly [sheet: string, column: string])[] {
  const found = new Map<string, readonly [string, string]>();
  walk(formula, (node) => {
    if (node.type === 'cells-of')
      for (const column of node.columns) found.set(`${node.sheet}\u0000${column}`, [node.sheet, column]);
    else if ('column' in node) found.set(`${node.sheet}\u0000${node.column}`, [node.sheet, node.column]);
    return true;
  });
  return [...found.values()];
}

import { isMatrix, type Range, type Value } from '../../../functions/core/value.ts';
import type { Bound } from '../ast.ts';
import type { BookIndex } from '../language/book-index.ts';
import type { Source } from '../plan/api.ts';
import { evaluateOnce } from '../plan/compile.ts';
import { arrayInOneCell } from '../plan/domain.ts';
import { readAndBind } from './formula.ts';
import type { State } from './state.ts';

/** No sheet has this id: it stands for the rows that were picked of the formula's own sheet. */
const PICKED = '\u0000picked';
/** Formulas that are kept bound; they are few, and asked again for every group of rows. */
const MOST = 100;

/**
 * Formulas that boil some rows of a sheet down to one value: a line of summaries. A bare name of a column means its
 * values in these rows; with the sheet's name before it, the whole column as everywhere.
 */
export class Selection {
  private kept = new Map<string, Bound>();
  private index: BookIndex | undefined;

  constructor(private readonly state: State) {}

  value(text: string, sheet: string, rows: ArrayLike<number> | undefined): Value {
    const { source } = this.state.place;
    const ranges = new Map<string, Range>();
    const picked = (column: string): Range => {
      const whole = source.column(sheet, column);
      if (rows === undefined) return whole;
      const known = ranges.get(column);
      if (known) return known;
      const range = pick(whole, rows);
      ranges.set(column, range);
      return range;
    };
    const selected: Source = {
      cell: (...at) => source.cell(...at),
      column: (of, column) => (of === PICKED ? picked(column) : source.column(of, column)),
    };
    const result = evaluateOnce(this.bound(text, sheet), selected);
    if (!isMatrix(result)) return result;
    return result.values.length === 1
      ? (result.values[0] ?? null)
      : arrayInOneCell(result.rows, result.columns);
  }

  private bound(text: string, sheet: string): Bound {
    if (this.index !== this.state.index || this.kept.size > MOST) {
      this.index = this.state.index;
      this.kept = new Map();
    }
    const key = `${sheet}\u0000${text}`;
    let bound = this.kept.get(key);
    if (!bound) {
      bound = onPicked(readAndBind(text, this.index, { sheet, column: true }).bound);
      this.kept.set(key, bound);
    }
    return bound;
  }
}

/** The formula with each value of a row put as the column over the picked rows. */
function onPicked(node: Bound): Bound {
  switch (node.type) {
    case 'row-of':
      return { type: 'column-of', sheet: PICKED, column: node.column, span: node.span };
    case 'unary':
    case 'percent':
      return { ...node, operand: onPicked(node.operand) };
    case 'binary':
      return { ...node, left: onPicked(node.left), right: onPicked(node.right) };
    case 'call':
      return { ...node, args: node.args.map(onPicked) };
    case 'array':
      return { ...node, rows: node.rows.map((row) => row.map(onPicked)) };
    default:
      return node;
  }
}

function pick({ kinds, numbers, texts, errors }: Range, rows: ArrayLike<number>): Range {
  const count = rows.length;
  const some = <T>(of: readonly (T | undefined)[] | null): (T | undefined)[] | null =>
    of && Array.from(rows, (row) => of[row]);
  const picked = { kinds: new Uint8Array(count), numbers: new Float64Array(count) };
  for (let i = 0; i < count; i++) {
    picked.kinds[i] = kinds[rows[i]!]!;
    picked.numbers[i] = numbers[rows[i]!]!;
  }
  return { rows: count, columns: 1, ...picked, texts: some(texts), errors: some(errors) };
}

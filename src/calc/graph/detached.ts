import { issue } from '../../../functions/core/issue.ts';
import { Kind, type Range } from '../../../functions/core/value.ts';
import type { Book, Sheet } from '../../book/model.ts';
import type { BookIndex } from '../language/book-index.ts';
import { isAlone } from '../plan/nature.ts';
import { ColumnValues } from '../values/column-values.ts';
import { type Formula, makeFormula } from './formula.ts';
import { nothing } from './source.ts';
import type { State } from './state.ts';

/** Formulas that are kept at once; the one asked for longest ago goes first. */
const MOST = 100;
/** Milliseconds after which a formula is given up, in all rows: nobody waits for a mark as for a value. */
const PATIENCE = 2000;
/** Rows computed at first, to learn how long a row takes; then about a tenth of the patience at a time. */
const PROBE = 1024;

interface Kept {
  readonly index: BookIndex;
  readonly formula: Formula;
  readonly inputs: readonly unknown[];
  readonly range: Range;
  /** It was given up, and is not tried again until names change or rows go. */
  readonly late: boolean;
}

/**
 * Formulas that stand nowhere in the book and are asked for all rows of a sheet, as a column's formula would be: the
 * rules of marks. The answer is the same object until something that the formula reads has changed.
 */
export class Detached {
  private readonly kept = new Map<string, Kept>();

  constructor(private readonly state: State) {}

  rows(text: string, sheetId: string, turn: number): Range {
    const { state } = this;
    const sheet = sheetIn(state.book, sheetId);
    if (!sheet) return nothing;
    const key = `${sheetId}\u0000${text}`;
    const before = this.kept.get(key);
    const formula =
      before?.index === state.index
        ? before.formula
        : makeFormula(text, state.index, { sheet: sheetId, column: true }, state.place);
    const inputs = this.inputsOf(formula, sheet.rows, turn);
    const known = before?.formula === formula ? before : undefined;
    const same =
      known !== undefined &&
      (known.late ? known.range.rows === sheet.rows : inputs.every((input, i) => input === known.inputs[i]));
    const { range, late } = same ? known : this.computed(formula, sheet.rows);
    this.kept.delete(key);
    this.kept.set(key, { index: state.index, formula, inputs, range, late });
    for (const oldest of this.kept.keys()) {
      if (this.kept.size <= MOST) break;
      this.kept.delete(oldest);
    }
    return range;
  }

  /** All that the answer hangs on, in a fixed order; a range is another object when one of its values is another. */
  private inputsOf({ reads }: Formula, rows: number, turn: number): readonly unknown[] {
    const keys = new Set([...reads.rows, ...reads.whole]);
    for (const { key } of reads.cells) keys.add(key);
    for (const { key } of reads.ranges) keys.add(key);
    const ranges = [...keys].map((key) => this.state.graph.columns.get(key)?.range());
    return [rows, reads.volatile ? turn : 0, ...ranges];
  }

  private computed(formula: Formula, rows: number): Pick<Kept, 'range' | 'late'> {
    const out = new ColumnValues(rows);
    const plan = formula.plan();
    const { source } = this.state.place;
    const some = (from: number, count: number) =>
      plan.run(
        source,
        Int32Array.from({ length: count }, (_, i) => from + i),
        out,
      );
    const start = performance.now();
    const spent = (): number => performance.now() - start;
    if (isAlone(formula.bound) && !formula.reads.volatile) {
      some(0, Math.min(1, rows));
      const value = out.at(0);
      if (out.kinds[0] === Kind.text || out.kinds[0] === Kind.error)
        for (let row = 1; row < rows; row++) out.set(row, value);
      else {
        out.kinds.fill(out.kinds[0]!);
        out.numbers.fill(out.numbers[0]!);
      }
      return { range: out.range(), late: false };
    }
    let row = Math.min(PROBE, rows);
    some(0, row);
    // All at once is fastest, where the first rows say that it will not take long.
    if ((spent() * rows) / row <= PATIENCE / 10) {
      plan.run(source, undefined, out);
      return { range: out.range(), late: false };
    }
    while (row < rows) {
      if (spent() > PATIENCE) return { range: givenUp(rows), late: true };
      const size = Math.max(PROBE, Math.floor((row * PATIENCE) / 10 / Math.max(spent(), 1)));
      const count = Math.min(size, rows - row);
      some(row, count);
      row += count;
    }
    return { range: out.range(), late: false };
  }
}

function givenUp(rows: number): Range {
  const out = new ColumnValues(rows);
  const late = issue('#ERROR!', 'hung');
  for (let row = 0; row < rows; row++) out.set(row, late);
  return out.range();
}

const sheetIn = (book: Book, id: string): Sheet | undefined => book.sheets.find((sheet) => sheet.id === id);

import { type Issue, isIssue } from '../../functions/core/issue.ts';
import { isMatrix, type Value, valueAt } from '../../functions/core/value.ts';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook, type LiveBook } from '../../src/book/book.ts';
import type { Cell } from '../../src/book/cells.ts';
import type { Change, Edit } from '../../src/book/edit.ts';
import type { Column } from '../../src/book/model.ts';
import type { Calculation } from '../../src/calc/api.ts';
import { createCalculation } from '../../src/calc/calculation.ts';

type ColumnSketch = Partial<Omit<Column, 'id' | 'name'>> & { readonly cells?: readonly Cell[] };
/** Sheets by name, columns by name; ids are the names. A plain list is a column's cells, a text its formula. */
export type Sketch = Readonly<
  Record<string, Readonly<Record<string, ColumnSketch | readonly Cell[] | string>>>
>;

/** A book from a sketch. Named cells are given as name → [sheet, column, row from 0]. */
export function bookOf(
  sketch: Sketch,
  names: Readonly<Record<string, readonly [string, string, number]>> = {},
): LiveBook {
  const book = createBook('For a test');
  for (const [name, columns] of Object.entries(sketch)) {
    const parts = Object.entries(columns).map(([column, given]) => {
      const sketched: ColumnSketch =
        typeof given === 'string'
          ? { formula: given }
          : Array.isArray(given)
            ? { cells: given as readonly Cell[] }
            : (given as ColumnSketch);
      const { cells, ...rest } = sketched;
      return {
        column: { id: column, name: column, label: column, kind: 'number', ...rest } as Column,
        cells,
      };
    });
    const rows = Math.max(0, ...parts.map((p) => p.cells?.length ?? 0));
    applyEdit(book, {
      do: 'add-sheet',
      index: book.sheets.length,
      sheet: {
        id: name,
        name,
        label: name,
        purpose: 'worked',
        rows,
        columns: parts.map(({ column, cells }) => ({
          column,
          cells: Array.from({ length: rows }, (_, i) => cells?.[i] ?? null),
        })),
      },
    });
  }
  for (const [name, [sheet, column, row]] of Object.entries(names))
    applyEdit(book, { do: 'set-name', name, target: { sheet, column, row } });
  return book;
}

export const f = (formula: string): Cell => ({ formula });

/** A book that is calculated, and edited with its values following. */
export class Bench {
  readonly calculation: Calculation;

  constructor(readonly book: LiveBook) {
    this.calculation = createCalculation(book);
    exhaust(this.calculation.all());
  }

  edit(edit: Edit): Edit {
    const { inverse, changes } = applyEdit(this.book, edit);
    exhaust(this.calculation.update(changes));
    return inverse;
  }

  /** Edits that one command makes, each drawn from the book as the one before left it; what takes each back, last first. */
  together(edits: readonly (() => Edit | undefined)[]): readonly Edit[] {
    const inverses: Edit[] = [];
    const all: Change[] = [];
    for (const next of edits) {
      const edit = next();
      if (!edit) continue;
      const { inverse, changes } = applyEdit(this.book, edit);
      inverses.unshift(inverse);
      all.push(...changes);
    }
    exhaust(this.calculation.update(all));
    return inverses;
  }

  put(sheet: string, column: string, row: number, ...cells: Cell[]): Edit {
    return this.edit({ do: 'put-cells', sheet, row, columns: [column], cells: [cells] });
  }

  column(sheet: string, column: string): Value[] {
    const range = this.calculation.column(sheet, column);
    return Array.from({ length: range.rows }, (_, i) => valueAt(range, i));
  }

  /** Values of a column with errors as their codes. */
  values(sheet: string, column: string): unknown[] {
    return this.column(sheet, column).map(plainly);
  }

  value(sheet: string, column: string, row: number): unknown {
    return plainly(this.calculation.value(sheet, column, row));
  }

  sentence(sheet: string, column: string, row: number): string {
    return this.calculation.sentence(this.calculation.value(sheet, column, row) as Issue);
  }

  eval(formula: string): unknown {
    const value = this.calculation.evaluate(formula);
    return isMatrix(value) ? value.values.map(plainly) : plainly(value);
  }
}

export const plainly = (value: Value): unknown => (isIssue(value) ? value.code : value);

export function exhaust<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

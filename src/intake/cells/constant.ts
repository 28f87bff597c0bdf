import { CellKind } from '../../book/cells.ts';
import { ColumnBuilder } from './column-builder.ts';

/** The same number in every row: one set, where each row is a set. */
export class ConstantColumnBuilder extends ColumnBuilder {
  private readonly value: number;

  constructor(value: number, expected: number) {
    super([], expected);
    this.value = value;
  }

  put(rows: readonly (readonly string[])[]): void {
    this.reserve(rows.length);
    const end = this.length + rows.length;
    this.kinds.fill(CellKind.number, this.length, end);
    this.numbers.fill(this.value, this.length, end);
    this.filled += rows.length;
    this.length = end;
  }
}

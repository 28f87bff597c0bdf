import type { CellBlock } from '../../book/cells.ts';
import type { Column } from '../../book/model.ts';

/** A column of the sheet with the cells that came in for it. */
export interface Filled {
  readonly column: Column;
  readonly cells: CellBlock;
}

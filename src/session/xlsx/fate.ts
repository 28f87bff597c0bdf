/** What becomes of a formula in a workbook file. */
import type { Column, Sheet } from '../../book/model.ts';
import type { NoA1 } from '../../calc/a1/api.ts';

/** How a formula of the book comes into the workbook file. */
export interface Fate {
  readonly sheet: Sheet;
  readonly column: Column;
  /** Absent for a column formula. */
  readonly row?: number;
  readonly formula: string;
  /** Why its values stand there instead of it. */
  readonly no?: NoA1 | { readonly why: 'shown in unit' | 'spills'; readonly what: string };
}

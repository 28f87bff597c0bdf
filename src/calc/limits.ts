/**
 * How large a formula and its values may be. Beyond these the cell engine slows down, overflows its stack or never comes
 * back; each limit ends in a sentence instead.
 */
export const limits = {
  /** Characters of a formula. */
  length: 8192,
  /** Parentheses, calls and signs inside one another. */
  nesting: 64,
  /** Depth of the tree, long chains of operators included. */
  depth: 256,
  /** Arguments of one call. */
  args: 255,
  /** Cells of an inline array, or of an array that a function is asked to make. */
  arrayCells: 10_000,
  /** Cells of a range written with addresses. */
  rangeCells: 5_000_000,
  /** Cells of a range that the cell engine is handed whole. */
  handedCells: 1_100_000,
  /** Characters of a text, written or made. */
  text: 32_767,
  /** Last row and column that an address can name. */
  rows: 1_048_576,
  columns: 18_278,
  /** Rows of a column whose formula must be computed cell by cell because it leans on single cells of itself. */
  cellByCell: 20_000,
} as const;

/** What built-in functions that look up are called and say. */
import { words } from './family-words.ts';

export const lookup = words(
  'Finding values',
  '6.14, lookup functions',
  `
!XLOOKUP(wanted, lookup, answers, [instead], [match=0], [search=1]): Finds a value and returns what is beside it. | look up, find, fetch from another sheet, match athletes | XLOOKUP({t}, {T}, {N})
  Without a match the result is instead, or #N/A. A blank that is found stays blank.
INDEX(range, row, [column=1]): The value at a position of a range. | nth value, cell of a table, look up | INDEX({N}, MATCH({t}, {T}, 0))
MATCH(wanted, lookup, [type=1]): The position of a value in a row or column. | position, find, look up | MATCH({t}, {T}, 0)
  Type 0 finds an exact match in any order; 1 needs values from low to high, −1 from high to low.
!XMATCH(wanted, lookup, [match=0], [search=1]): The position of a value, by the modes of XLOOKUP. | position, find | XMATCH({t}, {T})
VLOOKUP(wanted, table, column, [sorted=TRUE]): Finds a value in the first column and returns one from its row. | look up, find | VLOOKUP({n}, {N}, 1, FALSE)
  Write FALSE for an exact match; otherwise the first column has to be sorted.
HLOOKUP(wanted, table, row, [sorted=TRUE]): Finds a value in the first row and returns one from its column. | look up, find across | HLOOKUP(2, {1, 2; 3, 4}, 2, FALSE)
ROW([reference]): The number of a row. | row number, counter | ROW()
ROWS(range): How many rows there are. | number of rows | ROWS({N})
COLUMN(reference): The number of a column. | column number | COLUMN({n})
COLUMNS(range): How many columns there are. | number of columns | COLUMNS({N})
OFFSET(reference, rows, columns, [height], [width]): A cell or range at a distance from another. | shift, row above, moving range | OFFSET(A2, -1, 0)
  The distances have to be numbers written in the formula, and the reference a cell or range such as A2.
ADDRESS(row, column, [absolute=1], [a1=TRUE], [sheet]): The address of a cell as text. | cell address | ADDRESS(2, 3)
`,
);

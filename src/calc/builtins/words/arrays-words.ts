/** What built-in functions of arrays are called and say. */
import { words } from './family-words.ts';

export const arrays = words(
  'Tables from tables',
  '6.4, matrix functions, and 6.18',
  `
!FILTER(range, condition*): The rows where a condition is true. | filter, only some rows, subset | SUM(FILTER({N}, {N} > 0))
!SORT(range, [by=1], [ascending=1], [across=FALSE]): The rows in order. | sort, order, ranking table | INDEX(SORT({N}), 1)
!UNIQUE(range, [across=FALSE], [once=FALSE]): Each value once. | distinct, list of athletes, without duplicates | ROWS(UNIQUE({T}))
!SEQUENCE(rows, [columns=1], [start=1], [step=1]): Numbers in equal steps. | series, numbering, counter | SUM(SEQUENCE(5))
FREQUENCY(numbers, bounds): How many numbers lie in each class. | histogram, distribution, classes | INDEX(FREQUENCY({N}, {0; 50}), 3)
  Each class reaches up to its limit; the last one is open.
TRANSPOSE(range): Rows become columns. | swap rows and columns, rotate | SUM(TRANSPOSE({N}))
!HSTACK(range*): Ranges side by side. | join tables, combine columns | SUM(HSTACK({N}, {N2}))
!VSTACK(range*): Ranges one below the other. | join tables, append rows | SUM(VSTACK({N}, {N2}))
MMULT(first, second): The matrix product. | matrix multiplication | INDEX(MMULT({1, 2; 3, 4}, {1, 0; 0, 1}), 1, 1)
!MAXPOOL(range, window, [stride]): The largest value in each window of a table. | moving maximum | INDEX(MAXPOOL({1, 2; 3, 4}, 2), 1)
!MEDIANPOOL(range, window, [stride]): The median in each window of a table. | moving median | INDEX(MEDIANPOOL({1, 2; 3, 4}, 2), 1)
!ARRAYFORMULA(value): A formula computed for whole ranges. | array formula | SUM(ARRAYFORMULA({N} * 2))
!ARRAY_CONSTRAIN(range, rows, columns): The first rows and columns of a range. | first rows, top of a table | SUM(ARRAY_CONSTRAIN({N}, 2, 1))
`,
);

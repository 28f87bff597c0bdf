/** What built-in functions that sum are called and say. */
import { words } from './family-words.ts';

export const sums = words(
  'Sums and counts',
  '6.13, 6.16 and 6.18',
  `
SUM(numbers*): The sum. | add up, total, plus | SUM({N})
SUMIF(where, criterion, [numbers]): The sum of the numbers whose row meets one condition. | total by athlete, sum with a condition | SUMIF({T}, {t1}, {N})
SUMIFS(numbers, where*, criterion*): The sum of the numbers whose row meets every condition. | total by athlete and week, sum with conditions, conditional sum | SUMIFS({N}, {T}, {t})
  Ranges need the same number of rows. A criterion is a value to equal, or a comparison in quotes such as ">40".
SUMPRODUCT(first*): The sum of the products of rows. | weighted sum, multiply and add | SUMPRODUCT({N}, {N})
SUMSQ(numbers*): The sum of squares. | squares | SUMSQ({N})
PRODUCT(numbers*): All numbers multiplied. | multiply | PRODUCT({n}, 2)
COUNT(values*): How many are numbers. | how many numbers, n | COUNT({N})
COUNTA(values*): How many are not blank. | how many filled, entries | COUNTA({T})
COUNTBLANK(values*): How many are blank. | how many missing, empty cells | COUNTBLANK({N})
!COUNTUNIQUE(values*): How many different values there are. | distinct, different athletes | COUNTUNIQUE({T})
COUNTIF(where, criterion): How many cells meet a condition. | how many above, frequency | COUNTIF({N}, ">0")
COUNTIFS(where*, criterion*): How many rows meet every condition. | how many with conditions | COUNTIFS({T}, {t}, {N}, ">0")
AVERAGEIF(where, criterion, [numbers]): The mean of the numbers whose row meets one condition. | mean by athlete, average with a condition | AVERAGEIF({T}, {t1}, {N})
AVERAGEIFS(numbers, where*, criterion*): The mean of the numbers whose row meets every condition. | mean by athlete and week, average with conditions | AVERAGEIFS({N}, {T}, {t})
MAXIFS(numbers, where*, criterion*): The largest number whose row meets every condition. | best of an athlete, maximum with conditions | MAXIFS({N}, {T}, {t})
MINIFS(numbers, where*, criterion*): The smallest number whose row meets every condition. | lowest of an athlete, minimum with conditions | MINIFS({N}, {T}, {t})
SUBTOTAL(subtotal, numbers*): A sum, mean, count or another figure, by its number. | subtotal, figure by number | SUBTOTAL(9, {N})
SUMX2MY2(first, second): The sum of the differences of squares. | | SUMX2MY2({N}, {N})
SUMX2PY2(first, second): The sum of the sums of squares. | | SUMX2PY2({N}, {N})
SUMXMY2(first, second): The sum of squared differences. | squared differences | SUMXMY2({N}, {N})
SERIESSUM(x, power, power_step, coefficients): The sum of a power series. | polynomial | SERIESSUM(0.1, 0, 1, {2, 3})
`,
);

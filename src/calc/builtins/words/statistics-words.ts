/** What built-in functions of statistics are called and say. */
import { words } from './family-words.ts';

export const statistics = words(
  'Statistics',
  '6.18, statistical functions',
  `
AVERAGE(numbers*): The arithmetic mean. | average, mean | AVERAGE({N})
AVERAGEA(values*): The mean, with text as 0 and TRUE as 1. | average | AVERAGEA({N})
MEDIAN(numbers*): The middle value. | median, middle | MEDIAN({N})
MODE(numbers*): The most frequent number; of several, the smallest. | most common value | MODE(1, 2, 2)
MAX(numbers*): The largest number. | maximum, best, highest | MAX({N})
MIN(numbers*): The smallest number. | minimum, lowest | MIN({N})
MAXA(values*): The largest number, with text as 0 and TRUE as 1. | maximum | MAXA({N})
MINA(values*): The smallest number, with text as 0 and TRUE as 1. | minimum | MINA({N})
STDEV(numbers*): The standard deviation of a sample. | SD, spread, variation | STDEV({N})
STDEVP(numbers*): The standard deviation of a whole population. | SD of a population | STDEVP({N})
STDEVA(values*): The SD of a sample, with text as 0 and TRUE as 1. | SD | STDEVA({N})
STDEVPA(values*): The SD of a population, with text as 0 and TRUE as 1. | SD | STDEVPA({N})
VAR(numbers*): The variance of a sample. | variance, spread | VAR({N})
VARP(numbers*): The variance of a whole population. | variance of a population | VARP({N})
VARA(values*): The variance of a sample, with text as 0 and TRUE as 1. | variance | VARA({N})
VARPA(values*): The variance of a population, with text as 0 and TRUE as 1. | variance | VARPA({N})
GEOMEAN(numbers*): The geometric mean. | average of ratios | GEOMEAN(1, 2, 4)
HARMEAN(numbers*): The harmonic mean. | average of rates | HARMEAN(1, 2, 4)
TRIMMEAN(range, trim): The mean without the smallest and largest values. | trimmed mean, without outliers | TRIMMEAN({N}, 0.2)
AVEDEV(numbers*): The mean absolute deviation from the mean. | mean deviation | AVEDEV({N})
DEVSQ(numbers*): The sum of squares about the mean. | squares about the mean | DEVSQ({N})
SKEW(numbers*): The skewness of a sample. | skew, asymmetry | SKEW({N})
SKEWP(numbers*): The skewness of a whole population. | skew, asymmetry | SKEWP({N})
KURT(numbers*): The excess kurtosis of a sample, 0 for a normal distribution. | heavy tails | KURT({N})
LARGE(range, k): The k-th largest number. | second best, top three | LARGE({N}, 2)
SMALL(range, k): The k-th smallest number. | second lowest | SMALL({N}, 2)
PERCENTILE(range, share): The value below which a share of the numbers lies. | percentile, quantile | PERCENTILE({N}, 0.9)
  The share runs from 0, the minimum, to 1, the maximum; between two numbers it is interpolated.
PERCENTILE.EXC(range, share): A percentile that excludes both ends. | percentile | PERCENTILE.EXC({N}, 0.5)
QUARTILE(range, quarter): A quartile, with minimum and maximum as the ends. | quartile, quarter | QUARTILE({N}, 1)
QUARTILE.EXC(range, quarter): A quartile that excludes both ends. | quartile | QUARTILE.EXC({N}, 1)
RANK(number, range, [order=0]): The rank of a number; equal numbers share the best. | rank, place, ranking, order | RANK({n}, {N})
!RANK.AVG(number, range, [order=0]): The rank of a number; equal numbers share the mean rank. | rank, ties | RANK.AVG({n}, {N})
PERCENTRANK(range, number, [digits=3]): The share of the other numbers that are smaller. | percentile rank | PERCENTRANK({N}, {n})
!PERCENTRANK.EXC(range, number, [digits=3]): A percentile rank that excludes both ends. | percentile rank | PERCENTRANK.EXC({N}, {n})
CORREL(first, second): Pearson's correlation of two columns. | correlation, r, relationship | CORREL({N}, {N2})
RSQ(known_y, known_x): The share of variance that a straight line explains. | R squared, fit | RSQ({N}, {N2})
SLOPE(known_y, known_x): The slope of the least-squares line. | gradient, trend, change per unit | SLOPE({N}, {N2})
INTERCEPT(known_y, known_x): Where the least-squares line meets x = 0. | intercept, constant | INTERCEPT({N}, {N2})
STEYX(known_y, known_x): The standard error about the least-squares line. | residual SD, error of estimate | STEYX({N}, {N2})
FORECAST(x, known_y, known_x): The value at x on the least-squares line. | predict, extrapolate, regression | FORECAST({n2}, {N}, {N2})
TREND(known_y, [known_x], [new_x], [constant=TRUE]): Values on the least-squares line. | predict, regression | SUM(TREND({N}, {N2}))
LINEST(known_y, [known_x], [constant=TRUE], [statistics=FALSE]): Slopes and constant of a least-squares fit, in a row. | multiple regression, coefficients | INDEX(LINEST({N}, {N2}), 1, 1)
  Slopes come from the last variable to the first, then the constant. With statistics: errors, R² and SE, F and degrees of freedom, sums of squares.
COVAR(first, second): The covariance of two columns, of a whole population. | covariance | COVAR({N}, {N2})
!COVARIANCE.S(first, second): The covariance of two columns, of a sample. | covariance | COVARIANCE.S({N}, {N2})
STANDARDIZE(number, mean, sd): How many SDs a number lies from the mean. | z-score, standardise | STANDARDIZE({n}, AVERAGE({N}), STDEV({N}))
FISHER(x): Fisher's transformation of a correlation. | Fisher z | FISHER(0.7)
FISHERINV(z_score): The correlation of a Fisher z. | inverse Fisher z | FISHERINV(0.8)
`,
);

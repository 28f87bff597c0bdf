/** What built-in functions of distributions are called and say. */
import { words } from './family-words.ts';

export const distributions = words(
  'Distributions and tests',
  '6.18, statistical functions',
  `
NORMDIST(x, mean, sd, cumulative): The normal distribution. | bell curve, probability | NORMDIST({n}, AVERAGE({N}), STDEV({N}), TRUE)
NORMINV(probability, mean, sd): The value below which a normal distribution has a probability. | normal quantile
!NORM.S.DIST(z_score, cumulative): The standard normal distribution. | z, p-value
NORMSINV(probability): The quantile of the standard normal distribution. | z of a probability
GAUSS(z_score): The normal probability between the mean and a z-score. | normal
PHI(z_score): The density of the standard normal distribution. | normal
!T.DIST(t, freedom, cumulative): The t distribution. | Student, p-value
!T.DIST.2T(t, freedom): The two-sided probability of a t value. | Student, p-value
!T.DIST.RT(t, freedom): The probability above a t value. | Student, p-value
TDIST(t, freedom, tails): The one-sided or two-sided probability of a t value. | Student, p-value
!T.INV(probability, freedom): The quantile of the t distribution. | Student
!T.INV.2T(probability, freedom): The t value with a two-sided probability. | Student, critical value | T.INV.2T(0.05, 9)
!F.DIST(f, freedom1, freedom2, cumulative): The F distribution. | variance ratio
!F.DIST.RT(f, freedom1, freedom2): The probability above an F value. | variance ratio, p-value
!F.INV(probability, freedom1, freedom2): The quantile of the F distribution. | variance ratio
!F.INV.RT(probability, freedom1, freedom2): The F value with a probability above it. | critical value
!CHISQ.DIST(chi, freedom, cumulative): The chi-squared distribution. | chi-squared
!CHISQ.DIST.RT(chi, freedom): The probability above a chi-squared value. | chi-squared, p-value
!CHISQ.INV(probability, freedom): The quantile of the chi-squared distribution. | chi-squared
!CHISQ.INV.RT(probability, freedom): The chi-squared value with a probability above it. | critical value
BETADIST(share, shape, rate_shape, cumulative, [minimum=0], [maximum=1]): The beta distribution. | beta
BETAINV(probability, shape, rate_shape, [minimum=0], [maximum=1]): The quantile of the beta distribution. | beta
GAMMADIST(x, shape, scale, cumulative): The gamma distribution. | gamma
GAMMAINV(probability, shape, scale): The quantile of the gamma distribution. | gamma
BINOMDIST(successes, trials, chance, cumulative): The binomial distribution. | successes, hits
CRITBINOM(trials, chance, probability): The smallest number of successes with a probability up to it. | binomial quantile
NEGBINOMDIST(failures, successes, chance, cumulative): The negative binomial distribution. | failures before successes
HYPGEOMDIST(successes, drawn, marked, lot, cumulative): The hypergeometric distribution. | drawing without replacement
POISSON(successes, mean, cumulative): The Poisson distribution. | rare events, counts | POISSON(3, 2, TRUE)
EXPONDIST(x, rate, cumulative): The exponential distribution. | waiting times
WEIBULL(x, shape, scale, cumulative): The Weibull distribution. | lifetimes
LOGNORMDIST(x, mean, sd, cumulative): The log-normal distribution. | log-normal
LOGINV(probability, mean, sd): The quantile of the log-normal distribution. | log-normal | LOGINV(0.5, 0, 1)
CONFIDENCE(alpha, sd, size): Half the confidence interval of a mean, by the normal distribution. | margin of error, confidence interval | CONFIDENCE(0.05, STDEV({N}), COUNT({N}))
!CONFIDENCE.T(alpha, sd, size): Half the confidence interval of a mean, by the t distribution. | margin of error, confidence interval | CONFIDENCE.T(0.05, STDEV({N}), COUNT({N}))
TTEST(first, second, tails, pairing): The p-value of a t test of two columns. | compare two means, before and after, significance | TTEST({N}, {N2}, 2, 3)
FTEST(first, second): The p-value of a test of equal variances. | compare spreads
ZTEST(range, mean, [sd]): The probability of so large a mean, or a larger one. | z test | ZTEST({N}, AVERAGE({N}))
CHISQ.TEST(observed, expected): The p-value of observed counts against expected ones. | chi-squared test, table of counts | CHISQ.TEST({12; 18}, {15; 15})
`,
);

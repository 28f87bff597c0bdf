/** Statistics of columns: OpenFormula 1.3, part 4, 6.18. */
import { type Aggregate, aggregates } from '../../plan/aggregate.ts';
import type { RangeBody } from '../../ranges/answer.ts';
import { ordered } from '../../ranges/sorted-ranges.ts';
import { type BuiltIn, builtIn, file, type Implementation } from '../builtin.ts';
import { linest, trend } from '../own/least-squares.ts';
import { forecast, intercept } from '../own/line.ts';
import { percentRankExclusive, percentRankInclusive } from '../own/percent-rank.ts';
import { rankOfBest, rankOfMean } from '../own/rank.ts';
import { kurt, mode, trimmean } from '../own/spread.ts';

const indexed = true;
const all = { same: 'all' } as const;
const allOrDate = { same: 'all', dates: true } as const;
const first = { same: [0] } as const;
const firstOrDate = { same: [0], dates: true } as const;
const square = { of: 0, power: 2 } as const;

const folding = (aggregate: Aggregate): { readonly implementation: Implementation } => ({
  implementation: { aggregate, engine: true },
});
const fast = (aggregate: Aggregate) => ({ ...folding(aggregate), indexed }) as const;
const sorted = (run: RangeBody) => ({ implementation: { ranges: { run }, engine: true }, indexed }) as const;

export const statistics: readonly BuiltIn[] = [
  builtIn('AVERAGE', allOrDate, file('a+'), fast(aggregates.mean)),
  builtIn('AVERAGEA', allOrDate, null, fast(aggregates.meanOfAll)),
  builtIn('MEDIAN', allOrDate, file('a+'), {
    implementation: { ranges: { run: ordered.median, oneRange: true }, engine: true },
    indexed,
  }),
  builtIn('MODE MODE.SNGL', allOrDate, null, { implementation: { own: mode }, indexed }),
  builtIn('MAX', allOrDate, file('a+'), fast(aggregates.largest)),
  builtIn('MIN', allOrDate, file('a+'), fast(aggregates.smallest)),
  builtIn('MAXA', allOrDate, null, fast(aggregates.largestOfAll)),
  builtIn('MINA', allOrDate, null, fast(aggregates.smallestOfAll)),
  builtIn('STDEV STDEV.S STDEVS', all, file('a+', 'STDEV', '_xlfn.STDEV.S'), folding(aggregates.sd)),
  builtIn('STDEVP STDEV.P', all, file('a+', 'STDEVP', '_xlfn.STDEV.P'), folding(aggregates.sdPopulation)),
  builtIn('STDEVA', all, null, folding(aggregates.sdOfAll)),
  builtIn('STDEVPA', all, null, folding(aggregates.sdPopulationOfAll)),
  builtIn('VAR VAR.S VARS', square, file('a+', 'VAR', '_xlfn.VAR.S'), folding(aggregates.variance)),
  builtIn('VARP VAR.P', square, file('a+', 'VARP', '_xlfn.VAR.P'), folding(aggregates.variancePopulation)),
  builtIn('VARA', square, null, folding(aggregates.varianceOfAll)),
  builtIn('VARPA', square, null, folding(aggregates.variancePopulationOfAll)),
  builtIn('GEOMEAN', all, file('a+')),
  builtIn('HARMEAN', all, file('a+')),
  builtIn('TRIMMEAN', first, file('av'), { implementation: { own: trimmean } }),
  builtIn('AVEDEV', all, null),
  builtIn('DEVSQ', square, null),
  builtIn('SKEW', 'plain', file('a+')),
  builtIn('SKEWP SKEW.P', 'plain', null),
  builtIn('KURT', 'plain', null, { implementation: { own: kurt }, indexed }),
  builtIn('LARGE', firstOrDate, file('av'), sorted(ordered.kthLargest)),
  builtIn('SMALL', firstOrDate, file('av'), sorted(ordered.kthSmallest)),
  builtIn(
    'PERCENTILE PERCENTILE.INC',
    firstOrDate,
    file('av', 'PERCENTILE', '_xlfn.PERCENTILE.INC'),
    sorted(ordered.percentile),
  ),
  builtIn(
    'PERCENTILE.EXC',
    firstOrDate,
    file('av', '_xlfn.PERCENTILE.EXC'),
    sorted(ordered.percentileExclusive),
  ),
  builtIn(
    'QUARTILE QUARTILE.INC',
    firstOrDate,
    file('av', 'QUARTILE', '_xlfn.QUARTILE.INC'),
    sorted(ordered.quartile),
  ),
  builtIn('QUARTILE.EXC', firstOrDate, file('av', '_xlfn.QUARTILE.EXC'), sorted(ordered.quartileExclusive)),
  builtIn('RANK RANK.EQ', 'plain', file('vrv?', 'RANK', '_xlfn.RANK.EQ'), {
    implementation: { own: rankOfBest },
    indexed,
  }),
  builtIn('RANK.AVG', 'plain', file('vrv?', '_xlfn.RANK.AVG'), {
    implementation: { own: rankOfMean },
    indexed,
  }),
  builtIn('PERCENTRANK PERCENTRANK.INC', 'plain', null, {
    implementation: { own: percentRankInclusive },
    indexed,
  }),
  builtIn('PERCENTRANK.EXC', 'plain', null, { implementation: { own: percentRankExclusive }, indexed }),
  builtIn('CORREL PEARSON', 'plain', file('aa', 'CORREL', 'PEARSON')),
  builtIn('RSQ', 'plain', file('aa')),
  builtIn('SLOPE', 'unknown', file('aa')),
  builtIn('INTERCEPT', first, file('aa'), { implementation: { own: intercept }, indexed }),
  builtIn('STEYX', first, file('aa')),
  builtIn('FORECAST FORECAST.LINEAR', { same: [1] }, file('vaa', 'FORECAST'), {
    implementation: { own: forecast },
    indexed,
  }),
  builtIn('TREND', first, null, { implementation: { own: trend } }),
  builtIn('LINEST', 'unknown', null, { implementation: { own: linest } }),
  builtIn('COVAR COVARIANCE.P COVARIANCEP', 'unknown', file('aa', 'COVAR', '_xlfn.COVARIANCE.P')),
  builtIn('COVARIANCE.S COVARIANCES', 'unknown', file('aa', '_xlfn.COVARIANCE.S')),
  builtIn('STANDARDIZE', 'plain', file('vvv')),
  builtIn('FISHER', 'plain', file('v')),
  builtIn('FISHERINV', 'plain', file('v')),
];

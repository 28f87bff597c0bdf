/** Which arguments of a function its result measures the same as; they should measure the same themselves. */
type Chosen = (argument: number, count: number) => boolean;

const all: Chosen = () => true;
const first: Chosen = (i) => i === 0;
const only =
  (...places: number[]): Chosen =>
  (i) =>
    places.includes(i);
/** After the condition, every second argument: IFS, SWITCH takes its own. */
const oddOnes: Chosen = (i) => i % 2 === 1;

/** `plain`: a plain number whatever comes in; `root`: the root of the first argument; `unknown`: it depends on what is asked. */
type Passing = Chosen | 'plain' | 'root' | 'date' | 'unknown';

/** Functions that give a date for dates; of the others that pass a measure on, none gives a day of the calendar. */
export const passDates: ReadonlySet<string> = new Set([
  ...['MIN', 'MAX', 'MINA', 'MAXA', 'MEDIAN', 'MODE', 'AVERAGE', 'AVERAGEA', 'MINIFS', 'MAXIFS', 'AVERAGEIF'],
  ...['AVERAGEIFS', 'LARGE', 'SMALL', 'PERCENTILE', 'PERCENTILE.INC', 'PERCENTILE.EXC', 'QUARTILE', 'INDEX'],
  ...['QUARTILE.INC', 'QUARTILE.EXC', 'SORT', 'UNIQUE', 'IF', 'IFS', 'CHOOSE', 'XLOOKUP', 'IFERROR', 'IFNA'],
  ...['ROUND', 'ROUNDUP', 'ROUNDDOWN', 'INT', 'TRUNC', 'FLOOR', 'CEILING', 'FLOOR.MATH', 'CEILING.MATH'],
]);

/** Functions that give a rate: what one argument measures, per day or per week. */
export const rates: ReadonlyMap<string, { readonly of: number; readonly per: 'day' | 'week' }> = new Map([
  ['TRAIN.TREND', { of: 1, per: 'week' }],
  ['TRAIN.MEAN', { of: 1, per: 'day' }],
  ['TRAIN.EWMA', { of: 1, per: 'day' }],
]);

/** Built-in functions, and those of the domain that take values in any unit. */
export const passing: ReadonlyMap<string, Passing> = new Map<string, Passing>([
  ...['SUM', 'AVERAGE', 'AVERAGEA', 'MIN', 'MAX', 'MINA', 'MAXA', 'MEDIAN', 'MODE', 'GEOMEAN', 'HARMEAN'].map(
    (name) => [name, all] as const,
  ),
  ...['STDEV', 'STDEV.S', 'STDEV.P', 'STDEVP', 'STDEVA', 'STDEVPA', 'AVEDEV'].map(
    (name) => [name, all] as const,
  ),
  ...['ABS', 'ROUND', 'ROUNDUP', 'ROUNDDOWN', 'MROUND', 'INT', 'TRUNC', 'EVEN', 'ODD', 'N', 'VALUE'].map(
    (name) => [name, first] as const,
  ),
  ...['CEILING', 'FLOOR', 'CEILING.MATH', 'FLOOR.MATH', 'MOD', 'IFERROR', 'IFNA'].map(
    (name) => [name, all] as const,
  ),
  ...['LARGE', 'SMALL', 'PERCENTILE', 'PERCENTILE.INC', 'PERCENTILE.EXC', 'INDEX', 'SORT', 'UNIQUE'].map(
    (name) => [name, first] as const,
  ),
  ...['QUARTILE', 'QUARTILE.INC', 'QUARTILE.EXC', 'SUMIFS', 'AVERAGEIFS', 'MINIFS', 'MAXIFS'].map(
    (name) => [name, first] as const,
  ),
  ['IF', only(1, 2)],
  ['IFS', oddOnes],
  ['CHOOSE', (i) => i > 0],
  ['SUMIF', only(2)],
  ['AVERAGEIF', only(2)],
  ['XLOOKUP', only(2, 3)],
  ['SQRT', 'root'],
  ...[
    'COUNT',
    'COUNTA',
    'COUNTBLANK',
    'COUNTIF',
    'COUNTIFS',
    'RANK',
    'PERCENTRANK',
    'CORREL',
    'RSQ',
    'SIGN',
  ].map((name) => [name, 'plain'] as const),
  ['TEST.CHANGE', only(0, 1, 2)],
  ...['TEST.MDC', 'TEST.SEM', 'TEST.SEM.TABLE', 'TEST.SWC', 'COHORT.MAD', 'COHORT.TRIMMED'].map(
    (name) => [name, first] as const,
  ),
  ...['TEST.BIAS', 'TEST.LIMIT.LOW', 'TEST.LIMIT.HIGH', 'TEST.SEM.TRIALS'].map(
    (name) => [name, only(0, 1)] as const,
  ),
  ...['TRAIN.SUM', 'TRAIN.STRAIN', 'TRAIN.BEST', 'TRAIN.LAST'].map((name) => [name, only(1)] as const),
  ...['DATE', 'TODAY', 'NOW', 'DATEVALUE', 'EDATE', 'EOMONTH', 'WORKDAY', 'WORKDAY.INTL'].map(
    (name) => [name, 'date'] as const,
  ),
  ...['TEST.SIDES', 'COHORT.Z', 'COHORT.T', 'COHORT.PERCENTILE'].map((name) => [name, 'plain'] as const),
  ...['COHORT.FIT', 'COHORT.WELCH', 'COHORT.REGRESS'].map((name) => [name, 'unknown'] as const),
  ...['MATCH', 'ROW', 'ROWS', 'COLUMN', 'COLUMNS', 'LEN', 'SKEW', 'KURT', 'EXP', 'LN', 'LOG', 'LOG10'].map(
    (name) => [name, 'plain'] as const,
  ),
]);

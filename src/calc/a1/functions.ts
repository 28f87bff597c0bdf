/**
 * The functions that a formula may have in a workbook file: those of ISO/IEC 29500-1:2016, 18.17.7, that compute there what
 * they compute here. Before them the arguments that programs accept, since one that is not accepted can make the whole
 * file unreadable: `v` a value, `w` one that is no cell (which may be blank), `a` a value, a range or an array, `r` a
 * reference; `?`, `+` and brackets as in a regular expression. Left out is what differs on blanks, ties or texts (AND of
 * a range, MODE, PRODUCT).
 */
const standard: Readonly<Record<string, string>> = {
  // Values.
  vv: 'ATAN2 CEILING COMBIN EDATE EOMONTH EXACT FLOOR MOD MROUND POWER QUOTIENT REPT ROUND ROUNDDOWN ROUNDUP TINV CHIDIST CHIINV',
  v: 'ABS ACOS ACOSH ASIN ASINH ATAN ATANH CLEAN COS COSH DAY DEGREES ERFC EVEN EXP FACT FISHER FISHERINV GAMMALN HOUR INT ISBLANK ISERR ISERROR ISLOGICAL ISNA ISNONTEXT ISNUMBER ISTEXT LEN LN LOG10 LOWER MINUTE MONTH NORMSINV NOT ODD PROPER RADIANS SECOND SIGN SIN SINH SQRT SQRTPI TAN TANH TRIM UPPER YEAR',
  'vv?': 'LEFT LOG RIGHT TRUNC WEEKDAY',
  'vvv?': 'DAYS360 FIND IF YEARFRAC',
  'vvvv?': 'SUBSTITUTE',
  vvv: 'CONFIDENCE DATE EXPONDIST FDIST FINV LOGINV MID NORMINV POISSON STANDARDIZE TDIST TIME',
  vvvv: 'BINOMDIST NORMDIST REPLACE WEIBULL',
  'w+': 'AND OR',
  'v+': 'CONCATENATE',
  'vv+': 'CHOOSE',
  '': 'FALSE NA PI TODAY TRUE',
  // Ranges.
  'a+': 'AVERAGE COUNT COUNTA GEOMEAN HARMEAN MAX MEDIAN MIN SKEW STDEV STDEVP SUM SUMPRODUCT SUMSQ VAR VARP',
  aa: 'CORREL COVAR INTERCEPT PEARSON RSQ SLOPE STEYX SUMX2MY2 SUMX2PY2 SUMXMY2',
  av: 'LARGE PERCENTILE QUARTILE SMALL TRIMMEAN',
  vaa: 'FORECAST',
  aavv: 'TTEST',
  r: 'COUNTBLANK',
  'vrv?': 'RANK',
  'rvv?': 'INDEX',
};

/** Those that look for something: a text among the arguments may be a pattern there, and is none here. */
const searching: Readonly<Record<string, string>> = {
  rv: 'COUNTIF',
  'rvr?': 'AVERAGEIF SUMIF',
  '(rv)+': 'COUNTIFS',
  'r(rv)+': 'AVERAGEIFS SUMIFS',
  vrv: 'MATCH',
  'vrvv?': 'VLOOKUP',
};

/** Functions later than the standard, whose names programs agree to mark. */
const later: Readonly<Record<string, string>> = {
  vv: 'IFNA',
  v: 'ISOWEEKNUM',
  'a+': 'CONCAT STDEV.P STDEV.S VAR.P VAR.S',
  'vva+': 'TEXTJOIN',
  aa: 'COVARIANCE.P COVARIANCE.S',
  av: 'PERCENTILE.EXC PERCENTILE.INC QUARTILE.EXC QUARTILE.INC',
  aavv: 'T.TEST',
  'vrv?': 'RANK.AVG RANK.EQ',
  '(vv)+': 'IFS',
};
const laterSearching: Readonly<Record<string, string>> = { 'r(rv)+': 'MAXIFS MINIFS' };

export interface A1Function {
  /** As the file has it. */
  readonly name: string;
  /** Holds for arguments that are accepted, written as a letter each: `v` value, `c` cell, `r` range, `k` array. */
  readonly accepts: RegExp;
  readonly patterns: boolean;
}

const accepting = (signature: string): RegExp =>
  new RegExp(
    `^${signature.replace(/[vwar]/g, (sort) => ({ v: '[vc]', w: 'v', a: '[vcrk]', r: '[cr]' })[sort]!)}$`,
  );

const rows = (
  of: Readonly<Record<string, string>>,
  mark: string,
  patterns: boolean,
): (readonly [string, A1Function])[] =>
  Object.entries(of).flatMap(([signature, names]) =>
    names
      .split(' ')
      .map((name) => [name, { name: `${mark}${name}`, accepts: accepting(signature), patterns }]),
  );

/** By their name here. */
export const a1Functions: ReadonlyMap<string, A1Function> = new Map([
  ...rows(standard, '', false),
  ...rows(searching, '', true),
  ...rows(later, '_xlfn.', false),
  ...rows(laterSearching, '_xlfn.', true),
]);

/** A function of spreadsheets at large: its names and arguments are those of ISO/IEC 26300-4 (OpenFormula) and of use. */
export interface CommonFunction {
  readonly name: string;
  readonly parameters: readonly { readonly name: string; readonly optional: boolean }[];
  readonly summary: string;
}

/** The ones that a book about training is likely to need; every other one works as well, and is not offered. */
const lines = `
ABS(number): a number without its sign
AND(condition, [more]): TRUE when every condition holds
AVERAGE(numbers, [more]): arithmetic mean
AVERAGEIF(where, condition, [numbers]): mean of the numbers whose row meets a condition
AVERAGEIFS(numbers, where, condition, [more]): mean of the numbers whose row meets every condition
CEILING(number, step): up to the next multiple of a step
CHOOSE(index, first, [more]): the value with this number in a list
CONCAT(texts, [more]): texts one after the other
CORREL(first, second): Pearson's correlation of two columns
COUNT(values, [more]): how many are numbers
COUNTA(values, [more]): how many are not blank
COUNTBLANK(values): how many are blank
COUNTIF(where, condition): how many meet a condition
COUNTIFS(where, condition, [more]): how many rows meet every condition
COUNTUNIQUE(values, [more]): how many different values there are
COVARIANCE.S(first, second): covariance of two columns, of a sample
DATE(year, month, day): a date from its parts
DATEDIF(start, end, unit): whole days "D", months "M" or years "Y" between two dates
DATEVALUE(text): the date that a text writes
DAY(date): day of the month
DAYS(end, start): days from one date to another
DEGREES(radians): an angle in degrees
EDATE(date, months): the same day some months on
EOMONTH(date, months): the last day of a month, some months on
EXACT(first, second): TRUE when two texts are the same, capitals too
EXP(number): e to a power
FILTER(values, condition, [more]): the rows where a condition holds
FIND(wanted, text, [from]): where a text is in another; capitals count
FLOOR(number, step): down to the last multiple of a step
FORECAST(x, known_y, known_x): value at x on the least-squares line
FREQUENCY(numbers, bounds): how many lie in each class
GEOMEAN(numbers, [more]): geometric mean
HLOOKUP(wanted, table, row, [sorted]): finds a value in the first row, returns one below it
IF(condition, then, [else]): one of two values
IFERROR(value, instead): something else where a value is an error
IFNA(value, instead): something else where a value is #N/A
IFS(condition, then, [more]): the value of the first condition that holds
INDEX(range, row, [column]): the value at a place of a range
INT(number): down to a whole number
INTERCEPT(known_y, known_x): where the least-squares line meets zero
ISBLANK(value): TRUE for a blank cell
ISERROR(value): TRUE for an error
ISNA(value): TRUE for #N/A
ISNUMBER(value): TRUE for a number
ISTEXT(value): TRUE for a text
ISOWEEKNUM(date): week of the year, ISO 8601
LARGE(numbers, k): the k-th largest
LEFT(text, [count]): the first characters
LEN(text): how many characters
LET(name, value, [more], result): names for values, then what is made of them
LN(number): natural logarithm
LOG(number, [base]): logarithm, to base 10 unless said
LOG10(number): logarithm to base 10
LOWER(text): small letters
MATCH(wanted, range, [type]): position of a value in a range; 0 for exactly
MAX(numbers, [more]): the largest
MAXIFS(numbers, where, condition, [more]): the largest whose row meets every condition
MEDIAN(numbers, [more]): the middle one
MID(text, from, count): characters out of the middle
MIN(numbers, [more]): the smallest
MINIFS(numbers, where, condition, [more]): the smallest whose row meets every condition
MOD(number, divisor): what is left after dividing
MODE.SNGL(numbers, [more]): the most frequent number
MONTH(date): month, 1 to 12
MROUND(number, step): to the nearest multiple of a step
NETWORKDAYS(start, end, [free_days]): working days between two dates
NORM.DIST(x, mean, sd, cumulative): normal distribution
NORM.INV(probability, mean, sd): the value with this probability below it
NORM.S.DIST(z, cumulative): standard normal distribution
NOT(condition): the opposite
NOW(): date and time now
OR(condition, [more]): TRUE when a condition holds
PEARSON(first, second): Pearson's correlation of two columns
PERCENTILE.INC(numbers, share): percentile, with both ends
PERCENTRANK.INC(numbers, value): share of the numbers below a value
PI(): 3.14159…
POWER(number, exponent): a number to a power
PRODUCT(numbers, [more]): all multiplied
QUARTILE.INC(numbers, quarter): quartile, with both ends
RADIANS(degrees): an angle in radians
RANK.AVG(number, numbers, [ascending]): rank; equal ones share the mean rank
RANK.EQ(number, numbers, [ascending]): rank; equal ones share the best
REPLACE(text, from, count, with): characters at a place replaced
RIGHT(text, [count]): the last characters
ROUND(number, [digits]): rounded to so many digits after the point
ROUNDDOWN(number, [digits]): rounded towards zero
ROUNDUP(number, [digits]): rounded away from zero
ROW([reference]): number of the row
ROWS(range): how many rows
RSQ(known_y, known_x): share of variance that a straight line explains
SEARCH(wanted, text, [from]): where a text is in another; capitals do not count
SEQUENCE(rows, [columns], [start], [step]): numbers in a row
SIGN(number): 1, 0 or −1
SIN(radians): sine
SLOPE(known_y, known_x): slope of the least-squares line
SMALL(numbers, k): the k-th smallest
SORT(values, [index], [order]): in order
SQRT(number): square root
STANDARDIZE(x, mean, sd): how many SD from the mean
STDEV.P(numbers, [more]): SD of a whole population
STDEV.S(numbers, [more]): SD of a sample
STEYX(known_y, known_x): standard error about the straight line
SUBSTITUTE(text, old, new, [which]): a text in place of another
SUM(numbers, [more]): all added
SUMIF(where, condition, [numbers]): sum of the numbers whose row meets a condition
SUMIFS(numbers, where, condition, [more]): sum of the numbers whose row meets every condition
SUMPRODUCT(first, [more]): products of rows, added
SUMSQ(numbers, [more]): sum of squares
SWITCH(value, case, then, [more]): the result of the case that fits
T.DIST.2T(t, freedom): two-sided probability of t
T.INV.2T(probability, freedom): the t with this two-sided probability
T.TEST(first, second, tails, type): probability of a t test
TAN(radians): tangent
TEXT(value, format): a value written in a format
TEXTJOIN(between, skip_blanks, texts, [more]): texts with something between them
TIME(hour, minute, second): a time from its parts
TODAY(): today
TRANSPOSE(range): rows become columns
TREND(known_y, known_x, [new_x]): values on the least-squares line
TRIM(text): without spaces at the ends
TRIMMEAN(numbers, share): mean without the ends
TRUNC(number, [digits]): cut off after so many digits
UNIQUE(values): each value once
UPPER(text): capitals
VALUE(text): the number that a text writes
VAR.P(numbers, [more]): variance of a whole population
VAR.S(numbers, [more]): variance of a sample
VLOOKUP(wanted, table, column, [sorted]): finds a value in the first column, returns one beside it; FALSE for exactly
WEEKDAY(date, [type]): day of the week
WEEKNUM(date, [type]): week of the year
XLOOKUP(wanted, where, answers, [instead]): finds a value, returns what is beside it
XMATCH(wanted, where): position of a value
YEAR(date): year
YEARFRAC(start, end, [basis]): years between two dates, in parts
`;

/** Each by its name. */
export const commonFunctions: ReadonlyMap<string, CommonFunction> = new Map(
  lines
    .trim()
    .split('\n')
    .map((line): [string, CommonFunction] => {
      const [, name = '', inside = '', summary = ''] = /^([A-Z0-9.]+)\((.*)\): (.*)$/.exec(line) ?? [];
      const parameters = inside
        .split(', ')
        .filter(Boolean)
        .map((word) => ({ name: word.replace(/[[\]]/g, ''), optional: word.startsWith('[') }));
      return [name, { name, parameters, summary }];
    }),
);

/** An argument as a signature writes it. */
export const inBrackets = ({
  name,
  optional,
}: {
  readonly name: string;
  readonly optional: boolean;
}): string => (optional ? `[${name}]` : name);

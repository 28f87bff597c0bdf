/** What the arguments of built-in functions are, by the name that they share: kind, meaning, and what an example writes. */
export type Kind =
  | 'number'
  | 'text'
  | 'date'
  | 'condition'
  | 'value'
  | 'range'
  | 'numbers'
  | 'values'
  | 'criterion'
  | 'complex'
  | 'name';

/** What is accepted, in words. */
export const accepted: Readonly<Record<Kind, string>> = {
  number: 'a number',
  text: 'text',
  date: 'a date',
  condition: 'TRUE or FALSE, or a comparison',
  value: 'any value',
  range: 'a range or a whole column',
  numbers: 'numbers, ranges or whole columns',
  values: 'values, ranges or whole columns',
  criterion: 'a value to equal, or a comparison such as ">40" or "<>x"',
  complex: 'a complex number as text, such as "3+4i"',
  name: 'a name of your own, without quotes',
};

export interface ParameterWords {
  readonly kind: Kind;
  readonly about: string;
  /** What stands for it in an example; placeholders in braces are filled from the open book. */
  readonly example: string;
}

const lines = `
number number {n} the number
numbers numbers {N} the numbers; text and blanks in ranges are ignored
values values {N} the values
value value {n} the value
text text {t} the text
texts values {T} the texts
date date {d} the date
dates range {D} the dates
range range {N} the range
table range {N} the table
array range {N} the array
condition condition {n}>0 the condition
then value "yes" the result where the condition is true
else value "no" the result otherwise
instead value 0 the result instead
case value 1 a value to compare with
result value {n} the result of the whole formula
name name x the name
index number 1 a position, counted from 1
first range {N} the first column
second range {N2} the second column
where range {T} the range that is tested
criterion criterion {t1} what each cell has to meet
wanted value {t} the value to find
answers range {N} the range that the result comes from
lookup range {T} the row or column that is searched
sorted condition FALSE TRUE for the nearest value in a sorted range, FALSE for an exact match
type number 0 which variant is meant
match number 0 0 exact, −1 exact or next smaller, 1 exact or next larger, 2 with wildcards
search number 1 1 from the first, −1 from the last, 2 or −2 in a sorted range
row number 1 a row, counted from 1
column number 1 a column, counted from 1
reference range {N} a cell or a range
rows number 3 how many rows
columns number 1 how many columns
height number 1 how many rows the result has
width number 1 how many columns the result has
absolute number 1 1 for both fixed, 2 row, 3 column, 4 neither
a1 condition TRUE TRUE for A1 references
sheet text "log" the sheet
order number 0 0 from the largest, any other number from the smallest
ascending number 1 1 for low to high, −1 for high to low
by number 1 the column to sort by
across condition FALSE TRUE to work by columns instead of rows
once condition FALSE TRUE for values that occur exactly once
start number 1 the first number
step number 2 the step
digits number 1 how many decimal places
multiple number 5 the number to round to a multiple of
mode number 0 other than 0: negative numbers are rounded away from zero
divisor number 7 the number to divide by
exponent number 2 the exponent
base number 10 the base
x number 1 where to evaluate
y number 1 the y-coordinate
angle number 1 the angle in radians
degrees number {n} the angle in degrees
low number 1 the smallest number possible
high number 6 the largest number possible
from text "in" the unit it is in
to text "cm" the unit to convert to
n number 5 how many there are
k number 2 how many are taken, or which one
bits number 5 a whole number
other number 3 another whole number
shift number 1 by how many binary places
degree number 1 the order
digit_count number 8 how many digits to write
form number 0 how concise the notation is
real number 3 the real part
imaginary number 4 the imaginary part
unit text "i" the letter of the imaginary unit, i or j
z complex "3+4i" the complex number
z2 complex "1-2i" the other complex number
zs complex "3+4i" the complex numbers
z_score number 1.96 the number of SDs from the mean
mean number 100 the mean
sd number 15 the standard deviation
cumulative condition TRUE TRUE for the probability up to the value, FALSE for the density
probability number 0.95 the probability
alpha number 0.05 one minus the confidence
size number 20 the sample size
t number 2.1 the t value
freedom number 9 the degrees of freedom
freedom1 number 3 the degrees of freedom of the numerator
freedom2 number 20 the degrees of freedom of the denominator
f number 3 the F value
chi number 4 the chi-squared value
shape number 2 the shape
rate_shape number 3 the other shape
scale number 2 the scale
rate number 0.05 the rate
minimum number 0 the smallest value possible
maximum number 1 the largest value possible
successes number 3 how many successes
trials number 10 how many trials
failures number 5 how many failures
chance number 0.5 the probability of one success
drawn number 4 how many are drawn
marked number 5 successes in the whole lot
lot number 20 the size of the whole lot
tails number 2 1 for one-sided, 2 for two-sided
pairing number 1 1 paired, 2 equal variances, 3 unequal variances
share number 0.9 a share from 0 to 1
quarter number 1 0 minimum, 1 lower quartile, 2 median, 3 upper quartile, 4 maximum
trim number 0.2 the share left out, half at each end
known_y range {N} the y-values
known_x range {N2} the x-values
new_x range {N2} the x-values to predict for
constant condition TRUE FALSE for a line through zero
statistics condition FALSE TRUE for errors and fit as well
bounds range {N} the upper limits of the classes
observed range {N} the observed counts
expected range {N} the expected counts
year number 2026 the year
month number 9 the month, 1 to 12
day number 14 the day of the month
months number 4 how many months
end_date date {d}+30 the later date
start_date date {d} the earlier date
interval text "D" "D" days, "M" months, "Y" years
basis number 0 how days are counted: 0 to 4
european condition FALSE TRUE for the European 30-day month
free_days range {D} days off besides weekends
weekend value 1 which days are the weekend, 1 for Saturday and Sunday
days number 10 how many working days
hour number 17 the hour
minute number 30 the minute
second_of_minute number 0 the second
time number 0.75 a time, as a share of a day
seconds number 5400 a time in seconds
format text "0.0" the number format
count number 3 how many characters
position number 1 the character to start from, counted from 1
sought text "a" the text to find
with text "-" the text to put in its place
which number 1 which occurrence, all if left out
between text ", " the text put between
skip_blanks condition TRUE TRUE to leave blanks out
times number 3 how many times
code number 65 the code of a character
field value 1 the column, by its number or heading
criteria range {N} the range with headings and criteria
periods number 12 how many periods
period number 1 the period
payment number -100 the payment per period
present number 1000 the value now
future number 0 the value at the end
due number 0 1 where payments are due at the start of a period
guess number 0.1 a first guess
cash range {N} the payments
cost number 1000 the cost when new
salvage number 100 the value at the end of its life
life number 5 how many periods it lasts
from_period number 1 the first period
to_period number 6 the last period
factor number 2 the rate of decline
first_year number 12 months in the first year
per_year number 12 how many compounding periods per year
effective number 0.05 the effective rate per year
nominal number 0.05 the nominal rate per year
finance number 0.05 the rate for money borrowed
reinvest number 0.05 the rate for money invested
rates range {N} the rates
settlement date DATE(2026,1,1) the day of settlement
maturity date DATE(2026,6,1) the day of maturity
discount number 0.05 the discount rate
price number 98 the price per 100
fraction number 16 the denominator
power number 0 the first power
power_step number 1 the step from power to power
coefficients range {N} the coefficients
subtotal number 9 1 mean, 2 count, 4 maximum, 5 minimum, 9 sum, 7 SD
numeral text "XIV" the Roman numeral
binary text "101" the binary number
hex text "1F" the hexadecimal number
octal text "17" the octal number
digits_text text "101" the number as written in that base
sign_step number 1 the multiple
window number 2 the size of the window
stride number 2 the step of the window
`;

export const parameterWords: ReadonlyMap<string, ParameterWords> = new Map(
  lines
    .trim()
    .split('\n')
    .map((line) => {
      const [, name, kind, example, about] = /^(\S+) (\S+) ("[^"]*"|\S+) (.+)$/.exec(line)!;
      return [name!, { kind: kind as Kind, example: example!, about: about! }] as const;
    }),
);

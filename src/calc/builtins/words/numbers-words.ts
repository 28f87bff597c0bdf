/** What built-in functions of numbers are called and say. */
import { words } from './family-words.ts';

export const numbers = words(
  'Numbers',
  '6.16, mathematical functions, and 6.17, rounding functions',
  `
ROUND(number, [digits=0]): A number rounded to some decimal places. | round, decimals | ROUND({n}, 1)
ROUNDUP(number, [digits=0]): A number rounded away from zero. | round up | ROUNDUP({n}, 0)
ROUNDDOWN(number, [digits=0]): A number rounded towards zero. | round down | ROUNDDOWN({n}, 0)
TRUNC(number, [digits=0]): A number cut after some decimal places. | cut off, truncate | TRUNC({n})
INT(number): The next whole number below. | whole number, integer
MROUND(number, multiple): The nearest multiple of a number. | round to plates, nearest 2.5 | MROUND({n}, 2.5)
CEILING(number, multiple): The next multiple at or above. | round up to a multiple | CEILING({n}, 2.5)
CEILING.MATH(number, [multiple=1], [mode=0]): The next multiple at or above, negative numbers by mode. | round up
!CEILING.PRECISE(number, [multiple=1]): The next multiple at or above, whatever the signs. | round up
FLOOR(number, multiple): The next multiple at or below. | round down to a multiple | FLOOR({n}, 2.5)
FLOOR.MATH(number, [multiple=1], [mode=0]): The next multiple at or below, negative numbers by mode. | round down
!FLOOR.PRECISE(number, [multiple=1]): The next multiple at or below, whatever the signs. | round down
EVEN(number): The next even number away from zero. | even
ODD(number): The next odd number away from zero. | odd
ABS(number): A number without its sign. | absolute value, size
SIGN(number): The sign as 1, 0 or −1. | sign, positive or negative
MOD(number, divisor): The remainder of a division. | remainder, every second
QUOTIENT(number, divisor): The whole part of a division. | integer division
POWER(number, exponent): A number to a power. | exponent, square
SQRT(number): The square root. | root | SQRT(ABS({n}))
EXP(number): e to a power. | exponential | EXP(1)
LN(number): The natural logarithm. | log | LN(10)
LOG(number, [base=10]): The logarithm to a base. | log | LOG(100)
LOG10(number): The logarithm to base 10. | log | LOG10(100)
PI(): The number π. | pi
RAND(): A random number from 0 to 1. | random, chance
!RANDBETWEEN(low, high): A random whole number between two numbers. | random, dice
DEGREES(angle): An angle in degrees. | radians to degrees
RADIANS(degrees): An angle in radians. | degrees to radians
SIN(angle): The sine of an angle in radians. | sine | SIN(RADIANS(30))
COS(angle): The cosine of an angle in radians. | cosine | COS(RADIANS(60))
TAN(angle): The tangent of an angle in radians. | tangent | TAN(RADIANS(45))
ASIN(number): The angle of a sine, in radians. | arcsine | DEGREES(ASIN(0.5))
ACOS(number): The angle of a cosine, in radians. | arccosine | DEGREES(ACOS(0.5))
ATAN(number): The angle of a tangent, in radians. | arctangent | DEGREES(ATAN(1))
ATAN2(x, y): The angle of a point, in radians. | direction, angle of a line | DEGREES(ATAN2(1, 1))
SINH(number): The hyperbolic sine. | | SINH(1)
COSH(number): The hyperbolic cosine. | | COSH(1)
TANH(number): The hyperbolic tangent. | | TANH(1)
ASINH(number): The inverse hyperbolic sine. | | ASINH(1)
ACOSH(number): The inverse hyperbolic cosine. | | ACOSH(2)
ATANH(number): The inverse hyperbolic tangent. | | ATANH(0.5)
COT(angle): The cotangent of an angle in radians. | cotangent
SEC(angle): The secant of an angle in radians. | secant
CSC(angle): The cosecant of an angle in radians. | cosecant
COTH(number): The hyperbolic cotangent. | | COTH(1)
SECH(number): The hyperbolic secant. | | SECH(1)
CSCH(number): The hyperbolic cosecant. | | CSCH(1)
ACOT(number): The angle of a cotangent, in radians. | | ACOT(1)
ACOTH(number): The inverse hyperbolic cotangent. | | ACOTH(2)
CONVERT(number, from, to): A number converted from one unit to another. | convert units, inches to cm, pounds to kg | CONVERT(1, "in", "cm")
SQRTPI(number): The square root of a number times π. | | SQRTPI(2)
FACT(n): The factorial. | factorial
FACTDOUBLE(n): The double factorial. | double factorial
COMBIN(n, k): In how many ways k things can be taken from n. | combinations, pairs
COMBINA(n, k): In how many ways k things can be taken from n, with repeats. | combinations
PERMUT(n, k): In how many orders k things can be taken from n. | permutations, orders
MULTINOMIAL(n*): The multinomial coefficient. | | MULTINOMIAL(1, 2, 3)
GCD(numbers*): The greatest common divisor. | common divisor | GCD(12, 18)
LCM(numbers*): The smallest common multiple. | common multiple | LCM(4, 6)
DELTA(number, [other=0]): 1 where two numbers are equal, else 0. | equal
GAMMA(number): The gamma function. | gamma | GAMMA(4)
GAMMALN(number): The natural logarithm of the gamma function. | log gamma | GAMMALN(4)
ERF(low, [high]): The error function. | error function | ERF(1)
ERFC(x): The complement of the error function. | error function
BESSELI(x, degree): The modified Bessel function of the first kind. | Bessel
BESSELJ(x, degree): The Bessel function of the first kind. | Bessel
BESSELK(x, degree): The modified Bessel function of the second kind. | Bessel
BESSELY(x, degree): The Bessel function of the second kind. | Bessel
BITAND(bits, other): The binary digits that both have. | bitwise and
BITOR(bits, other): The binary digits that either has. | bitwise or
BITXOR(bits, other): The binary digits that only one has. | bitwise exclusive or
BITLSHIFT(bits, shift): Binary digits moved to the left. | bit shift
BITRSHIFT(bits, shift): Binary digits moved to the right. | bit shift
`,
);

/** What built-in functions of notations are called and say. */
import { words } from './family-words.ts';

export const notations = words(
  'Other notations and complex numbers',
  '6.7, complex number functions, and 6.19, number representation conversion functions',
  `
ROMAN(n, [form=0]): A number as a Roman numeral. | Roman numerals
ARABIC(numeral): The number of a Roman numeral. | Roman numerals
BASE(bits, base, [digit_count]): A number written in another base. | binary, hexadecimal | BASE(10, 2)
DECIMAL(digits_text, base): The number that is written in another base. | binary, hexadecimal | DECIMAL("101", 2)
DEC2BIN(bits, [digit_count]): A number in binary. | binary
DEC2HEX(bits, [digit_count]): A number in hexadecimal. | hexadecimal
DEC2OCT(bits, [digit_count]): A number in octal. | octal
BIN2DEC(binary): The number of a binary one. | binary
BIN2HEX(binary, [digit_count]): A binary number in hexadecimal. | binary
BIN2OCT(binary, [digit_count]): A binary number in octal. | binary
HEX2BIN(hex, [digit_count]): A hexadecimal number in binary. | hexadecimal
HEX2DEC(hex): The number of a hexadecimal one. | hexadecimal
HEX2OCT(hex, [digit_count]): A hexadecimal number in octal. | hexadecimal
OCT2BIN(octal, [digit_count]): An octal number in binary. | octal
OCT2DEC(octal): The number of an octal one. | octal
OCT2HEX(octal, [digit_count]): An octal number in hexadecimal. | octal
COMPLEX(real, imaginary, [unit="i"]): A complex number from its parts. | complex number
IMREAL(z): The real part of a complex number. | complex number
IMAGINARY(z): The imaginary part of a complex number. | complex number
IMABS(z): The size of a complex number. | modulus
IMARGUMENT(z): The angle of a complex number in radians. | phase
IMCONJUGATE(z): The conjugate of a complex number. | complex number
IMSUM(zs*): The sum of complex numbers. | complex number
IMSUB(z, z2): The difference of complex numbers. | complex number
IMPRODUCT(zs*): The product of complex numbers. | complex number
IMDIV(z, z2): The quotient of complex numbers. | complex number
IMPOWER(z, exponent): A complex number to a power. | complex number
IMSQRT(z): The square root of a complex number. | complex number
IMEXP(z): e to a complex power. | complex number
IMLN(z): The natural logarithm of a complex number. | complex number
IMLOG10(z): The logarithm of a complex number to base 10. | complex number
IMLOG2(z): The logarithm of a complex number to base 2. | complex number
IMSIN(z): The sine of a complex number. | complex number
IMCOS(z): The cosine of a complex number. | complex number
IMTAN(z): The tangent of a complex number. | complex number
IMCOT(z): The cotangent of a complex number. | complex number
IMSEC(z): The secant of a complex number. | complex number
IMCSC(z): The cosecant of a complex number. | complex number
IMSINH(z): The hyperbolic sine of a complex number. | complex number
IMCOSH(z): The hyperbolic cosine of a complex number. | complex number
IMSECH(z): The hyperbolic secant of a complex number. | complex number
IMCSCH(z): The hyperbolic cosecant of a complex number. | complex number
`,
);

/** Numbers in other notations, and complex numbers: OpenFormula 1.3, part 4, 6.7 and 6.19. */
import { type BuiltIn, builtIn } from '../builtin.ts';

const text = (name: string): BuiltIn => builtIn(name, 'text', null);
const number = (name: string): BuiltIn => builtIn(name, 'plain', null);

export const notations: readonly BuiltIn[] = [
  ...['ROMAN', 'BASE', 'DEC2BIN', 'DEC2HEX', 'DEC2OCT'].map(text),
  ...['BIN2HEX', 'BIN2OCT', 'HEX2BIN', 'HEX2OCT', 'OCT2BIN', 'OCT2HEX'].map(text),
  ...['ARABIC', 'DECIMAL', 'BIN2DEC', 'HEX2DEC', 'OCT2DEC'].map(number),
  ...['COMPLEX', 'IMCONJUGATE', 'IMSUM', 'IMSUB', 'IMPRODUCT', 'IMDIV', 'IMPOWER', 'IMSQRT'].map(text),
  ...['IMEXP', 'IMLN', 'IMLOG10', 'IMLOG2', 'IMSIN', 'IMCOS', 'IMTAN', 'IMCOT', 'IMSEC', 'IMCSC'].map(text),
  ...['IMSINH', 'IMCOSH', 'IMSECH', 'IMCSCH'].map(text),
  ...['IMABS', 'IMAGINARY', 'IMARGUMENT', 'IMREAL'].map(number),
];

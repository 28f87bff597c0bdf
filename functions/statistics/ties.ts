/** Relative difference up to which two values are one: a unit conversion moves the last digits apart. */
const TIE = 1e-12;

/** True when two values differ by nothing but the rounding of a unit conversion. */
export const tied = (a: number, b: number): boolean =>
  a === b || Math.abs(a - b) <= TIE * Math.max(Math.abs(a), Math.abs(b));

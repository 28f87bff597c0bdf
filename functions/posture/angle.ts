/** Radians in a degree. */
export const RAD = Math.PI / 180;

export const sin = (degrees: number): number => Math.sin(degrees * RAD);
export const cos = (degrees: number): number => Math.cos(degrees * RAD);
/** Arc sine in degrees; NaN outside −1 to 1. */
export const asin = (ratio: number): number => Math.asin(ratio) / RAD;
export const acos = (ratio: number): number => Math.acos(ratio) / RAD;

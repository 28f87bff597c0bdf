/** A unit as headings write it. */
export const unitSign = (unit: string): string => (unit === 'deg' ? '°' : unit);

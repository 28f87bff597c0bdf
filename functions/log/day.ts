/** Serial day without its time of day. */
export const dayOf = (serial: number): number => Math.floor(serial);

/** A serial day as an ISO date, for sentences. Day 0 is 30 December 1899. */
export function dayText(day: number): string {
  const date = new Date(Math.round(day - 25569) * 86_400_000);
  return Number.isNaN(date.getTime()) ? String(day) : date.toISOString().slice(0, 10);
}

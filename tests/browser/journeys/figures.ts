/** Plain sums for what the journeys should end in. */

/** A cell's number, with either decimal mark. */
export const n = (text: string | undefined): number => Number((text ?? '').replace(',', '.'));
export const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
export const mean = (values: readonly number[]): number => sum(values) / values.length;
/** Sample SD. */
export const sd = (values: readonly number[]): number =>
  Math.sqrt(sum(values.map((value) => (value - mean(values)) ** 2)) / (values.length - 1));

/** Least squares over days, as change a week. */
export function slopeAWeek(points: readonly { readonly on: number; readonly value: number }[]): number {
  const [x, y] = [mean(points.map(({ on }) => on)), mean(points.map(({ value }) => value))];
  const above = sum(points.map(({ on, value }) => (on - x) * (value - y)));
  return (7 * above) / sum(points.map(({ on }) => (on - x) ** 2));
}

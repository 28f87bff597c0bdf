/** Length of the vector (x, y, …) without overflow, the same bits everywhere; infinite where any part is. */
export function hypot(...parts: readonly number[]): number {
  let largest = 0;
  let unknown = false;
  for (const part of parts) {
    const size = Math.abs(part);
    if (size === Number.POSITIVE_INFINITY) return size;
    if (size > largest) largest = size;
    else if (Number.isNaN(part)) unknown = true;
  }
  if (unknown) return Number.NaN;
  if (largest === 0) return 0;
  let sum = 0;
  let lost = 0;
  for (const part of parts) {
    const share = part / largest;
    const square = share * share - lost;
    const next = sum + square;
    lost = next - sum - square;
    sum = next;
  }
  return Math.sqrt(sum) * largest;
}

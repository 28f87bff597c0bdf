/** Rows of a column, as ranges [from, to): none, some or all. */
export class RowSet {
  private all = false;
  private ranges: number[] = [];

  get empty(): boolean {
    return !this.all && this.ranges.length === 0;
  }

  addAll(): void {
    this.all = true;
    this.ranges = [];
  }

  add(from: number, to: number): void {
    if (this.all || to <= from) return;
    const n = this.ranges.length;
    if (n > 0 && from >= this.ranges[n - 2]! && from <= this.ranges[n - 1]!) {
      if (to > this.ranges[n - 1]!) this.ranges[n - 1] = to;
      return;
    }
    this.ranges.push(from, to);
    if (this.ranges.length > 8192) this.ranges = merged(this.ranges);
  }

  clear(): void {
    this.all = false;
    this.ranges = [];
  }

  /** Rows of a column of this length, sorted, without repeats, as ranges; a range of everything for all. */
  within(rows: number): readonly (readonly [from: number, to: number])[] {
    if (rows === 0) return [];
    if (this.all) return [[0, rows]];
    const pairs: [number, number][] = [];
    const flat = merged(this.ranges);
    for (let i = 0; i < flat.length; i += 2) {
      const from = Math.max(0, flat[i]!);
      const to = Math.min(rows, flat[i + 1]!);
      if (from < to) pairs.push([from, to]);
    }
    return pairs;
  }
}

function merged(ranges: readonly number[]): number[] {
  const order = Array.from({ length: ranges.length / 2 }, (_, i) => i * 2);
  order.sort((a, b) => ranges[a]! - ranges[b]!);
  const out: number[] = [];
  for (const i of order) {
    const from = ranges[i]!;
    const to = ranges[i + 1]!;
    const n = out.length;
    if (n > 0 && from <= out[n - 1]!) out[n - 1] = Math.max(out[n - 1]!, to);
    else out.push(from, to);
  }
  return out;
}

/** How a table is laid on paper. Every page carries the first columns; the others are dealt out in their order. */
export interface LaidOut {
  readonly wide: boolean;
  /** Letters, in points. */
  readonly size: number;
  /** Indices of the columns of each part, the repeated ones first. */
  readonly parts: readonly (readonly number[])[];
}

/** Width to print on, in mm: what A4 and Letter both have inside the margins. */
export const paper = { upright: 181, wide: 250 } as const;
/** Letters in points: as wanted, the smallest when the page is split, the smallest that spares a split. */
export const letters = { wanted: 9, split: 8, least: 7 } as const;

/** Of the page's width, most that repeated columns may take. */
const REPEATED = 0.4;

/**
 * Lays columns on pages. `widths` are those at the wanted size of letters, in mm; the first `frozen` are repeated where
 * the table must be split, one at least.
 */
export function layOut(widths: readonly number[], frozen: number): LaidOut {
  const all = widths.map((_, index) => index);
  const total = sum(widths);
  if (total <= paper.upright) return { wide: false, size: letters.wanted, parts: [all] };
  if (total * (letters.least / letters.wanted) <= paper.wide) {
    const size = Math.min(letters.wanted, (letters.wanted * paper.wide) / total);
    return { wide: true, size: Math.floor(size * 10) / 10, parts: [all] };
  }
  const scaled = widths.map((width) => (width * letters.split) / letters.wanted);
  let repeated = Math.min(Math.max(frozen, 1), widths.length - 1);
  while (repeated > 1 && sum(scaled.slice(0, repeated)) > REPEATED * paper.wide) repeated--;
  const first = all.slice(0, repeated);
  const room = Math.max(paper.wide - sum(scaled.slice(0, repeated)), paper.wide * (1 - REPEATED));
  const rest = all.slice(repeated);
  const fewest = dealt(rest, scaled, room).length;
  // The parts are made about equally full, so that the last is no single column.
  let low = Math.max(...rest.map((column) => scaled[column]!));
  let high = room;
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2;
    if (dealt(rest, scaled, middle).length <= fewest) high = middle;
    else low = middle;
  }
  return {
    wide: true,
    size: letters.split,
    parts: dealt(rest, scaled, high).map((part) => [...first, ...part]),
  };
}

/** Columns in runs that fit the room; one that is wider has a run for itself. */
function dealt(columns: readonly number[], widths: readonly number[], room: number): number[][] {
  const runs: number[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const column of columns) {
    const width = widths[column]!;
    if (used + width > room) {
      runs.push([]);
      used = 0;
    }
    runs.at(-1)!.push(column);
    used += width;
  }
  return runs;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

import type { Cell } from '../../book/cells.ts';

/**
 * How a run of cells goes on: numbers and dates by their constant step (a single date by days, a single number by 1),
 * texts that end in a number by counting it up. Answers the cell at any place, 0 being the first of the run; undefined
 * where there is no such rule.
 */
export function seriesOf(run: readonly Cell[]): ((at: number) => Cell) | undefined {
  if (run.every((cell) => typeof cell === 'number')) return line(run as number[], (value) => value);
  if (run.every((cell) => cell !== null && typeof cell === 'object' && 'date' in cell))
    return line(
      run.map((cell) => (cell as { date: number }).date),
      (date) => ({ date }),
    );
  const counted = run.map((cell) => (typeof cell === 'string' ? /^(.*?)(\d{1,9})$/s.exec(cell) : null));
  if (counted.some((found) => found === null || found[1] !== counted[0]?.[1])) return undefined;
  const width = counted[0]![2]!.length;
  const padded = counted.every((found) => found![2]!.length === width);
  const go = line(
    counted.map((found) => Number(found![2])),
    (value) => value,
  );
  return (
    go &&
    ((at) => {
      const value = Math.max(0, go(at) as number);
      return counted[0]![1]! + (padded ? String(value).padStart(width, '0') : String(value));
    })
  );
}

function line(values: readonly number[], cell: (value: number) => Cell): ((at: number) => Cell) | undefined {
  const first = values[0]!;
  const step = values.length > 1 ? values[1]! - first : 1;
  const even = values.every(
    (value, i) => Math.abs(first + i * step - value) <= 1e-9 * Math.max(1, Math.abs(value)),
  );
  // Steps like 0.1 are added up without their binary dust.
  return even ? (at) => cell(Number((first + at * step).toPrecision(15))) : undefined;
}

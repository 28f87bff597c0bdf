import { cpus } from 'node:os';
import { HyperFormula } from 'hyperformula';
import { version as vite } from 'vite';

/** One line of a benchmark: what was done, how long it took, and against what. */
export interface Line {
  readonly work: string;
  /** Median, milliseconds. */
  readonly ms: number;
  /** The first run, with nothing compiled or remembered. */
  readonly first?: number;
  readonly best?: number;
  /** The slowest of a hundred, where single edits are timed. */
  readonly p95?: number;
  readonly cpu?: number;
  readonly p95cpu?: number;
  readonly against?: readonly {
    readonly what: string;
    readonly ms: number;
    readonly best?: number;
    readonly cpu?: number;
    readonly note?: string;
  }[];
  readonly target?: string;
  /** Answers that were looked at and those that were wrong; must be 0. */
  readonly checked: number;
  readonly wrong: number;
}

export interface Bench {
  readonly name: string;
  readonly rows: number;
  readonly lines: readonly Line[];
  readonly notes: readonly string[];
}

export const median = (times: readonly number[]): number => {
  const sorted = times.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};
export const percentile = (times: readonly number[], share: number): number =>
  times.toSorted((a, b) => a - b)[Math.min(times.length - 1, Math.ceil(share * times.length) - 1)]!;

/** Milliseconds of processor time that some work takes, those of the runtime's own threads included. */
export const cost = (work: () => unknown): number => {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};

export const took = (work: () => unknown): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

/** Something to be timed: `fresh` makes what it works on, which is not timed. */
export interface Timed {
  readonly fresh?: () => void;
  readonly work: () => unknown;
}
export interface Times {
  readonly first: number;
  readonly ms: number;
  readonly best: number;
  /** Median of the processor's time: what stays when others use the machine too. */
  readonly cpu: number;
}

/**
 * Times several pieces of work in turn, so that whatever else the machine does falls on all alike. The first run of each
 * stands apart.
 */
export function timed(times: number, ...pieces: readonly Timed[]): Times[] {
  const all: number[][] = pieces.map(() => []);
  const costs: number[][] = pieces.map(() => []);
  for (let k = 0; k < times; k++)
    pieces.forEach(({ fresh, work }, p) => {
      fresh?.();
      costs[p]!.push(
        cost(() => {
          all[p]!.push(took(work));
        }),
      );
    });
  return all.map((list, p) => ({
    first: list[0]!,
    ms: median(list.slice(1)),
    best: Math.min(...list),
    cpu: median(costs[p]!.slice(1)),
  }));
}

export const machine = (): Readonly<Record<string, string>> => ({
  processor: `${cpus()[0]?.model.trim() ?? 'unknown'} × ${cpus().length}`,
  node: process.version,
  hyperformula: HyperFormula.version,
  vite,
});

const ms = (value: number): string => (value < 10 ? value.toFixed(3) : value.toFixed(0)).padStart(9);
const times = (ratio: number): string => (ratio < 100 ? ratio.toFixed(2) : ratio.toFixed(0));

/** Prints a benchmark as a table and as one JSON line for each piece of work. */
export function print(bench: Bench): void {
  const on = machine();
  console.log(`\n${bench.name}, ${bench.rows.toLocaleString('en')} rows`);
  console.log(
    Object.entries(on)
      .map(([what, which]) => `${what} ${which}`)
      .join(', '),
  );
  for (const line of bench.lines) {
    console.log(
      `${line.work.padEnd(58)} ${ms(line.ms)} ms${line.first === undefined ? '' : `, first ${ms(line.first).trim()}`}${
        line.p95 === undefined ? '' : `, p95 ${ms(line.p95).trim()}`
      }${line.p95cpu === undefined ? '' : `, processor time ${ms(line.cpu!).trim()}, p95 ${ms(line.p95cpu).trim()}`}  ${line.wrong === 0 ? `${line.checked} answers checked` : `${line.wrong} OF ${line.checked} ANSWERS WRONG`}`,
    );
    for (const { what, ms: other, best, cpu, note } of line.against ?? [])
      console.log(
        `  against ${what.padEnd(50)}${ms(other)} ms  ${
          other >= line.ms ? `${times(other / line.ms)} × faster` : `${times(line.ms / other)} × its time`
        }${best && line.best ? `, best of all runs ${times(line.best / best)} ×` : ''}${cpu && line.cpu ? `, processor time ${times(line.cpu / cpu)} ×` : ''}${note ? ` (${note})` : ''}`,
      );
    if (line.target) console.log(`  target: ${line.target}`);
  }
  for (const note of bench.notes) console.log(note);
  for (const line of bench.lines)
    console.log(
      JSON.stringify({
        bench: bench.name,
        rows: bench.rows,
        ...line,
        ratios: Object.fromEntries(
          (line.against ?? []).map(({ what, ms: other }) => [what, line.ms / other]),
        ),
        machine: on,
      }),
    );
}

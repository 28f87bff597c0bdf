import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { type Range, valueAt } from '../../functions/core/value.ts';
import { readBook } from '../../src/book/file.ts';
import { createCalculation } from '../../src/calc/calculation.ts';
import { type Bench, type Line, took } from './measure.ts';
import { ran } from './ran.ts';

/*
 * Two groups of invented people compared in free cells: 27 formulas of FILTER over three long columns, beside loops over
 * typed arrays that do the sums alone.
 */
const measures = ['lean', 'depth', 'ankle'] as const;
const group = (measure: string, sex: string): string => `FILTER(people.${measure}, people.sex = "${sex}")`;
const formulasOf = (measure: string): string[] => {
  const [a, b] = [group(measure, 'Male'), group(measure, 'Female')];
  return [
    ...['t', 'df', 'p', 'low', 'high'].map((what) => `COHORT.WELCH(${a}, ${b}, "${what}")`),
    `COHORT.D(${a}, ${b})`,
    `AVERAGE(${a})`,
    `COUNT(${b})`,
    `PERCENTILE.INC(${a}, 0.9)`,
  ];
};

interface People {
  readonly rows: number;
  /** 1 for a man. */
  readonly male: Uint8Array;
  /** NaN for a blank. */
  readonly values: Readonly<Record<(typeof measures)[number], Float64Array>>;
}

/** People by a linear congruential generator (Numerical Recipes, 1664525 and 1013904223), the same in every run. */
function madeUp(rows: number): People {
  let state = 20_250;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const male = new Uint8Array(rows);
  const values = {
    lean: new Float64Array(rows),
    depth: new Float64Array(rows),
    ankle: new Float64Array(rows),
  };
  const centre = { lean: 41, depth: 100, ankle: 35 };
  for (let i = 0; i < rows; i++) {
    male[i] = next() < 0.55 ? 1 : 0;
    for (const measure of measures) {
      const value = centre[measure] + (next() + next() + next() - 1.5) * 12 + (male[i] ? 0.01 : 0);
      values[measure][i] = next() < 0.02 ? Number.NaN : Math.round(value * 100) / 100;
    }
  }
  return { rows, male, values };
}

function bookText({ rows, male, values }: People): string {
  const columns = [
    { name: 'sex', label: 'Sex', kind: 'text', cells: Array.from(male, (m) => (m ? 'Male' : 'Female')) },
    ...measures.map((name) => ({
      name,
      label: name,
      kind: 'number',
      cells: Array.from(values[name], (x) => (Number.isNaN(x) ? null : x)),
    })),
  ];
  const cells = measures.flatMap(formulasOf).map((formula) => ({ formula }));
  return JSON.stringify({
    leverbook: 1,
    title: 'Two groups',
    sheets: [
      { name: 'people', label: 'People', purpose: 'gathered', rows, columns },
      {
        name: 'summary',
        label: 'Summary',
        purpose: 'worked',
        rows: cells.length,
        columns: [{ name: 'figure', label: 'Figure', kind: 'number', cells }],
      },
    ],
    names: [],
  });
}

/** Number, mean, variance and the value nine tenths of the way up of one group. */
function groupByLoop(values: Float64Array, male: Uint8Array, sex: 0 | 1, sorted: boolean) {
  let n = 0;
  let sum = 0;
  for (let i = 0; i < values.length; i++)
    if (male[i] === sex && !Number.isNaN(values[i])) {
      n++;
      sum += values[i]!;
    }
  const mean = sum / n;
  let squares = 0;
  for (let i = 0; i < values.length; i++)
    if (male[i] === sex && !Number.isNaN(values[i])) squares += (values[i]! - mean) ** 2;
  let ninth = Number.NaN;
  if (sorted) {
    const own = values.filter((x, i) => male[i] === sex && !Number.isNaN(x)).sort();
    const at = (n - 1) * 0.9;
    const low = Math.floor(at);
    ninth = own[low]! + (at - low) * ((own[low + 1] ?? own[low]!) - own[low]!);
  }
  return { n, mean, variance: squares / (n - 1), ninth };
}

function byLoops({ male, values }: People) {
  return measures.map((measure) => {
    const a = groupByLoop(values[measure], male, 1, true);
    const b = groupByLoop(values[measure], male, 0, false);
    const [va, vb] = [a.variance / a.n, b.variance / b.n];
    const pooled = Math.sqrt(((a.n - 1) * a.variance + (b.n - 1) * b.variance) / (a.n + b.n - 2));
    return {
      difference: a.mean - b.mean,
      t: (a.mean - b.mean) / Math.sqrt(va + vb),
      df: (va + vb) ** 2 / (va ** 2 / (a.n - 1) + vb ** 2 / (b.n - 1)),
      d: (b.mean - a.mean) / pooled,
      mean: a.mean,
      count: b.n,
      ninth: a.ninth,
    };
  });
}

const near = (a: unknown, b: number): boolean =>
  typeof a === 'number' && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));

/** Which of the 27 answers are right. p has no loop: below .05 exactly where 0 lies outside the interval. */
function judged(answers: readonly unknown[], loops: ReturnType<typeof byLoops>): readonly boolean[] {
  return loops.flatMap((loop, k) => {
    const [t, df, p, low, high, d, mean, count, ninth] = answers.slice(k * 9, k * 9 + 9) as number[];
    const middle = near((low! + high!) / 2, loop.difference);
    return [
      near(t, loop.t),
      near(df, loop.df),
      p! > 0 && p! <= 1 && p! < 0.05 === (low! > 0 || high! < 0),
      middle && low! < high!,
      middle,
      near(d, loop.d),
      near(mean, loop.mean),
      near(count, loop.count),
      near(ninth, loop.ninth),
    ];
  });
}

export async function bench(rows = 1_000_000): Promise<Bench> {
  const root = process.cwd();
  const people = madeUp(rows);
  const text = bookText(people);
  const folder = mkdtempSync(join(tmpdir(), 'leverbook-cohort-'));
  const file = join(folder, 'groups.leverbook.json');
  try {
    writeFileSync(file, text);
    await build({ root, configFile: join(root, 'vite.cli.config.ts'), logLevel: 'error' });
    const whole = ran(['dist/cli/leverbook.js', 'calc', file, '--sheet', 'summary', '--json']);
    const printed = whole.out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line).values.figure as unknown);

    let loops = byLoops(people);
    const loopMs = took(() => {
      loops = byLoops(people);
    });
    const book = readBook(text);
    const calculation = createCalculation(book);
    const inside = took(() => {
      for (const steps = calculation.all(); !steps.next().done; );
    });
    const summary = book.sheets[1]!;
    const column: Range = calculation.column(summary.id, summary.columns[0]!.id);
    const computed = Array.from({ length: column.rows }, (_, i) => valueAt(column, i));
    const line = (work: string, ms: number, answers: readonly unknown[]): Line => {
      const right = judged(answers, loops);
      return {
        work,
        ms,
        against: [{ what: 'loops over typed arrays, each group once', ms: loopMs }],
        checked: right.length,
        wrong: right.filter((r) => !r).length,
      };
    };
    return {
      name: 'cohort',
      rows,
      lines: [
        line('27 formulas of FILTER in free cells, computed', inside, computed),
        {
          ...line('the command calc: opened, computed, printed', whole.ms, printed),
          target: 'over 1,000,000 rows at most 15 s and 1.2 GB',
        },
      ],
      notes: [`peak memory of the command ${whole.megabytes.toFixed(0)} MB`],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

import { execFileSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { type Bench, median } from './measure.ts';

const FIRST = Date.UTC(2021, 0, 1);
const EPOCH = 25_569;
const exercises = ['back squat', 'front squat', 'goblet squat', 'split squat'];

interface LogFile {
  readonly path: string;
  /** Serial of the last day. */
  readonly on: number;
  /** What "Lifter 7" moved in the last seven days: summed here, not by the code that is measured. */
  readonly week: number;
}

/** Writes a log in the order in which sessions are written down, about 53 bytes a row. */
function writeLog(folder: string, rows: number): LogFile {
  let state = 12_345;
  const random = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const path = join(folder, `log-${rows}.csv`);
  const file = openSync(path, 'w');
  const days = Math.max(30, Math.ceil(rows / 700));
  const loads: [day: number, load: number][] = [];
  let lines = ['date,athlete,exercise,sets,reps,load (kg),rpe,minutes,note'];
  for (let i = 0; i < rows; i++) {
    const day = Math.floor((i / rows) * days);
    const lifter = 1 + Math.floor(random() * 200);
    const load = Math.round(80 + random() * 400) / 2;
    if (lifter === 7) loads.push([day, load]);
    const date = new Date(FIRST + day * 86_400_000).toISOString().slice(0, 10);
    const exercise = exercises[Math.floor(random() * 4)];
    const note = random() < 0.1 ? 'felt heavy' : '';
    lines.push(
      `${date},Lifter ${lifter},${exercise},${1 + Math.floor(random() * 5)},${1 + Math.floor(random() * 12)},${load.toFixed(1)},${5 + Math.floor(random() * 11) / 2},${20 + Math.floor(random() * 80)},${note}`,
    );
    if (lines.length >= 20_000 || i === rows - 1) {
      writeSync(file, `${lines.join('\n')}\n`);
      lines = [];
    }
  }
  closeSync(file);
  const week = loads.filter(([day]) => day > days - 1 - 7).reduce((sum, [, load]) => sum + load, 0);
  return { path, on: FIRST / 86_400_000 + EPOCH + days - 1, week };
}

interface Answer {
  readonly ms: number;
  readonly peak: number;
  readonly rows: number;
  readonly placed?: number;
  readonly held?: number;
  readonly week?: number;
  readonly longest?: number;
  readonly steps?: number;
}

/** The child as one file for Node, with all packages in it, so that it starts from anywhere. */
async function buildChild(folder: string): Promise<string> {
  await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      ssr: join(process.cwd(), 'tests/bench/intake-child.ts'),
      outDir: folder,
      target: 'node20',
      emptyOutDir: false,
      rollupOptions: { output: { entryFileNames: 'child.mjs' } },
    },
    ssr: { noExternal: true },
  });
  return join(folder, 'child.mjs');
}

const RUNS = 5;
const most = (answers: readonly Answer[], of: (a: Answer) => number): number => Math.max(...answers.map(of));

/**
 * A log from its bytes to a sheet that formulas can be asked about, against bare papaparse on the same file: in turn, each
 * in a process of its own, so that nothing else is in its memory.
 */
export async function bench(given: number | undefined): Promise<Bench> {
  const rows = given ?? 1_000_000;
  const folder = mkdtempSync(join(tmpdir(), 'leverbook-bench-'));
  try {
    const child = await buildChild(folder);
    const log = writeLog(folder, rows);
    const ask = (what: string): Answer =>
      JSON.parse(
        execFileSync(process.execPath, [child, what, log.path, String(log.on)], { encoding: 'utf8' }),
      ) as Answer;
    const bare: Answer[] = [];
    const imported: Answer[] = [];
    for (let run = 0; run < RUNS; run++) {
      bare.push(ask('papaparse'));
      imported.push(ask('intake'));
    }
    const isRight = (a: Answer): boolean =>
      a.rows === rows && a.held === 0 && Math.abs(a.week! - log.week) <= 1e-6 * log.week;
    const size = statSync(log.path).size;
    const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`;
    const peak = most(imported, (a) => a.peak);
    return {
      name: 'intake',
      rows,
      lines: [
        {
          work: `a log of ${mb(size)} placed, checked and indexed by athlete and day`,
          ms: median(imported.map((a) => a.ms)),
          best: Math.min(...imported.map((a) => a.ms)),
          against: [
            {
              what: 'bare papaparse on the same file',
              ms: median(bare.map((a) => a.ms)),
              best: Math.min(...bare.map((a) => a.ms)),
            },
          ],
          target: '≤ 2.5 × bare papaparse',
          checked: 2 * RUNS,
          wrong: bare.filter((a) => a.rows !== rows).length + imported.filter((a) => !isRight(a)).length,
        },
      ],
      notes: [
        `Peak memory of the whole process: ${mb(peak)}, ${(peak / size).toFixed(2)} × the file (target ≤ 6 × for 1,000,000 rows; Node alone takes about 45 MB); bare papaparse ${mb(most(bare, (a) => a.peak))}.`,
        `Placed after ${median(imported.map((a) => a.placed!)).toFixed(0)} ms; ${imported[0]!.steps} steps, the longest ${Math.min(...imported.map((a) => a.longest!)).toFixed(0)} ms in the quietest run, ${most(imported, (a) => a.longest!).toFixed(0)} ms in the slowest.`,
      ],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

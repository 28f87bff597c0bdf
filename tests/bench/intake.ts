import { execFileSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

/** Bare papaparse against the intake on one log file, each in a process of its own. Memory is the process's peak, with Node's own part. */
export interface IntakeBench {
  readonly machine: string;
  readonly rows: number;
  readonly megabytes: number;
  readonly papaparse: { readonly ms: number; readonly peakMegabytes: number };
  readonly intake: {
    readonly ms: number;
    /** Without the index that the first formula makes. */
    readonly placedMs: number;
    readonly peakMegabytes: number;
    /** The longest step between two moments at which it can be cancelled. */
    readonly longestStepMs: number;
    readonly steps: number;
  };
  /** Time against bare papaparse; the target is 2.5 or less for 1,000,000 rows. */
  readonly timeRatio: number;
  /** Peak memory against the file's size; the target is 6 or less for 1,000,000 rows. */
  readonly memoryRatio: number;
  /** Answers that differ from those worked out while the file was written; must be 0. */
  readonly wrong: number;
}

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

/** Measures one size. Prints nothing. */
export async function benchIntake(rows = 1_000_000, runs = 3): Promise<IntakeBench> {
  const folder = mkdtempSync(join(tmpdir(), 'leverbook-bench-'));
  try {
    await build({
      configFile: false,
      logLevel: 'silent',
      build: {
        ssr: join(import.meta.dirname, 'intake-child.ts'),
        outDir: folder,
        target: 'node20',
        emptyOutDir: false,
        rollupOptions: { output: { entryFileNames: 'child.mjs' } },
      },
      ssr: { noExternal: true },
    });
    const log = writeLog(folder, rows);
    const ask = (what: string): Answer =>
      JSON.parse(
        execFileSync(process.execPath, [join(folder, 'child.mjs'), what, log.path, String(log.on)], {
          encoding: 'utf8',
        }),
      ) as Answer;
    const bare: Answer[] = [];
    const taken: Answer[] = [];
    for (let run = 0; run < runs; run++) {
      bare.push(ask('papaparse'));
      taken.push(ask('intake'));
    }
    const wrong =
      bare.filter((a) => a.rows !== rows).length +
      taken.filter((a) => a.rows !== rows || a.held !== 0 || Math.abs(a.week! - log.week) > 1e-6 * log.week)
        .length;
    const quickest = (answers: readonly Answer[]): Answer => answers.reduce((a, b) => (b.ms < a.ms ? b : a));
    const most = (answers: readonly Answer[]): number => Math.max(...answers.map((a) => a.peak));
    const size = statSync(log.path).size;
    const [papaparse, intake] = [quickest(bare), quickest(taken)];
    return {
      machine: `${cpus()[0]?.model ?? 'unknown'} × ${cpus().length}, Node ${process.version}`,
      rows,
      megabytes: size / 1e6,
      papaparse: { ms: papaparse.ms, peakMegabytes: most(bare) / 1e6 },
      intake: {
        ms: intake.ms,
        placedMs: intake.placed!,
        peakMegabytes: most(taken) / 1e6,
        longestStepMs: Math.max(...taken.map((a) => a.longest!)),
        steps: intake.steps!,
      },
      timeRatio: intake.ms / papaparse.ms,
      memoryRatio: most(taken) / size,
      wrong,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

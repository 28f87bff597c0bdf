/** Runs a command so that an interrupt or a time limit can end it. */
import { rmSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { Exit, faultOf } from './exit.ts';
import { say } from './print.ts';
import { Shared, type Task, type Told, terminal } from './thread.ts';

export interface Watch {
  /** The file that runs the task in its thread. */
  readonly entry: URL;
  readonly command: string;
  readonly args: readonly unknown[];
  /** Seconds that the work may take; none: as long as it likes. */
  readonly seconds?: number;
}

/**
 * Runs a command in a thread of its own and ends it on an interrupt or when its time is over. Either comes before the
 * first file is put in place, and then none is; or after, and then all are.
 * @returns the exit code
 */
export function watched({ entry, command, args, seconds }: Watch): Promise<number> {
  const shared = new Shared();
  const task: Task = { command, args, terminal, shared: shared.buffer };
  const worker = new Worker(entry, { workerData: { leverbook: task } });
  let staged: readonly string[] = [];
  let ended: number | undefined;
  let timer: NodeJS.Timeout | undefined;

  const end = (code: number, sentence: () => string): void => {
    if (!shared.end()) return;
    ended = code;
    void worker.terminate().then(() => {
      for (const path of staged) rmSync(path, { recursive: true, force: true });
      if (terminal) process.stderr.write('\r\x1b[K');
      say(`leverbook: ${sentence()}`);
    });
  };
  const interrupt = (): void =>
    end(Exit.interrupted, () => `interrupted${during(shared)}; no file was written.`);
  const outOfTime = (): void =>
    end(
      Exit.outOfTime,
      () =>
        `${seconds} s were not enough${during(shared)}. No file was written. Make the formula do less, or allow more with --timeout SECONDS.`,
    );
  process.on('SIGINT', interrupt);

  worker.on('message', (told: Told) => {
    if (told.is === 'begun' && seconds !== undefined) timer = setTimeout(outOfTime, seconds * 1000);
    else if (told.is === 'staged') staged = told.paths;
    else if (told.is === 'written') {
      const { to, text } = told;
      // A reader that takes its time holds the computing thread up, not the memory.
      process[to === 'out' ? 'stdout' : 'stderr'].write(text, () => shared.read(text.length));
    }
  });
  return new Promise((resolve) => {
    let fault: unknown;
    worker.on('error', (error) => {
      fault = error;
    });
    worker.on('exit', (code) => {
      clearTimeout(timer);
      process.off('SIGINT', interrupt);
      if (fault !== undefined && ended === undefined) {
        for (const path of staged) rmSync(path, { recursive: true, force: true });
        resolve(failed(fault, during(shared)));
      } else resolve(ended ?? code);
    });
  });
}

const during = (shared: Shared): string => (shared.computing ? ` while calculating ${shared.computing}` : '');

function failed(error: unknown, during: string): number {
  if ((error as { code?: string }).code === 'ERR_WORKER_OUT_OF_MEMORY') {
    say(
      `leverbook: out of memory${during}. No file was written. Split the book, or give more memory: NODE_OPTIONS=--max-old-space-size=8192 allows 8 GB.`,
    );
    return Exit.refused;
  }
  say(faultOf(error, during));
  return Exit.fault;
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // A reader that stopped reading (`| head`) is no error.
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

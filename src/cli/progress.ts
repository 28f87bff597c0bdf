import type { Progress } from '../calc/api.ts';

/** Nothing is said about work that is quicker than this. */
const QUIET = 1_000;

/** Tells on standard error how far long work is: in place on a terminal, else a line now and then. */
export class Telling {
  private readonly began = performance.now();
  private told = 0;
  private shown = false;

  tell({ done, total, about }: Progress): void {
    const now = performance.now();
    const terminal = process.stderr.isTTY === true;
    if (now - this.began < QUIET || now - this.told < (terminal ? 100 : 2_000)) return;
    this.told = now;
    const share = total > 0 ? Math.min(99, Math.floor((100 * done) / total)) : 0;
    process.stderr.write(terminal ? `\r\x1b[K${about} ${share} %` : `${about} ${share} %\n`);
    this.shown ||= terminal;
  }

  end(): void {
    if (this.shown) process.stderr.write('\r\x1b[K');
  }
}

/** Runs step by step with the event loop in between now and then, so that an interrupt is heard. */
export async function runTelling<T>(work: Generator<Progress, T>, telling: Telling): Promise<T> {
  let pause = performance.now() + 50;
  try {
    for (;;) {
      const step = work.next();
      if (step.done) return step.value;
      telling.tell(step.value);
      if (performance.now() < pause) continue;
      await new Promise((resolve) => setImmediate(resolve));
      pause = performance.now() + 50;
    }
  } finally {
    telling.end();
  }
}

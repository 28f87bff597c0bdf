import type { Progress } from '../calc/api.ts';
import { terminal, write } from './thread.ts';
import { onOneLine } from './visible.ts';

/** Nothing is said about work that is quicker than this. */
const QUIET = 1_000;

/** Tells on standard error how far long work is: in place on a terminal, else a line now and then. */
export class Telling {
  private readonly began = performance.now();
  private told = 0;
  private shown = false;

  tell({ done, total, about }: Progress): void {
    const now = performance.now();
    if (now - this.began < QUIET || now - this.told < (terminal ? 100 : 2_000)) return;
    this.told = now;
    const share = total > 0 ? Math.min(99, Math.floor((100 * done) / total)) : 0;
    const line = `${onOneLine(about)} ${share} %`;
    write('err', terminal ? `\r\x1b[K${line}` : `${line}\n`);
    this.shown ||= terminal;
  }

  end(): void {
    if (this.shown) write('err', '\r\x1b[K');
  }
}

/** Runs step by step with the event loop in between now and then. `next` hears of each step before it is done. */
export async function runTelling<T>(
  work: Generator<Progress, T>,
  telling: Telling,
  next?: (progress: Progress) => void,
): Promise<T> {
  let pause = performance.now() + 50;
  try {
    for (;;) {
      const step = work.next();
      if (step.done) return step.value;
      next?.(step.value);
      telling.tell(step.value);
      if (performance.now() < pause) continue;
      await new Promise((resolve) => setImmediate(resolve));
      pause = performance.now() + 50;
    }
  } finally {
    telling.end();
  }
}

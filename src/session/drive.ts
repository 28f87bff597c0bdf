/** Runs long work: at once, or in slices with progress and a way to stop it. */
import type { Progress } from '../calc/api.ts';

export interface SettleOptions {
  /** Milliseconds of work before others get a turn. */
  readonly slice?: number;
  readonly onProgress?: (progress: Progress) => void;
  /** Called before every step, however short. */
  readonly onStep?: (progress: Progress) => void;
  readonly signal?: AbortSignal;
}

/** Runs to the end at once. */
export function finish(work: Generator<Progress, void>, onProgress?: (progress: Progress) => void): void {
  for (let step = work.next(); !step.done; step = work.next()) onProgress?.(step.value);
}

/** Runs work to its end and answers what it comes to. */
export function toEnd<T>(work: Generator<unknown, T>): T {
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}

/** Runs in slices with the event loop in between; answers false when the signal ended it. */
export async function settle(
  work: Generator<Progress, void>,
  { slice = 25, onProgress, onStep, signal }: SettleOptions = {},
): Promise<boolean> {
  let until = performance.now() + slice;
  let told: Progress | undefined;
  for (let step = work.next(); !step.done; step = work.next()) {
    onStep?.(step.value);
    if (performance.now() < until) continue;
    told = step.value;
    onProgress?.(told);
    await turn();
    if (signal?.aborted) return false;
    until = performance.now() + slice;
  }
  // Who was told of a part is told of the end, or waits for it for ever.
  if (told && told.done < told.total)
    onProgress?.({ about: told.about, done: told.total, total: told.total });
  return true;
}

/** One turn of the event loop, without the least delay that timers have. */
export function turn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

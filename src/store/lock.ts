/** A lock on a book, held until it is released or taken. */
export interface Hold {
  release(): void;
}

/** A tab that was just closed gives its locks back a moment later. */
const WAIT = 400;

/**
 * Locks a book for writing, across the tabs and windows of this browser. Null when another one is found to hold it: a busy
 * machine alone never makes it so, however long an answer takes. With `take`, the other one loses it, and `onTaken` is
 * called there. Where the platform has no locks (plain http from another machine)
 * everybody gets one: the number of the writer in the book's row then keeps two writers apart.
 */
export function hold(book: string, take: boolean, onTaken: () => void): Promise<Hold | null> {
  const locks = globalThis.navigator?.locks as LockManager | undefined;
  if (!locks) return Promise.resolve({ release: () => undefined });
  return new Promise((resolve) => {
    let held = false;
    const waiting = new AbortController();
    const options: LockOptions = take ? { steal: true } : { signal: waiting.signal };
    if (!take) void endWhenHeld(locks, book, waiting, () => held);
    locks
      .request(lockName(book), options, () => {
        held = true;
        return new Promise<void>((release) => resolve({ release }));
      })
      .catch(() => {
        if (held) onTaken();
        else resolve(null);
      });
  });
}

/** Ends the wait for a lock once another one has it and has not given it back for a while. */
async function endWhenHeld(
  locks: LockManager,
  book: string,
  waiting: AbortController,
  isMine: () => boolean,
): Promise<void> {
  const name = lockName(book);
  const isIn = (list: readonly LockInfo[] | undefined): boolean =>
    list?.some((lock) => lock.name === name) ?? false;
  while (!isMine()) {
    await new Promise((resolve) => setTimeout(resolve, WAIT));
    const { held, pending } = await locks.query();
    // While this request still waits, whoever has the lock is another one.
    if (isIn(held) && isIn(pending)) return waiting.abort();
  }
}

/** Answers true when nobody holds the book any more; false when the signal ended the wait, or nobody can tell. */
export async function whenFree(book: string, signal: AbortSignal): Promise<boolean> {
  const locks = globalThis.navigator?.locks as LockManager | undefined;
  if (!locks) return false;
  try {
    await locks.request(lockName(book), { signal }, () => Promise.resolve());
    return true;
  } catch {
    return false;
  }
}

/** True when a tab or window of this browser holds the book. */
export async function isHeld(book: string): Promise<boolean> {
  const locks = globalThis.navigator?.locks as LockManager | undefined;
  const state = await locks?.query();
  return state?.held?.some(({ name }) => name === lockName(book)) ?? false;
}

const lockName = (book: string): string => `leverbook ${book}`;

/** How long one tab waits for another that does the same. */
const PATIENCE = 5_000;

/** Does something while no other tab does it; not at all when that takes too long. */
export async function alone(what: string, work: () => Promise<void>): Promise<void> {
  const locks = globalThis.navigator?.locks as LockManager | undefined;
  if (!locks) return work();
  let begun = false;
  const signal = AbortSignal.timeout(PATIENCE);
  await locks
    .request(`leverbook ${what}`, { signal }, () => {
      begun = true;
      return work();
    })
    .catch((reason: unknown) => {
      if (begun) throw reason;
    });
}

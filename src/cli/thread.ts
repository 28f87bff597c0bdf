import { isMainThread, parentPort, workerData } from 'node:worker_threads';

/*
 * A command computes in a thread of its own, so that the one that watches it hears an interrupt and the end of the time
 * in the middle of any formula. This is what the two share.
 */

/** What is asked of the thread that computes. */
export interface Task {
  readonly command: string;
  readonly args: readonly unknown[];
  /** Standard error is a terminal. */
  readonly terminal: boolean;
  readonly shared: SharedArrayBuffer;
}

/** What the computing thread tells. */
export type Told =
  | { readonly is: 'begun' }
  | { readonly is: 'written'; readonly to: 'out' | 'err'; readonly text: string }
  /** Files and folders that are made now and have to go when the work ends early. */
  | { readonly is: 'staged'; readonly paths: readonly string[] };

const Phase = { working: 0, landing: 1, ended: 2 } as const;
/** Characters of what is being computed. */
const ABOUT = 300;
/** Characters that may be on their way to standard output before the computing thread waits. */
const UNREAD = 4_000_000;

/** Memory that both threads see: who was first to end or to land, how much is unread, and what is being computed. */
export class Shared {
  private readonly state: Int32Array;
  private readonly about: Uint16Array;

  constructor(readonly buffer = new SharedArrayBuffer(12 + 2 * ABOUT)) {
    this.state = new Int32Array(buffer, 0, 3);
    this.about = new Uint16Array(buffer, 12);
  }

  /** Ends the work, unless its files are being put in place already. */
  end(): boolean {
    return Atomics.compareExchange(this.state, 0, Phase.working, Phase.ended) === Phase.working;
  }

  /** From here on files appear and nothing ends the work; where it was ended before, this does not return. */
  land(): void {
    if (Atomics.compareExchange(this.state, 0, Phase.working, Phase.landing) === Phase.ended)
      Atomics.wait(this.state, 0, Phase.ended);
  }

  get computing(): string {
    return String.fromCharCode(...this.about.subarray(0, Atomics.load(this.state, 1)));
  }

  set computing(text: string) {
    const length = Math.min(text.length, ABOUT);
    for (let i = 0; i < length; i++) this.about[i] = text.charCodeAt(i);
    Atomics.store(this.state, 1, length);
  }

  sent(characters: number): void {
    Atomics.add(this.state, 2, characters);
    for (;;) {
      const unread = Atomics.load(this.state, 2);
      if (unread <= UNREAD) return;
      Atomics.wait(this.state, 2, unread);
    }
  }

  read(characters: number): void {
    Atomics.sub(this.state, 2, characters);
    Atomics.notify(this.state, 2);
  }
}

/** The task of this thread; undefined in the thread that watches, and wherever else this is loaded. */
export const task = isMainThread ? undefined : (workerData as { leverbook?: Task } | null)?.leverbook;
const shared = task && new Shared(task.shared);
const tell = (told: Told): void => parentPort!.postMessage(told);

export const terminal = task?.terminal ?? process.stderr.isTTY === true;

/** The time that a command may take runs from here. */
export function begin(): void {
  if (task) tell({ is: 'begun' });
}

/** Says what is computed next, for whoever ends it. */
export function computing(what: string): void {
  if (shared) shared.computing = what;
}

/** Paths that go when the work ends before `land`. */
export function staging(paths: readonly string[]): void {
  if (task) tell({ is: 'staged', paths });
}

export function land(): void {
  shared?.land();
}

/** Writes to standard output or standard error as it is. */
export function write(to: 'out' | 'err', text: string): void {
  if (shared) {
    tell({ is: 'written', to, text });
    shared.sent(text.length);
  } else process[to === 'out' ? 'stdout' : 'stderr'].write(text);
}

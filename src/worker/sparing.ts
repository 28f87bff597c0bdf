import { BookFileError, readBook } from '../book/file.ts';
import { moment } from '../store/recover.ts';
import type { Shelf } from '../store/shelf.ts';
import { SpareCopies } from '../store/spare.ts';

/** When second copies are made, in milliseconds: after a pause in the work, and at the latest so long after a change. */
export interface SparePolicy {
  readonly pause: number;
  readonly latest: number;
}
const usual: SparePolicy = { pause: 3_000, latest: 20_000 };

/** The open book as a second copy has it. */
export interface Spared {
  readonly id: string;
  readonly origin?: string;
  readonly text: string;
}

/** Makes second copies of the open book, and brings back what the browser has lost. */
export class Sparing {
  private readonly copies = new SpareCopies();
  private readonly policy: SparePolicy;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private since: number | undefined;
  private writing: Promise<unknown> = Promise.resolve();
  private next: (() => Spared | undefined) | undefined;

  constructor(policy: Partial<SparePolicy> = {}) {
    this.policy = { ...usual, ...policy };
  }

  /** The open book has changed: it is copied once there is a pause. */
  changed(book: () => Spared | undefined): void {
    const now = Date.now();
    this.since ??= now;
    this.next = book;
    clearTimeout(this.timer);
    const wait = Math.min(this.policy.pause, Math.max(0, this.since + this.policy.latest - now));
    this.timer = setTimeout(() => void this.copyNow(), wait);
  }

  /** Copies at once what waits to be copied: before another book is opened. */
  copyNow(): Promise<unknown> {
    clearTimeout(this.timer);
    const spared = this.next?.();
    this.next = undefined;
    this.since = undefined;
    if (spared) this.writing = this.writing.then(() => this.copies.write(spared));
    return this.writing;
  }

  async forget(id: string): Promise<void> {
    this.next = undefined;
    await this.copyNow();
    await this.copies.remove(id);
  }

  /**
   * Puts books back of which there is a copy but no journal any more. Answers what is to be said about each, by its new id.
   * A book whose copy cannot be read is left where it is.
   */
  async restore(shelf: Shelf): Promise<ReadonlyMap<string, string>> {
    const notes = new Map<string, string>();
    const known = new Set((await shelf.list()).map(({ id }) => id));
    for (const lost of await this.copies.ids()) {
      if (known.has(lost)) continue;
      const copy = await this.copies.read(lost);
      if (!copy) continue;
      try {
        const book = readBook(copy.text);
        const made = await shelf.create(book, copy.origin);
        if (!made.ok) continue;
        const { id } = made.store;
        await shelf.closeBook(id);
        await this.copies.write({
          id,
          text: copy.text,
          ...(copy.origin === undefined ? {} : { origin: copy.origin }),
        });
        await this.copies.remove(lost);
        notes.set(
          id,
          `The browser has lost the storage in which it kept “${book.title}”. The book is back as it was at ${moment(copy.time)}; its named versions and what could be undone are gone. Look at your last changes, and save it to a file.`,
        );
      } catch (reason) {
        if (!(reason instanceof BookFileError)) throw reason;
      }
    }
    return notes;
  }
}

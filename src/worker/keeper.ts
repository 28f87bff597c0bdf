/** The worker's book: its session, its journal, and the order in which changes are stored. */
import type { Done, Place } from '../session/api.ts';
import { type Recorded, Session } from '../session/session.ts';
import type { BookStore, Stored } from '../store/book-store.ts';
import { contentOf } from '../store/content.ts';
import { type Fault, failed, fault, type Outcome } from '../store/faults.ts';
import { type Library, type LibraryOptions, openLibrary } from '../store/library.ts';
import { whenFree } from '../store/lock.ts';
import type { Locale } from '../units/locale.ts';
import type { Beginning, Keeping, Opened, Told, Work } from './protocol.ts';

export interface KeeperOptions {
  readonly locale: Locale;
  readonly tell: (told: Told) => void;
  readonly library?: LibraryOptions;
}

/** Steps of a recalculation whose place is told one by one; after them once a slice. A formula that was just typed is among the first. */
const SURE = 200;

/** Does a change of the open book. `act` must change at once. */
export type Change = (act: (session: Session) => Done) => Promise<Done>;

/**
 * The open book and its journal: every change goes into the journal first, then the values follow, then it is answered.
 */
export class Keeper {
  private readonly options: KeeperOptions;
  private beginning: Beginning = { stopped: [], exact: false, version: 1 };
  private opening: Promise<Outcome<{ library: Library }>> | undefined;
  private held: Session | undefined;
  /** Where the open book is kept, once it is; undefined until its first change where that is soon enough. */
  private home: Promise<BookStore | undefined> | undefined;
  private store: BookStore | undefined;
  private id: string | undefined;
  private origin: string | undefined;
  private storing: Promise<Stored> | undefined;
  private keeping: Keeping = { state: 'kept', at: Date.now() };
  private asked = 0;
  private waiting: AbortController | undefined;

  constructor(options: KeeperOptions) {
    this.options = options;
  }

  begin(beginning: Beginning): void {
    this.beginning = beginning;
    this.options.tell({ what: 'keeping', keeping: this.keeping });
  }

  /** The open book. There is always one: an empty one to begin with. */
  get session(): Session {
    this.held ??= this.watched(Session.create(this.plainOptions()));
    return this.held;
  }
  get bookId(): string | undefined {
    return this.id;
  }

  library(): Promise<Outcome<{ library: Library }>> {
    this.opening ??= openLibrary(this.options.library).then((opened) => {
      // A storage that would not open may do so later: a blocked one, when the other tab is closed.
      if (!opened.ok) {
        this.opening = undefined;
        if (this.id === undefined) this.say('not kept', opened.fault.sentence);
      }
      return opened;
    });
    return this.opening;
  }

  /** Opens a book file. A sample, or a blank book, is kept from its first change on; another file at once. */
  async openText(text: string, name: string, sample: boolean): Promise<Opened> {
    const next = Session.openStale(text, this.sessionOptions());
    await this.settle(next);
    await this.leave();
    this.origin = name;
    this.held = this.watched(next);
    if (!sample) await this.homed();
    return this.opened([]);
  }

  async blank(): Promise<Opened> {
    const next = Session.create(this.sessionOptions());
    await this.leave();
    this.origin = undefined;
    this.held = this.watched(next);
    return this.opened([]);
  }

  async openStored(id: string, takeOver: boolean): Promise<Opened> {
    const got = await this.library();
    if (!got.ok) return { ok: false, sentence: got.fault.sentence };
    if (id === this.id) await got.library.closeBook(id);
    const stored = await got.library.openBook(id, { takeOver });
    if (!stored.ok) return { ok: false, sentence: stored.fault.sentence };
    const { book, history } = stored;
    const next = Session.resume(book, { ...this.sessionOptions(), history });
    await this.settle(next);
    if (id !== this.id) await this.leave();
    this.held = this.watched(next);
    this.take(stored.id, stored.store, stored.reading);
    this.copyWhenDue();
    return this.opened(stored.notes);
  }

  /** Counts a change that was asked for, at once, and answers how to do it. */
  begins(): Change {
    const change = ++this.asked;
    return (act) => this.change(change, act);
  }

  /** Does a change: into the journal, then the values. */
  private async change(change: number, act: Parameters<Change>[0]): Promise<Done> {
    await this.homed();
    if (this.keeping.state === 'reading')
      return { ok: false, sentence: this.keeping.sentence ?? fault('reading').sentence };
    const { session } = this;
    const before = this.storing;
    const done = act(session);
    if (!done.ok) return done;
    const stored = this.storing === before ? undefined : await this.storing;
    if (stored?.ok) this.options.tell({ what: 'stored', change });
    this.keptOrNot(stored);
    await this.settle(session);
    this.copyWhenDue();
    return { ...done, outline: session.outline() };
  }

  /** The id under which the open book is kept, for what hangs on it (versions). */
  async homed(): Promise<Outcome<{ id: string }>> {
    this.home ??= this.makeHome();
    await this.home;
    return this.id === undefined ? failed('unavailable') : { ok: true, id: this.id };
  }

  async keepAgain(): Promise<Keeping> {
    if (this.id === undefined) {
      this.home = undefined;
      await this.homed();
    } else this.keptOrNot(await this.store?.retry());
    return this.keeping;
  }

  /** Forgets the open book, for one that was removed. */
  async removed(id: string): Promise<void> {
    if (id !== this.id) return;
    await this.leave();
    await this.blank();
  }

  async close(): Promise<void> {
    await this.leave();
    const got = await this.opening;
    if (got?.ok) await got.library.close();
  }

  /** Tells how far long work is. */
  tellWork({ about, done, total }: Work): void {
    this.options.tell({ what: 'work', work: { about, done, total } });
  }

  /** Does something that computes a formula which is not in the book. */
  trying<T>(place: Place, act: () => T): T {
    this.options.tell({ what: 'computing', computing: { place, exact: true, preview: true } });
    try {
      return act();
    } finally {
      this.options.tell({ what: 'computing', computing: null });
    }
  }

  /** Brings values up to date in slices, telling what is computed. */
  private async settle(session: Session): Promise<void> {
    let told = 0;
    let anew = true;
    try {
      await session.settle({
        onStep: ({ place }) => {
          const exact = this.beginning.exact || told < SURE;
          // From here on others may be computed without a word.
          if (++told === SURE + 1) anew = true;
          if (place && (exact || anew)) this.options.tell({ what: 'computing', computing: { place, exact } });
          anew = false;
        },
        onProgress: ({ about, done, total }) => {
          this.options.tell({ what: 'work', work: { about, done, total } });
          // Others have their turn now: what takes long then is not the formula.
          this.options.tell({ what: 'computing', computing: null });
          anew = true;
        },
      });
    } finally {
      this.options.tell({ what: 'computing', computing: null });
    }
  }

  private async makeHome(): Promise<BookStore | undefined> {
    const got = await this.library();
    const { current, past } = this.session;
    const made = got.ok ? await got.library.create(current, this.origin, past) : got;
    if (made.ok) this.take(made.store.id, made.store, undefined);
    else this.say('not kept', made.fault.sentence);
    return this.store;
  }

  private take(id: string, store: BookStore | undefined, reading: Fault | undefined): void {
    this.id = id;
    this.store = store;
    this.home = Promise.resolve(store);
    if (store)
      store.onFault = ({ why, sentence }) => {
        this.say(why === 'taken over' ? 'reading' : 'not kept', sentence);
        if (why === 'taken over') this.waitUntilFree(id);
      };
    this.say(store ? 'kept' : 'reading', reading?.sentence);
  }

  /** Tells when no other tab writes the book any more, while it is open here. */
  private waitUntilFree(id: string): void {
    this.waiting?.abort();
    const waiting = new AbortController();
    this.waiting = waiting;
    void whenFree(id, waiting.signal).then((free) => free && this.options.tell({ what: 'free', id }));
  }

  private async leave(): Promise<void> {
    const { id } = this;
    this.waiting?.abort();
    this.home = undefined;
    this.store = undefined;
    this.id = undefined;
    const got = id === undefined ? undefined : await this.library();
    if (got?.ok && id !== undefined) await got.library.closeBook(id);
    this.say('kept');
  }

  private watched(session: Session): Session {
    session.onRecord = ({ kind, words, edit }: Recorded) => {
      if (!this.store) return;
      this.storing = this.store.append({ kind, words, edit }, session.current.title);
      if (this.keeping.state === 'kept') this.say('keeping');
    };
    return session;
  }

  private keptOrNot(stored: Stored | undefined): void {
    if (stored && !stored.ok) {
      if (this.keeping.state !== 'reading') this.say('not kept', stored.fault.sentence);
    } else if (stored && this.store?.waiting === 0) this.say('kept');
  }

  private copyWhenDue(): void {
    const { store } = this;
    const { session } = this;
    if (store?.due)
      void store.snapshot(
        () => contentOf(session.current),
        () => session.past,
      );
  }

  private say(state: Keeping['state'], sentence?: string): void {
    this.keeping = {
      state,
      at: Date.now(),
      ...(this.id === undefined ? {} : { id: this.id }),
      ...(sentence === undefined ? {} : { sentence }),
    };
    this.options.tell({ what: 'keeping', keeping: this.keeping });
  }

  private opened(notes: readonly string[]): Opened {
    const outline = this.session.outline();
    return { ok: true, outline, notes, ...(this.id === undefined ? {} : { id: this.id }) };
  }

  private plainOptions() {
    // Counted on from the book before: what the page still has of that one is known to be old.
    const version = Math.max(this.beginning.version, (this.held?.changes ?? 0) + 1);
    return { locale: this.options.locale, careful: true, version };
  }
  /** What was stopped belongs to the book that is opened next, and to no other. */
  private sessionOptions() {
    const { stopped } = this.beginning;
    this.beginning = { ...this.beginning, stopped: [] };
    return { ...this.plainOptions(), stopped };
  }
}

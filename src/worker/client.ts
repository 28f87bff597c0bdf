/** The page's side of the worker. */
import { type Remote, transfer, wrap } from 'comlink';
import type {
  BookService,
  ClientOnly,
  Computing,
  Keeping,
  Opened,
  Restarted,
  Told,
  Work,
  WorkerService,
} from './protocol.ts';
import { type Asked, isChange, isDone, isOpening, type Method, Recall } from './recall.ts';
import { type Patience, Watchdog } from './watchdog.ts';

interface Call extends Asked {
  readonly resolve: (answer: unknown) => void;
  readonly reject: (reason: unknown) => void;
  /** Among the changes that the worker was asked for. */
  change: number;
  /** Workers that were ended while it was under way. */
  tries: number;
  /** It is in the journal, though not answered. */
  kept: boolean;
}

/** A call that ended so many workers is not tried again. */
const TRIES = 3;

/** Why a worker was ended, in words for the user. */
const why = {
  stopped:
    'A formula took too long and was stopped. Checks shows the cell; change the formula to compute it again.',
  tried: 'The formula being tried took too long and was stopped.',
  broken:
    'Leverbook stopped responding and was restarted. The book is as last saved; check that your last change is in it.',
  free: 'The other tab has closed this book. Changes are now made in this tab.',
  givenUp: 'Leverbook could not start. Reload the page; the book is as last saved.',
  fault: (what: string) =>
    `Part of the page could not be shown (${what}). Reload the page; the book is as last saved.`,
} as const;

/**
 * The page's side of the worker: starts it, hands it the page's calls, and watches it. A formula that does not come back
 * ends the worker; the next one takes the book up from its journal, leaves that formula out, and does again what was not
 * answered yet. The page keeps its service and is told.
 */
export class Client {
  /** What the page talks to. */
  readonly service: BookService;
  private readonly make: () => Worker;
  private readonly watchdog: Watchdog;
  private readonly recall = new Recall();
  private worker: Worker | undefined;
  private remote: Remote<WorkerService> | undefined;
  private port: MessagePort | undefined;
  private readonly pending = new Set<Call>();
  /** Calls that wait for a new worker to have the book open. */
  private waiting: Call[] | undefined;
  /** How many changes this worker was asked for, and which of them it has in the journal. */
  private asked = 0;
  private stored = new Set<number>();
  /** Workers that were ended since one last answered. */
  private failures = 0;
  private keeping: Keeping = { state: 'kept', at: Date.now() };
  /** Told while a new worker took up the book. */
  private early: Keeping | undefined;
  private onWork: ((work: Work) => void) | undefined;
  private onKeeping: ((keeping: Keeping) => void) | undefined;
  private onRestart: ((restarted: Restarted) => void) | undefined;
  private onFault: ((sentence: string) => void) | undefined;

  constructor(make: () => Worker, patience: Partial<Patience> = {}) {
    this.make = make;
    this.watchdog = new Watchdog(
      {
        hung: (computing) => this.hung(computing),
        silent: () => this.broken(),
        owes: () => this.pending.size > 0 || this.waiting !== undefined,
      },
      patience,
    );
    const own: Pick<BookService, ClientOnly> = {
      watch: async (callback) => {
        this.onWork = callback;
      },
      follow: async (callback) => {
        this.onKeeping = callback;
        callback(this.keeping);
      },
      onRestart: async (callback) => {
        this.onRestart = callback;
      },
      onFault: async (callback) => {
        this.onFault = callback;
      },
    };
    this.service = new Proxy(own as BookService, {
      get: (target, name) =>
        Reflect.get(target, name) ??
        // What awaits the service itself must not take it for a promise.
        (name === 'then' ? undefined : (...args: unknown[]) => this.call({ method: name as Method, args })),
    });
    this.start();
  }

  /** Ends the worker for good; calls under way are never answered. */
  close(): void {
    this.watchdog.stop();
    this.port?.close();
    this.worker?.terminate();
  }

  private start(): void {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<Told>) => this.hear(data);
    this.watchdog.anew();
    this.port = port1;
    this.worker = this.make();
    this.worker.addEventListener('error', () => this.broken());
    this.remote = wrap<WorkerService>(this.worker);
    this.asked = 0;
    this.stored = new Set();
    void this.remote.begin(transfer(port2, [port2]), this.recall.beginning);
  }

  private call({ method, args }: Asked): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const call = { method, args, resolve, reject, change: 0, tries: 0, kept: false };
      if (this.waiting) this.waiting.push(call);
      else this.send(call);
    });
  }

  private ask({ method, args }: Asked): Promise<unknown> {
    const remote = this.remote as unknown as Record<
      Method,
      (...args: readonly unknown[]) => Promise<unknown>
    >;
    return remote[method](...args);
  }

  private send(call: Call): void {
    if (this.pending.size === 0) this.watchdog.heard();
    this.pending.add(call);
    if (isChange(call)) call.change = ++this.asked;
    const { remote } = this;
    this.ask(call).then(
      (answer) => {
        if (remote !== this.remote || !this.pending.delete(call)) return;
        this.watchdog.heard();
        this.failures = 0;
        this.recall.answered(call, answer, this.keeping);
        call.resolve(answer);
      },
      (reason) => {
        if (remote !== this.remote || !this.pending.delete(call)) return;
        this.watchdog.heard();
        if (!isRefusal(reason))
          this.onFault?.(why.fault(reason instanceof Error ? reason.message : String(reason)));
        call.reject(reason);
      },
    );
  }

  private hear(told: Told): void {
    this.watchdog.heard();
    switch (told.what) {
      case 'work':
        this.onWork?.(told.work);
        break;
      case 'keeping':
        // A worker that has not taken up the book yet speaks of none.
        if (this.waiting) this.early = told.keeping;
        else this.kept(told.keeping);
        break;
      case 'stored':
        this.stored.add(told.change);
        break;
      case 'computing':
        this.watchdog.begins(told.computing);
        break;
      case 'free':
        void this.takeFree(told.id);
    }
  }

  private kept(keeping: Keeping): void {
    this.keeping = keeping;
    if (keeping.state === 'kept') this.recall.kept();
    this.onKeeping?.(keeping);
  }

  /** The tab that wrote the open book is gone: this one has it as it now is, and writes it. */
  private async takeFree(id: string): Promise<void> {
    if (this.keeping.state !== 'reading' || this.keeping.id !== id) return;
    const opened = (await this.call({ method: 'openStored', args: [id] })) as Opened;
    this.onRestart?.({ opened, sentence: why.free });
  }

  /** A formula did not come back. */
  private hung({ place, exact, preview }: Computing): void {
    const culprit = preview ? undefined : this.culprit();
    if (culprit) culprit.tries = TRIES;
    else if (!preview) this.recall.hung(place, exact);
    this.restart(preview ? why.tried : why.stopped);
  }

  /** The worker fell over or says nothing. One that does so again and again, before it answers anything, is given up. */
  private broken(): void {
    if (++this.failures <= TRIES) {
      this.restart(why.broken);
      return;
    }
    this.worker?.terminate();
    for (const call of [...this.pending, ...(this.waiting ?? [])]) call.reject(new Error(why.givenUp));
    this.pending.clear();
    this.waiting = undefined;
  }

  /** Where changes are in no journal, the one that hangs is refused: it is the first that was not answered. */
  private culprit(): Call | undefined {
    return this.keeping.state === 'not kept' ? [...this.pending].find(isChange) : undefined;
  }

  /** Ends the worker and has the next one take up the book. */
  private restart(sentence: string): void {
    this.worker?.terminate();
    this.port?.close();
    const calls = [...this.pending, ...(this.waiting ?? [])];
    for (const call of this.pending) {
      call.tries++;
      call.kept ||= this.stored.has(call.change);
    }
    this.pending.clear();
    this.waiting = calls;
    this.early = undefined;
    this.start();
    this.resume(sentence).catch(() => this.broken());
  }

  private async resume(sentence: string): Promise<void> {
    const calls = this.waiting!;
    const opening = calls.find(isOpening);
    const opened = await this.reopen(opening);
    this.waiting = undefined;
    if (this.early) this.kept(this.early);
    this.recall.seen(opened);
    if (opening) opening.resolve(opened.ok ? { ...opened, notes: [...opened.notes, sentence] } : opened);
    else this.onRestart?.({ opened, sentence });
    for (const call of calls) {
      if (call === opening) continue;
      if (call.kept && opened.ok) call.resolve({ ok: true, outline: opened.outline, note: sentence });
      else if (call.tries > 0 && call.method === 'preview') call.resolve({ display: sentence, error: true });
      else if (call.tries < TRIES) {
        for (const asked of call.tries > 0 ? this.recall.before(call) : []) void this.call(asked);
        this.send(call);
      } else if (isChange(call)) call.resolve({ ok: false, sentence });
      else call.reject(new Error(sentence));
    }
  }

  /**
   * Has the new worker open what was open, or what was being opened. When that worker must be ended too, this is never
   * answered, and the next one does it.
   */
  private async reopen(opening: Call | undefined): Promise<Opened> {
    if (opening) this.recall.opens(opening);
    const [first, ...others] = opening ? [opening] : this.recall.calls(this.keeping);
    let opened = (await this.ask(first)) as Opened;
    for (const other of others) {
      const done = await this.ask(other);
      if (isChange(other)) this.asked++;
      if (isDone(done) && opened.ok) opened = { ...opened, outline: done.outline };
    }
    return opened;
  }
}

/** A question about what is not in the book any more is refused; who asked asks anew about what there is. */
const isRefusal = (reason: unknown): boolean => reason instanceof Error && reason.name === 'Refusal';

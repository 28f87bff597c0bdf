import { type Remote, transfer, wrap } from 'comlink';
import type { Place } from '../session/api.ts';
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
import { type Patience, Watchdog } from './watchdog.ts';

type Method = Exclude<keyof BookService, ClientOnly>;

/** Calls that change the open book; done in order, and each counted by the worker. */
const changes: ReadonlySet<Method> = new Set<Method>(['run', 'runAll', 'undo', 'redo', 'goBack', 'bringIn']);
/** Calls that put another book in place of the open one. */
const openings: ReadonlySet<Method> = new Set<Method>(['open', 'blank', 'openStored']);

interface Call {
  readonly method: Method;
  readonly args: readonly unknown[];
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
  /** Workers that were ended since one last answered. */
  private failures = 0;
  private worker: Worker | undefined;
  private remote: Remote<WorkerService> | undefined;
  private ports: MessagePort | undefined;
  private readonly pending = new Set<Call>();
  /** Calls that wait for a new worker to have the book open. */
  private waiting: Call[] | undefined;
  private asked = 0;
  private stored = 0;
  private version = 1;
  private keeping: Keeping = { state: 'kept', at: Date.now() };
  /** The file that was read last: a new worker must read it again before it can bring it in. */
  private reading: Pick<Call, 'method' | 'args'> | undefined;
  /** Told while a new worker took up the book. */
  private early: Keeping | undefined;
  /** How to have the open book again: the call that opened it. */
  private base: Pick<Call, 'method' | 'args'> | undefined;
  /** Changes that were answered and are in no journal. */
  private unkept: Pick<Call, 'method' | 'args'>[] = [];
  private stopped: Place[] = [];
  private exact = false;
  private onWork: ((work: Work) => void) | undefined;
  private onKeeping: ((keeping: Keeping) => void) | undefined;
  private onRestart: ((restarted: Restarted) => void) | undefined;

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
    };
    this.service = new Proxy(own as BookService, {
      get: (target, name) =>
        Reflect.get(target, name) ??
        // What awaits the service itself must not take it for a promise.
        (name === 'then' ? undefined : (...args: unknown[]) => this.call(name as Method, args)),
    });
    this.start();
  }

  /** Ends the worker for good; calls under way are never answered. */
  close(): void {
    this.watchdog.stop();
    this.ports?.close();
    this.worker?.terminate();
  }

  private start(): void {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<Told>) => this.hear(data);
    this.watchdog.anew();
    this.ports = port1;
    this.worker = this.make();
    this.worker.addEventListener('error', () => this.broken());
    this.remote = wrap<WorkerService>(this.worker);
    this.asked = 0;
    this.stored = 0;
    const { stopped, exact, version } = this;
    void this.remote.begin(transfer(port2, [port2]), { stopped, exact, version });
  }

  private call(method: Method, args: readonly unknown[]): Promise<unknown> {
    if (method === 'readFile') this.reading = { method, args };
    return new Promise((resolve, reject) => {
      const call = { method, args, resolve, reject, change: 0, tries: 0, kept: false };
      if (this.waiting) this.waiting.push(call);
      else this.send(call);
    });
  }

  private send(call: Call): void {
    if (this.pending.size === 0) this.watchdog.heard();
    this.pending.add(call);
    if (changes.has(call.method)) call.change = ++this.asked;
    const remote = this.remote!;
    const method = remote[call.method] as (...args: readonly unknown[]) => Promise<unknown>;
    method(...call.args).then(
      (answer) => this.answered(call, remote, answer),
      (reason) => this.pending.delete(call) && call.reject(reason),
    );
  }

  private answered(call: Call, remote: unknown, answer: unknown): void {
    if (remote !== this.remote || !this.pending.delete(call)) return;
    this.watchdog.heard();
    this.failures = 0;
    this.note(call, answer);
    call.resolve(answer);
  }

  /** Keeps what a new worker would need. */
  private note({ method, args }: Call, answer: unknown): void {
    if (!isDone(answer)) return;
    this.version = Math.max(this.version, answer.outline.version);
    if (openings.has(method)) {
      this.base = { method, args };
      this.unkept = [];
      this.stopped = [];
    } else if (changes.has(method) && (this.keeping.state === 'not kept' || this.keeping.id === undefined))
      this.unkept.push(...(method === 'bringIn' && this.reading ? [this.reading] : []), { method, args });
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
        this.stored = told.change;
        break;
      case 'computing':
        this.watchdog.begins(told.computing);
        break;
      case 'free':
        void this.takeFree(told.id);
    }
  }

  /** The tab that wrote the open book is gone: this one has it as it now is, and writes it. */
  private async takeFree(id: string): Promise<void> {
    if (this.keeping.state !== 'reading' || this.keeping.id !== id) return;
    const opened = (await this.call('openStored', [id])) as Opened;
    this.onRestart?.({ opened, sentence: FREE });
  }

  private kept(keeping: Keeping): void {
    this.keeping = keeping;
    if (keeping.state === 'kept') this.unkept = [];
    this.onKeeping?.(keeping);
  }

  /** A formula did not come back. */
  private hung({ place, exact, preview }: Computing): void {
    // Where it is not known which formula it was, the next worker tells each one.
    this.exact ||= !exact;
    const culprit = preview ? undefined : this.culprit();
    if (culprit) culprit.tries = TRIES;
    else if (exact && !preview) this.stopped = [...this.stopped, place];
    this.restart(preview ? TRIED_OUT : STOPPED);
  }

  /** The worker fell over or says nothing. One that does so again and again, before it answers anything, is given up. */
  private broken(): void {
    if (++this.failures <= TRIES) {
      this.restart(BROKEN);
      return;
    }
    this.worker?.terminate();
    for (const call of [...this.pending, ...(this.waiting ?? [])]) call.reject(new Error(GIVEN_UP));
    this.pending.clear();
    this.waiting = undefined;
  }

  /** Ends the worker and has the next one take up the book. */
  private restart(sentence: string): void {
    this.worker?.terminate();
    this.ports?.close();
    const calls = [...this.pending, ...(this.waiting ?? [])];
    for (const call of this.pending) {
      call.tries++;
      call.kept ||= changes.has(call.method) && call.change <= this.stored;
    }
    this.pending.clear();
    this.waiting = calls;
    this.early = undefined;
    this.start();
    this.resume(sentence).catch(() => this.broken());
  }

  /** Where changes are in no journal, the one that hangs is refused: it is the first that was not answered. */
  private culprit(): Call | undefined {
    if (this.keeping.state !== 'not kept') return undefined;
    return [...this.pending].find(({ method }) => changes.has(method));
  }

  private async resume(sentence: string): Promise<void> {
    const calls = this.waiting!;
    const opening = calls.find(({ method }) => openings.has(method));
    const opened = await this.reopen(opening);
    this.waiting = undefined;
    if (this.early) this.kept(this.early);
    if (opened.ok) this.version = Math.max(this.version, opened.outline.version);
    if (opening) opening.resolve(opened.ok ? { ...opened, notes: [...opened.notes, sentence] } : opened);
    else this.onRestart?.({ opened, sentence });
    for (const call of calls) {
      if (call === opening) continue;
      if (call.kept && opened.ok) call.resolve({ ok: true, outline: opened.outline, note: sentence });
      else if (call.tries > 0 && call.method === 'preview') call.resolve({ display: sentence, error: true });
      else if (call.tries < TRIES) this.sendAgain(call);
      else if (changes.has(call.method)) call.resolve({ ok: false, sentence });
      else call.reject(new Error(sentence));
    }
  }

  private sendAgain(call: Call): void {
    if (call.method === 'bringIn' && this.reading) void this.call(this.reading.method, this.reading.args);
    this.send(call);
  }

  /**
   * Has the new worker open what was open, or what was being opened. When that worker must be ended too, this is never
   * answered, and the next one does it.
   */
  private async reopen(opening: Call | undefined): Promise<Opened> {
    const { keeping, unkept } = this;
    const ask = this.remote as unknown as Record<Method, (...args: readonly unknown[]) => Promise<unknown>>;
    if (opening) {
      const { method, args } = opening;
      this.base = { method, args };
      this.unkept = [];
      return (await ask[method](...args)) as Opened;
    }
    const { method, args } =
      keeping.id === undefined
        ? (this.base ?? { method: 'blank', args: [] })
        : { method: 'openStored' as const, args: [keeping.id, { takeOver: keeping.state !== 'reading' }] };
    let opened = (await ask[method](...args)) as Opened;
    for (const { method, args } of unkept) {
      const done = await ask[method](...args);
      if (changes.has(method)) this.asked++;
      if (isDone(done) && opened.ok) opened = { ...opened, outline: done.outline };
    }
    if (this.keeping.state === 'not kept') this.unkept = unkept;
    return opened;
  }
}

const STOPPED =
  'A formula took too long and was stopped. It is marked under Doubts, and everything else goes on; change it to have it computed again.';
const BROKEN =
  'The part of the program that holds the book stopped answering and was started again. The book is as it was last stored; look whether your last change is in it.';
const FREE =
  'The other tab has let go of this book. It is shown as it was left there, and is changed here from now on.';
const GIVEN_UP =
  'The part of the program that holds the book does not start. Reload the page; the book is as it was last stored.';
const TRIED_OUT = 'The formula that was tried out took too long and was stopped.';

const isDone = (answer: unknown): answer is Extract<Opened, { ok: true }> =>
  typeof answer === 'object' &&
  answer !== null &&
  'ok' in answer &&
  answer.ok === true &&
  'outline' in answer;

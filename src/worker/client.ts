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

/** Milliseconds after which a formula counts as hanging. */
const LIMIT = 2_000;
/** A timer that comes this late was held up itself (a sleeping machine): it proves nothing. */
const LATE = 1_000;

type Method = Exclude<keyof BookService, ClientOnly>;

/** Calls that change the open book; done in order, and each counted by the worker. */
const changes: ReadonlySet<Method> = new Set<Method>(['run', 'runAll', 'undo', 'redo', 'goBack']);
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
  /** How to have the open book again: the call that opened it. */
  private base: Pick<Call, 'method' | 'args'> | undefined;
  /** Changes that were answered and are in no journal. */
  private unkept: Pick<Call, 'method' | 'args'>[] = [];
  private stopped: Place[] = [];
  private exact = false;
  private computing: Computing | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private onWork: ((work: Work) => void) | undefined;
  private onKeeping: ((keeping: Keeping) => void) | undefined;
  private onRestart: ((restarted: Restarted) => void) | undefined;

  constructor(make: () => Worker) {
    this.make = make;
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
    clearTimeout(this.timer);
    this.ports?.close();
    this.worker?.terminate();
  }

  private start(): void {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<Told>) => this.hear(data);
    this.ports = port1;
    this.worker = this.make();
    this.remote = wrap<WorkerService>(this.worker);
    this.asked = 0;
    this.stored = 0;
    const { stopped, exact, version } = this;
    void this.remote.begin(transfer(port2, [port2]), { stopped, exact, version });
  }

  private call(method: Method, args: readonly unknown[]): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const call = { method, args, resolve, reject, change: 0, tries: 0, kept: false };
      if (this.waiting) this.waiting.push(call);
      else this.send(call);
    });
  }

  private send(call: Call): void {
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
      this.unkept.push({ method, args });
  }

  private hear(told: Told): void {
    switch (told.what) {
      case 'work':
        this.onWork?.(told.work);
        break;
      case 'keeping':
        this.keeping = told.keeping;
        if (told.keeping.state === 'kept') this.unkept = [];
        this.onKeeping?.(told.keeping);
        break;
      case 'stored':
        this.stored = told.change;
        break;
      case 'computing':
        this.computing = told.computing;
        this.watch();
    }
  }

  private watch(): void {
    clearTimeout(this.timer);
    if (!this.computing) return;
    const due = performance.now() + LIMIT;
    this.timer = setTimeout(() => {
      if (performance.now() > due + LATE) return this.watch();
      // What the worker told while this page was busy is heard first.
      const { computing } = this;
      this.timer = setTimeout(() => computing === this.computing && this.hung(computing!), 0);
    }, LIMIT);
  }

  /** Ends the worker and has the next one take up the book. */
  private hung(computing: Computing): void {
    const { place, exact, preview } = computing;
    this.worker?.terminate();
    this.ports?.close();
    this.computing = null;
    // Where it is not known which formula it was, the next worker tells each one.
    this.exact ||= !exact;
    const calls = [...this.pending, ...(this.waiting ?? [])];
    for (const call of this.pending) {
      call.tries++;
      call.kept ||= changes.has(call.method) && call.change <= this.stored;
    }
    this.pending.clear();
    this.waiting = calls;
    const culprit = preview ? undefined : this.culprit(calls);
    if (culprit) culprit.tries = TRIES;
    else if (exact && !preview) this.stopped = [...this.stopped, place];
    this.start();
    void this.resume(preview ? TRIED_OUT : STOPPED);
  }

  /** Where changes are in no journal, the one that hangs is refused: it is the first that was not answered. */
  private culprit(calls: readonly Call[]): Call | undefined {
    if (this.keeping.state !== 'not kept') return undefined;
    return calls.find(({ method, kept }) => changes.has(method) && !kept);
  }

  private async resume(sentence: string): Promise<void> {
    const calls = this.waiting!;
    const opening = calls.find(({ method }) => openings.has(method));
    const opened = await this.reopen(opening);
    this.waiting = undefined;
    if (opened.ok) this.version = Math.max(this.version, opened.outline.version);
    if (opening) opening.resolve(opened.ok ? { ...opened, notes: [...opened.notes, sentence] } : opened);
    else this.onRestart?.({ opened, sentence });
    for (const call of calls) {
      if (call === opening) continue;
      if (call.kept && opened.ok) call.resolve({ ok: true, outline: opened.outline, note: sentence });
      else if (call.tries > 0 && call.method === 'preview') call.resolve({ display: sentence, error: true });
      else if (call.tries < TRIES) this.send(call);
      else if (changes.has(call.method)) call.resolve({ ok: false, sentence });
      else call.reject(new Error(sentence));
    }
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
      this.asked++;
      if (isDone(done) && opened.ok) opened = { ...opened, outline: done.outline };
    }
    if (this.keeping.state === 'not kept') this.unkept = unkept;
    return opened;
  }
}

const STOPPED =
  'A formula took too long and was stopped. It is marked under Doubts, and everything else goes on; change it to have it computed again.';
const TRIED_OUT = 'The formula that was tried out took too long and was stopped.';

const isDone = (answer: unknown): answer is Extract<Opened, { ok: true }> =>
  typeof answer === 'object' &&
  answer !== null &&
  'ok' in answer &&
  answer.ok === true &&
  'outline' in answer;

/** What a new worker must be told to be where the last one was. */
import type { Place } from '../session/api.ts';
import type { Beginning, BookService, ClientOnly, Keeping, Opened } from './protocol.ts';

export type Method = Exclude<keyof BookService, ClientOnly>;

/** Something that the worker was asked. */
export interface Asked {
  readonly method: Method;
  readonly args: readonly unknown[];
}

/** Calls that change the open book; each is counted on both sides. */
export const changing = ['run', 'runAll', 'undo', 'redo', 'goBack', 'importFile', 'mendRows'] as const;
export type Changing = (typeof changing)[number];
const changes: ReadonlySet<Method> = new Set<Method>(changing);
/** Calls that put another book in place of the open one. */
const openings: ReadonlySet<Method> = new Set<Method>(['open', 'blank', 'openStored']);

export const isChange = ({ method }: Asked): boolean => changes.has(method);
export const isOpening = ({ method }: Asked): boolean => openings.has(method);

/** What a new worker must be told so that it stands where the one before it stood. */
export class Recall {
  private version = 1;
  private exact = false;
  private stopped: Place[] = [];
  /** The call that opened the book. */
  private opening: Asked = { method: 'blank', args: [] };
  /** Changes that were answered and are in no journal. */
  private unkept: Asked[] = [];
  /** The file that was read last: a new worker must read it before it can bring it in. */
  private file: Asked | undefined;

  get beginning(): Beginning {
    const { stopped, exact, version } = this;
    return { stopped, exact, version };
  }

  /** A formula did not come back. Where it is not known which, the next worker tells each one. */
  hung(place: Place, exact: boolean): void {
    if (exact) this.stopped = [...this.stopped, place];
    else this.exact = true;
  }

  /** A call was answered. */
  answered(asked: Asked, answer: unknown, keeping: Keeping): void {
    if (asked.method === 'readFile') this.file = asked;
    this.seen(answer);
    if (!isDone(answer)) return;
    if (isOpening(asked)) {
      this.opens(asked);
      this.stopped = [];
    } else if (isChange(asked) && (keeping.state === 'not kept' || keeping.id === undefined))
      this.unkept.push(...this.before(asked), asked);
  }

  /** What was shown before is known to be old by its version. */
  seen(answer: unknown): void {
    if (isDone(answer)) this.version = Math.max(this.version, answer.outline.version);
  }

  /** A book is being opened in place of the one before. */
  opens(asked: Asked): void {
    this.opening = asked;
    this.unkept = [];
  }

  /** Everything that was answered is in the journal. */
  kept(): void {
    this.unkept = [];
  }

  /** What must be asked again before this can be. */
  before({ method }: Asked): readonly Asked[] {
    return method === 'importFile' && this.file ? [this.file] : [];
  }

  /** How to have the open book again: first what opens it, then what no journal holds. */
  calls({ id, state }: Keeping): readonly [Asked, ...Asked[]] {
    if (id === undefined) return [this.opening, ...this.unkept];
    return [{ method: 'openStored', args: [id, { takeOver: state !== 'reading' }] }, ...this.unkept];
  }
}

export const isDone = (answer: unknown): answer is Extract<Opened, { ok: true }> =>
  typeof answer === 'object' &&
  answer !== null &&
  'ok' in answer &&
  answer.ok === true &&
  'outline' in answer;

import type { Progress } from '../intake/index.ts';
import { turn } from '../session/drive.ts';
import type { FileDecisions, Stuck } from '../session/imports/file-reading.ts';
import { cameFrom, importsOf } from '../session/imports/imports.ts';
import type { MendedRow } from '../session/imports/mend.ts';
import type { Prepared } from '../session/imports/prepare-import.ts';
import type { Session } from '../session/session.ts';
import type { Change, Keeper } from './keeper.ts';
import type { ReadAnswer, Work } from './protocol.ts';

/** Milliseconds of reading before others get a turn. */
const SLICE = 25;

/** What ended without an answer because another reading began, or because the person thought better of it. */
const ENDED = 'Reading was stopped; nothing was changed.';

/**
 * Imports: a file is read and shown first, and written only when that is taken. What reads files is loaded with
 * the first of them.
 */
export class Importing {
  private readonly keeper: Keeper;
  private readonly tell: (work: Work) => void;
  private prepared:
    | { readonly edit: Prepared; readonly session: Session; readonly changed: number }
    | undefined;
  /** Counts readings; one that is not the latest ends. */
  private latest = 0;

  constructor(keeper: Keeper, tell: (work: Work) => void) {
    this.keeper = keeper;
    this.tell = tell;
  }

  /** Reads a file without writing anything. Another reading, or `stop`, ends it. */
  async read(file: Blob, name: string, decisions: FileDecisions): Promise<ReadAnswer> {
    const turnOf = ++this.latest;
    this.prepared = undefined;
    try {
      const { readingFile } = await import('../session/imports/read-file.ts');
      const bytes = new Uint8Array(await file.arrayBuffer());
      const { session } = this.keeper;
      const { changed } = session.outline();
      const read = await this.drive(turnOf, await readingFile(session, bytes, name, decisions));
      if (!read) return { ok: false, sentence: ENDED };
      this.prepared = { edit: read.prepared, session, changed };
      return { ok: true, reading: read.reading };
    } catch (reason) {
      const sentence = reason instanceof Error ? reason.message : String(reason);
      const stuck = (reason as { readonly stuck?: Stuck }).stuck;
      return stuck ? { ok: false, sentence, stuck } : { ok: false, sentence };
    }
  }

  stop(): void {
    this.latest++;
    this.prepared = undefined;
  }

  /** Writes what was read last, as one step that undo takes back. */
  async write(change: Change) {
    const { prepared } = this;
    this.prepared = undefined;
    if (!prepared) return { ok: false as const, sentence: 'No file has been read. Select one first.' };
    const { session, changed, edit } = prepared;
    if (session !== this.keeper.session || session.outline().changed !== changed)
      return {
        ok: false as const,
        sentence: 'The book changed since the file was read. Read it again, then import it.',
      };
    return change((now) => now.writePlanned(edit));
  }

  /** The files that came into a sheet. */
  imports(sheet: string) {
    return importsOf(this.keeper.session.current, sheet);
  }

  cameFrom(sheet: string) {
    return cameFrom(this.keeper.session.current, sheet);
  }

  /** Reads mended rows of an import again and places those that fit now. */
  async mend(change: Change, key: string, rows: readonly MendedRow[]) {
    try {
      const { mending } = await import('../session/imports/mend.ts');
      const { session } = this.keeper;
      const prepared = await this.drive(++this.latest, mending(session, key, rows, new Date().toISOString()));
      if (!prepared || session !== this.keeper.session) return { ok: false as const, sentence: ENDED };
      return await change((now) => now.writePlanned(prepared));
    } catch (reason) {
      return { ok: false as const, sentence: reason instanceof Error ? reason.message : String(reason) };
    }
  }

  /** Runs a task in slices, telling how far it is; undefined when it was ended. */
  private async drive<T>(turnOf: number, task: Generator<Progress, T>): Promise<T | undefined> {
    let until = performance.now() + SLICE;
    for (;;) {
      const step = task.next();
      if (step.done) return turnOf === this.latest ? step.value : undefined;
      if (performance.now() < until) continue;
      this.tell(step.value);
      await turn();
      if (turnOf !== this.latest) {
        task.return(undefined as T);
        return undefined;
      }
      until = performance.now() + SLICE;
    }
  }
}

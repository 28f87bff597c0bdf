import { turn } from '../session/drive.ts';
import type { WorkbookContent } from '../session/xlsx/shape.ts';
import type { Keeper } from './keeper.ts';
import type { Answer, Work } from './protocol.ts';
import type { Written } from './xlsx-worker.ts';

/** Milliseconds of collecting before others get a turn. */
const SLICE = 25;
/** Milliseconds between signs of life while the file is written elsewhere. */
const SIGN = 1_000;

const STOPPED = 'The XLSX export was stopped; no file was written.';

/** Writes the open book as a workbook file: collected here in slices, written in a worker of its own. */
export class Exporting {
  private readonly keeper: Keeper;
  private readonly tell: (work: Work) => void;
  private stopping = new AbortController();

  constructor(keeper: Keeper, tell: (work: Work) => void) {
    this.keeper = keeper;
    this.tell = tell;
  }

  stop(): void {
    this.stopping.abort();
  }

  /** The bytes of the file. Another call, or `stop`, ends the one before. */
  async xlsx(): Promise<Answer<{ bytes: Uint8Array }>> {
    this.stop();
    this.stopping = new AbortController();
    const { signal } = this.stopping;
    try {
      const now = new Date();
      const content = await this.collected(now, signal);
      return content ? await this.written(content, now, signal) : { ok: false, sentence: STOPPED };
    } catch (reason) {
      return { ok: false, sentence: reason instanceof Error ? reason.message : String(reason) };
    }
  }

  /** What goes into the file, all of one moment: begun anew when the book changes meanwhile. */
  private async collected(now: Date, signal: AbortSignal): Promise<WorkbookContent | undefined> {
    const { workbookContent } = await import('../session/xlsx/content.ts');
    const { keeper } = this;
    for (;;) {
      const { session } = keeper;
      while (session.stale && !signal.aborted) await turn();
      const { changes } = session;
      const work = session.ask((context) => workbookContent(context, now));
      let until = performance.now() + SLICE;
      while (!signal.aborted && session === keeper.session && session.changes === changes) {
        const step = work.next();
        if (step.done) return step.value;
        if (performance.now() < until) continue;
        this.tell(step.value);
        await turn();
        until = performance.now() + SLICE;
      }
      if (signal.aborted) return undefined;
    }
  }

  private written(
    content: WorkbookContent,
    now: Date,
    signal: AbortSignal,
  ): Promise<Answer<{ bytes: Uint8Array }>> {
    const worker = new Worker(new URL('./xlsx-worker.ts', import.meta.url), { type: 'module', name: 'xlsx' });
    // How far it is nobody can tell from here; it is under way.
    const sign = () => this.tell({ about: 'Writing the XLSX file', done: 0, total: 0 });
    const signs = setInterval(sign, SIGN);
    sign();
    return new Promise<Answer<{ bytes: Uint8Array }>>((resolve) => {
      worker.addEventListener('message', ({ data }: MessageEvent<Written>) => resolve(data));
      worker.addEventListener('error', ({ message }) =>
        resolve({
          ok: false,
          sentence: `The XLSX file could not be written (${message || 'no reason given'}). Save the sheets as CSV instead.`,
        }),
      );
      signal.addEventListener('abort', () => resolve({ ok: false, sentence: STOPPED }), { once: true });
      const arrays = content.sheets.flatMap(({ columns }) =>
        columns.flatMap(({ kinds, values }) => [kinds.buffer, values.buffer]),
      );
      worker.postMessage({ content, now }, arrays);
    }).finally(() => {
      clearInterval(signs);
      worker.terminate();
    });
  }
}

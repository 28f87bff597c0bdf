import { prepare, type Report, sentence } from '../intake/index.ts';
import type { Prepared } from '../session/bring-in.ts';
import type { Keeper } from './keeper.ts';
import type { Answer, FileReport } from './protocol.ts';

/** Bringing a file in: it is read and reported on first, and written only when that is taken. */
export class Bringing {
  private readonly keeper: Keeper;
  private prepared: Prepared | undefined;

  constructor(keeper: Keeper) {
    this.keeper = keeper;
  }

  /** Reads a file for a sheet (a new one for null) without writing anything. */
  async read(bytes: Uint8Array, name: string, sheet: string | null): Promise<Answer<{ report: FileReport }>> {
    this.prepared = undefined;
    try {
      const opened = await prepare(bytes, { name });
      const work = this.keeper.session.preparing({
        bytes: opened.bytes,
        name,
        sheet,
        now: new Date().toISOString(),
        ...opened.options,
      });
      let step = work.next();
      while (!step.done) step = work.next();
      this.prepared = step.value;
      return { ok: true, report: reportOf(step.value.taken.report) };
    } catch (reason) {
      return { ok: false, sentence: reason instanceof Error ? reason.message : String(reason) };
    }
  }

  /** Writes what was read last, as one step that undo takes back. */
  async write() {
    const { prepared } = this;
    this.prepared = undefined;
    if (!prepared)
      return { ok: false as const, sentence: 'There is no file that was read. Choose one first.' };
    return this.keeper.change((session) => session.bringIn(prepared));
  }
}

/** The report as the page shows it: every note a sentence. */
function reportOf({ name, rows, cells, columns, notes }: Report): FileReport {
  return {
    name,
    rows,
    held: cells.held,
    notes: notes.map(sentence),
    columns: columns.map(({ heading, column, isNew, kind, unit, filled, held, notes: own }) => ({
      heading,
      column,
      isNew,
      kind,
      unit,
      filled,
      held,
      notes: own.map(sentence),
    })),
  };
}

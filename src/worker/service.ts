/** The worker's answers to what the page asks. */
import { transfer } from 'comlink';
import { describe } from '../../functions/core/describe.ts';
import { registry } from '../../functions/registry.ts';
import { toEnd } from '../session/drive.ts';
import { turnInto } from '../store/content.ts';
import type { Fault } from '../store/faults.ts';
import { Exporting } from './exporting.ts';
import { Importing } from './importing.ts';
import type { Change, Keeper } from './keeper.ts';
import { Pasting } from './pasting.ts';
import type { Opened, WorkerService } from './protocol.ts';
import { type Changing, changing } from './recall.ts';

const no = ({ sentence }: Fault) => ({ ok: false as const, sentence });

/** Everything that the page may ask, answered by the open book and its journal. */
export function serviceOf(keeper: Keeper): Omit<WorkerService, 'begin'> {
  const importing = new Importing(keeper, (work) => keeper.tellWork(work));
  const pasting = new Pasting(keeper, (work) => keeper.tellWork(work));
  const exporting = new Exporting(keeper, (work) => keeper.tellWork(work));
  /** A file that cannot be read, and whatever nobody foresaw, ends in a sentence. */
  const opening = async (work: () => Promise<Opened>): Promise<Opened> => {
    try {
      return await work();
    } catch (reason) {
      return { ok: false, sentence: reason instanceof Error ? reason.message : String(reason) };
    }
  };
  const version = async (number: number) => {
    const got = await keeper.library();
    if (!got.ok) return got;
    const home = await keeper.homed();
    return home.ok ? got.library.versions.read(home.id, number) : home;
  };

  const changed = (change: Change): Pick<WorkerService, Changing> => ({
    run: (command) => change((session) => pasting.paste(session, command) ?? session.apply(command)),
    runAll: (words, commands) => change((session) => session.applyAll(words, commands)),
    undo: () => change((session) => session.applyUndo()),
    redo: () => change((session) => session.applyRedo()),
    async goBack(number) {
      const read = await version(number);
      if (!read.ok) return no(read.fault);
      return change((session) =>
        session.writePlanned({ edit: turnInto(session.current, read.book), words: 'Restore a version' }),
      );
    },
    importFile: () => importing.write(change),
    mendRows: (...of) => importing.mend(change, ...of),
  });
  // Each is counted as it arrives, whatever comes of it, as the page counts it when it asks.
  const changes = Object.fromEntries(
    changing.map((method) => [
      method,
      (...of: never[]) => (changed(keeper.begins())[method] as (...of: never[]) => Promise<unknown>)(...of),
    ]),
  ) as Pick<WorkerService, Changing>;

  return {
    open: (text, name, options) => opening(() => keeper.openText(text, name, options?.sample ?? false)),
    blank: () => opening(() => keeper.blank()),
    openStored: (id, options) => opening(() => keeper.openStored(id, options?.takeOver ?? false)),

    ...changes,

    tile: async (...at) => keeper.session.tile(...at),
    tileOfRows: async (...at) => keeper.session.tileOfRows(...at),
    rowsInView: async (sheet, view) => keeper.session.rowsInView(sheet, view),
    summaries: async (sheet, groups) =>
      groups.map((rows) => keeper.session.summaries(sheet, rows ?? undefined)),
    triedSummary: async (sheet, column, tried) =>
      keeper.trying({ sheet, column }, () => keeper.session.triedSummary(sheet, column, tried)),
    find: async (search) => toEnd(keeper.session.finding(search)),
    cell: async (place) => keeper.session.cellInfo(place),
    async example(name, place) {
      const { exampleOf } = await import('../calc/builtins/api.ts');
      const example = exampleOf(name);
      return keeper.trying(place, () =>
        example === undefined
          ? keeper.session.example(name, place)
          : keeper.session.builtInExample(example, place),
      );
    },
    working: async (place) => keeper.trying(place, () => keeper.session.working(place)),
    figure: async (...at) => keeper.session.figure(...at),
    picture: async (...at) => keeper.session.picture(...at),
    descent: async (...at) => keeper.session.descent(...at),
    heelOrAnkle: async (...at) => keeper.session.heelOrAnkle(...at),
    async chart(key, person) {
      const { chartOf } = await import('../session/charts/chart.ts');
      return keeper.session.ask((context) => chartOf(context, key, person));
    },
    async handouts(request) {
      const { handoutsOf } = await import('../session/handouts/handouts.ts');
      return keeper.session.ask((context) => handoutsOf(context, request));
    },
    async triedRule(sheet, rule) {
      const { triedRule } = await import('../session/handouts/tried-rule.ts');
      const column = keeper.session.current.sheets.find(({ id }) => id === sheet)?.columns[0]?.id ?? '';
      return keeper.trying({ sheet, column }, () =>
        keeper.session.ask((context) => triedRule(context, sheet, rule)),
      );
    },
    async report(request) {
      const { reportOf } = await import('../session/report/report.ts');
      return keeper.session.ask((context) => reportOf(context, request));
    },
    marks: async (...at) => keeper.session.marks(...at),
    triedMarks: async (sheet, column, draft) =>
      keeper.trying({ sheet, column }, () => keeper.session.triedMarks(sheet, column, draft)),
    doubts: async () => keeper.session.doubts(),
    losses: async (commands) => keeper.session.losses(commands),
    unreadable: async (sheet) => keeper.session.unreadable(sheet),
    check: async (formula, place) => keeper.session.check(formula, place),
    preview: async (formula, place) => keeper.trying(place, () => keeper.session.preview(formula, place)),
    functions: async () => [...registry.values()].map(describe),
    async builtInFunctions() {
      const { builtInHelp } = await import('../calc/builtins/api.ts');
      return builtInHelp();
    },
    readFile: (...of) => importing.read(...of),
    stopReading: async () => importing.stop(),
    imports: async (sheet) => importing.imports(sheet),
    cameFrom: async (sheet) => importing.cameFrom(sheet),
    readPaste: (paste) => pasting.read(paste),
    stopPaste: async () => pasting.stop(),
    save: async () => ({ text: keeper.session.save(), changed: keeper.session.outline().changed }),
    csv: async (sheet) => keeper.session.toCsv(sheet),
    async xlsx() {
      const written = await exporting.xlsx();
      return written.ok ? transfer(written, [written.bytes.buffer]) : written;
    },
    stopXlsx: async () => exporting.stop(),

    async books() {
      const got = await keeper.library();
      return got.ok ? got.library.list() : [];
    },
    async removeBook(id) {
      const got = await keeper.library();
      if (!got.ok) return no(got.fault);
      const removed = await got.library.remove(id);
      if (!removed.ok) return no(removed.fault);
      await keeper.removed(id);
      return removed;
    },
    async versions() {
      const got = await keeper.library();
      const { bookId } = keeper;
      return got.ok && bookId !== undefined ? got.library.versions.list(bookId) : [];
    },
    async keepVersion(name) {
      const got = await keeper.library();
      if (!got.ok) return no(got.fault);
      const home = await keeper.homed();
      if (!home.ok) return no(home.fault);
      const kept = await got.library.versions.keep(home.id, keeper.session.current, name);
      return kept.ok ? kept : no(kept.fault);
    },
    async compareVersion(number) {
      const read = await version(number);
      const { compareBooks } = await import('../store/compare.ts');
      return read.ok
        ? { ok: true, comparison: compareBooks(read.book, keeper.session.current) }
        : no(read.fault);
    },
    async dropVersion(number) {
      const got = await keeper.library();
      const { bookId } = keeper;
      if (got.ok && bookId !== undefined) await got.library.versions.remove(bookId, number);
    },
    keepAgain: () => keeper.keepAgain(),
  };
}

import { expose } from 'comlink';
import { describe } from '../../functions/core/describe.ts';
import { registry } from '../../functions/registry.ts';
import type { Done } from '../session/api.ts';
import { Session } from '../session/session.ts';
import { localeFor } from '../units/locale.ts';
import type { BookService, Opened, Work } from './protocol.ts';

/** The open book. There is always one: an empty one to begin with. */
let session: Session | undefined;
/** How this machine writes, where a book does not say. */
const locale = localeFor(navigator.language);
let tell: ((work: Work) => void) | undefined;

const open = (): Session => {
  session ??= Session.create({ locale });
  return session;
};

/** Brings the values up to date, others getting their turn in between, and answers with what the book then is. */
async function settled(done: Done): Promise<Done> {
  if (!done.ok) return done;
  await open().settle({ onProgress: (progress) => tell?.(progress) });
  return { ...done, outline: open().outline() };
}

const service: BookService = {
  async open(text: string, _name: string): Promise<Opened> {
    try {
      const next = Session.openStale(text, { locale });
      await next.settle({ onProgress: (progress) => tell?.(progress) });
      session = next;
      return { ok: true, outline: next.outline(), notes: [] };
    } catch (reason) {
      return { ok: false, sentence: reason instanceof Error ? reason.message : String(reason) };
    }
  },
  async blank() {
    session = Session.create({ locale });
    return { ok: true, outline: session.outline(), notes: [] };
  },
  run: async (command) => settled(open().apply(command)),
  undo: async () => settled(open().applyUndo()),
  redo: async () => settled(open().applyRedo()),
  tile: async (sheet, row, rows, column, columns) => open().tile(sheet, row, rows, column, columns),
  cell: async (place) => open().cellInfo(place),
  figure: async (sheet, row) => open().figure(sheet, row),
  doubts: async () => open().doubts(),
  check: async (formula, place) => open().check(formula, place),
  preview: async (formula, place) => open().preview(formula, place),
  functions: async () => [...registry.values()].map(describe),
  save: async () => open().save(),
  csv: async (sheet) => open().toCsv(sheet),
  watch: async (callback) => {
    tell = callback;
  },
};

expose(service);

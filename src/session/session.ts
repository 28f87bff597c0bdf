/** One open book: runs commands, with undo, and answers questions. */
import { applyEdit } from '../book/apply.ts';
import { createBook, type LiveBook } from '../book/book.ts';
import type { Change, Edit } from '../book/edit.ts';
import { readBook } from '../book/file.ts';
import { writeBook } from '../book/file-write.ts';
import { History, type Past } from '../book/history.ts';
import type { Book } from '../book/model.ts';
import { Refusal } from '../book/refusal.ts';
import type { Calculation, Fresh, Place, Progress } from '../calc/api.ts';
import { createCalculation } from '../calc/index.ts';
import { type Locale, plainLocale } from '../units/locale.ts';
import type { Done } from './api.ts';
import type { Planned } from './commands/define.ts';
import { type Command, commands } from './commands/index.ts';
import { type Paste, type Pasted, pasteText, pasting } from './commands/paste-text.ts';
import { finish, type SettleOptions, settle } from './drive.ts';
import type { ReadContext } from './open-book.ts';
import { Questions } from './questions.ts';
import { localeOf } from './settings.ts';

export interface SessionOptions {
  /** How this machine writes numbers and dates, where the book does not say. */
  readonly locale?: Locale;
  /** What can be undone already, for a book that is taken up again. */
  readonly history?: History;
  /** Tell every formula before it is computed, so that a watcher knows which one never came back. */
  readonly careful?: boolean;
  /** Formulas that took too long and are left out until they are changed. */
  readonly stopped?: readonly Place[];
  /** Outlines count on from here. */
  readonly version?: number;
}

/** What happened to the book, for whoever keeps a journal. */
export interface Recorded {
  readonly kind: 'command' | 'undo' | 'redo';
  readonly words: string;
  readonly edit: Edit;
  readonly inverse: Edit;
}

/**
 * One open book: the truth about it. Commands change it, questions are answered from it, history takes everything back.
 * `execute`, `undo` and `redo` bring all values up to date before they answer; `apply`, `applyUndo` and `applyRedo`
 * change the book at once and leave the values to `settle`, which works in slices and can be ended at any time.
 */
export class Session extends Questions {
  /** Called after every change, before it is answered. */
  onRecord: ((recorded: Recorded) => void) | undefined;
  private readonly book: LiveBook;
  protected override readonly calculation: Calculation;
  private readonly machine: Locale;
  protected override readonly history: History;
  private running: Generator<Progress, readonly Fresh[]> | undefined;
  /** What `running` does next, when nobody was told yet. */
  private next: Progress | undefined;

  private constructor(book: LiveBook, options: SessionOptions) {
    super();
    this.book = book;
    this.machine = options.locale ?? plainLocale;
    this.version = options.version ?? 1;
    this.changed = this.version;
    this.history = options.history ?? new History();
    this.calculation = createCalculation(book, { careful: options.careful ?? false });
    for (const place of options.stopped ?? []) this.calculation.stop(place);
    this.start(this.calculation.all());
  }

  /** A new book; its values are up to date. */
  static create(options: SessionOptions = {}): Session {
    const session = new Session(createBook(), options);
    finish(session.recalculate());
    return session;
  }

  /** Opens a book from its file's text and calculates it. @throws BookFileError */
  static open(text: string, options: SessionOptions = {}): Session {
    const session = Session.openStale(text, options);
    finish(session.recalculate());
    return session;
  }

  /** Opens a book and leaves its calculation to `settle`. @throws BookFileError */
  static openStale(text: string, options: SessionOptions = {}): Session {
    return new Session(readBook(text), options);
  }

  /** Takes up a book that was made elsewhere (from a journal) and leaves its calculation to `settle`. */
  static resume(book: LiveBook, options: SessionOptions = {}): Session {
    return new Session(book, options);
  }

  /** The book as it is now, to be read only. */
  get current(): Book {
    return this.book;
  }

  /** What can be undone and redone now. */
  get past(): Past {
    return this.history.past;
  }

  /** The text of the book's file. */
  save(): string {
    return writeBook(this.book);
  }

  execute(command: Command): Done {
    return this.finished(this.apply(command));
  }
  undo(): Done {
    return this.finished(this.applyUndo());
  }
  redo(): Done {
    return this.finished(this.applyRedo());
  }

  /** Does a command; values stay stale until `settle`. */
  apply(command: Command): Done {
    return this.attempt(() => {
      const { edit, words, note } = this.planned(command);
      const inverse = this.change(edit, { kind: 'command', words });
      this.history.note(words, inverse);
      return note;
    });
  }
  /** Reads a text that is to be pasted, bit by bit; what it comes to is for `writePlanned`. @throws Refusal */
  pasting(paste: Paste): Generator<Progress, Pasted> {
    return pasting({ ...this.context(), book: this.book }, pasteText.schema.parse(paste));
  }
  /** Does several commands as one step that undo takes back at once: all of them, or none. */
  applyAll(words: string, list: readonly Command[]): Done {
    return this.attempt(() => {
      const edits: Edit[] = [];
      const inverses: Edit[] = [];
      const notes: string[] = [];
      const put = (edit: Edit): Edit => {
        const { inverse, changes } = applyEdit(this.book, edit);
        this.follow(changes);
        return inverse;
      };
      try {
        for (const command of list) {
          const { edit, note } = this.planned(command);
          inverses.unshift(put(edit));
          edits.push(edit);
          if (note !== undefined) notes.push(note);
        }
      } catch (reason) {
        for (const inverse of inverses) put(inverse);
        throw reason;
      }
      if (edits.length === 0) return undefined;
      const inverse: Edit = { do: 'batch', edits: inverses };
      this.history.note(words, inverse);
      this.onRecord?.({ kind: 'command', words, edit: { do: 'batch', edits }, inverse });
      return notes.length ? notes.join(' ') : undefined;
    });
  }
  applyUndo(): Done {
    return this.step('undo', this.history.end ?? 'There is nothing to undo.');
  }
  applyRedo(): Done {
    return this.step('redo', 'There is nothing to redo.');
  }

  /** Writes what `preparing` of prepare-import.ts made of a file, as one step that undo takes back; values stay stale until `settle`. */
  writePlanned({ edit, words, note }: Planned): Done {
    return this.attempt(() => {
      this.history.note(words, this.change(edit, { kind: 'command', words }));
      return note;
    });
  }

  /** True while values are not up to date. */
  get stale(): boolean {
    return this.running !== undefined;
  }

  /** Brings the values up to date, step by step; ending it early keeps what is done. */
  *recalculate(): Generator<Progress, void> {
    for (let running = this.running; running; running = this.running) {
      const { next } = this;
      this.next = undefined;
      if (next) {
        yield next;
        if (this.running !== running) continue;
      }
      const { done, value } = running.next();
      if (done) this.ended();
      else yield value;
    }
  }

  /** Brings the values up to date in slices, with progress; true when they are, false when it was cancelled. */
  settle(options: SettleOptions = {}): Promise<boolean> {
    return settle(this.recalculate(), options);
  }

  protected override context(): ReadContext {
    return { book: this.book, calculation: this.calculation, locale: localeOf(this.book, this.machine) };
  }

  private step(direction: 'undo' | 'redo', nothing: string): Done {
    return this.attempt(() => {
      const words = this.history[direction] ?? '';
      const entry = this.history.step(direction, (edit) => this.change(edit, { kind: direction, words }));
      if (!entry) throw new Refusal(nothing);
      const where = this.book.sheets.find(({ id }) => id === sheetIn(entry.edit))?.label;
      const said = where === undefined || words.includes(where) ? words : `${words}, in ${where}`;
      return `${direction === 'undo' ? 'Undone' : 'Redone'}: ${said}.`;
    });
  }

  /** What else in the book would lose something by these commands, a sentence each; each is looked at by itself. */
  losses(list: readonly Command[]): readonly string[] {
    return list.flatMap((command) => {
      try {
        return this.planned(command).loses ?? [];
      } catch (error) {
        // What cannot be done loses nothing; the command itself says why.
        if (error instanceof Refusal) return [];
        throw error;
      }
    });
  }

  /** What a command will do. @throws Refusal for one that is unknown, malformed or cannot be done */
  private planned(command: Command): Planned {
    const record = commands.get(command.do);
    if (!record) throw new Refusal(`There is no command "${String(command.do).slice(0, 40)}".`);
    const { do: _, ...payload } = command;
    const read = record.schema.safeParse(payload);
    if (!read.success) {
      const [issue] = read.error.issues;
      throw new Refusal(
        `The command "${record.id}" was given something unexpected at "${issue?.path.join('.')}": ${issue?.message}.`,
      );
    }
    return record.plan({ ...this.context(), book: this.book }, read.data);
  }

  /** Applies an edit, has the values follow, and tells the journal. Answers the edit that takes it back. */
  private change(edit: Edit, about: Pick<Recorded, 'kind' | 'words'>): Edit {
    const { inverse, changes } = applyEdit(this.book, edit);
    this.follow(changes);
    this.onRecord?.({ ...about, edit, inverse });
    return inverse;
  }

  private follow(changes: readonly Change[]): void {
    // What the running recalculation has not come to stays dirty, and the next one does it.
    this.running?.return([]);
    this.changed = ++this.version;
    this.start(this.calculation.update(changes));
  }

  /** The first step is done at once: from then on the calculation knows what changed. */
  private start(work: Generator<Progress, readonly Fresh[]>): void {
    this.running = work;
    const { done, value } = work.next();
    if (done) this.ended();
    else this.next = value;
  }

  private ended(): void {
    this.running = undefined;
    this.next = undefined;
    this.version++;
  }

  private attempt(change: () => string | undefined): Done {
    try {
      const note = change();
      return { ok: true, outline: this.outline(), ...(note === undefined ? {} : { note }) };
    } catch (error) {
      if (error instanceof Refusal) return { ok: false, sentence: error.message };
      throw error;
    }
  }

  private finished(done: Done): Done {
    finish(this.recalculate());
    return done.ok ? { ...done, outline: this.outline() } : done;
  }
}

/** The sheet that an edit changes; of several the first. */
function sheetIn(edit: Edit): string | undefined {
  if (edit.do === 'batch') return edit.edits.map(sheetIn).find((sheet) => sheet !== undefined);
  return 'sheet' in edit && typeof edit.sheet === 'string' ? edit.sheet : undefined;
}

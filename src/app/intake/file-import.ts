import { type Signal, signal } from '@preact/signals';
import type { Choices, ColumnChoice } from '../../intake/index.ts';
import type { FileDecisions, FileReading, Stuck } from '../../session/imports/file-reading.ts';
import { guarded } from '../state/actions.ts';
import type { Page } from '../state/page.ts';
import { say, settle } from '../state/page.ts';

/** Something that is to be brought in: a file, or what the clipboard held. */
export interface Arrived {
  readonly name: string;
  readonly file: Blob;
}

/** What came in, for the report that follows. */
export interface ImportDone {
  readonly reading: FileReading;
  /** Id of the sheet it went to. */
  readonly sheet: string;
}

/** The state of importing files: one is looked at, others wait. */
export class FileImport {
  readonly now: Signal<Arrived | null> = signal(null);
  readonly waiting: Signal<readonly Arrived[]> = signal([]);
  readonly decisions: Signal<FileDecisions> = signal({});
  readonly reading: Signal<FileReading | null> = signal(null);
  readonly problem: Signal<string | null> = signal(null);
  /** What can be done where the file does not fit. */
  readonly stuck: Signal<Stuck | null> = signal(null);
  readonly busy = signal(false);
  readonly done: Signal<ImportDone | null> = signal(null);
  private readonly page: Page;
  private turn = 0;

  constructor(page: Page, arrived: readonly Arrived[]) {
    this.page = page;
    this.take(arrived);
  }

  /** Adds files; the first is read at once if none is. */
  take(arrived: readonly Arrived[]): void {
    this.waiting.value = [...this.waiting.value, ...arrived];
    if (!this.now.value) this.next();
  }

  /** Goes on to the next file; false when there is none. */
  next(): boolean {
    const [next, ...rest] = this.waiting.value;
    this.now.value = next ?? null;
    this.waiting.value = rest;
    this.decisions.value = {};
    this.reading.value = null;
    this.problem.value = null;
    this.done.value = null;
    if (next) void this.read();
    return next !== undefined;
  }

  decide(change: FileDecisions): void {
    this.decisions.value = { ...this.decisions.value, ...change };
    void this.read();
  }
  /** Decides how the file as a whole is read. Where its cells begin anew, what was said about single columns is gone. */
  decideFile(change: Choices): void {
    const { choices } = this.decisions.value;
    const { columns: _, ...rest } = choices ?? {};
    this.decide({ choices: { ...rest, ...change } });
  }
  decideColumn(index: number, change: ColumnChoice): void {
    const { choices } = this.decisions.value;
    const columns = { ...choices?.columns, [index]: { ...choices?.columns?.[index], ...change } };
    this.decide({ choices: { ...choices, columns } });
  }
  /** Another sheet: what was said about columns of the one before does not hold for it. */
  decideSheet(sheet: string | null, recipe?: string | null): void {
    const { choices } = this.decisions.value;
    const columns = Object.fromEntries(
      Object.entries(choices?.columns ?? {}).map(([index, { feeds: _, ...rest }]) => [index, rest]),
    );
    this.decisions.value = {
      choices: { ...choices, columns },
      sheet,
      ...(recipe === undefined ? {} : { recipe }),
    };
    void this.read();
  }

  async read(): Promise<void> {
    const { page } = this;
    const arrived = this.now.value;
    if (!arrived) return;
    const turn = ++this.turn;
    this.busy.value = true;
    this.problem.value = null;
    this.stuck.value = null;
    const near = page.sheetId.value;
    try {
      const answer = await page.service.readFile(arrived.file, arrived.name, {
        ...(near === null ? {} : { near }),
        ...this.decisions.value,
      });
      if (turn !== this.turn) return;
      if (answer.ok) {
        this.reading.value = answer.reading;
        // Which sheet is meant stays open while it is asked.
        if (answer.reading.fits.length === 0)
          this.decisions.value = { ...this.decisions.value, sheet: answer.reading.sheet.id };
      } else {
        this.reading.value = null;
        this.problem.value = answer.sentence;
        this.stuck.value = answer.stuck ?? null;
      }
    } catch (reason) {
      if (turn !== this.turn) return;
      this.reading.value = null;
      this.problem.value = reason instanceof Error ? reason.message : String(reason);
    } finally {
      if (turn === this.turn) {
        this.busy.value = false;
        page.progress.value = null;
      }
    }
  }

  /** Ends a reading that is under way. */
  stop(): void {
    this.turn++;
    this.busy.value = false;
    this.page.progress.value = null;
    void this.page.service.stopReading();
  }

  async importFile(): Promise<void> {
    const { page } = this;
    const reading = this.reading.value;
    if (!reading) return;
    const before = new Set(page.outline.value?.sheets.map(({ id }) => id));
    this.busy.value = true;
    const done = await guarded(page, async () => {
      const answer = await page.service.importFile();
      if (!answer.ok) this.problem.value = answer.sentence;
      return settle(page, answer);
    });
    this.busy.value = false;
    if (!done) return;
    const made = page.outline.value?.sheets.find(({ id }) => !before.has(id));
    const sheet = reading.sheet.id ?? made?.id;
    if (sheet === undefined) return;
    page.sheetId.value = sheet;
    this.done.value = { reading, sheet };
  }
}

/** The import that is on show, if any. */
export const fileImport: Signal<FileImport | null> = signal(null);

/** Opens the way in, with files if there are some already. */
export function importFiles(page: Page, arrived: readonly Arrived[] = []): void {
  if (!page.outline.value) {
    say(page, 'Open or start a book first, then import the file.', 'wrong');
    return;
  }
  const { value } = fileImport;
  if (value && page.dialogue.value?.is === 'import') {
    value.take(arrived);
    return;
  }
  fileImport.value = new FileImport(page, arrived);
  page.dialogue.value = { is: 'import' };
}

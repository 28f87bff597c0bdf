import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { deleteDB, openDB } from 'idb';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook, type LiveBook } from '../../src/book/book.ts';
import { writeBook } from '../../src/book/file-write.ts';
import type { BookStore } from '../../src/store/book-store.ts';
import { contentOf } from '../../src/store/content.ts';
import { type Library, type OpenedBook, openLibrary } from '../../src/store/library.ts';
import { book, editFor, picks } from '../book/random.ts';
import { FakeFiles } from './fake-files.ts';
import { FakeLocks } from './locks.ts';

let count = 0;
let name = '';
let files: FakeFiles;
beforeEach(begin);

/** Another browser, in which nothing is kept yet. */
function begin(): void {
  name = `second ${count++}`;
  files = new FakeFiles();
  restart();
}

/** Every tab is gone, however it ended. */
function restart(): void {
  files.letGo();
  vi.stubGlobal('navigator', { locks: new FakeLocks(), storage: files.storage });
}

async function libraryNow(policy = {}): Promise<Library> {
  const opened = await openLibrary({ name, policy });
  if (!opened.ok) throw new Error(opened.fault.sentence);
  return opened.library;
}

async function created(library: Library, of: LiveBook): Promise<BookStore> {
  const made = await library.create(of);
  if (!made.ok) throw new Error(made.fault.sentence);
  return made.store;
}

async function opened(library: Library, id: string, takeOver = false): Promise<OpenedBook> {
  const got = await library.openBook(id, { takeOver });
  if (!got.ok) throw new Error(got.fault.sentence);
  return got;
}

/** A book of one column, and the change that puts n into its row n. */
function counting() {
  const live = createBook('Counting');
  const column = { id: 'n', name: 'n', label: 'n', kind: 'number' } as const;
  applyEdit(live, {
    do: 'add-sheet',
    index: 0,
    sheet: { id: 's', name: 's', label: 'S', purpose: 'gathered', rows: 50, columns: [{ column }] },
  });
  let n = 0;
  return {
    live,
    next(): Parameters<BookStore['append']> {
      n++;
      const edit = { do: 'put-cells', sheet: 's', row: n - 1, columns: ['n'], cells: [[n]] } as const;
      applyEdit(live, edit);
      return [{ kind: 'command', words: `Put ${n}`, edit }, live.title];
    },
  };
}

const numbersOf = ({ sheets: [sheet] }: LiveBook): number[] => {
  const cells = sheet!.cells.get('n')!;
  return Array.from({ length: cells.length }, (_, row) => cells.get(row)).filter(
    (n) => n !== null,
  ) as number[];
};
const upTo = (n: number) => Array.from({ length: n }, (_, i) => i + 1);

/** A counting book with so many changes, kept and closed. */
async function stored(entries: number, snapshots: readonly number[] = []): Promise<string> {
  const { live, next } = counting();
  const library = await libraryNow();
  const store = await created(library, live);
  for (let n = 1; n <= entries; n++) {
    expect((await store.append(...next())).ok).toBe(true);
    if (snapshots.includes(n)) await store.snapshot(() => contentOf(live));
  }
  await library.close();
  return store.id;
}

/** The file in which the last segment stands. */
const segmentFile = () => [...files.files.values()].find(({ bytes }) => bytes.length > 0)!;

describe('a second journal', () => {
  test('has everything that was answered, whatever the edits, snapshots, openings and deletions of the database', async () => {
    await fc.assert(
      fc.asyncProperty(
        book,
        fc.array(
          fc.tuple(
            picks,
            fc.constantFrom('wait', 'go on', 'snapshot', 'reopen', 'kill', 'delete', 'kill and delete'),
          ),
          { maxLength: 25 },
        ),
        async (made, steps) => {
          begin();
          let live: LiveBook = made;
          let library = await libraryNow();
          let store = await created(library, made);
          const { id } = store;
          for (const [pick, then] of [...steps, [undefined, 'kill and delete'] as const]) {
            if (pick) {
              const edit = editFor(live, pick);
              applyEdit(live, edit);
              const done = store.append({ kind: 'command', words: edit.do, edit }, live.title);
              if (then !== 'go on' && then !== 'snapshot') expect((await done).ok).toBe(true);
            } else expect((await store.retry()).ok).toBe(true);
            if (then === 'snapshot') void store.snapshot(() => contentOf(live));
            if (then === 'wait' || then === 'go on' || then === 'snapshot') continue;
            if (then === 'reopen' || then === 'delete') await library.close();
            restart();
            if (then.includes('delete')) await deleteDB(name);
            library = await libraryNow();
            const again = await opened(library, id);
            expect(again.notes).toEqual(
              then.includes('delete') ? [expect.stringContaining('has lost its saved copy')] : [],
            );
            expect(writeBook(again.book)).toBe(writeBook(live));
            ({ book: live } = again);
            store = again.store!;
          }
          await library.close();
        },
      ),
      { numRuns: 40 },
    );
  });

  test('of a book whose database is gone: the book under its id, what can be undone, and its versions', async () => {
    const { live, next } = counting();
    const library = await libraryNow();
    const store = await created(library, live);
    const { id } = store;
    const before = writeBook(live);
    await library.versions.keep(id, live, 'Before');
    for (let n = 1; n <= 5; n++) {
      await store.append(...next());
      if (n === 2)
        await store.snapshot(
          () => contentOf(live),
          () => ({ undo: [{ words: 'Put 2', edit: { do: 'set-title', title: 'x' } }], redo: [] }),
        );
    }
    await library.versions.keep(id, live, 'After');
    await library.versions.keep(id, live, 'Dropped');
    await library.versions.remove(id, 3);
    await library.close();
    await deleteDB(name);

    const again = await libraryNow();
    expect(await again.list()).toMatchObject([{ id, title: 'Counting' }]);
    const { book, history, notes } = await opened(again, id);
    expect(numbersOf(book)).toEqual(upTo(5));
    expect(history.past.undo.map(({ words }) => words)).toEqual(['Put 2', 'Put 3', 'Put 4', 'Put 5']);
    expect(notes).toEqual([
      'The browser has lost its saved copy of “Counting”. The book is restored from its second journal, with its 2 named versions; its last saved change is “Put 5”. Check your last changes, and save the book to a file.',
    ]);
    expect((await again.versions.list(id)).map((version) => version.name)).toEqual(['After', 'Before']);
    const read = await again.versions.read(id, 1);
    expect(read.ok && writeBook(read.book)).toBe(before);
    await again.close();
    // It is said once.
    expect((await opened(await libraryNow(), id)).notes).toEqual([]);
  });

  test('cut at any byte, with the database gone: every change answered before the cut is there, and no other', async () => {
    const { live, next } = counting();
    const first = await libraryNow();
    const store = await created(first, live);
    const { id } = store;
    const file = segmentFile();
    /** Bytes of the file when each change was answered, and before the first. */
    const sizes = [file.bytes.length];
    for (let n = 1; n <= 4; n++) {
      await store.append(...next());
      sizes.push(file.bytes.length);
    }
    await first.close();
    const whole = file.bytes;
    for (let cut = whole.length; cut >= 0; cut--) {
      file.bytes = whole.slice(0, cut);
      await deleteDB(name);
      const library = await libraryNow();
      const there = sizes.filter((size) => size <= cut).length;
      // Without a whole copy it is no book.
      expect(await library.list()).toHaveLength(there === 0 ? 0 : 1);
      if (there === 0) continue;
      const { book, notes } = await opened(library, id);
      expect(numbersOf(book)).toEqual(upTo(there - 1));
      expect(notes).toEqual([expect.stringContaining('has lost its saved copy')]);
      expect(notes[0]!.includes('what came after it is lost')).toBe(!sizes.includes(cut));
      await library.close();
    }
  });

  test('with any byte turned and the database gone: a book of whole changes, or none', async () => {
    const id = await stored(3);
    const file = segmentFile();
    const whole = file.bytes;
    for (let at = 0; at < whole.length; at += at < 400 || at >= 4_096 ? 1 : 97) {
      file.bytes = whole.slice();
      file.bytes[at]! ^= 1 << (at % 8);
      await deleteDB(name);
      const library = await libraryNow();
      if ((await library.list()).length === 0) continue;
      const numbers = numbersOf((await opened(library, id)).book);
      expect(numbers).toEqual(upTo(numbers.length));
      await library.close();
    }
  });

  test('makes good what the database cannot read back, and says so; the next opening finds both whole', async () => {
    const id = await stored(9, [4]);
    const database = await openDB(name);
    for (const sequence of [7, 8, 9]) await database.delete('entries', [id, sequence]);
    database.close();
    const library = await libraryNow();
    const { book, notes } = await opened(library, id);
    expect(numbersOf(book)).toEqual(upTo(9));
    expect(notes).toEqual([
      "The last 3 changes could not be read back from the browser's database and were taken from the book's second journal, the last being “Put 9”.",
    ]);
    await library.close();
    segmentFile().bytes = new Uint8Array(0);
    const again = await opened(await libraryNow(), id);
    expect(numbersOf(again.book)).toEqual(upTo(9));
    expect(again.notes).toEqual([]);
  });

  test('that is behind, as after a time without room, is begun anew on opening', async () => {
    const { live, next } = counting();
    const library = await libraryNow();
    const store = await created(library, live);
    await store.append(...next());
    files.room = 0;
    for (let n = 0; n < 5; n++) expect((await store.append(...next())).ok).toBe(true);
    await library.close();
    files.room = Number.POSITIVE_INFINITY;
    const again = await libraryNow();
    expect((await opened(again, store.id)).notes).toEqual([]);
    await again.close();
    await deleteDB(name);
    expect(numbersOf((await opened(await libraryNow(), store.id)).book)).toEqual(upTo(6));
  });

  test('without room takes nothing from the database, and is begun anew once there is some', async () => {
    const { live, next } = counting();
    const library = await libraryNow();
    const store = await created(library, live);
    files.room = 0;
    for (let n = 0; n < 16; n++) expect((await store.append(...next())).ok).toBe(true);
    expect(store.due).toBe(true);
    await store.snapshot(() => contentOf(live));
    // In vain, and not tried again with every change.
    expect(store.due).toBe(false);
    files.room = Number.POSITIVE_INFINITY;
    for (let n = 0; n < 16; n++) await store.append(...next());
    expect(store.due).toBe(true);
    await store.snapshot(() => contentOf(live));
    restart();
    await deleteDB(name);
    expect(numbersOf((await opened(await libraryNow(), store.id)).book)).toEqual(upTo(32));
  });

  test('is whole wherever a kill falls while a segment takes the place of the one before', async () => {
    for (let writes = 0; writes < 14; writes++) {
      begin();
      const { live, next } = counting();
      const library = await libraryNow();
      const store = await created(library, live);
      for (let n = 0; n < 3; n++) await store.append(...next());
      const copied = store.snapshot(() => contentOf(live));
      const later = [store.append(...next()), store.append(...next())];
      files.writes = writes;
      await Promise.all([copied, ...later]);
      restart();
      await deleteDB(name);
      const { book } = await opened(await libraryNow(), store.id);
      const numbers = numbersOf(book);
      // The three were answered before; of the two that were not written any more none is made up.
      expect(numbers).toEqual(upTo(numbers.length));
      expect(numbers.length).toBeGreaterThanOrEqual(3);
    }
  });

  test('of a book that is taken over is written by the new writer only, also while the old one has its file open', async () => {
    const { live, next } = counting();
    const first = await libraryNow();
    const store = await created(first, live);
    for (let n = 0; n < 3; n++) await store.append(...next());
    // A tab that is too busy to hear of it: its lock is gone, its file is not.
    vi.stubGlobal('navigator', { locks: new FakeLocks(), storage: files.storage });
    const second = await libraryNow();
    const taken = await opened(second, store.id, true);
    expect(taken.notes).toEqual([]);
    const edit = { do: 'put-cells', sheet: 's', row: 3, columns: ['n'], cells: [[44]] } as const;
    expect((await taken.store!.append({ kind: 'command', words: 'Put 44', edit }, 'Counting')).ok).toBe(true);
    expect(await store.append(...next())).toMatchObject({ ok: false, fault: { why: 'taken over' } });
    restart();
    await deleteDB(name);
    expect(numbersOf((await opened(await libraryNow(), store.id)).book)).toEqual([1, 2, 3, 44]);
  });

  test('goes with its book', async () => {
    const { live } = counting();
    const library = await libraryNow();
    const { id } = await created(library, live);
    await library.versions.keep(id, live, 'Before');
    expect(files.files.size).toBeGreaterThan(0);
    expect(await library.remove(id)).toEqual({ ok: true });
    expect(files.files.size).toBe(0);
    await deleteDB(name);
    expect(await (await libraryNow()).list()).toEqual([]);
  });

  test('of a newer program is left alone', async () => {
    const id = await stored(2);
    const file = segmentFile();
    const { frontOf, segmentIn } = await import('../../src/store/segment.ts');
    const { about } = segmentIn({
      size: file.bytes.length,
      read: (at, length) => file.bytes.slice(at, at + length),
    })!;
    file.bytes.set(frontOf({ ...about, format: 99 }));
    const before = file.bytes.slice();
    const library = await libraryNow();
    const { store, book } = await opened(library, id);
    expect(numbersOf(book)).toEqual([1, 2]);
    const { live } = counting();
    await store!.snapshot(() => contentOf(live));
    await library.close();
    expect(file.bytes).toEqual(before);
  });

  test('is done without where a page can have no such files, or only ones that answer later', async () => {
    const refused = { getDirectory: () => Promise.reject(new DOMException('private', 'SecurityError')) };
    const late = {
      getSize: () => Promise.resolve(0),
      close: () => Promise.resolve(),
    };
    const older = {
      getDirectory: async () => ({
        getDirectoryHandle: async () => ({
          keys: async function* () {},
          getFileHandle: async () => ({ createSyncAccessHandle: async () => late }),
        }),
      }),
    };
    for (const storage of [undefined, {}, refused, older]) {
      name = `second ${count++}`;
      vi.stubGlobal('navigator', { locks: new FakeLocks(), storage });
      const id = await stored(3);
      vi.stubGlobal('navigator', { locks: new FakeLocks(), storage });
      const { book, notes } = await opened(await libraryNow(), id);
      expect(numbersOf(book)).toEqual([1, 2, 3]);
      expect(notes).toEqual([]);
    }
  });

  test('is made for a book that has none yet, with the versions that it has', async () => {
    vi.stubGlobal('navigator', { locks: new FakeLocks() });
    const { live, next } = counting();
    const before = await libraryNow();
    const store = await created(before, live);
    await store.append(...next());
    await before.versions.keep(store.id, live, 'Old');
    await before.close();
    restart();
    const library = await libraryNow();
    await opened(library, store.id);
    await library.close();
    await deleteDB(name);
    const again = await libraryNow();
    expect(numbersOf((await opened(again, store.id)).book)).toEqual([1]);
    expect(await again.versions.list(store.id)).toMatchObject([{ number: 1, name: 'Old' }]);
  });
});

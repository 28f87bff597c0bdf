import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { deleteDB, type IDBPDatabase, openDB } from 'idb';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook, type LiveBook } from '../../src/book/book.ts';
import { writeBook } from '../../src/book/file-write.ts';
import type { BookStore } from '../../src/store/book-store.ts';
import { contentOf } from '../../src/store/content.ts';
import { type EntryRow, openDatabase, type Schema, type SnapshotRow } from '../../src/store/database.ts';
import { type Library, type OpenedBook, openLibrary } from '../../src/store/library.ts';
import { book, editFor, picks } from '../book/random.ts';
import { FakeLocks } from './locks.ts';

let count = 0;
let name = '';
beforeEach(() => {
  name = `test ${count++}`;
  vi.stubGlobal('navigator', { locks: new FakeLocks() });
});

async function libraryNow(policy = {}): Promise<Library> {
  const opened = await openLibrary({ name, policy });
  if (!opened.ok) throw new Error(opened.fault.sentence);
  return opened.library;
}

async function reopened(id: string): Promise<OpenedBook & { readonly library: Library }> {
  const library = await libraryNow();
  const opened = await library.openBook(id);
  if (!opened.ok) throw new Error(opened.fault.sentence);
  return { ...opened, library };
}

async function created(library: Library, of: LiveBook): Promise<BookStore> {
  const made = await library.create(of);
  if (!made.ok) throw new Error(made.fault.sentence);
  return made.store;
}

/** A book with one sheet of one column, and edits that put n into its row n. */
function counting(): { readonly live: LiveBook; next(): Parameters<BookStore['append']> } {
  const live = createBook('Counting');
  applyEdit(live, {
    do: 'add-sheet',
    index: 0,
    sheet: {
      id: 's',
      name: 's',
      label: 'S',
      purpose: 'gathered',
      rows: 50,
      columns: [{ column: { id: 'n', name: 'n', label: 'n', kind: 'number' } }],
    },
  });
  let n = 0;
  return {
    live,
    next() {
      n++;
      const edit = { do: 'put-cells', sheet: 's', row: n - 1, columns: ['n'], cells: [[n]] } as const;
      applyEdit(live, edit);
      return [{ kind: 'command', words: `Put ${n}`, edit }, live.title];
    },
  };
}

/** Looks into the database behind the library's back. */
async function behind<T>(work: (database: IDBPDatabase<Schema>) => Promise<T>): Promise<T> {
  const database = await openDB<Schema>(name);
  try {
    return await work(database);
  } finally {
    database.close();
  }
}

async function damage(store: 'entries' | 'snapshots', sequence: number): Promise<void> {
  await behind(async (database) => {
    const row = (await database.getAll(store)).find((row) => row.sequence === sequence)!;
    row.bytes[row.bytes.length >> 1]! ^= 1;
    await database.put(store, row as EntryRow & SnapshotRow);
  });
}

const numbersOf = ({ sheets: [sheet] }: LiveBook): (number | null)[] => {
  const cells = sheet!.cells.get('n')!;
  return Array.from({ length: cells.length }, (_, row) => cells.get(row) as number | null).filter((n) => n);
};

describe('a book in the library', () => {
  test('everything handed in comes back, whatever the edits, snapshots and openings in between', async () => {
    await fc.assert(
      fc.asyncProperty(
        book,
        fc.array(fc.tuple(picks, fc.constantFrom('wait', 'go on', 'snapshot', 'reopen')), { maxLength: 25 }),
        async (made, steps) => {
          name = `test ${count++}`;
          let live: LiveBook = made;
          let library = await libraryNow();
          let store = await created(library, made);
          for (const [pick, then] of steps) {
            const edit = editFor(live, pick);
            applyEdit(live, edit);
            const stored = store.append({ kind: 'command', words: edit.do, edit }, live.title);
            if (then === 'wait') expect((await stored).ok).toBe(true);
            if (then === 'snapshot') void store.snapshot(() => contentOf(live));
            if (then !== 'reopen') continue;
            expect((await stored).ok).toBe(true);
            const { id } = store;
            await library.close();
            const again = await reopened(id);
            expect(again.notes).toEqual([]);
            expect(writeBook(again.book)).toBe(writeBook(live));
            ({ library, book: live } = again);
            store = again.store!;
          }
          await library.close();
          const again = await reopened(store.id);
          expect(again.notes).toEqual([]);
          expect(writeBook(again.book)).toBe(writeBook(live));
          await again.library.close();
        },
      ),
      { numRuns: 40 },
    );
  });

  test('an entry is answered only when it and everything before it is in the database', async () => {
    const { live, next } = counting();
    const store = await created(await libraryNow(), live);
    const answers = Array.from({ length: 20 }, () => store.append(...next()));
    for (const answer of answers) {
      const stored = await answer;
      expect(stored.ok).toBe(true);
      const head = await behind((database) => database.count('entries'));
      expect(head).toBeGreaterThanOrEqual(stored.ok ? stored.sequence : Infinity);
    }
  });

  test('compaction keeps two snapshots and what came after the older one, and the book with them', async () => {
    const { live, next } = counting();
    const library = await libraryNow({ entries: 5 });
    const store = await created(library, live);
    for (let n = 0; n < 23; n++) {
      await store.append(...next());
      if (store.due) await store.snapshot(() => contentOf(live));
    }
    const kept = await behind(async (database) => ({
      snapshots: (await database.getAllKeys('snapshots')).map(([, sequence]) => sequence),
      entries: (await database.getAllKeys('entries')).map(([, sequence]) => sequence),
    }));
    expect(kept).toEqual({ snapshots: [15, 20], entries: [16, 17, 18, 19, 20, 21, 22, 23] });
    await library.close();
    const again = await reopened(store.id);
    expect(writeBook(again.book)).toBe(writeBook(live));
    expect(again.history.past.undo.map(({ words }) => words)).toEqual(['Put 21', 'Put 22', 'Put 23']);
  });

  test('a snapshot that is taken while entries are on their way stands for its own moment', async () => {
    const { live, next } = counting();
    const library = await libraryNow();
    const store = await created(library, live);
    void store.append(...next());
    const taken = store.snapshot(() => contentOf(live));
    for (let n = 0; n < 5; n++) void store.append(...next());
    expect(await taken).toEqual({ ok: true, sequence: 1 });
    await library.close();
    expect(numbersOf((await reopened(store.id)).book)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  test('the list shows books by the time of their opening, with the title that the last change gave', async () => {
    const library = await libraryNow();
    const first = await created(library, createBook('First'));
    await created(library, createBook('Second'));
    await first.append(
      { kind: 'command', words: 'Rename', edit: { do: 'set-title', title: 'Third' } },
      'Third',
    );
    expect((await library.list()).map(({ title }) => title).sort()).toEqual(['Second', 'Third']);
    expect(await library.remove(first.id)).toEqual({ ok: true });
    expect((await library.list()).map(({ title }) => title)).toEqual(['Second']);
    expect(await behind((database) => database.count('snapshots'))).toBe(1);
    expect(await library.openBook(first.id)).toMatchObject({ ok: false, fault: { why: 'missing' } });
  });
});

describe('what is damaged', () => {
  async function stored(entries: number, snapshots: readonly number[] = []): Promise<string> {
    const { live, next } = counting();
    const library = await libraryNow();
    const store = await created(library, live);
    for (let n = 1; n <= entries; n++) {
      await store.append(...next());
      if (snapshots.includes(n)) await store.snapshot(() => contentOf(live));
    }
    await library.close();
    return store.id;
  }
  const upTo = (n: number) => Array.from({ length: n }, (_, i) => i + 1);

  test('a damaged snapshot is said, and the one before with the journal gives the whole book', async () => {
    const id = await stored(12, [4, 8]);
    await damage('snapshots', 8);
    const { book, notes } = await reopened(id);
    expect(numbersOf(book)).toEqual(upTo(12));
    expect(notes).toEqual([
      expect.stringMatching(/^The saved copy of \d{4}-\d\d-\d\d \d\d:\d\d is damaged and was not used\.$/),
      expect.stringMatching(/^The book was rebuilt from the copy of .* before it and the changes since\.$/),
    ]);
  });

  test('compaction does not count a damaged snapshot as one of the two', async () => {
    const { live, next } = counting();
    const library = await libraryNow();
    const store = await created(library, live);
    for (let n = 1; n <= 12; n++) {
      await store.append(...next());
      if (n % 4 === 0) await store.snapshot(() => contentOf(live));
      if (n === 8) await damage('snapshots', 8);
    }
    await library.close();
    await damage('snapshots', 12);
    const { book } = await reopened(store.id);
    expect(numbersOf(book)).toEqual(upTo(12));
  });

  test('a journal cut at its end says how much is lost, and what stays is whole', async () => {
    const id = await stored(9);
    await behind(async (database) => {
      await database.delete('entries', [id, 8]);
      await database.delete('entries', [id, 9]);
    });
    const { book, notes } = await reopened(id);
    expect(numbersOf(book)).toEqual(upTo(7));
    expect(notes).toEqual([
      "The last 2 changes could not be read back from the browser's storage and are lost; everything before them is here, the last being “Put 7”.",
    ]);
  });

  test('a damaged entry in the middle ends recovery there; the book can be changed on and opens whole afterwards', async () => {
    const id = await stored(9);
    await damage('entries', 5);
    const { book, notes, store, library } = await reopened(id);
    expect(numbersOf(book)).toEqual(upTo(4));
    expect(notes[0]).toMatch(/^The last 5 changes could not be read back/);
    const edit = { do: 'put-cells', sheet: 's', row: 4, columns: ['n'], cells: [[55]] } as const;
    expect((await store!.append({ kind: 'command', words: 'Put 55', edit }, 'Counting')).ok).toBe(true);
    await library.close();
    const again = await reopened(id);
    expect(numbersOf(again.book)).toEqual([1, 2, 3, 4, 55]);
    expect(again.notes).toEqual([]);
    // The snapshot that it began with has what could be undone before.
    expect(again.history.past.undo.map(({ words }) => words)).toEqual([
      ...upTo(4).map((n) => `Put ${n}`),
      'Put 55',
    ]);
    expect(await behind((database) => database.get('entries', [id, 7]))).toBeDefined();
  });

  test('entries that changed places or came from another book are not taken for this one', async () => {
    const id = await stored(6);
    await behind(async (database) => {
      const [a, b] = [await database.get('entries', [id, 3]), await database.get('entries', [id, 4])];
      await database.put('entries', { ...a!, sequence: 4 });
      await database.put('entries', { ...b!, sequence: 3 });
    });
    expect(numbersOf((await reopened(id)).book)).toEqual([1, 2]);
  });

  test('no snapshot can be read: the book opens empty, and what to do is said', async () => {
    const id = await stored(3);
    await damage('snapshots', 0);
    const { book, notes } = await reopened(id);
    expect(book.sheets).toEqual([]);
    expect(notes.join(' ')).toMatch(/opens empty.*restore/);
  });

  test('nothing that stands in a row makes opening throw', async () => {
    const strange = fc.oneof(fc.anything(), fc.constantFrom(NaN, 'x', null, undefined, -1, 1e300));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('entries', 'snapshots', 'books'),
        fc.constantFrom('bytes', 'seal', 'chain', 'time', 'head', 'title', 'writer', 'opened', 'created'),
        strange,
        async (store, field, value) => {
          name = `test ${count++}`;
          const id = await stored(3, [2]);
          const put = behind(async (database) => {
            const rows = await database.getAll(store as 'entries');
            const row = { ...rows.at(-1)!, [field]: value };
            await database.put(store as 'entries', row);
          });
          // What IndexedDB cannot hold, no damage can put there.
          if (
            await put.then(
              () => false,
              () => true,
            )
          )
            return;
          const library = await libraryNow();
          expect(await library.list()).toHaveLength(1);
          const opened = await library.openBook(id);
          expect(opened.ok).toBe(true);
          await library.close();
        },
      ),
      { numRuns: 120 },
    );
  });

  test('a book of a newer program is not opened and not changed', async () => {
    const id = await stored(3);
    await behind(async (database) => {
      const row = (await database.get('books', id))!;
      await database.put('books', { ...row, format: 99 });
    });
    const before = await behind((database) => database.getAll('books'));
    const opened = await (await libraryNow()).openBook(id);
    expect(opened).toMatchObject({ ok: false, fault: { why: 'newer' } });
    expect(await behind((database) => database.getAll('books'))).toEqual(before);
  });

  test('a database of a newer program is not opened, and it is said', async () => {
    (await openDB(name, 99)).close();
    expect(await openLibrary({ name })).toMatchObject({
      ok: false,
      fault: { why: 'newer', sentence: expect.stringContaining('newer Leverbook') },
    });
  });
});

describe('storage that fails', () => {
  test('a full storage is said; what is waiting is stored with the next change that finds room', async () => {
    const { live, next } = counting();
    const library = await libraryNow();
    const store = await created(library, live);
    expect((await store.append(...next())).ok).toBe(true);
    const real = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
    const answers = await Promise.all([store.append(...next()), store.append(...next())]);
    IDBObjectStore.prototype.put = real;
    for (const answer of answers)
      expect(answer).toMatchObject({
        ok: false,
        fault: { why: 'full', sentence: expect.stringContaining('file') },
      });
    expect(store.waiting).toBe(2);
    expect(await store.retry()).toEqual({ ok: true, sequence: 3 });
    expect(store.waiting).toBe(0);
    expect(await store.append(...next())).toEqual({ ok: true, sequence: 4 });
    await library.close();
    expect(numbersOf((await reopened(store.id)).book)).toEqual([1, 2, 3, 4]);
  });

  test('trying again while something is being stored is answered too, once all of it is', async () => {
    const { live, next } = counting();
    const store = await created(await libraryNow(), live);
    const first = store.append(...next());
    const again = store.retry();
    expect(await first).toEqual({ ok: true, sequence: 1 });
    expect(await again).toEqual({ ok: true, sequence: 1 });
  });

  test('an earlier program in another tab that does not let go is said', async () => {
    const stubborn = await openDB(name, 1);
    expect(await openDatabase(name, {}, 2)).toMatchObject({ ok: false, fault: { why: 'blocked' } });
    stubborn.close();
  });

  test('when a newer program opens in another tab, writing ends here and is said', async () => {
    const { live, next } = counting();
    const store = await created(await libraryNow(), live);
    const heard = vi.fn();
    store.onFault = heard;
    const newer = await openDatabase(name, {}, 2);
    expect(newer.ok).toBe(true);
    expect(heard).toHaveBeenCalledWith(expect.objectContaining({ why: 'newer' }));
    expect(await store.append(...next())).toMatchObject({ ok: false, fault: { why: 'newer' } });
  });

  test('when the database is deleted while a book is open, that is said', async () => {
    const { live, next } = counting();
    const store = await created(await libraryNow(), live);
    await deleteDB(name);
    expect(await store.append(...next())).toMatchObject({ ok: false, fault: { why: 'gone' } });
  });

  test('a storage that is cleared while a book is open ends writing, and is said', async () => {
    const { live, next } = counting();
    const library = await libraryNow();
    const store = await created(library, live);
    const heard = vi.fn();
    store.onFault = heard;
    await behind(async (database) => database.clear('books'));
    expect(await store.append(...next())).toMatchObject({ ok: false, fault: { why: 'missing' } });
    expect(heard).toHaveBeenCalledTimes(1);
  });

  test('where there is no storage at all, that is said', async () => {
    vi.stubGlobal('indexedDB', undefined);
    expect(await openLibrary({ name })).toMatchObject({ ok: false, fault: { why: 'unavailable' } });
    vi.unstubAllGlobals();
  });
});

describe('versions', () => {
  test('a version that is kept is listed and comes back byte for byte; the newest is first', async () => {
    await fc.assert(
      fc.asyncProperty(book, async (made) => {
        name = `test ${count++}`;
        const library = await libraryNow();
        const { id } = await created(library, made);
        expect(await library.versions.keep(id, made, 'Before')).toMatchObject({
          ok: true,
          version: { number: 1 },
        });
        expect(await library.versions.keep(id, createBook(), 'Empty')).toMatchObject({ ok: true });
        expect((await library.versions.list(id)).map((version) => version.name)).toEqual(['Empty', 'Before']);
        const read = await library.versions.read(id, 1);
        expect(read.ok && writeBook(read.book)).toBe(writeBook(made));
        await library.versions.remove(id, 1);
        expect(await library.versions.read(id, 1)).toMatchObject({ ok: false, fault: { why: 'missing' } });
      }),
      { numRuns: 10 },
    );
  });

  test('a damaged version is said to be', async () => {
    const library = await libraryNow();
    const { id } = await created(library, createBook());
    await library.versions.keep(id, createBook('Kept'), 'Before');
    await behind(async (database) => {
      const row = (await database.get('texts', [id, 1]))!;
      row.bytes[5]! ^= 1;
      await database.put('texts', row);
    });
    expect(await library.versions.read(id, 1)).toMatchObject({
      ok: false,
      fault: { sentence: expect.stringContaining('damaged') },
    });
  });
});

describe('two tabs', () => {
  test('the second one reads and is told; taking over, it writes, and the first one is told and stops', async () => {
    const { live, next } = counting();
    const one = await libraryNow();
    const first = await created(one, live);
    await first.append(...next());
    const heard = vi.fn();
    first.onFault = heard;
    const two = await libraryNow();
    const reader = await two.openBook(first.id);
    if (!reader.ok) throw new Error('not opened');
    expect(reader.store).toBeUndefined();
    expect(reader.reading).toMatchObject({ why: 'in use' });
    expect(numbersOf(reader.book)).toEqual([1]);

    const writer = await two.openBook(first.id, { takeOver: true });
    if (!writer.ok) throw new Error('not opened');
    await vi.waitFor(() =>
      expect(heard).toHaveBeenCalledWith(expect.objectContaining({ why: 'taken over' })),
    );
    expect(await first.append(...next())).toMatchObject({ ok: false, fault: { why: 'taken over' } });
    const edit = { do: 'put-cells', sheet: 's', row: 1, columns: ['n'], cells: [[22]] } as const;
    expect((await writer.store!.append({ kind: 'command', words: 'Put 22', edit }, '')).ok).toBe(true);
    await one.close();
    await two.close();
    expect(numbersOf((await reopened(first.id)).book)).toEqual([1, 22]);
  });

  test('without locks the last to open writes, and an earlier writer is stopped at its next entry', async () => {
    vi.stubGlobal('navigator', {});
    const { live, next } = counting();
    const one = await libraryNow();
    const first = await created(one, live);
    await first.append(...next());
    const two = await libraryNow();
    const second = await two.openBook(first.id);
    if (!second.ok) throw new Error('not opened');
    const late = [first.append(...next()), first.append(...next())];
    for (const answer of late)
      expect(await answer).toMatchObject({ ok: false, fault: { why: 'taken over' } });
    expect(second.store!.stored).toBe(1);
    await two.close();
    expect(numbersOf((await reopened(first.id)).book)).toEqual([1]);
  });

  test('a book that is closed can be opened for writing by another tab at once', async () => {
    const one = await libraryNow();
    const { id } = await created(one, createBook());
    await one.closeBook(id);
    const opened = await (await libraryNow()).openBook(id);
    expect(opened.ok && opened.store).toBeTruthy();
  });

  test('a book that another tab writes is not removed', async () => {
    const { id } = await created(await libraryNow(), createBook());
    expect(await (await libraryNow()).remove(id)).toMatchObject({ ok: false, fault: { why: 'in use' } });
  });
});

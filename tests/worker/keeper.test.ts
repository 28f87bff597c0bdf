import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Command } from '../../src/session/commands/index.ts';
import { Session } from '../../src/session/session.ts';
import { plainLocale } from '../../src/units/locale.ts';
import { Keeper } from '../../src/worker/keeper.ts';
import type { BookService, Keeping, Opened, Told } from '../../src/worker/protocol.ts';
import { serviceOf } from '../../src/worker/service.ts';
import { FakeLocks } from '../store/locks.ts';

let name = '';
let count = 0;
const keepers: Keeper[] = [];

interface Tab {
  readonly keeper: Keeper;
  readonly service: ReturnType<typeof serviceOf>;
  readonly told: Told[];
  /** What was last told about keeping. */
  keeping(): Keeping;
}

/** Another tab of the same browser. */
function tab(policy = {}): Tab {
  const told: Told[] = [];
  const keeper = new Keeper({
    locale: plainLocale,
    tell: (one) => told.push(one),
    library: { name, policy },
  });
  keeper.begin({ stopped: [], exact: false, version: 1 });
  keepers.push(keeper);
  return {
    keeper,
    service: serviceOf(keeper),
    told,
    keeping: () => told.findLast((one) => one.what === 'keeping')!.keeping,
  };
}

beforeEach(() => {
  name = `keeper ${count++}`;
  vi.stubGlobal('navigator', { locks: new FakeLocks() });
});
afterEach(async () => {
  for (const keeper of keepers.splice(0)) await keeper.close();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

const roster: Command[] = [
  { do: 'set-title', title: 'Roster' },
  {
    do: 'add-sheet',
    label: 'Roster',
    columns: [
      { label: 'femur', kind: 'number', dimension: 'length' },
      { label: 'twice', kind: 'number', formula: 'femur * 2' },
    ],
    rows: 3,
  },
  { do: 'set-cells', sheet: 'roster', row: 0, columns: ['femur'], texts: [['40'], ['41'], ['42']] },
];

async function filled(service: Tab['service']): Promise<string> {
  for (const command of roster) expect(await service.run(command)).toMatchObject({ ok: true });
  return (await service.save()).text;
}

const idOf = (opened: Opened): string => {
  if (!opened.ok || !opened.id) throw new Error('not kept');
  return opened.id;
};

const femurs = async (service: Pick<BookService, 'tile'>): Promise<readonly string[]> =>
  (await service.tile('roster', 0, 3, 0, 1)).texts;

describe('the keeper of the open book', () => {
  test('every answered command is in the journal: another program opens the same book, values and all', async () => {
    const one = tab();
    const text = await filled(one.service);
    expect(one.keeping()).toMatchObject({ state: 'kept' });
    // The tab dies here: nothing is closed, only its lock goes.
    vi.stubGlobal('navigator', { locks: new FakeLocks() });
    const two = tab();
    const [book] = await two.service.books();
    expect(book).toMatchObject({ title: 'Roster' });
    const opened = await two.service.openStored(book!.id);
    expect(opened).toMatchObject({ ok: true, notes: [] });
    expect((await two.service.save()).text).toBe(text);
    const { texts } = await two.service.tile('roster', 0, 3, 0, 2);
    expect(texts).toEqual(['40', '80', '41', '82', '42', '84']);
  });

  test('undo and redo are journaled, and reach back past a recovery', async () => {
    const one = tab();
    await filled(one.service);
    await one.service.run({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['femur'], texts: [['50']] });
    await one.service.undo();
    const text = (await one.service.save()).text;
    await one.keeper.close();

    const two = tab();
    const [book] = await two.service.books();
    const opened = await two.service.openStored(book!.id);
    expect((await two.service.save()).text).toBe(text);
    expect(opened).toMatchObject({ outline: { redo: expect.stringContaining('femur') } });
    await two.service.redo();
    expect(await femurs(two.service)).toEqual(['50', '41', '42']);
    for (let n = 0; n < 4; n++) expect(await two.service.undo()).toMatchObject({ ok: true });
    expect(await two.service.undo()).toEqual({ ok: false, sentence: 'There is nothing to undo.' });
    expect((await two.service.save()).text).toBe(Session.create().save());
  });

  test('undo and redo reach back past snapshots, of which the book is opened, to its beginning', async () => {
    const one = tab({ entries: 2 });
    await filled(one.service);
    for (const text of ['50', '60', '70', '80'])
      await one.service.run({
        do: 'set-cells',
        sheet: 'roster',
        row: 0,
        columns: ['femur'],
        texts: [[text]],
      });
    await one.service.undo();
    const text = (await one.service.save()).text;
    await one.keeper.close();

    // Opened twice: what was not undone after the first opening is still there at the second.
    for (const _ of [1, 2]) {
      const again = tab({ entries: 2 });
      const [book] = await again.service.books();
      const opened = await again.service.openStored(book!.id);
      expect(opened).toMatchObject({
        ok: true,
        notes: [],
        outline: { redo: expect.stringContaining('femur') },
      });
      expect(opened.ok && opened.outline.undoEnd).toBeUndefined();
      expect((await again.service.save()).text).toBe(text);
      await again.service.redo();
      expect(await femurs(again.service)).toEqual(['80', '41', '42']);
      await again.service.undo();
      await again.keeper.close();
    }
    const last = tab();
    const [book] = await last.service.books();
    await last.service.openStored(book!.id);
    for (let n = 0; n < 6; n++) expect(await last.service.undo()).toMatchObject({ ok: true });
    expect(await last.service.undo()).toEqual({ ok: false, sentence: 'There is nothing to undo.' });
    expect((await last.service.save()).text).toBe(Session.create().save());
  });

  test('a large import that made a snapshot due is undone after the book is opened again, and so is its undo', async () => {
    const one = tab();
    await filled(one.service);
    const before = (await one.service.save()).text;
    const rows = 200_000;
    const cells = {
      length: rows,
      kinds: new Uint8Array(rows).fill(1),
      numbers: Float64Array.from({ length: rows }, (_, row) => 40 + (row % 7)),
      texts: null,
      formulas: new Map(),
      held: new Map(),
    };
    // As an import hands it in.
    const added = one.keeper.session.writePlanned({
      words: 'Import long.csv',
      edit: {
        do: 'add-rows',
        sheet: one.keeper.session.current.sheets[0]!.id,
        row: 3,
        count: rows,
        cells: [cells],
      },
    });
    expect(added).toMatchObject({ ok: true });
    await one.service.run({ do: 'set-title', title: 'Long' });
    await one.keeper.close();

    const two = tab();
    const [book] = await two.service.books();
    const opened = await two.service.openStored(book!.id);
    expect(opened).toMatchObject({ ok: true, notes: [], outline: { undo: 'Rename the book' } });
    await two.service.undo();
    expect(await two.service.undo()).toMatchObject({ ok: true, outline: { redo: 'Import long.csv' } });
    expect((await two.service.save()).text).toBe(before);
    await two.service.redo();
    expect(two.keeper.session.outline().sheets[0]!.rows).toBe(3 + rows);
  });

  test('where undo ends before its time, undoing further is refused with the reason', async () => {
    // Room for short titles, not for a long one: what takes “Short” back carries the long one.
    const two = tab({ entries: 1, past: 200 });
    await filled(two.service);
    const [book] = await two.service.books();
    const long = 'x'.repeat(180);
    expect(await two.service.run({ do: 'set-title', title: long })).toMatchObject({ ok: true });
    await two.service.run({ do: 'set-title', title: 'Short' });
    await two.service.run({ do: 'set-title', title: 'Last' });
    await two.keeper.close();
    // Opening takes the snapshot that is due by now.
    const between = tab({ entries: 1, past: 200 });
    await between.service.openStored(book!.id);
    await between.keeper.close();
    const three = tab();
    const opened = await three.service.openStored(book!.id);
    expect(opened.ok && opened.outline.undoEnd).toMatch(
      /^Undo reaches back to “Rename the book”: the change before it, “Rename the book”, was too large to save\.$/,
    );
    expect(await three.service.undo()).toMatchObject({ ok: true });
    expect(await three.service.undo()).toEqual({
      ok: false,
      sentence: expect.stringMatching(
        /^Undo ends here: the change before, “Rename the book”, was too large to save\.$/,
      ),
    });
  });

  test('a refused command leaves nothing in the journal', async () => {
    const one = tab();
    await filled(one.service);
    const refused = await one.service.run({
      do: 'set-cells',
      sheet: 'nowhere',
      row: 0,
      columns: ['x'],
      texts: [['1']],
    });
    expect(refused.ok).toBe(false);
    const text = (await one.service.save()).text;
    await one.keeper.close();
    const two = tab();
    const [book] = await two.service.books();
    await two.service.openStored(book!.id);
    expect((await two.service.save()).text).toBe(text);
  });

  test('snapshots are taken in the background, and many commands at once keep their order', async () => {
    const one = tab({ entries: 4 });
    await filled(one.service);
    await Promise.all(
      Array.from({ length: 30 }, (_, n) =>
        one.service.run({
          do: 'set-cells',
          sheet: 'roster',
          row: n % 3,
          columns: ['femur'],
          texts: [[String(60 + n)]],
        }),
      ),
    );
    expect(await femurs(one.service)).toEqual(['87', '88', '89']);
    const text = (await one.service.save()).text;
    await one.keeper.close();
    const two = tab();
    const [book] = await two.service.books();
    expect(await two.service.openStored(book!.id)).toMatchObject({ ok: true, notes: [] });
    expect((await two.service.save()).text).toBe(text);
  });

  test('what is told to be stored is counted as it was asked for, refused or not', async () => {
    const one = tab();
    await Promise.all([
      one.service.goBack(99),
      one.service.undo(),
      one.service.run({ do: 'set-title', title: 'Third' }),
      one.service.importFile(),
      one.service.run({ do: 'set-title', title: 'Fifth' }),
    ]);
    expect(one.told.filter((told) => told.what === 'stored').map(({ change }) => change)).toEqual([3, 5]);
  });

  test('a file is kept as it is opened, a sample from its first change on', async () => {
    const text = await filled(tab().service);
    const one = tab();
    expect(await one.service.open(text, 'sample.leverbook.json', { sample: true })).not.toHaveProperty('id');
    expect(await one.service.books()).toHaveLength(1);
    await one.service.undo();
    await one.service.run({ do: 'set-title', title: 'Mine' });
    expect((await one.service.books()).map(({ title }) => title)).toContain('Mine');
    const id = idOf(await one.service.open(text, 'mine.leverbook.json'));
    expect((await one.service.books()).find((book) => book.id === id)).toMatchObject({
      origin: 'mine.leverbook.json',
    });
  });

  test('a file that is no book is refused in a sentence, and the open book stays', async () => {
    const one = tab();
    const text = await filled(one.service);
    expect(await one.service.open('{"a": 1}', 'x.json')).toMatchObject({ ok: false });
    expect((await one.service.save()).text).toBe(text);
    expect(await one.service.run({ do: 'set-title', title: 'Still here' })).toMatchObject({ ok: true });
  });

  test('what was recovered or lost is said on opening', async () => {
    const one = tab();
    await filled(one.service);
    await one.keeper.close();
    const { openDB } = await import('idb');
    const database = await openDB(name);
    const keys = await database.getAllKeys('entries');
    await database.delete('entries', keys.at(-1)!);
    database.close();
    const two = tab();
    const [book] = await two.service.books();
    expect(await two.service.openStored(book!.id)).toMatchObject({
      ok: true,
      notes: [expect.stringMatching(/^The last change could not be read back/)],
    });
    expect(await femurs(two.service)).toEqual(['', '', '']);
  });
});

describe('when the storage fails', () => {
  test('a full storage is told with what to do; the change stands, and is kept once there is room', async () => {
    const one = tab();
    await filled(one.service);
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
    expect(await one.service.run({ do: 'set-title', title: 'Unkept' })).toMatchObject({
      ok: true,
      outline: { title: 'Unkept' },
    });
    expect(one.keeping()).toMatchObject({
      state: 'not kept',
      sentence: expect.stringMatching(/no room.*Save the book to a file/),
    });
    expect(await one.service.keepAgain()).toMatchObject({ state: 'not kept' });
    IDBObjectStore.prototype.put = put;
    expect(await one.service.keepAgain()).toMatchObject({ state: 'kept' });
    await one.keeper.close();
    const two = tab();
    const [book] = await two.service.books();
    expect(book!.title).toBe('Unkept');
  });

  test('without any storage the book can be worked on, and it is told that nothing keeps it', async () => {
    vi.stubGlobal('indexedDB', undefined);
    const one = tab();
    await filled(one.service);
    expect(await femurs(one.service)).toEqual(['40', '41', '42']);
    expect(one.keeping()).toMatchObject({ state: 'not kept', sentence: expect.stringContaining('file') });
    expect(await one.service.books()).toEqual([]);
    expect(await one.service.keepVersion('v')).toMatchObject({ ok: false });
  });

  test('when the stored books are cleared, the open one goes on and it is told', async () => {
    const one = tab();
    await filled(one.service);
    const { openDB } = await import('idb');
    const database = await openDB(name);
    await database.clear('books');
    database.close();
    expect(await one.service.run({ do: 'set-title', title: 'On' })).toMatchObject({ ok: true });
    expect(one.keeping()).toMatchObject({ state: 'not kept' });
    expect(await one.service.run({ do: 'set-title', title: 'And on' })).toMatchObject({ ok: true });
  });
});

describe('two tabs', () => {
  test('the second reads and refuses changes with a sentence; after taking over the first does', async () => {
    const one = tab();
    await filled(one.service);
    const { id } = one.keeping();
    const two = tab();
    expect(await two.service.openStored(id!)).toMatchObject({ ok: true });
    expect(two.keeping()).toMatchObject({
      state: 'reading',
      sentence: expect.stringContaining('Take it over'),
    });
    expect(await femurs(two.service)).toEqual(['40', '41', '42']);
    expect(await two.service.run({ do: 'set-title', title: 'No' })).toMatchObject({ ok: false });

    expect(await two.service.openStored(id!, { takeOver: true })).toMatchObject({ ok: true });
    await vi.waitFor(() => expect(one.keeping()).toMatchObject({ state: 'reading' }));
    expect(await one.service.run({ do: 'set-title', title: 'No' })).toEqual({
      ok: false,
      sentence: expect.stringContaining('changed in another tab'),
    });
    expect(await two.service.run({ do: 'set-title', title: 'Mine now' })).toMatchObject({ ok: true });
    expect(two.keeping()).toMatchObject({ state: 'kept', id });
    expect(one.told.some(({ what }) => what === 'free')).toBe(false);
    await two.keeper.close();
    await vi.waitFor(() => expect(one.told).toContainEqual({ what: 'free', id }));
  });
});

describe('versions', () => {
  test('keep one, compare, go back as a step that undo takes back, drop it', async () => {
    const one = tab();
    const before = await filled(one.service);
    expect(await one.service.keepVersion('Before the retest')).toMatchObject({ ok: true });
    await one.service.run({ do: 'set-cells', sheet: 'roster', row: 1, columns: ['femur'], texts: [['45']] });
    const after = (await one.service.save()).text;
    expect(await one.service.compareVersion(1)).toEqual({
      ok: true,
      comparison: {
        cells: 1,
        differences: [{ what: 'cell', sheet: 'roster', column: 'femur', row: 1, before: 41, after: 45 }],
      },
    });
    expect(await one.service.goBack(1)).toMatchObject({
      ok: true,
      outline: { undo: 'Restore a version' },
    });
    expect((await one.service.save()).text).toBe(before);
    await one.service.undo();
    expect((await one.service.save()).text).toBe(after);
    await one.service.dropVersion(1);
    expect(await one.service.versions()).toEqual([]);
    expect(await one.service.goBack(1)).toMatchObject({ ok: false });
  });

  test('removing the open book leaves an empty one', async () => {
    const one = tab();
    await filled(one.service);
    expect(await one.service.removeBook(one.keeping().id!)).toEqual({ ok: true });
    expect(await one.service.books()).toEqual([]);
    expect(one.keeper.session.outline().sheets).toEqual([]);
  });
});

describe('what is told while values are computed', () => {
  test('the place of each formula comes before it is computed, and nothing when the work is done', async () => {
    const one = tab();
    await filled(one.service);
    one.told.length = 0;
    await one.service.run({ do: 'set-cells', sheet: 'roster', row: 1, columns: ['femur'], texts: [['45']] });
    const computing = one.told.filter((told) => told.what === 'computing').map((told) => told.computing);
    expect(computing[0]).toEqual({ place: { sheet: 'roster', column: 'twice' }, exact: true });
    expect(computing.at(-1)).toBeNull();
  });

  test('a formula that hung before is left out, marked, and computed again once it is changed', async () => {
    const text = await filled(tab().service);
    const one = tab();
    one.keeper.begin({
      stopped: [{ sheet: 'roster', column: 'twice' }],
      exact: true,
      version: 7,
    });
    const opened = await one.service.open(text, 'x.json');
    expect(opened.ok && opened.outline.version).toBeGreaterThan(7);
    expect(await one.service.doubts()).toEqual([expect.objectContaining({ about: 'hung' })]);
    await one.service.run({ do: 'set-formula', sheet: 'roster', column: 'twice', formula: 'femur * 3' });
    expect(await one.service.doubts()).toEqual([]);
    expect((await one.service.tile('roster', 0, 1, 1, 1)).texts).toEqual(['120']);
  });
});

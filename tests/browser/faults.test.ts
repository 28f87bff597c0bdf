import { rm } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Served } from './browser.ts';
import { type Mortal, profile, serveFaults, start } from './faults/mortal.ts';
import type { Reach } from './faults/page.ts';

declare const reach: Reach;

let served: Served;
let home: string;
let mortal: Mortal;
let page: Page;

beforeAll(async () => {
  served = await serveFaults();
});
afterAll(() => served.close());
beforeEach(async () => {
  home = await profile();
  mortal = await start(home, served.address);
  ({ page } = mortal);
});
afterEach(async () => {
  await mortal.kill();
  await rm(home, { recursive: true, force: true });
});

/** A roster of three lifters, twice their femur beside it; answers the id under which it is kept. */
async function roster(on: Page = page): Promise<string> {
  return on.evaluate(async () => {
    const { service } = reach;
    await service.blank();
    await service.run({
      do: 'add-sheet',
      label: 'Roster',
      rows: 3,
      columns: [
        { label: 'femur', kind: 'number' },
        { label: 'twice', kind: 'number', formula: 'femur * 2' },
      ],
    });
    await service.run({
      do: 'set-cells',
      sheet: 'roster',
      row: 0,
      columns: ['femur'],
      texts: [['40'], ['41'], ['42']],
    });
    return reach.keepings.at(-1)!.id!;
  });
}

const texts = (on: Page = page): Promise<readonly string[]> =>
  on.evaluate(async () => (await reach.service.tile('roster', 0, 3, 0, 2)).texts);

const type = (row: number, text: string, on: Page = page) =>
  on.evaluate(
    ([row, text]) =>
      reach.service.run({ do: 'set-cells', sheet: 'roster', row, columns: ['femur'], texts: [[text]] }),
    [row, text] as const,
  );

/** The open book as the text of its file. */
const saved = () => page.evaluate(async () => (await reach.service.save()).text);

const keeping = (on: Page = page) => on.evaluate(() => reach.keepings.at(-1)!);

/** Opens the stored book after the page was loaded anew. */
async function again(id: string) {
  await page.goto(served.address);
  return page.evaluate((id) => reach.service.openStored(id), id);
}

describe('a worker that ends', () => {
  test('is started again with the page alive: the book is as it was stored, and what was asked is answered', async () => {
    await roster();
    await page.evaluate(() => reach.workers.at(-1)!.terminate());
    const done = await type(1, '50');
    expect(done).toMatchObject({ ok: true });
    expect(await texts()).toEqual(['40', '80', '50', '100', '42', '84']);
    expect(await page.evaluate(() => reach.restarts.length)).toBe(1);
    expect(await page.evaluate(() => reach.restarts[0]!.opened.ok)).toBe(true);
    expect(await keeping()).toMatchObject({ state: 'kept' });
    expect(await page.evaluate(() => reach.service.undo())).toMatchObject({ ok: true });
    expect(await texts()).toEqual(['40', '80', '41', '82', '42', '84']);
  });
});

describe('a formula that never comes back', () => {
  test('is stopped in 2 s and marked; the rest goes on, and it is computed again once it is changed', async () => {
    await roster();
    const begun = Date.now();
    const stopped = page.evaluate(() =>
      reach.service.run({
        do: 'set-formula',
        sheet: 'roster',
        column: 'twice',
        row: 1,
        formula: 'NEVER() + 1',
      }),
    );
    await new Promise((resolve) => setTimeout(resolve, 500));
    const asked = texts();
    await page.waitForFunction(() => reach.workers.length === 2, undefined, { polling: 20 });
    expect(Date.now() - begun).toBeLessThan(3_000);
    expect(await stopped).toMatchObject({ ok: true, note: expect.stringContaining('took too long') });
    expect(await asked).toEqual(['40', '80', '41', '#ERROR!', '42', '84']);
    expect(await page.evaluate(() => reach.service.doubts())).toMatchObject([
      { about: 'hung', place: { sheet: 'roster', column: 'twice', row: 1 } },
    ]);
    await type(0, '45');
    expect(await texts()).toEqual(['45', '90', '41', '#ERROR!', '42', '84']);
    await page.evaluate(() =>
      reach.service.run({ do: 'set-formula', sheet: 'roster', column: 'twice', row: 1, formula: 'femur' }),
    );
    expect(await texts()).toEqual(['45', '90', '41', '41', '42', '84']);
    expect(await page.evaluate(() => reach.restarts.length)).toBe(1);
    expect(await page.evaluate(() => reach.service.undo())).toMatchObject({ ok: true });
  });

  test('is found among a thousand others when a book is opened, a second one too', async () => {
    const cells = Array.from({ length: 1_000 }, (_, i) => [i === 600 || i === 800 ? 'NEVER()' : `${i} + 1`]);
    const text = JSON.stringify({
      leverbook: 1,
      title: 'Many',
      sheets: [
        {
          name: 'many',
          purpose: 'worked',
          rows: 1_000,
          columns: [{ name: 'x', kind: 'number', cells: cells.map(([formula]) => ({ formula })) }],
        },
      ],
    });
    const opened = await page.evaluate((text) => reach.service.open(text, 'many.leverbook.json'), text);
    expect(opened).toMatchObject({ ok: true, notes: [expect.stringContaining('took too long')] });
    const doubts = await page.evaluate(() => reach.service.doubts());
    expect(doubts.map(({ about, place }) => [about, place.row])).toEqual([
      ['hung', 600],
      ['hung', 800],
    ]);
    const { texts } = await page.evaluate(() => reach.service.tile('many', 598, 5, 0, 1));
    expect(texts).toEqual(['599', '600', '#ERROR!', '602', '603']);
  });

  test('that is only tried out is stopped, and the book is untouched', async () => {
    await roster();
    const preview = await page.evaluate(() =>
      reach.service.preview('NEVER()', { sheet: 'roster', column: 'twice', row: 0 }),
    );
    expect(preview).toMatchObject({ error: true, display: expect.stringContaining('took too long') });
    expect(await texts()).toEqual(['40', '80', '41', '82', '42', '84']);
    expect(await page.evaluate(() => reach.service.doubts())).toEqual([]);
  });

  test('in a book that nothing keeps is refused, and what was done before is done again', async () => {
    await page.evaluate(() => reach.service.fill(true));
    await page.evaluate(async () => {
      await reach.service.blank();
      await reach.service.run({
        do: 'add-sheet',
        label: 'Roster',
        rows: 3,
        columns: [{ label: 'femur', kind: 'number' }],
      });
    });
    expect(await keeping()).toMatchObject({ state: 'not kept' });
    await type(0, '40');
    const done = await type(1, '=NEVER()');
    expect(done).toMatchObject({ ok: false, sentence: expect.stringContaining('took too long') });
    const { texts } = await page.evaluate(() => reach.service.tile('roster', 0, 3, 0, 1));
    expect(texts).toEqual(['40', '', '']);
  });
});

describe('storage', () => {
  test('that the browser limits is said to be full; with room again everything is kept', async () => {
    const session = await page.context().newCDPSession(page);
    const origin = new URL(served.address).origin;
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 400_000 });
    const id = await roster();
    for (let n = 0; n < 20 && (await keeping()).state === 'kept'; n++)
      await page.evaluate(
        ([key, value]) => reach.service.run({ do: 'set-part', part: 'marks', key, value }),
        [`note ${n}`, Array.from({ length: 9_000 }, (_, i) => `${i * 7919 * n}`).join(' ')] as const,
      );
    expect(await keeping()).toMatchObject({
      state: 'not kept',
      sentence: expect.stringMatching(/no room left.*Save the book to a file/),
    });
    await type(2, '43');
    const text = await saved();
    await session.send('Storage.overrideQuotaForOrigin', { origin });
    expect(await page.evaluate(() => reach.service.keepAgain())).toMatchObject({ state: 'kept' });
    expect(await again(id)).toMatchObject({ ok: true, notes: [] });
    expect(await saved()).toBe(text);
  });

  test('cleared while the book is open is said, and the book on the page goes on', async () => {
    await roster();
    await dropDatabase();
    expect(await type(0, '47')).toMatchObject({ ok: true });
    expect(await keeping()).toMatchObject({ state: 'not kept', sentence: expect.stringContaining('file') });
    expect(await texts()).toEqual(['47', '94', '41', '82', '42', '84']);
  });

  /** Changes a row of the database by hand. */
  const tamper = (store: string, which: 'last' | 'first', how: 'flip' | 'delete') =>
    page.evaluate(
      ([store, which, how]) =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('leverbook');
          opening.onsuccess = () => {
            const database = opening.result;
            const transaction = database.transaction(store, 'readwrite');
            transaction.oncomplete = () => {
              database.close();
              resolve();
            };
            transaction.onerror = () => reject(transaction.error);
            const cursor = transaction
              .objectStore(store)
              .openCursor(null, which === 'last' ? 'prev' : 'next');
            cursor.onsuccess = () => {
              const at = cursor.result!;
              if (how === 'delete') at.delete();
              else {
                const { bytes } = at.value;
                bytes[bytes.length >> 1] ^= 1;
                at.update({ ...at.value, bytes });
              }
            };
          };
        }),
      [store, which, how] as const,
    );

  /** Cuts the files of the second journal to a share of what stands in them. Answers the bytes before, in all. */
  const cut = (share: number) =>
    page.evaluate(async (share) => {
      const root = await navigator.storage.getDirectory();
      const folder = await root.getDirectoryHandle('leverbook journals');
      let size = 0;
      for await (const file of folder.values()) {
        if (file.kind !== 'file' || !/\.[0-3]$/.test(file.name)) continue;
        const writable = await file.createWritable({ keepExistingData: true });
        const before = (await file.getFile()).size;
        await writable.truncate(Math.floor(before * share));
        await writable.close();
        size += before;
      }
      return size;
    }, share);

  /** As Chromium does when it finds its database damaged: all of it goes. */
  const dropDatabase = async () => {
    const session = await page.context().newCDPSession(page);
    await session.send('Storage.clearDataForOrigin', {
      origin: new URL(served.address).origin,
      storageTypes: 'indexeddb',
    });
  };

  test('a damaged snapshot is said, and the second journal gives the whole book', async () => {
    const id = await roster();
    for (let n = 0; n < 12; n++) await type(n % 3, String(50 + n));
    const text = await saved();
    await page.goto('about:blank');
    await page.goto(served.address);
    await tamper('snapshots', 'last', 'flip');
    expect(await again(id)).toMatchObject({
      ok: true,
      notes: [expect.stringMatching(/was damaged.*rebuilt from its second journal/)],
    });
    expect(await saved()).toBe(text);
    expect(await again(id)).toMatchObject({ ok: true, notes: [] });
  });

  test('a damaged snapshot without a second journal is said, and the one before gives the whole book', async () => {
    const id = await roster();
    for (let n = 0; n < 12; n++) await type(n % 3, String(50 + n));
    const text = await saved();
    await page.goto('about:blank');
    await page.goto(served.address);
    await tamper('snapshots', 'last', 'flip');
    expect(await cut(0)).toBeGreaterThan(0);
    const opened = await again(id);
    expect(opened).toMatchObject({
      ok: true,
      notes: [
        expect.stringContaining('is damaged and was not used'),
        expect.stringContaining('was rebuilt from'),
      ],
    });
    expect(await saved()).toBe(text);
  });

  test('that the browser has deleted as damaged is said; every change, what can be undone and the versions are back', async () => {
    const id = await roster();
    const first = await saved();
    expect(await page.evaluate(() => reach.service.keepVersion('At first'))).toMatchObject({ ok: true });
    for (let n = 0; n < 8; n++) await type(n % 3, String(50 + n));
    const text = await saved();
    // At once after the last answer.
    await page.goto('about:blank');
    await dropDatabase();
    await page.goto(served.address);
    expect(await page.evaluate(() => reach.service.books())).toMatchObject([
      { id, title: expect.anything() },
    ]);
    expect(await page.evaluate((id) => reach.service.openStored(id), id)).toMatchObject({
      ok: true,
      notes: [
        expect.stringMatching(
          /has lost its saved copy of.*restored from its second journal, with its named version; its last saved change is “Change femur of row 2”/,
        ),
      ],
    });
    expect(await saved()).toBe(text);
    expect(await page.evaluate(() => reach.service.undo())).toMatchObject({ ok: true });
    expect(await texts()).toEqual(['56', '112', '54', '108', '55', '110']);
    expect(await page.evaluate(() => reach.service.goBack(1))).toMatchObject({ ok: true });
    expect(await saved()).toBe(first);
    expect(await type(0, '60')).toMatchObject({ ok: true });

    expect(await page.evaluate((id) => reach.service.removeBook(id), id)).toMatchObject({ ok: true });
    await dropDatabase();
    await page.goto(served.address);
    expect(await page.evaluate(() => reach.service.books())).toEqual([]);
  });

  test('that is deleted, with the second journal cut too, is said; every change before the cut is there', async () => {
    const id = await roster();
    await page.evaluate(() => reach.service.keepVersion('At first'));
    const states = new Set([await saved()]);
    for (let n = 0; n < 3; n++) {
      await type(n % 3, String(50 + n));
      states.add(await saved());
    }
    await page.goto('about:blank');
    await page.goto(served.address);
    await cut(0.98);
    await dropDatabase();
    await page.goto(served.address);
    expect(await page.evaluate((id) => reach.service.openStored(id), id)).toMatchObject({
      ok: true,
      notes: [
        expect.stringMatching(
          /has lost its saved copy of.*with its named version.*what came after it is lost/,
        ),
      ],
    });
    // Of the changes since the copy, the last one is cut.
    expect(await saved()).toBe([...states].at(-2));
    expect(await page.evaluate(() => reach.service.versions())).toMatchObject([{ name: 'At first' }]);
    expect(await type(1, '70')).toMatchObject({ ok: true });
    expect(await again(id)).toMatchObject({ ok: true, notes: [] });
  });

  test('a journal that lacks its end is made good from the second one', async () => {
    const id = await roster();
    await type(0, '60');
    await type(1, '61');
    await page.goto('about:blank');
    await page.goto(served.address);
    await tamper('entries', 'last', 'delete');
    expect(await again(id)).toMatchObject({
      ok: true,
      notes: [
        expect.stringMatching(/^The last change could not be read back.*from the book's second journal/),
      ],
    });
    expect(await texts()).toEqual(['60', '120', '61', '122', '42', '84']);
    await type(1, '62');
    expect(await again(id)).toMatchObject({ ok: true, notes: [] });
    expect(await texts()).toEqual(['60', '120', '62', '124', '42', '84']);
  });

  test('both journals cut: it is said what is lost, and the rest is kept', async () => {
    const id = await roster();
    await type(0, '60');
    await type(1, '61');
    await page.goto('about:blank');
    await page.goto(served.address);
    await tamper('entries', 'last', 'delete');
    await cut(0.98);
    expect(await again(id)).toMatchObject({
      ok: true,
      notes: [expect.stringMatching(/^The last change could not be read back.*everything before it is here/)],
    });
    expect(await texts()).toEqual(['60', '120', '41', '82', '42', '84']);
    await type(1, '62');
    expect(await again(id)).toMatchObject({ ok: true, notes: [] });
    expect(await texts()).toEqual(['60', '120', '62', '124', '42', '84']);
  });

  test('books of a newer program are left alone, and it is said', async () => {
    await roster();
    await page.goto('about:blank');
    await page.goto(served.address);
    await page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open('leverbook', 99);
          opening.onsuccess = () => {
            opening.result.close();
            resolve();
          };
        }),
    );
    expect(await page.evaluate(() => reach.service.books())).toEqual([]);
    expect(await keeping()).toMatchObject({
      state: 'not kept',
      sentence: expect.stringContaining('newer Leverbook'),
    });
  });
});

describe('two tabs on one book', () => {
  test('the second reads; taking over, it writes, and the first is told and refuses changes', async () => {
    const id = await roster();
    const other = await page.context().newPage();
    await other.goto(served.address);
    expect(await other.evaluate((id) => reach.service.openStored(id), id)).toMatchObject({ ok: true });
    expect(await keeping(other)).toMatchObject({
      state: 'reading',
      sentence: expect.stringContaining('Take it over'),
    });
    expect(await type(0, '1', other)).toMatchObject({ ok: false });
    expect(await type(0, '48')).toMatchObject({ ok: true });

    await other.evaluate((id) => reach.service.openStored(id, { takeOver: true }), id);
    expect(await texts(other)).toEqual(['48', '96', '41', '82', '42', '84']);
    await page.waitForFunction(() => reach.keepings.at(-1)!.state === 'reading');
    expect(await type(0, '2')).toMatchObject({ ok: false, sentence: expect.stringContaining('another tab') });
    expect(await type(0, '49', other)).toMatchObject({ ok: true });

    // The first one waits: when the other is closed, it has the book again, with what was done there.
    await other.close();
    await page.waitForFunction(() => reach.keepings.at(-1)!.state === 'kept');
    expect(await page.evaluate(() => reach.restarts.at(-1)!.sentence)).toContain(
      'The other tab has closed this book',
    );
    expect(await texts()).toEqual(['49', '98', '41', '82', '42', '84']);
    expect(await type(1, '50')).toMatchObject({ ok: true });
  });

  test('a tab that was closed leaves the book to the next one', async () => {
    const id = await roster();
    const other = await page.context().newPage();
    await other.goto(served.address);
    await page.close();
    expect(await other.evaluate((id) => reach.service.openStored(id), id)).toMatchObject({ ok: true });
    expect(await keeping(other)).toMatchObject({ state: 'kept' });
  });
});

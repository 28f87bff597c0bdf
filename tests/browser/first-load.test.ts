import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { buildAndServe, launch, sheetShown } from './browser.ts';

/** Most that may be loaded before the first sheet shows, in bytes as gzip sends them. */
const most = { page: 400_000, worker: 300_000 };

test('before the sample book shows, the page and the worker load no more script than they may', async () => {
  const served = await buildAndServe();
  try {
    const watched = await launch(served.address);
    await sheetShown(watched.page);
    const loaded = await watched.page.evaluate(() =>
      performance.getEntriesByType('resource').flatMap(({ name }) => (name.endsWith('.js') ? name : [])),
    );
    const [worker, ...others] = watched.page.workers().map((one) => one.url());
    await watched.close();
    expect(others).toEqual([]);

    const texts = new Map<string, string>();
    const textOf = async (url: string): Promise<string> => {
      const text = texts.get(url) ?? (await (await fetch(url)).text());
      texts.set(url, text);
      return text;
    };
    /** A script and what it imports at its head; page and worker are built apart and share none. */
    const withImports = async (url: string, seen = new Set<string>()): Promise<Set<string>> => {
      if (seen.has(url)) return seen;
      seen.add(url);
      for (const [, path] of (await textOf(url)).matchAll(/(?:from|import)\s*["'](\.\/[^"']+\.js)["']/g))
        await withImports(new URL(path!, url).href, seen);
      return seen;
    };
    const sizeOf = async (urls: Iterable<string>): Promise<number> => {
      let bytes = 0;
      for (const url of urls) bytes += gzipSync(await textOf(url), { level: 9 }).length;
      return bytes;
    };
    const byWorker = await withImports(worker!);
    const sizes = {
      page: await sizeOf(new Set(loaded.filter((url) => !byWorker.has(url)))),
      worker: await sizeOf(byWorker),
    };
    console.log(`first load, kB gzip: page ${sizes.page / 1000}, worker ${sizes.worker / 1000}`);
    for (const who of ['page', 'worker'] as const) {
      // Far too little would be a miss of this search.
      expect(sizes[who]).toBeGreaterThan(100_000);
      expect(sizes[who]).toBeLessThanOrEqual(most[who]);
    }
  } finally {
    await served.close();
  }
});

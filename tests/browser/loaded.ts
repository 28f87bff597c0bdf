import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';

/** Bytes, as gzip sends them, of the scripts that the page and its worker have loaded. */
export async function loadedScripts(page: Page): Promise<{ readonly page: number; readonly worker: number }> {
  const loaded = await page.evaluate(() =>
    performance.getEntriesByType('resource').flatMap(({ name }) => (name.endsWith('.js') ? name : [])),
  );
  const [worker, ...others] = page.workers().map((one) => one.url());
  if (worker === undefined || others.length > 0) throw new Error('the page has one worker, and no other');
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
  const byWorker = await withImports(worker);
  return {
    page: await sizeOf(new Set(loaded.filter((url) => !byWorker.has(url)))),
    worker: await sizeOf(byWorker),
  };
}

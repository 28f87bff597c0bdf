import { expect, test } from 'vitest';
import { inBrowser } from './in-browser.ts';
import { loadedScripts } from './loaded.ts';

/**
 * Most that may be loaded before the first sheet shows, in bytes as gzip sends them. Of the worker's, 3 kB are sines, tangents and
 * hyperbolic functions of our own, so that every browser gives a formula the same digits; 6 kB say what each built-in function is
 * called, measures and needs, and 4 kB what a column is and what waits for a missing measure.
 */
const most = { page: 400_000, worker: 360_000 };

const watched = inBrowser();

test('before the sample book shows, the page and the worker load no more script than they may', async () => {
  const sizes = await loadedScripts(watched.page);
  console.log(`first load, kB gzip: page ${sizes.page / 1000}, worker ${sizes.worker / 1000}`);
  for (const who of ['page', 'worker'] as const) {
    // Far too little would be a miss of this search.
    expect(sizes[who]).toBeGreaterThan(100_000);
    expect(sizes[who]).toBeLessThanOrEqual(most[who]);
  }
});

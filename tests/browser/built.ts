import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildInto, serve } from './browser.ts';

/** Builds the page once before the browser tests, into a folder of this run, and serves it: no test meets a page that somebody built before. */
export default async function built(): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'leverbook-built-'));
  await buildInto(folder);
  const { address, close } = await serve(folder);
  process.env.LEVERBOOK_ADDRESS = address;
  return async () => {
    await close();
    await rm(folder, { recursive: true, force: true });
  };
}

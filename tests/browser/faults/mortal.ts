import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium as driver, type Page } from 'playwright-core';
import { buildAndServeFrom, executable, type Served } from '../browser.ts';

/** Builds and serves the page of the fault tests. */
export const serveFaults = (): Promise<Served> => buildAndServeFrom(import.meta.dirname);

/** A browser of its own group of processes, which can be killed as a power cut would. */
export interface Mortal {
  readonly page: Page;
  readonly browser: Browser;
  /** Ends all its processes at once, without a word to them. */
  kill(): Promise<void>;
}

export async function start(profile: string, address: string): Promise<Mortal> {
  const child = spawn(
    await executable(),
    [
      '--headless',
      '--no-sandbox',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const gone = once(child, 'exit');
  const kill = async (): Promise<void> => {
    try {
      process.kill(-child.pid!, 'SIGKILL');
    } catch {
      // It has ended already.
    }
    await gone;
  };
  try {
    const browser = await driver.connectOverCDP(await endpoint(child));
    const context = browser.contexts()[0]!;
    const page = context.pages()[0] ?? (await context.newPage());
    await page.goto(address);
    return { page, browser, kill };
  } catch (reason) {
    await kill();
    throw reason;
  }
}

/** Where the browser listens, as it says itself. */
function endpoint(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr!.on('data', (data: Buffer) => {
      said += data.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said);
      if (found) resolve(found[1]!);
    });
    child.once('exit', () => reject(new Error(`the browser ended: ${said.slice(-500)}`)));
  });
}

export const profile = (): Promise<string> => mkdtemp(join(tmpdir(), 'leverbook-mortal-'));

import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import chromium from '@sparticuz/chromium';
import {
  type BrowserContext,
  type BrowserContextOptions,
  chromium as driver,
  type Locator,
  type Page,
} from 'playwright-core';
import { build, preview } from 'vite';

/** A server for the built page on a free port of this machine. */
export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

/** Builds the page into a folder of its own and serves it: a test never meets a page that somebody built before. */
export async function buildAndServe(): Promise<Served> {
  const outDir = await mkdtemp(join(tmpdir(), 'leverbook-built-'));
  await build({ build: { outDir, emptyOutDir: true }, logLevel: 'error' });
  const served = await serve(outDir);
  return {
    address: served.address,
    close: async () => {
      await served.close();
      await rm(outDir, { recursive: true, force: true });
    },
  };
}

/** Serves a page that is built already. */
export async function serve(outDir = 'dist/app'): Promise<Served> {
  const server = await preview({
    configFile: false,
    root: process.cwd(),
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1', open: false },
    logLevel: 'error',
  });
  const at = server.httpServer.address();
  if (at === null || typeof at === 'string') throw new Error('the preview server has no port');
  return {
    address: `http://127.0.0.1:${at.port}/`,
    close: () => server.close(),
  };
}

/** What went wrong in a browser while a test drove it; a test ends by asking that it is empty. */
export interface Watched {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Console errors, thrown errors, policy violations and requests to elsewhere. */
  readonly faults: readonly string[];
  close(): Promise<void>;
}

/** Starts Chromium with a fresh profile, does what comes `first`, and opens the page. */
export async function launch(
  address: string,
  options: BrowserContextOptions = {},
  first?: (context: BrowserContext) => Promise<void>,
): Promise<Watched> {
  const profile = await mkdtemp(join(tmpdir(), 'leverbook-browser-'));
  const context = await driver.launchPersistentContext(profile, {
    executablePath: await executable(),
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    acceptDownloads: true,
    ...options,
  });
  const page = context.pages()[0] ?? (await context.newPage());
  const faults: string[] = [];
  watch(page, new URL(address).origin, faults);
  await first?.(context);
  await page.goto(address);
  return {
    context,
    page,
    faults,
    close: async () => {
      await context.close();
      await rm(profile, { recursive: true, force: true });
    },
  };
}

/** The browser's path. Its package unpacks it on first use; two test files at once must not do that over each other. */
export async function executable(): Promise<string> {
  const lock = join(tmpdir(), 'leverbook-unpacking');
  for (let tries = 0; ; tries++) {
    try {
      await mkdir(lock);
      break;
    } catch (reason) {
      // A lock that outlives a minute was left behind by a test that was ended.
      if (tries > 600) await rm(lock, { recursive: true, force: true });
      else if ((reason as NodeJS.ErrnoException).code !== 'EEXIST') throw reason;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
  try {
    return await chromium.executablePath();
  } finally {
    await rm(lock, { recursive: true, force: true });
  }
}

function watch(page: Page, origin: string, faults: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()} ${message.location().url}`);
  });
  page.on('pageerror', (error) => faults.push(`thrown: ${error.message}`));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !/^(data|blob|about):/.test(url)) faults.push(`request to ${url}`);
  });
  page.on('requestfailed', (request) =>
    faults.push(`failed: ${request.url()} ${request.failure()?.errorText}`),
  );
}

/** As in a browser that lets no page write files: saving downloads, opening uploads. */
export async function withoutFileAccess(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    Reflect.deleteProperty(window, 'showSaveFilePicker');
    Reflect.deleteProperty(window, 'showOpenFilePicker');
  });
}

/** Waits until the first sheet shows its values. */
export async function sheetShown(page: Page): Promise<void> {
  await page.locator('.sheet-grid td:not(.waiting):not(:empty)').first().waitFor();
}

/** A cell of the sheet on show by its row, from 1, and its column's heading. The window must be wide enough and the top rows in view. */
export async function cellOf(page: Page, row: number, heading: string): Promise<Locator> {
  const label = page
    .locator('.sheet-grid .ht_clone_top thead th, .sheet-grid .ht_clone_top_inline_start_corner thead th')
    .filter({ has: page.locator('.heading-words').getByText(heading, { exact: true }) })
    .first();
  const index = await label.getAttribute('aria-colindex');
  const frozen = await page
    .locator(`.sheet-grid .ht_clone_inline_start tbody td[aria-colindex="${index}"]`)
    .count();
  const part = frozen > 0 ? '.ht_clone_inline_start' : '.ht_master';
  return page.locator(
    `.sheet-grid ${part} tbody tr[aria-rowindex="${row + 1}"] td[aria-colindex="${index}"]`,
  );
}

/** Runs a command by its words, as the command finder finds it. */
export async function runCommand(page: Page, words: string): Promise<void> {
  await page.keyboard.press('F1');
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
}

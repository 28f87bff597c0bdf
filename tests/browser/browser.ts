import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import chromium from '@sparticuz/chromium';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium as driver,
  type Locator,
  type Page,
  type Worker,
} from 'playwright-core';
import { build, preview } from 'vite';
import { policy } from '../../vite.config.ts';
import { leaveOut } from '../../vite.left-out.ts';

/** A server for the built page on a free port of this machine. */
export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

/** Builds the page and serves it. */
export async function buildAndServe(): Promise<Served> {
  const outDir = await mkdtemp(join(tmpdir(), 'leverbook-built-'));
  await buildInto(outDir);
  return servedFrom(outDir);
}

/** Serves a folder that goes with its server. */
async function servedFrom(outDir: string): Promise<Served> {
  const served = await serve(outDir);
  return {
    address: served.address,
    close: async () => {
      await served.close();
      await rm(outDir, { recursive: true, force: true });
    },
  };
}

/** Builds and serves a page of the tests' own, from its folder, with the app's worker or one like it. */
export async function buildAndServeFrom(root: string): Promise<Served> {
  const outDir = await mkdtemp(join(tmpdir(), 'leverbook-page-'));
  await build({
    configFile: false,
    root,
    base: './',
    worker: { format: 'es', plugins: () => [leaveOut('hyperformula', 'zod')] },
    build: { outDir, emptyOutDir: true, target: 'es2022', minify: false, chunkSizeWarningLimit: 10_000 },
    logLevel: 'error',
  });
  return servedFrom(outDir);
}

/** Builds the page as its users get it: under the name that the test runner works by, it would be one for developing. */
export async function buildInto(outDir: string): Promise<void> {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await build({ build: { outDir, emptyOutDir: true }, logLevel: 'error' });
  } finally {
    process.env.NODE_ENV = before;
  }
}

/** Serves a page that is built already. */
export async function serve(outDir = 'dist/app', port = 0): Promise<Served> {
  const server = await preview({
    configFile: false,
    root: process.cwd(),
    build: { outDir },
    // The page states the policy itself; workers have only what comes with their file.
    preview: { port, host: '127.0.0.1', open: false, headers: { 'Content-Security-Policy': policy } },
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
  /** Console errors, thrown errors, policy violations, requests that failed and requests to elsewhere. */
  readonly faults: string[];
  /** Closes the browser. @throws Error for faults that no test has looked at. */
  close(): Promise<void>;
}

/** Shared by the files that one process tests: each test has a context of its own in it, as fresh as a profile. */
let shared: Promise<Browser> | null = null;

async function browser(): Promise<Browser> {
  const open = await shared?.catch(() => null);
  if (open?.isConnected()) return open;
  shared = executable().then((executablePath) => driver.launch({ executablePath, args: [...flags] }));
  return shared;
}

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/** Opens the page in a context without a past, after what comes `first`. */
export async function launch(
  address: string,
  options: BrowserContextOptions = {},
  first?: (context: BrowserContext) => Promise<void>,
): Promise<Watched> {
  const context = await (await browser()).newContext({
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    acceptDownloads: true,
    ...options,
  });
  // As with the tests themselves: one limit for all, far from what a busy machine needs.
  context.setDefaultTimeout(60_000);
  const page = await context.newPage();
  // Files are asked for by the page's own means from the start: told only when a test waits for it, the browser may be late.
  page.on('filechooser', () => undefined);
  const faults: string[] = [];
  await watch(context, new URL(address).origin, faults);
  await first?.(context);
  await page.goto(address);
  return {
    context,
    page,
    faults,
    close: async () => {
      const left = [...faults];
      await context.close();
      if (left.length > 0) throw new Error(`what went wrong in the browser:\n${left.join('\n')}`);
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

/** Watches every page of a browser, their workers and the service worker. */
async function watch(context: BrowserContext, origin: string, faults: string[]): Promise<void> {
  // A violation also ends up in the console, but not from every kind of worker.
  await context.addInitScript(tellViolations);
  const worker = (one: Worker): void => {
    // A worker that has ended by then has nothing to tell.
    one.evaluate(tellViolations).catch(() => undefined);
  };
  const page = (one: Page): void => void one.on('worker', worker);
  context.pages().forEach(page);
  context.on('page', page);
  context.on('serviceworker', worker);
  context.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()} ${message.location().url}`);
  });
  context.on('weberror', (error) => faults.push(`thrown: ${error.error().message}`));
  context.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(`${origin}/`) && !/^(data|blob|about):/.test(url)) faults.push(`request to ${url}`);
  });
  context.on('requestfailed', (request) =>
    faults.push(`failed: ${request.url()} ${request.failure()?.errorText}`),
  );
}

/** Runs in the browser. */
function tellViolations(): void {
  addEventListener('securitypolicyviolation', (event) => {
    const { effectiveDirective, blockedURI } = event as SecurityPolicyViolationEvent;
    console.error(`policy violation: ${effectiveDirective} by ${blockedURI}`);
  });
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

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import chromium from '@sparticuz/chromium';
import {
  type BrowserContext,
  type BrowserContextOptions,
  chromium as driver,
  type Page,
} from 'playwright-core';
import { preview } from 'vite';

/** A server for the built page on a free port of this machine. */
export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

/** Serves a built page (by default `dist/app`, built by the global set-up). */
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

/** Starts Chromium with a fresh profile and opens the page. */
export async function launch(address: string, options: BrowserContextOptions = {}): Promise<Watched> {
  const profile = await mkdtemp(join(tmpdir(), 'leverbook-browser-'));
  const context = await driver.launchPersistentContext(profile, {
    executablePath: await chromium.executablePath(),
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

/** Waits until the first sheet shows its values. */
export async function sheetShown(page: Page): Promise<void> {
  await page.locator('.sheet-grid td:not(.waiting):not(:empty)').first().waitFor();
}

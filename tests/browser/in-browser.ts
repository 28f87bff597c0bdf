import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { launch, sheetShown, type Watched } from './browser.ts';

/** The address of the page that was built for this run of the tests (built.ts). */
export function pageAddress(): string {
  const address = process.env.LEVERBOOK_ADDRESS;
  if (!address) throw new Error('the page was not built: run the tests of the project "browser"');
  return address;
}

/** How a browser is to be, and what comes before the page and before the tests. */
export interface InBrowser extends BrowserContextOptions {
  /** A fresh browser for each test, or else one for all of a file. */
  readonly each?: boolean;
  /** What is done before the page is opened. */
  readonly first?: (context: BrowserContext) => Promise<void>;
  /** What is waited for once it is open. */
  readonly ready?: readonly ((page: Page) => Promise<unknown>)[];
}

/** The browser that the tests of a file drive, open at the page; it is closed after them, and they fail by what went wrong in it. */
export function inBrowser({ each, first, ready = [sheetShown], ...options }: InBrowser = {}): Watched {
  let now: Watched | null = null;
  const open = async () => {
    now = await launch(pageAddress(), options, first);
    for (const wait of ready) await wait(now.page);
  };
  const close = async () => {
    const last = now;
    now = null;
    await last?.close();
  };
  if (each) {
    beforeEach(open);
    afterEach(close);
  } else {
    beforeAll(open);
    afterAll(close);
  }
  const opened = (): Watched => {
    if (!now) throw new Error('the browser is open while the tests of the file run, not before or after');
    return now;
  };
  return {
    get context() {
      return opened().context;
    },
    get page() {
      return opened().page;
    },
    get faults() {
      return opened().faults;
    },
    close,
  };
}

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { launch } from './browser.ts';
import { inBrowser, pageAddress } from './in-browser.ts';

/** What every browser test relies on: that a page which does what it must not is noticed. */

const watched = inBrowser({ each: true });

/** Waits for a fault that something must lead to; what else came of it is taken away too, so that closing does not tell it. */
async function noticed(what: Promise<unknown>, fault: RegExp, { faults } = watched): Promise<void> {
  expect(faults).toEqual([]);
  await what;
  await expect.poll(() => faults.join('\n')).toMatch(fault);
  await new Promise((resolve) => setTimeout(resolve, 200));
  faults.length = 0;
}

const elsewhere = 'http://127.0.0.1:9/elsewhere';

const inPage: Readonly<Record<string, readonly [what: (page: Page) => Promise<unknown>, fault: RegExp]>> = {
  'a script in the page': [
    (page) =>
      page.evaluate(() => {
        const script = document.createElement('script');
        script.textContent = 'globalThis.ran = true';
        document.body.append(script);
      }),
    /policy violation: script-src-elem by inline/,
  ],
  'a handler in an attribute': [
    (page) =>
      page.evaluate(() => {
        document.body.setAttribute('onclick', 'globalThis.ran = true');
        document.body.click();
      }),
    /policy violation: script-src-attr by inline/,
  ],
  'text run as code': [
    (page) =>
      page.evaluate(() => {
        // From outside the policy does not hold; from a timer it does.
        setTimeout(() => new Function('globalThis.ran = true')());
      }),
    /policy violation: script-src by eval/,
  ],
  'a picture from elsewhere': [
    (page) =>
      page.evaluate((from) => {
        new Image().src = from;
      }, elsewhere),
    /policy violation: img-src by http:\/\/127\.0\.0\.1:9/,
  ],
  'a request to elsewhere': [
    (page) => page.evaluate((to) => fetch(to).catch(() => undefined), elsewhere),
    /policy violation: connect-src by http:\/\/127\.0\.0\.1:9/,
  ],
};

test.each(Object.entries(inPage))('%s is stopped by the policy and noticed', async (_, [what, fault]) => {
  await noticed(what(watched.page), fault);
  expect(await watched.page.evaluate(() => 'ran' in globalThis)).toBe(false);
});

test('a request of the worker that holds the book is stopped by the policy and noticed', async () => {
  const [worker] = watched.page.workers();
  const asked = worker!.evaluate((to) => fetch(to).catch(() => undefined), elsewhere);
  await noticed(asked, /policy violation: connect-src by http:\/\/127\.0\.0\.1:9/);
});

test('a request of the service worker is stopped by the policy and noticed', async () => {
  const { context, page } = watched;
  await page.evaluate(() => navigator.serviceWorker.ready);
  const [worker] = context.serviceWorkers();
  const asked = worker!.evaluate((to) => fetch(to).catch(() => undefined), elsewhere);
  await noticed(asked, /connect-src/);
});

test('a file of the page that is missing, and an error that nobody catches, are noticed', async () => {
  // Nothing stands between the page and its host.
  const open = await launch(pageAddress(), { serviceWorkers: 'block' });
  const { page } = open;
  await page.route('**/missing.json', (route) => route.abort());
  const failing = page.evaluate(() => {
    void fetch('missing.json').catch(() => undefined);
  });
  await noticed(failing, /failed: .*missing\.json/, open);
  const throwing = page.evaluate(() => {
    setTimeout(() => {
      throw new Error('uncaught');
    });
  });
  await noticed(throwing, /thrown: uncaught/, open);
  await open.close();
});

test('closing a browser in which something went wrong fails, whatever the test asked', async () => {
  const other = await launch(pageAddress());
  await other.page.evaluate(() => console.error('wrong'));
  await expect(other.close()).rejects.toThrow('wrong');
});

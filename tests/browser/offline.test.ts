import { cp, mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { writeServiceWorker } from '../../vite.offline.ts';
import {
  buildInto,
  cellOf,
  launch,
  runCommand,
  type Served,
  serve,
  sheetShown,
  type Watched,
  withoutFileAccess,
} from './browser.ts';

/** Where the page stands at its host: it must not matter. */
const FOLDER = 'club/leverbook';

/** Two builds of the page, and the host's folder with one of them. */
let root: string;
let host: string;
let served: Served;
let watched: Watched;

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'leverbook-offline-'));
  host = join(root, 'host');
  await buildInto(join(root, 'one'));
  await anotherBuild();
});
afterAll(() => rm(root, { recursive: true, force: true }));
beforeEach(async () => {
  await put('one');
  served = await serve(host);
  watched = await launch(
    `${served.address}${FOLDER}/`,
    { viewport: { width: 2800, height: 900 } },
    withoutFileAccess,
  );
  await sheetShown(watched.page);
  await watched.page.getByText('Leverbook now works offline.').waitFor();
});
afterEach(async () => {
  await watched.close();
  await served.close();
});

/** Puts a build in place of the one that the host has. */
async function put(which: 'one' | 'two'): Promise<void> {
  await rm(join(host, FOLDER), { recursive: true, force: true });
  await mkdir(join(host, FOLDER), { recursive: true });
  await cp(join(root, which), join(host, FOLDER), { recursive: true });
}

/** A second build: every file with a hash in its name has another name, as after a change of what all of them share. */
async function anotherBuild(): Promise<void> {
  const two = join(root, 'two');
  await cp(join(root, 'one'), two, { recursive: true });
  const assets = await readdir(join(two, 'assets'));
  const names = assets.flatMap((name): [string, string][] => {
    const hash = /-([\w-]{8})\.\w+$/.exec(name)?.[1];
    return hash ? [[name, name.replace(hash, `${hash.slice(1)}2`)]] : [];
  });
  for (const [from, to] of names) await rename(join(two, 'assets', from), join(two, 'assets', to));
  const texts = ['index.html', ...names.map(([, to]) => `assets/${to}`)].filter((file) =>
    /\.(js|css|html)$/.test(file),
  );
  for (const file of texts) {
    let text = await readFile(join(two, file), 'utf8');
    for (const [from, to] of names) text = text.replaceAll(from, to);
    await writeFile(join(two, file), text.replace('<html lang="en">', '<html lang="en" data-build="two">'));
  }
  await writeServiceWorker(two);
}

const buildOf = (page: Page) => page.evaluate(() => document.documentElement.dataset.build ?? 'one');

/** The builds whose files the browser keeps. */
const keptBuilds = (page: Page) => page.evaluate(async () => (await caches.keys()).length);

async function goOffline(): Promise<void> {
  await watched.context.setOffline(true);
  await served.close();
}

/** Of all requests, only those of a look for a newer build may have failed. */
function onlyWhileLooking(missing = 'service-worker.js'): void {
  const others = watched.faults.splice(0).filter((fault) => !fault.includes(missing));
  expect(others).toEqual([]);
}

/** Types a femur into the second row of the roster and waits for the lean that follows from it. */
async function changeFemur(page: Page, femur: string): Promise<void> {
  const lean = await cellOf(page, 2, 'Minimum lean (model)');
  const before = await lean.textContent();
  await (await cellOf(page, 2, 'Femur')).click();
  await page.keyboard.type(femur);
  await page.keyboard.press('Enter');
  await expect.poll(() => lean.textContent()).not.toBe(before);
}

const femurOf = async (page: Page) => (await cellOf(page, 2, 'Femur')).textContent();

/** Parts of the page that are loaded when they are first used: charts, files of lines and workbooks, the guide. */
async function useLateParts(page: Page): Promise<void> {
  await runCommand(page, 'Add a chart');
  await page.getByRole('dialog').locator('[type=submit]').click();
  await page.locator('.chart-stage svg').first().waitFor();
  await page.getByRole('button', { name: 'Back to the sheet' }).click();
  await page.getByRole('tab', { name: 'Guide' }).click();
  await page.getByRole('button', { name: 'Known limits' }).waitFor();
  await runCommand(page, 'Import CSV');
  await page.locator('.intake input[type=file]').setInputFiles({
    name: 'log.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('Lifter,Load (kg)\nA,100\nB,90\n'),
  });
  await expect.poll(() => page.locator('.intake-counts').textContent()).toContain('2 of 2 rows');
  await page.keyboard.press('Escape');
  await runCommand(page, 'Import CSV');
  await page
    .locator('.intake input[type=file]')
    .setInputFiles(join(import.meta.dirname, '../intake/workbooks/roster.xlsx'));
  await expect.poll(() => page.locator('.intake-counts').textContent()).toContain('rows to import');
  await page.keyboard.press('Escape');
}

describe('without a network', () => {
  test('the page goes on with what it has not loaded yet, and opens again with the work that was done', async () => {
    const { page, context } = watched;
    await goOffline();
    await changeFemur(page, '47.5');
    await useLateParts(page);
    await page.reload();
    await sheetShown(page);
    expect(await femurOf(page)).toBe('47.5');
    await changeFemur(page, '44');
    await useLateParts(page);
    const other = await context.newPage();
    await other.goto(page.url());
    await sheetShown(other);
    expect(await femurOf(other)).toBe('44.0');
    onlyWhileLooking();
  });
});

describe('a newer build', () => {
  test('waits while a book is open; the old page goes on with its own files; after the reload nothing is lost', async () => {
    const { page, context } = watched;
    await changeFemur(page, '47.5');
    await put('two');
    const other = await context.newPage();
    await other.goto(page.url());
    const strip = page.getByRole('status', { name: 'Newer version' });
    await strip.waitFor();
    expect([await buildOf(page), await buildOf(other)]).toEqual(['one', 'one']);
    expect(await keptBuilds(page)).toBe(2);
    // The host has none of these files any more.
    await useLateParts(page);

    await changeFemur(page, '48.5');
    await strip.getByRole('button', { name: 'Save and reload' }).click();
    await expect.poll(() => buildOf(page).catch(() => '')).toBe('two');
    await sheetShown(page);
    expect(await femurOf(page)).toBe('48.5');

    // The other tab is still of the old build, is told, and goes on.
    expect(await buildOf(other)).toBe('one');
    await other.getByText('Another tab uses a newer Leverbook').waitFor();
    expect(await keptBuilds(page)).toBe(2);
    await other.getByRole('tab', { name: 'Guide' }).click();
    await other.getByRole('button', { name: 'Known limits' }).waitFor();

    // With the last old page gone, its files go too.
    await other.close();
    await page.reload();
    await sheetShown(page);
    await expect.poll(() => keptBuilds(page)).toBe(1);
    await goOffline();
    await page.reload();
    await sheetShown(page);
    expect(await femurOf(page)).toBe('48.5');
    onlyWhileLooking();
  });

  test('that is not whole where it is kept is not taken, and the page goes on as it is', async () => {
    const { page, context } = watched;
    await put('two');
    const [chunk] = (await readdir(join(host, FOLDER, 'assets'))).filter((name) =>
      name.startsWith('editor-'),
    );
    const place = join(host, FOLDER, 'assets', chunk!);
    await rm(place);
    // What the browser says of it, in the end.
    const ended = await page.evaluate(async () => {
      const registration = (await navigator.serviceWorker.getRegistration())!;
      const found = new Promise<string>((resolve) => {
        registration.addEventListener('updatefound', () => {
          const { installing } = registration;
          installing?.addEventListener('statechange', () => resolve(installing.state));
        });
      });
      await registration.update().catch(() => undefined);
      return found;
    });
    expect(ended).toBe('redundant');
    const asked = new Set<string>();
    context.on('request', (request) => {
      if (request.serviceWorker() && request.url().includes('/assets/')) asked.add(request.url());
    });
    await page.reload();
    await sheetShown(page);
    expect(await buildOf(page)).toBe('one');
    expect(await page.getByRole('status', { name: 'Newer version' }).count()).toBe(0);
    // Once it is whole, it is, and of all files only the missing one is asked for again. It comes whole or not at all: the
    // page may be looking just now.
    await cp(join(root, 'two', 'assets', chunk!), `${place}.part`);
    await rename(`${place}.part`, place);
    await page.reload();
    await page.getByRole('status', { name: 'Newer version' }).waitFor();
    expect([...asked].map((address) => address.split('/').pop())).toEqual([chunk]);
    onlyWhileLooking('/editor-');
  });
});

test('the page can be installed: the browser finds nothing wrong with its manifest, its icons and its service worker', async () => {
  const { page, context } = watched;
  const session = await context.newCDPSession(page);
  const { errors, data } = await session.send('Page.getAppManifest');
  expect(errors).toEqual([]);
  const { icons } = JSON.parse(data!) as { icons: { src: string; sizes: string }[] };
  for (const { src, sizes } of icons) {
    const size = await page.evaluate(async (address) => {
      const image = new Image();
      image.src = address;
      await image.decode();
      return `${image.naturalWidth}x${image.naturalHeight}`;
    }, src);
    expect(size).toBe(sizes);
  }
  const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
  expect(installabilityErrors).toEqual([]);
});

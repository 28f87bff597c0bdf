/**
 * Keeps the page's own files, so that it opens without a network, each build of them apart. A new build waits until no
 * page of an older one is open, or until it is told to take over; then an older page goes on with its own files, which are
 * dropped only when the last such page is closed. It asks for nothing but the files of its list, and takes only those that
 * are, to the byte, what was built.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

/** Both stand ahead of this script once it is built: the files of the page by their path from here, with their SHA-256. */
declare const BUILD: string;
declare const FILES: Readonly<Record<string, string>>;

const { registration } = worker;
const home = registration.scope;
/** What the builds of this page are kept under: other pages of the same host keep theirs beside them. */
const ours = `leverbook ${home} `;
const mine = ours + BUILD;

worker.addEventListener('install', (event) => event.waitUntil(alone(fill)));
worker.addEventListener('activate', (event) =>
  event.waitUntil(worker.clients.claim().then(() => alone(tidy))),
);
worker.addEventListener('message', (event) => {
  if (event.data === 'take over') event.waitUntil(worker.skipWaiting());
  if (event.data === 'tidy') event.waitUntil(alone(tidy));
});
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = plain(request.url);
  if (request.method !== 'GET' || !address.startsWith(home)) return;
  const page = isPage(address);
  if (request.mode === 'navigate' && !page) return;
  event.respondWith(kept(page ? home : address).then((found) => found ?? fetch(request)));
});

const plain = (address: string): string => address.replace(/[?#].*/, '');
const isPage = (address: string): boolean => address === home || address === `${home}index.html`;

/** Filling and tidying never at the same time, whichever build does it. */
const alone = (work: () => Promise<void>): Promise<void> =>
  worker.navigator.locks.request(`${ours}files`, work);

/** A file as this build has it, or one that only an older build has. */
async function kept(address: string): Promise<Response | undefined> {
  const own = await (await caches.open(mine)).match(address, { ignoreVary: true });
  if (own) return own;
  for (const name of await builds()) {
    const found = await (await caches.open(name)).match(address, { ignoreVary: true });
    if (found) return found;
  }
  return undefined;
}

const builds = async (): Promise<string[]> => (await caches.keys()).filter((name) => name.startsWith(ours));

/**
 * Brings in every file of this build: from an older one where it is the same, else from where the page comes from. What is
 * whole is kept even when another file is missing: the next try asks for the missing one alone.
 */
async function fill(): Promise<void> {
  const cache = await caches.open(mine);
  const files = await Promise.allSettled(
    Object.entries(FILES).map(async ([path, digest]) => {
      const address = new URL(path, home).href;
      const known = await kept(address);
      const response = known && (await digestOf(known)) === digest ? known : await ask(address);
      if ((await digestOf(response)) !== digest)
        throw new Error(`${address} is not the file of this build: the build is not whole where it is saved`);
      await cache.put(address, response);
    }),
  );
  for (const file of files) if (file.status === 'rejected') throw file.reason;
}

async function ask(address: string): Promise<Response> {
  const response = await fetch(address, { cache: 'no-cache' });
  if (!response.ok || response.redirected)
    throw new Error(`${address}: the server answered ${response.status}`);
  return response;
}

async function digestOf(response: Response): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await response.clone().arrayBuffer());
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * Drops the files of older builds that no open page is made of. A page holds a lock with its script's address as name. What
 * came after this build is a newer one that is not whole yet: its next try goes on from there.
 */
async function tidy(): Promise<void> {
  // A newer build that waits is not an older one.
  if (registration.waiting || registration.installing) return;
  const { held = [] } = await worker.navigator.locks.query();
  const names = held.flatMap(({ name }) => (name?.startsWith(home) ? [name] : []));
  const windows = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  // A page that is just opening has not said yet what it is made of; it calls again once it has.
  if (windows.filter(({ url }) => isPage(plain(url))).length > names.length) return;
  // The browser lists them in the order in which they were begun (Service Workers, W3C: CacheStorage keys).
  const begun = await builds();
  for (const name of begun.slice(0, Math.max(0, begun.indexOf(mine)))) {
    const cache = await caches.open(name);
    const used = await Promise.all(names.map((script) => cache.match(script, { ignoreVary: true })));
    if (!used.some(Boolean)) await caches.delete(name);
  }
}

export {};

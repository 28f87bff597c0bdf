import { signal } from '@preact/signals';
import { draft } from '../formula/draft.ts';
import { mayLeave } from '../state/leave.ts';
import type { Page } from '../state/page.ts';
import { say } from '../state/page.ts';

/** Whether a newer build of the page is at hand: it waits, or another tab has begun to use it. */
export type Newer = 'waits' | 'in use';
export const newer = signal<Newer | null>(null);
/** Whether the page opens without a network; null where the browser keeps no files for pages. */
export const offline = signal<boolean | null>(null);
/** True once the files came while this page was open: the status line says it, over nothing that is worked on. */
export const becameOffline = signal(false);

/** Milliseconds between looks for a newer build, for pages that stay open for days. */
const LOOK = 3_600_000;

let registration: ServiceWorkerRegistration | undefined;
let taking = false;

/** Has the browser keep the page's files, once `begun` is over and they are in nobody's way, and says when there are newer ones. */
export async function keepOffline(begun: Promise<unknown>): Promise<void> {
  const { serviceWorker, locks } = navigator;
  if (import.meta.env.DEV || !isSecureContext || !serviceWorker || !locks) return;
  offline.value = serviceWorker.controller !== null;
  // What this page is made of is held as long as it is open: its own script stands for its build.
  void locks.request(import.meta.url, { mode: 'shared' }, () => {
    serviceWorker.controller?.postMessage('tidy');
    return new Promise(() => undefined);
  });
  let kept = serviceWorker.controller !== null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (taking) location.reload();
    else if (kept) newer.value = 'in use';
    else becameOffline.value = true;
    kept = true;
    offline.value = true;
  });
  await begun;
  try {
    registration = await serviceWorker.register(new URL('service-worker.js', document.baseURI), {
      updateViaCache: 'none',
    });
  } catch {
    // Without it the page works as long as there is a network.
    return;
  }
  const looked = registration;
  const waits = (): void => {
    if (looked.waiting && serviceWorker.controller) newer.value = 'waits';
  };
  waits();
  looked.addEventListener('updatefound', () => {
    looked.installing?.addEventListener('statechange', waits);
  });
  setInterval(() => {
    // Without a network there is nothing to find.
    if (document.visibilityState === 'visible') looked.update().catch(() => undefined);
  }, LOOK);
}

/** Reloads the page as the newer build, once nothing of the open book can be lost by it. */
export async function takeNewer(page: Page): Promise<void> {
  if (draft.value) {
    say(page, 'Enter or cancel the formula you are writing, then reload.', 'wrong');
    return;
  }
  await stored(page);
  if (!mayLeave(page)) return;
  const waiting = registration?.waiting;
  if (!waiting) {
    location.reload();
    return;
  }
  taking = true;
  waiting.postMessage('take over');
}

/** Waits until what was changed is stored, or is known not to be. */
const stored = (page: Page): Promise<void> =>
  new Promise((resolve) => {
    const stop = page.keeping.subscribe((keeping) => {
      if (keeping?.state === 'keeping') return;
      resolve();
      queueMicrotask(() => stop());
    });
  });

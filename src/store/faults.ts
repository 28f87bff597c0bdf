/** Why something could not be stored or read. */
export type FaultReason =
  | 'full'
  | 'blocked'
  | 'newer'
  | 'unavailable'
  | 'gone'
  | 'missing'
  | 'taken over'
  | 'in use'
  | 'reading'
  | 'failed';

/** Something the storage would not do, and what to do about it, in one or two sentences. */
export interface Fault {
  readonly why: FaultReason;
  readonly sentence: string;
}

/** What came of asking the storage for something: it never throws for what can happen to a user. */
export type Outcome<T> = ({ readonly ok: true } & T) | { readonly ok: false; readonly fault: Fault };

const sentences: Readonly<Record<FaultReason, string>> = {
  full: 'The browser has no room left, so the last changes are not saved. Save the book to a file now; then free disk space, or remove books you no longer need.',
  blocked:
    'Another tab with an earlier Leverbook is using the saved books. Close the other Leverbook tabs, then reload this page. Until then save the book to a file: changes are not saved in the browser.',
  newer:
    'The books in this browser were written by a newer Leverbook. Reload the page to get it. Nothing was changed; book files can still be opened here, and changes to them must be saved to a file.',
  unavailable:
    'This browser window saves nothing for pages (a private window, or storage is off), so changes are lost with the page. Save the book to a file.',
  gone: 'The browser has cleared its saved copy of this book. The book on the page is complete: save it to a file now.',
  missing: 'This book is no longer in this browser. Open it from a file, or select another one.',
  'taken over':
    'This book is now being changed in another tab or window, so this one no longer saves. Later changes made here are not saved. Take the book over again to change it here, or save it to a file.',
  'in use':
    'This book is open in another tab or window, which saves it. Here it is read only. Take it over to change it here; the other one then stops saving.',
  reading: 'This book is open for reading only. Take it over to change it here.',
  failed: 'The browser could not save the last changes. Save the book to a file, then reload the page.',
};

export const fault = (why: FaultReason, detail?: string): Fault => ({
  why,
  sentence: detail ? `${sentences[why]} (${detail})` : sentences[why],
});

export const failed = (why: FaultReason, detail?: string): { readonly ok: false; readonly fault: Fault } => ({
  ok: false,
  fault: fault(why, detail),
});

/** Names of exceptions that IndexedDB and the page's own files throw, as their standards have them. */
const byName: Readonly<Record<string, FaultReason>> = {
  QuotaExceededError: 'full',
  VersionError: 'newer',
  SecurityError: 'unavailable',
  InvalidStateError: 'gone',
  NotFoundError: 'gone',
  NoModificationAllowedError: 'in use',
};

/** The fault behind an exception of the storage. A name that is not known is told with its message. */
export function faultOf(reason: unknown): Fault {
  if (!(reason instanceof Error || reason instanceof DOMException)) return fault('failed', String(reason));
  // A transaction that was ended carries the cause one level down.
  const why = byName[reason.name];
  return why ? fault(why) : fault('failed', `${reason.name}: ${reason.message}`.slice(0, 200));
}

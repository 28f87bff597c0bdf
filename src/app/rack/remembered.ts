/** What rack mode remembers in this browser: which tests it asks for, and over a reload where it was and what was being typed. */

import type { Page } from '../state/page.ts';

const CHOSEN = 'leverbook-rack-tests';
const OPEN = 'leverbook-rack-open';

type Place = NonNullable<Page['rack']['value']>;

export interface Draft {
  readonly row: number;
  readonly column: string;
  readonly trials: readonly string[];
}

interface Open extends Place {
  /** The book, so that another one is not written into. */
  readonly book: string;
  readonly drafts: readonly Draft[];
}

function read<T>(store: () => Storage, key: string): T | null {
  try {
    return JSON.parse(store().getItem(key) ?? 'null') as T | null;
  } catch {
    return null;
  }
}

/** A browser that keeps nothing forgets; typing goes on. */
function write(store: () => Storage, key: string, value: unknown): void {
  try {
    if (value === null) store().removeItem(key);
    else store().setItem(key, JSON.stringify(value));
  } catch {
    // Full or forbidden.
  }
}

const local = () => localStorage;
const ofTab = () => sessionStorage;

const strings = (value: unknown): value is string[] =>
  Array.isArray(value) && value.every((one) => typeof one === 'string');

export function chosenTests(sheet: string): readonly string[] | null {
  const all = read<Record<string, unknown>>(local, CHOSEN);
  const own = all?.[sheet];
  return strings(own) ? own : null;
}

export function chooseTests(sheet: string, columns: readonly string[]): void {
  write(local, CHOSEN, { ...read<Record<string, unknown>>(local, CHOSEN), [sheet]: columns });
}

/** Where rack mode was when this tab was loaded again, with what was not saved yet. */
export function openBefore(book: string): Open | null {
  const open = read<Partial<Open>>(ofTab, OPEN);
  if (open?.book !== book || typeof open.sheet !== 'string' || typeof open.row !== 'number') return null;
  const drafts = (Array.isArray(open.drafts) ? open.drafts : []).filter(
    (one: Partial<Draft>) =>
      typeof one?.row === 'number' && typeof one.column === 'string' && strings(one.trials),
  ) as Draft[];
  return { book, sheet: open.sheet, row: open.row, drafts };
}

export const rememberOpen = (open: Open | null): void => write(ofTab, OPEN, open);

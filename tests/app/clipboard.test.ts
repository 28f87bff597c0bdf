import { afterEach, describe, expect, test, vi } from 'vitest';
import type { GridSelection } from '../../src/app/grid/host.ts';
import { copy, pasteFromClipboard } from '../../src/app/state/clipboard.ts';
import { createPage, type Page } from '../../src/app/state/page.ts';
import type { Outline } from '../../src/session/api.ts';
import type { BookService } from '../../src/worker/protocol.ts';

/**
 * Copy and paste from the menu where the browser keeps the clipboard from the page: W3C Clipboard API and events,
 * "NotAllowedError" for a request without permission; pages that came unsecured have no clipboard at all.
 */

const selection = {
  sheet: 's',
  columns: ['a'],
  runs: [{ row: 0, count: 1 }],
  rows: 1,
  row: 0,
  column: 'a',
} as unknown as GridSelection;

function page(): Page & { readonly asked: string[] } {
  const asked: string[] = [];
  const service = new Proxy({} as BookService, {
    get: (_, name: string) => async () => {
      asked.push(name);
      return { rows: 1, columns: 1, texts: ['42'] };
    },
  });
  const made = createPage(service);
  made.outline.value = {
    sheets: [{ id: 's', rows: 1, columns: [{ id: 'a' }] }],
    changed: 0,
  } as unknown as Outline;
  made.sheetId.value = 's';
  made.selection.value = selection;
  return Object.assign(made, { asked });
}

const refuses = () => Promise.reject(new DOMException('Write permission denied.', 'NotAllowedError'));
afterEach(() => vi.unstubAllGlobals());

describe.each([
  ['refuses', { write: refuses, writeText: refuses, readText: refuses }],
  ['has none', undefined],
])('a browser that %s the clipboard', (_, clipboard) => {
  test.each([
    ['Linux x86_64', 'Ctrl+C', 'Ctrl+V'],
    ['MacIntel', '⌘C', '⌘V'],
  ])('on %s: copy and paste say which keys to press, and the book is not touched', async (platform, c, v) => {
    vi.stubGlobal('navigator', { clipboard, platform });
    const made = page();
    expect(await copy(made, selection)).toBe(false);
    expect(made.notice.value).toMatchObject({
      tone: 'wrong',
      text: `The browser blocked copying. Click a cell, then press ${c}.`,
    });
    expect(await pasteFromClipboard(made)).toBe(false);
    expect(made.notice.value).toMatchObject({
      tone: 'wrong',
      text: `The browser blocked pasting. Click a cell, then press ${v}.`,
    });
    expect(made.asked.filter((name) => name !== 'tile')).toEqual([]);
  });
});

test('a clipboard that fails for another reason says that reason', async () => {
  const readText = () => Promise.reject(new Error('The clipboard is on fire.'));
  vi.stubGlobal('navigator', { clipboard: { readText }, platform: 'Linux' });
  const made = page();
  expect(await pasteFromClipboard(made)).toBe(false);
  expect(made.notice.value?.text).toBe('The clipboard is on fire.');
});

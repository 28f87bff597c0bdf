import { afterEach, describe, expect, test, vi } from 'vitest';
import { askToPersist, clearedNote, persistenceNote, remember } from '../../src/store/persist.ts';

afterEach(() => vi.unstubAllGlobals());

const book = (title: string) => ({ id: title, title, created: 0, opened: 0, changed: 0 });
const memory = () => {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
};

describe('a promise to keep the books', () => {
  const cases = [
    ['promised', { persist: async () => true }],
    ['promised', { persisted: async () => true, persist: async () => false }],
    ['refused', { persist: async () => false }],
    ['unknown', { persist: async () => Promise.reject(new Error('no')) }],
    ['unknown', undefined],
  ] as const;
  test.each(cases)('%s', async (answer, storage) => {
    vi.stubGlobal('navigator', { storage });
    expect(await askToPersist()).toBe(answer);
    expect(persistenceNote(answer) === undefined).toBe(answer === 'promised');
  });
});

describe('books that the browser cleared', () => {
  test('are named when the list is empty and was not before', () => {
    const kept = memory();
    expect(clearedNote(kept, [])).toBeUndefined();
    remember(kept, ['A', 'B', 'C', 'D', 'E'].map(book));
    expect(clearedNote(kept, [])).toContain(
      '(“A”, “B”, “C” and 2 more). Open them from the files you saved.',
    );
    expect(clearedNote(kept, [book('A')])).toBeUndefined();
  });

  test('are not missed after the last one was removed by hand, nor when the memory holds nonsense', () => {
    const kept = memory();
    remember(kept, [book('A')]);
    remember(kept, []);
    expect(clearedNote(kept, [])).toBeUndefined();
    kept.setItem('leverbook-books', '{"a":');
    expect(clearedNote(kept, [])).toBeUndefined();
  });
});

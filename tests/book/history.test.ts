import { describe, expect, test } from 'vitest';
import type { Edit } from '../../src/book/edit.ts';
import { DEEPEST, History } from '../../src/book/history.ts';

/** An edit that counts as so many MB: 24 bytes a listed cell (the lists share their cells, so nothing is that large here). */
const large = (mb: number): Edit => {
  const cells = new Array<null>(Math.ceil((mb * 1024 * 1024) / 24)).fill(null);
  return { do: 'put-cells', sheet: 's', row: 0, columns: ['n'], cells: [cells] };
};
const small: Edit = { do: 'set-title', title: 'x' };

describe('where undo ends', () => {
  test('is not said while everything can be undone', () => {
    const history = new History();
    expect(history.end).toBeUndefined();
    history.note('Sort', small);
    expect(history.end).toBeUndefined();
  });

  test('is said with the most that can be undone, once there was more', () => {
    const history = new History();
    for (let n = 0; n <= DEEPEST; n++) history.note(`Change ${n}`, small);
    expect(history.end).toBe('Undo reaches back to “Change 1”: only the last 1,000 changes can be undone.');
  });

  test('is said with the change that was too large, before and after undo gets there', () => {
    const history = new History();
    history.note('Import log.csv', large(200));
    history.note('Clear cells', large(100));
    expect(history.end).toBe(
      'Undo reaches back to “Clear cells”: the change before it, “Import log.csv”, was too large to save.',
    );
    history.step('undo', () => small);
    expect(history.undo).toBeNull();
    expect(history.end).toBe('Undo ends here: the change before, “Import log.csv”, was too large to save.');
  });

  test('a history of a past is the same, and neither changes the other', () => {
    const history = new History();
    for (const words of ['One', 'Two', 'Three']) history.note(words, small);
    history.step('undo', () => small);
    const { past } = history;
    const again = new History(past);
    history.note('Four', small);
    expect([again.undo, again.redo]).toEqual(['Two', 'Three']);
    expect(past.redo.map(({ words }) => words)).toEqual(['Three']);
  });
});

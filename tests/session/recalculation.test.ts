import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook } from '../../src/book/book.ts';
import { Cells } from '../../src/book/cells.ts';
import { writeBook } from '../../src/book/file-write.ts';
import { Session } from '../../src/session/session.ts';

const ROWS = 60_000;
/** A long book: one measured column and six computed ones, slow to compute, that lean on each other. */
const text = (() => {
  const book = createBook('Long');
  const numbers = Float64Array.from({ length: ROWS }, (_, i) => 35 + (i % 100) / 10);
  const cells = {
    length: ROWS,
    kinds: new Uint8Array(ROWS).fill(1),
    numbers,
    texts: null,
    formulas: new Map(),
    held: new Map(),
  };
  const computed = Array.from({ length: 6 }, (_, k) => ({
    column: {
      id: `d_${k}`,
      name: `d_${k}`,
      label: '',
      kind: 'number' as const,
      formula: k === 0 ? 'femur + 1' : `d_${k - 1} * 2 - femur + 0 * LEAN.DEEPEST(femur, 40, 52, 38)`,
    },
  }));
  const femur = {
    column: { id: 'femur', name: 'femur', label: '', kind: 'number' as const },
    cells: Cells.from(cells, ROWS),
  };
  applyEdit(book, {
    do: 'add-sheet',
    index: 0,
    sheet: { id: 's', name: 's', label: 'S', purpose: 'gathered', rows: ROWS, columns: [femur, ...computed] },
  });
  return writeBook(book);
})();
const last = (session: Session, row: number) => session.tile('s', row, 1, 6, 1).texts[0];
const expected = (femur: number): string => {
  let value = femur + 1;
  for (let k = 1; k < 6; k++) value = value * 2 - femur;
  return String(Number(value.toPrecision(10)));
};

describe('recalculation', () => {
  test('goes on in slices, tells its progress, and leaves the event loop its turn', async () => {
    const session = Session.openStale(text);
    const told: number[] = [];
    let turns = 0;
    const timer = setInterval(() => turns++, 0);
    const finished = await session.settle({
      slice: 0,
      onProgress: ({ done, total }) => told.push(done / total),
    });
    clearInterval(timer);
    expect(finished).toBe(true);
    expect(session.stale).toBe(false);
    expect(told.length).toBeGreaterThan(1);
    expect(told.at(-1)).toBe(1);
    expect(told.every((share, i) => share >= 0 && share <= 1 && (i === 0 || share >= told[i - 1]!))).toBe(
      true,
    );
    expect(last(session, ROWS - 1)).toBe(expected(44.9));
  });

  test('can be cancelled, and what is left is done by the next one', async () => {
    const session = Session.openStale(text);
    const abort = new AbortController();
    const finished = await session.settle({
      slice: 0,
      signal: abort.signal,
      onProgress: () => abort.abort(),
    });
    expect(finished).toBe(false);
    expect(session.stale).toBe(true);
    expect(await session.settle()).toBe(true);
    expect(last(session, 7)).toBe(expected(35.7));
  });

  test('a command that comes while it runs is done at once, and all values are right in the end', async () => {
    const session = Session.openStale(text);
    const first = session.settle({ slice: 0 });
    await new Promise((resolve) => setImmediate(resolve));
    const done = session.apply({ do: 'set-cells', sheet: 's', row: 3, columns: ['femur'], texts: [['50']] });
    expect(done.ok).toBe(true);
    const undone = session.applyUndo();
    expect(undone.ok).toBe(true);
    session.apply({ do: 'set-cells', sheet: 's', row: 3, columns: ['femur'], texts: [['60']] });
    await first;
    await session.settle();
    expect(last(session, 3)).toBe(expected(60));
    expect(last(session, ROWS - 1)).toBe(expected(44.9));
    const opened = Session.open(session.save());
    expect(opened.tile('s', 0, 200, 0, 7).texts).toEqual(session.tile('s', 0, 200, 0, 7).texts);
  });
});

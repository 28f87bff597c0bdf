import { expect, test } from 'vitest';
import type { GridHost, Shown } from '../../src/app/grid/host.ts';
import { fetchLines } from '../../src/app/grid/lines-tile.ts';
import { Lines } from '../../src/app/grid/rows.ts';
import type { SheetOutline, Tile } from '../../src/session/api.ts';

test('the drawings and figures of a grouped sheet go to the lines of their rows, and summaries have none', async () => {
  const sheet = { id: 's', rows: 4 } as SheetOutline;
  const lines = Lines.grouped(
    4,
    [
      { label: 'a', rows: Int32Array.of(3, 1) },
      { label: 'b', rows: Int32Array.of(0) },
    ],
    true,
  );
  const line = (words: string) => ({ at: Float32Array.of(0, 0, 1, 1), words });
  const host = {
    tileOfRows: async (_sheet: SheetOutline, rows: Int32Array): Promise<Tile> => ({
      sheet: 's',
      version: 1,
      row: 0,
      rows: rows.length,
      column: 0,
      columns: 1,
      texts: [...rows].map(String),
      bare: { 1: 'one', 2: 'none' },
      marks: new Uint16Array(rows.length),
      drawings: [
        {
          column: 0,
          rules: Uint8Array.from(rows, (row) => row + 1),
          scale: { zero: 0, at: Float32Array.from(rows, (row) => row / 4), words: '' },
          trends: [...rows].map((row) => line(String(row))),
        },
      ],
    }),
  } as unknown as GridHost;
  const tile = await fetchLines(host, { sheet, lines } as unknown as Shown)(0, 64, 0, 1);
  // Rows 3 and 1, their summary; row 0, its summary; the summary of all.
  expect(tile.texts).toEqual(['3', '1', '', '0', '', '']);
  expect(tile.bare).toEqual({ 1: 'one', 3: 'none' });
  const [drawing] = tile.drawings!;
  expect([...drawing!.rules!]).toEqual([4, 2, 0, 1, 0, 0]);
  expect([...drawing!.scale!.at]).toEqual([0.75, 0.25, Number.NaN, 0, Number.NaN, Number.NaN]);
  expect(drawing!.trends!.map((one) => one?.words ?? null)).toEqual(['3', '1', null, '0', null, null]);
});

import type { Tile } from '../../session/api.ts';
import type { Drawing } from '../../session/marks/drawings.ts';
import type { GridHost, Shown } from './host.ts';
import type { FetchTile } from './tiles.ts';

/** Fetches blocks by the lines of the grid: straight from the sheet, or row by row where a view says which. */
export function fetchLines(host: Pick<GridHost, 'tile' | 'tileOfRows'>, { sheet, lines }: Shown): FetchTile {
  if (lines.plain) return (row, rows, column, columns) => host.tile(sheet, row, rows, column, columns);
  return async (line, count, column, columns) => {
    const last = Math.min(line + count, lines.count);
    const at: number[] = [];
    const rows: number[] = [];
    for (let l = line; l < last; l++) {
      const what = lines.at(l);
      if (what.is !== 'row') continue;
      at.push(l - line);
      rows.push(what.row);
    }
    const tile = await host.tileOfRows(sheet, Int32Array.from(rows), column, columns);
    return spreadOut(tile, line, Math.max(0, last - line), at);
  };
}

/** Puts the rows of a tile to the lines that show them; other lines stay blank. */
function spreadOut(tile: Tile, line: number, lines: number, at: readonly number[]): Tile {
  const { columns } = tile;
  const texts = new Array<string>(lines * columns).fill('');
  const marks = new Uint16Array(lines * columns);
  at.forEach((to, from) => {
    for (let c = 0; c < columns; c++) {
      texts[to * columns + c] = tile.texts[from * columns + c] ?? '';
      marks[to * columns + c] = tile.marks[from * columns + c] ?? 0;
    }
  });
  const offers = tile.offers?.map((offer) => ({ ...offer, row: at[offer.row]! }));
  // figures without their unit are told by the cell's number in the block
  const bare =
    tile.bare &&
    Object.fromEntries(
      Object.entries(tile.bare).map(([cell, figure]) => {
        const from = Math.floor(Number(cell) / columns);
        return [at[from]! * columns + (Number(cell) % columns), figure];
      }),
    );
  const drawings = tile.drawings?.map((drawing) => drawingSpreadOut(drawing, lines, at));
  return {
    ...tile,
    row: line,
    rows: lines,
    texts,
    marks,
    ...(offers ? { offers } : {}),
    ...(bare ? { bare } : {}),
    ...(drawings ? { drawings } : {}),
  };
}

function drawingSpreadOut(
  { column, rules, scale, trends }: Drawing,
  lines: number,
  at: readonly number[],
): Drawing {
  const from = new Array<number | undefined>(lines).fill(undefined);
  at.forEach((to, row) => {
    from[to] = row;
  });
  const spread = <T>(row: number | undefined, of: ArrayLike<T>, blank: T): T =>
    row === undefined ? blank : (of[row] ?? blank);
  return {
    column,
    ...(rules ? { rules: Uint8Array.from(from, (row) => spread(row, rules, 0)) } : {}),
    ...(scale
      ? { scale: { ...scale, at: Float32Array.from(from, (row) => spread(row, scale.at, Number.NaN)) } }
      : {}),
    ...(trends ? { trends: from.map((row) => spread(row, trends, null)) } : {}),
  };
}

import type { Cell, CellBlock } from '../../book/cells.ts';
import type { Column } from '../../book/model.ts';
import { isoFromSerial } from '../../units/date.ts';
import { dimensions } from '../../units/dimension.ts';
import type { Progress } from '../api.ts';
import { listed } from '../listed.ts';
import type { Filled } from './filled.ts';
import { type Recognising, recognising, renamed } from './recognising.ts';
import { cellAt, cellWords, sameCell } from './rows-of-sheet.ts';

/**
 * What becomes of rows that the sheet has already with other values: it keeps its own, gets the file's, or gets them as
 * further rows. `hold` keeps them as held rows.
 */
export type OfDiffering = 'leave' | 'take' | 'add' | 'hold';

/** A row of the file that the sheet has with other values. */
export interface DifferingRow {
  /** Line of the file. */
  readonly line: number;
  /** Row of the sheet. */
  readonly row: number;
  /** Who or what it is. */
  readonly who: string;
  /** What differs; nothing where the file only has the row once more. */
  readonly cells: readonly { readonly column: Column; readonly there: Cell; readonly file: Cell }[];
}

export interface Differing {
  /** Names of the columns by which rows are recognised. */
  readonly key: readonly string[];
  readonly count: number;
  /** The first of them. */
  readonly first: readonly DifferingRow[];
  /** What was decided, now or by the recipe; null asks. */
  readonly decided: OfDiffering | null;
}

interface Comparing extends Recognising {
  /** Rows of the file that do not stand in the sheet as they are. */
  readonly fresh: readonly number[];
  readonly rows: number;
  readonly lineOf: (row: number) => number;
}

const MOST_SHOWN = 200;

interface Found extends Omit<Differing, 'decided'> {
  readonly rows: readonly number[];
  /** Rows of the sheet that are there under another name, by row of the file. */
  readonly renamed: ReadonlyMap<number, number>;
}

/** Rows that would be added though the sheet has them with other values, and how they are recognised. */
export function* differing(
  input: Comparing,
  there: readonly CellBlock[],
  coming: readonly CellBlock[],
): Generator<Progress, Found | null> {
  if (input.fresh.length === 0) return null;
  const known = yield* recognising(input, there, coming, input.rows);
  if (!known) return null;
  const other = yield* renamed(input, known, there, coming, input.fresh);
  const rows: number[] = [];
  const first: DifferingRow[] = [];
  for (const row of input.fresh) {
    const key = known.keyOf(coming, row);
    const at = (key === null ? undefined : known.rowOf.get(key)) ?? other.get(row);
    if (at === undefined) continue;
    rows.push(row);
    if (first.length < MOST_SHOWN)
      first.push({
        line: input.lineOf(row),
        row: at,
        who: known.key.map((column) => cellWords(blockOf(input.filled, column.id), row)).join(', '),
        cells: input.filled.flatMap(({ column, cells }, k) =>
          sameCell(cells, row, there[k]!, at)
            ? []
            : [{ column, there: cellAt(there[k]!, at), file: cellAt(cells, row) }],
        ),
      });
  }
  return rows.length === 0
    ? null
    : { key: known.key.map(({ name }) => name), count: rows.length, first, rows, renamed: other };
}

const blockOf = (filled: readonly Filled[], id: string): CellBlock =>
  filled.find(({ column }) => column.id === id)!.cells;

/** A few of them in words, for a sentence. */
export function differencesInWords({ first, count }: Pick<Differing, 'first' | 'count'>): string {
  const some = first.slice(0, 3).map(({ line, who, cells }) => {
    const what = cells.map(
      ({ column, there, file }) =>
        `${column.label} ${words(there, column)} there, ${words(file, column)} in the file`,
    );
    return `${who} (line ${line}): ${what.length > 0 ? listed(what) : 'the same once more'}`;
  });
  return `${some.join('; ')}${count > some.length ? `; and ${count - some.length} more` : ''}`;
}

/** A cell in a sentence: in base units and ISO dates. */
function words(cell: Cell, { dimension }: Column): string {
  if (cell === null || cell === '') return 'blank';
  if (typeof cell === 'number') return dimension ? `${cell} ${dimensions[dimension]}` : String(cell);
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  if (typeof cell === 'string') return `"${cell}"`;
  if ('date' in cell) return isoFromSerial(cell.date) ?? String(cell.date);
  return 'held' in cell ? `"${cell.held}" (unreadable)` : `=${cell.formula}`;
}

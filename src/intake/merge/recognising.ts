import { type CellBlock, CellKind } from '../../book/cells.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import type { Progress } from '../api.ts';
import { givenNames } from '../cells/index.ts';
import { headingKey, synonymIndex, synonyms } from '../detect/index.ts';
import type { Filled } from './filled.ts';
import { cellKey, cellWords } from './rows-of-sheet.ts';

/** Rows between two moments at which the work can be cancelled. */
const STEP = 20_000;
/** Share of a file's rows that may name the same as an earlier one before the column counts as telling its rows apart. */
const TWICE = 0.1;

export interface Recognising {
  readonly sheet: Sheet;
  readonly filled: readonly Filled[];
  /** Columns that were said to tell rows apart; they are tried first. */
  readonly key: readonly string[];
  /** The sheet is known to list people, each once, whatever dates stand beside them. */
  readonly roster: boolean;
  /** Share of the file's rows that stand in the sheet as they are. */
  readonly repeated: number;
}

/** What tells the rows of a sheet apart: each value is there once. */
export interface Recognised {
  readonly key: readonly Column[];
  /** Row of the sheet by key. */
  readonly rowOf: ReadonlyMap<string, number>;
  /** Key of a row; null where a part of it is blank. */
  readonly keyOf: (blocks: readonly CellBlock[], row: number) => string | null;
}

/**
 * Rows of a list of people that are there under another name: row of the sheet by row of the file. The identifier tells
 * them, or the birth date with a given name in common; who is there by name as well is somebody else.
 */
export function* renamed(
  { sheet, filled }: Recognising,
  { key, rowOf, keyOf }: Recognised,
  there: readonly CellBlock[],
  coming: readonly CellBlock[],
  fresh: readonly number[],
): Generator<Progress, ReadonlyMap<number, number>> {
  const found = new Map<number, number>();
  const name = filled.findIndex(({ column }) => column.id === key[0]?.id && isLike(column, 'athlete'));
  if (key.length !== 1 || name < 0) return found;
  const named = new Set<number>();
  for (let row = 0; row < coming[name]!.length; row++) {
    const at = rowOf.get(keyOf(coming, row) ?? '');
    if (at !== undefined) named.add(at);
  }
  const given = (block: CellBlock, row: number) => givenNames(cellWords(block, row));
  for (const [word, proves] of [
    ['id', () => true],
    [
      'birth date',
      (row: number, at: number) => {
        const words = given(there[name]!, at);
        return given(coming[name]!, row).some((one) => words.includes(one));
      },
    ],
  ] as const) {
    const k = filled.findIndex(({ column }) => isLike(column, word));
    if (k < 0) continue;
    const own = (blocks: readonly CellBlock[], row: number): string | null =>
      blocks[k]!.kinds[row] === CellKind.blank ? null : cellKey(blocks[k]!, row);
    const once_ = yield* once(there, sheet.rows, own, 0);
    for (const row of fresh) {
      const value = own(coming, row);
      const at = value === null ? undefined : once_?.get(value);
      if (at === undefined || named.has(at) || found.has(row) || rowOf.has(keyOf(coming, row) ?? ''))
        continue;
      if (!proves(row, at)) continue;
      found.set(row, at);
      named.add(at);
    }
  }
  return found;
}

/**
 * By which columns a row of the file is one of the sheet's: those that were said, else whoever or whatever is named,
 * in a sheet with dates together with the date. Null where the sheet has a value twice, as a log has its athletes.
 */
export function* recognising(
  input: Recognising,
  there: readonly CellBlock[],
  coming: readonly CellBlock[],
  rows: number,
): Generator<Progress, Recognised | null> {
  for (const { at, said } of candidates(input)) {
    const keyOf = (blocks: readonly CellBlock[], row: number): string | null =>
      at.some((k) => blocks[k]!.kinds[row] === CellKind.blank)
        ? null
        : at.map((k) => cellKey(blocks[k]!, row)).join('\u0000');
    const rowOf = yield* once(there, input.sheet.rows, keyOf, 0);
    if (!rowOf || rowOf.size === 0) continue;
    if (!said && !(yield* once(coming, rows, keyOf, TWICE * rows))) continue;
    return { key: at.map((k) => input.filled[k]!.column), rowOf, keyOf };
  }
  return null;
}

/** The first row of each key; null when more than `most` rows have a key that came before. */
function* once(
  blocks: readonly CellBlock[],
  rows: number,
  keyOf: Recognised['keyOf'],
  most: number,
): Generator<Progress, Map<string, number> | null> {
  const rowOf = new Map<string, number>();
  let again = 0;
  for (let row = 0; row < rows; row++) {
    if (row % STEP === 0) yield { done: row, total: rows, about: 'comparing rows' };
    const key = keyOf(blocks, row);
    if (key === null) continue;
    if (!rowOf.has(key)) rowOf.set(key, row);
    else if (++again > most) return null;
  }
  return rowOf;
}

const lines = synonymIndex(synonyms);
const isLike = ({ name, label, role = '' }: Column, word: string): boolean =>
  [name, label, role].some((text) => {
    const line = lines.get(headingKey(text));
    return line !== undefined && line === lines.get(word);
  });

/** What may tell rows apart, as places among the filled columns, the likeliest first. */
function candidates({
  sheet,
  filled,
  key,
  roster,
  repeated,
}: Recognising): { at: number[]; said: boolean }[] {
  const find = (fits: (column: Column) => boolean): number => filled.findIndex(({ column }) => fits(column));
  const said = key.map((name) => find((column) => nameKey(column.name) === nameKey(name)));
  const date = find((column) => column.kind === 'date' && !isLike(column, 'birth date'));
  const athlete = find((column) => column.kind === 'text' && isLike(column, 'athlete'));
  const id = find((column) => isLike(column, 'id'));
  const first = find((column) => column.id === sheet.columns[0]?.id && column.kind === 'text');
  const found: number[][] = [];
  const name = [athlete, id].find((at) => at >= 0);
  if (name !== undefined) {
    // In a log the same athlete comes again on another day; in a list of people, or in the same list once more, not.
    if (date < 0 || roster || repeated >= 0.5) found.push([name]);
    if (id >= 0 && id !== name && date < 0) found.push([id]);
    if (date >= 0) found.push([name, date]);
  } else if (date < 0 && first >= 0) found.push([first]);
  return [
    ...(said.length > 0 && !said.includes(-1) ? [{ at: said, said: true }] : []),
    ...found.map((at) => ({ at, said: false })),
  ];
}

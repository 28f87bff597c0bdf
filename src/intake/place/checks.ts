/** Checks what was placed: totals, repeated rows, and values that make no sense together. */
import { CellKind } from '../../book/cells.ts';
import type { Plausibility, Progress } from '../api.ts';
import { NumberColumnBuilder, readNumber } from '../cells/index.ts';
import { Meanings } from '../detect/index.ts';
import { type Filled, rowHashes, sameRow } from '../merge/index.ts';
import { type Note, note } from '../sentences/index.ts';
import type { Placing } from './place.ts';

const STEP = 20_000;

/** Rows whose values do not make sense together, by the sense checks handed in; one note for each doubt. */
export function* doubtfulRows(
  filled: readonly Filled[],
  rows: number,
  plausibility: Plausibility | undefined,
  lineOf: (row: number) => number,
): Generator<Progress, { notes: Note[]; rows: number[] }> {
  const notes: Note[] = [];
  const doubted = new Set<number>();
  for (const { needs, wants = [], check } of plausibility?.rows ?? []) {
    const blocks = [...needs, ...wants].map((name) => {
      const meaning = new Meanings([[[name], true]]);
      return filled.find(({ column }) => column.kind === 'number' && meaning.of(column))?.cells;
    });
    if (blocks.slice(0, needs.length).some((block) => block === undefined)) continue;
    const doubts = new Map<string, { count: number; row: number }>();
    for (let row = 0; row < rows; row++) {
      if (row % STEP === STEP - 1) yield { done: row, total: rows, about: 'checking rows' };
      const values = blocks.map((block) =>
        block?.kinds[row] === CellKind.number ? block.numbers[row]! : null,
      );
      if (values.slice(0, needs.length).includes(null)) continue;
      const doubt = check(values);
      if (doubt === null) continue;
      doubted.add(row);
      const known = doubts.get(doubt);
      if (known) known.count++;
      else if (doubts.size < 5) doubts.set(doubt, { count: 1, row });
    }
    for (const [doubt, { count, row }] of doubts)
      notes.push(note('row-doubt', { count, doubt: doubt.replace(/\.$/, ''), line: lineOf(row) }));
  }
  return { notes, rows: [...doubted] };
}

/** Files longer than this are not searched for equal rows: in a long log they are ordinary. */
const MOST_COMPARED = 200_000;

/** Rows of the file that are the same as an earlier one. */
export function* repeatedRows(
  filled: readonly Filled[],
  rows: number,
  lineOf: (row: number) => number,
): Generator<Progress, Note[]> {
  if (rows > MOST_COMPARED || filled.length < 2) return [];
  const blocks = filled.map((f) => f.cells);
  const seen = new Map<number, number>();
  const hashes = yield* rowHashes(blocks, rows);
  let count = 0;
  let first = -1;
  for (let row = 0; row < rows; row++) {
    const earlier = seen.get(hashes[row]!);
    if (earlier === undefined) seen.set(hashes[row]!, row);
    else if (sameRow(blocks, earlier, blocks, row)) {
      count++;
      if (first < 0) first = row;
    }
  }
  return count === 0 ? [] : [note('duplicate-rows', { count, line: lineOf(first) })];
}

const totals = /^(grand )?(total|totals|sum|summe|gesamt|somme|suma|totale)\b/i;
const means = /^(mean|average|avg|mittelwert|durchschnitt|moyenne|promedio|media)\b/i;

/** Totals and means under the table that do not agree with its rows. */
export function differingTotals(placing: Placing): Note[] {
  const notes: Note[] = [];
  for (const cells of placing.footerCells) {
    const word = cells.find((cell) => cell.trim() !== '')?.trim() ?? '';
    const isTotal = totals.test(word);
    if (!isTotal && !means.test(word)) continue;
    for (const { match, builder } of placing.placed) {
      if (!(builder instanceof NumberColumnBuilder) || builder.filled === 0 || Number.isNaN(builder.sum))
        continue;
      const text = cells[match.source.index]?.trim() ?? '';
      const given = readNumber(text, builder.style);
      if (text === word || Number.isNaN(given)) continue;
      const computed = isTotal ? builder.sum : builder.sum / builder.filled;
      // Half a unit of the last printed digit, and what rounding each row may add to a sum.
      const digits = /[.,](\d+)$/.exec(text)?.[1]?.length ?? 0;
      if (Math.abs(given - computed) <= 0.51 * Number(`1e-${digits}`) + 1e-9 * Math.abs(computed)) continue;
      notes.push(
        note('total-differs', {
          heading: match.source.heading,
          word: isTotal ? 'a total of' : 'a mean of',
          given: text,
          computed: Number(computed.toPrecision(8)),
        }),
      );
    }
  }
  return notes;
}

import fc from 'fast-check';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook, type LiveBook } from '../../src/book/book.ts';
import { type Cell, Cells } from '../../src/book/cells.ts';
import type { Edit } from '../../src/book/edit.ts';
import { type Column, type ColumnKind, type Json, partNames } from '../../src/book/model.ts';

/** Random cells, books and edits for property tests. */
const number = fc.oneof(
  fc.integer({ min: -1000, max: 1000 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => n + 0),
);
const text = fc.oneof(
  fc.string(),
  fc.constantFrom('=1+1', '', '-', '2025-03-01', '__proto__', '<b>', 'é', '\u0000'),
);

export const cell: fc.Arbitrary<Cell> = fc.oneof(
  { weight: 3, arbitrary: fc.constant(null) },
  { weight: 5, arbitrary: number },
  { weight: 3, arbitrary: text },
  { weight: 1, arbitrary: fc.boolean() },
  { weight: 2, arbitrary: fc.oneof(fc.integer({ min: -1e5, max: 3e6 }), number).map((date) => ({ date })) },
  { weight: 1, arbitrary: text.map((formula) => ({ formula })) },
  { weight: 1, arbitrary: fc.record({ held: text, reason: text }) },
);

const kind = fc.constantFrom<ColumnKind>('number', 'text', 'date', 'yes-no', 'choice');

export const column = (name: string): fc.Arbitrary<Column> =>
  fc
    .record({
      kind,
      label: fc.string({ maxLength: 20 }),
      formula: fc.option(fc.constant('femur + 1')),
      note: fc.option(text),
    })
    .map(({ kind, label, formula, note }) => ({
      id: name,
      name,
      label,
      kind,
      ...(kind === 'number' ? { dimension: 'length' as const, unit: 'in', format: { digits: 1 } } : {}),
      ...(kind === 'choice' ? { choices: ['a', 'b'] } : {}),
      ...(formula === null ? {} : { formula }),
      ...(note === null ? {} : { note }),
    }));

const json: fc.Arbitrary<Json> = fc
  .jsonValue({ maxDepth: 3 })
  .filter((value) => !JSON.stringify(value).includes('__proto__'))
  // As JSON knows it: a negative zero is 0 there.
  .map((value) => JSON.parse(JSON.stringify(value)) as Json);

/** A book with one to three sheets. Built through edits, as every book is. */
export const book: fc.Arbitrary<LiveBook> = fc
  .array(
    fc.record({
      rows: fc.integer({ min: 0, max: 12 }),
      columns: fc.array(
        column('x').chain((c) => fc.tuple(fc.constant(c), fc.array(cell, { maxLength: 12 }))),
        { maxLength: 4 },
      ),
      note: fc.option(text),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .chain((sheets) =>
    fc.tuple(
      fc.constant(sheets),
      fc.string({ maxLength: 20 }),
      fc.dictionary(fc.string({ minLength: 1 }), json),
    ),
  )
  .map(([sheets, title, records]) => {
    const made = createBook(title);
    sheets.forEach(({ rows, columns, note }, s) => {
      applyEdit(made, {
        do: 'add-sheet',
        index: s,
        sheet: {
          id: `sheet_${s}`,
          name: `sheet_${s}`,
          label: `Sheet ${s}`,
          purpose: 'gathered',
          ...(note === null ? {} : { note }),
          rows,
          columns: columns.map(([c, cells], k) => ({
            column: { ...c, id: `c_${k}`, name: `c_${k}` },
            cells:
              k % 2 ? Cells.from(cells.slice(0, rows), Math.min(rows, cells.length)) : cells.slice(0, rows),
          })),
        },
      });
      if (rows > 0 && columns.length > 0)
        applyEdit(made, {
          do: 'set-name',
          name: `Named_${s}`,
          target: { sheet: `sheet_${s}`, column: 'c_0', row: rows - 1 },
        });
    });
    for (const [key, value] of Object.entries(records))
      if (key !== '__proto__' && value !== null) made.parts.charts.set(key, value);
    return made;
  });

/** Picks that steer `editFor`; any picks give an edit that the book at hand can take. */
export const picks = fc.record({
  sort: fc.nat(),
  sheet: fc.nat(),
  row: fc.nat(),
  count: fc.integer({ min: 0, max: 80 }),
  column: fc.nat(),
  index: fc.nat(),
  cells: fc.array(cell, { maxLength: 80 }),
  made: column('new'),
  value: fc.option(json),
  packed: fc.boolean(),
  seed: fc.nat(),
});
export type Picks = typeof picks extends fc.Arbitrary<infer T> ? T : never;

/** An edit of a random sort that fits the book as it stands. */
export function editFor(book: LiveBook, pick: Picks): Edit {
  const sheet = book.sheets[pick.sheet % Math.max(1, book.sheets.length)];
  const title: Edit = { do: 'set-title', title: `Title ${pick.seed}` };
  const free = (n: number) => `new_${n}`;
  if (!sheet)
    return {
      do: 'add-sheet',
      index: 0,
      sheet: {
        id: free(pick.seed),
        name: free(pick.seed),
        label: '',
        purpose: 'worked',
        rows: 3,
        columns: [],
      },
    };
  const { id, rows, columns } = sheet;
  const at = pick.row % (rows + 1);
  const count = Math.min(pick.count, rows - at);
  const column = columns[pick.column % Math.max(1, columns.length)];
  const run = pick.packed ? Cells.from(pick.cells, pick.cells.length) : pick.cells;
  const short = Cells.from(pick.cells.slice(0, count), count);
  const fresh = columns.some((c) => c.id === free(pick.seed)) ? undefined : free(pick.seed);
  const sorts: (Edit | undefined)[] = [
    column && {
      do: 'put-cells',
      sheet: id,
      row: at,
      columns: [column.id],
      cells: [pick.packed ? short : pick.cells.slice(0, count)],
    },
    {
      do: 'add-rows',
      sheet: id,
      row: at,
      count: pick.cells.length,
      cells: columns.slice(0, 2).map(() => run),
    },
    { do: 'add-rows', sheet: id, row: at, count: pick.count },
    { do: 'remove-rows', sheet: id, row: at, count },
    { do: 'order-rows', sheet: id, order: shuffled(rows, pick.seed) },
    fresh === undefined
      ? undefined
      : {
          do: 'add-column',
          sheet: id,
          index: pick.index % (columns.length + 1),
          column: { ...pick.made, id: fresh, name: fresh },
          cells: pick.cells.slice(0, rows),
        },
    column && { do: 'remove-column', sheet: id, column: column.id },
    column && { do: 'move-column', sheet: id, column: column.id, index: pick.index % columns.length },
    column && { do: 'change-column', sheet: id, column: { ...pick.made, id: column.id, name: column.name } },
    { do: 'remove-sheet', sheet: id },
    { do: 'move-sheet', sheet: id, index: pick.index % book.sheets.length },
    { do: 'change-sheet', sheet: id, name: sheet.name, label: `Label ${pick.seed}`, purpose: 'notes' },
    column && rows > 0
      ? {
          do: 'set-name',
          name: `Named_${pick.seed % 4}`,
          target: { sheet: id, column: column.id, row: pick.row % rows },
        }
      : { do: 'set-name', name: `Named_${pick.seed % 4}`, target: null },
    {
      do: 'set-part',
      part: partNames[pick.seed % partNames.length]!,
      key: `k${pick.index % 5}`,
      value: pick.value,
    },
  ];
  return sorts[pick.sort % sorts.length] ?? title;
}

/** An order of all rows, the same for the same seed. */
function shuffled(rows: number, seed: number): number[] {
  const order = Array.from({ length: rows }, (_, i) => i);
  let state = seed >>> 0;
  for (let i = rows - 1; i > 0; i--) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const j = state % (i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

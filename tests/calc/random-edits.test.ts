import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LiveBook } from '../../src/book/book.ts';
import type { Cell } from '../../src/book/cells.ts';
import type { Edit } from '../../src/book/edit.ts';
import type { Column } from '../../src/book/model.ts';
import { Bench, bookOf, f } from './book-for-test.ts';

/*
 * An edited book must show what a book shows that was calculated from nothing: the values after each edit are compared
 * with those of a new calculation of the same book.
 */
const columnFormulas = [
  'x*2',
  'x+y',
  'A1+1',
  'A2',
  'x/total',
  'SUM(A$1:A1)',
  'IF(x>2, u, y)',
  'AVERAGE(s.x)+y',
  'RANK(x, s.x)',
  'B$2*x',
  'SUMIFS(t.x, t.y, y)',
  'missing+1',
  'v+1',
  'XLOOKUP(x, t.x, t.u)',
  '#REF!femur',
  'MAX(A$1:B$3)',
  'MAX(t!A$1:A$3)+x',
  'SUM(s!$A$2:$B$3)',
  'SUM(s!A1:B2)',
] as const;
const cellFormulas = [
  'SUM(s.x)',
  'SUM(t.u)',
  'A1',
  'B2*2',
  'C3+total',
  'x+1',
  'u',
  'SEQUENCE(2)',
  '{1,2}',
  'TRANSPOSE(s!A1:A2)',
  'COUNT(A1:D4)',
  'SUM(s!A1:B3)',
  'SUM(t!A1:A4)',
  'MEDIAN(s!$A$1:$A$4)',
  'IFERROR(v, 0)',
  'total+1',
  't!B2',
  '1/0',
  'COUNTIF(s.y, ">"&A1)',
] as const;

const cell: fc.Arbitrary<Cell> = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: -3, max: 6 }) },
  { weight: 3, arbitrary: fc.constantFrom(...cellFormulas).map(f) },
  { weight: 2, arbitrary: fc.constant(null) },
  {
    weight: 1,
    arbitrary: fc.constantFrom<Cell>('text', '3', true, { date: 45000 }, { held: '4 cm', reason: 'unit' }),
  },
);
const sheet = fc.constantFrom('s', 't');
const column = fc.constantFrom('x', 'y', 'u', 'v');
/** An edit, drawn without knowing the book: rows and columns are fitted to it when it is made. */
const cellsPick = fc.record({
  kind: fc.constant('cells' as const),
  sheet,
  column,
  row: fc.nat(9),
  cells: fc.array(cell, { minLength: 1, maxLength: 3 }),
});
const pick = fc.oneof(
  { weight: 7, arbitrary: cellsPick },
  fc.record({
    kind: fc.constant('formula' as const),
    sheet,
    column,
    formula: fc.option(fc.constantFrom(...columnFormulas)),
  }),
  fc.record({
    kind: fc.constant('add-rows' as const),
    sheet,
    row: fc.nat(9),
    count: fc.integer({ min: 1, max: 2 }),
  }),
  fc.record({ kind: fc.constant('remove-rows' as const), sheet, row: fc.nat(9) }),
  fc.record({ kind: fc.constant('order-rows' as const), sheet, seed: fc.nat(100) }),
  fc.record({ kind: fc.constant('move-column' as const), sheet, column, row: fc.nat(3) }),
  fc.record({
    kind: fc.constant('rename' as const),
    sheet,
    column,
    name: fc.constantFrom('x', 'y', 'u', 'v', 'w'),
  }),
  fc.record({ kind: fc.constant('name' as const), sheet, column, row: fc.nat(9), gone: fc.boolean() }),
);
type Pick = typeof pick extends fc.Arbitrary<infer T> ? T : never;

function editOf(book: LiveBook, p: Pick): Edit | undefined {
  const at = book.sheets.find((s) => s.id === p.sheet)!;
  const row = (n: number): number => Math.min(n, Math.max(0, at.rows - 1));
  const own = (id: string): Column => at.columns.find((c) => c.id === id)!;
  switch (p.kind) {
    case 'cells': {
      const from = row(p.row);
      const cells = p.cells.slice(0, at.rows - from);
      return { do: 'put-cells', sheet: p.sheet, row: from, columns: [p.column], cells: [cells] };
    }
    case 'formula': {
      const { formula: _, ...plain } = own(p.column);
      return {
        do: 'change-column',
        sheet: p.sheet,
        column: p.formula ? { ...plain, formula: p.formula } : plain,
      };
    }
    case 'add-rows':
      return { do: 'add-rows', sheet: p.sheet, row: row(p.row), count: p.count };
    case 'remove-rows':
      return at.rows > 2 ? { do: 'remove-rows', sheet: p.sheet, row: row(p.row), count: 1 } : undefined;
    case 'order-rows': {
      const order = Array.from({ length: at.rows }, (_, i) => i);
      order.sort((a, b) => ((a * 7 + p.seed) % 11) - ((b * 7 + p.seed) % 11) || a - b);
      return { do: 'order-rows', sheet: p.sheet, order };
    }
    case 'move-column':
      return { do: 'move-column', sheet: p.sheet, column: p.column, index: p.row };
    case 'rename': {
      if (at.columns.some((c) => c.name === p.name)) return undefined;
      return { do: 'change-column', sheet: p.sheet, column: { ...own(p.column), name: p.name } };
    }
    case 'name':
      return {
        do: 'set-name',
        name: 'total',
        target: p.gone ? null : { sheet: p.sheet, column: p.column, row: row(p.row) },
      };
  }
}

const start = (): LiveBook =>
  bookOf(
    {
      s: { x: [1, 2, 3, 4], y: [2, null, 5, 1], u: 'x*2', v: [f('SUM(s.x)'), null, null, f('A1')] },
      t: { x: [3, 1, 2], y: [1, 1, 2], u: [10, 20, 30], v: 'u+x' },
    },
    { total: ['s', 'v', 0] },
  );

const shown = (bench: Bench): unknown =>
  bench.book.sheets.map((s) =>
    s.columns.map((c) => [
      `${s.name}.${c.name}`,
      bench.values(s.id, c.id),
      [...bench.calculation.column(s.id, c.id).kinds],
    ]),
  );

const runs = Number(process.env.LEVERBOOK_RUNS ?? 300);

test('an edited book shows the values of a book calculated from nothing', () => {
  fc.assert(
    fc.property(fc.array(pick, { maxLength: 12, size: 'max' }), (picks) => {
      const bench = new Bench(start());
      for (const p of picks) {
        const edit = editOf(bench.book, p);
        if (edit) bench.edit(edit);
      }
      expect(shown(bench)).toEqual(shown(new Bench(bench.book)));
    }),
    { numRuns: runs },
  );
});

test('taking every edit back shows the values of the start', () => {
  fc.assert(
    fc.property(fc.array(pick, { maxLength: 12, size: 'max' }), (picks) => {
      const bench = new Bench(start());
      const before = shown(bench);
      const inverses: Edit[] = [];
      for (const p of picks) {
        const edit = editOf(bench.book, p);
        if (edit) inverses.unshift(bench.edit(edit));
      }
      for (const inverse of inverses) bench.edit(inverse);
      expect(shown(bench)).toEqual(before);
    }),
    { numRuns: Math.ceil(runs / 3) },
  );
});

test('500 edits in a row keep the values of a book calculated from nothing', () => {
  fc.assert(
    fc.property(fc.array(pick, { minLength: 500, maxLength: 500, size: 'max' }), (picks) => {
      const bench = new Bench(start());
      for (const p of picks) {
        const edit = editOf(bench.book, p);
        if (edit) bench.edit(edit);
      }
      expect(shown(bench)).toEqual(shown(new Bench(bench.book)));
    }),
    { numRuns: 1, endOnFailure: true },
  );
});

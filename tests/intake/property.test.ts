import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook } from '../../src/book/book.ts';
import type { Cell } from '../../src/book/cells.ts';
import type { Column, Sheet } from '../../src/book/model.ts';
import { IntakeRefusal } from '../../src/intake/index.ts';
import { decodeAll } from '../../src/intake/read/decode.ts';
import { isoFromSerial } from '../../src/units/date.ts';
import { importFile } from './at-once.ts';

const columns: readonly Column[] = [
  { id: 'athlete', name: 'athlete', label: 'Athlete', kind: 'text' },
  { id: 'day', name: 'day', label: 'Day', kind: 'date' },
  { id: 'load', name: 'load', label: 'Load', kind: 'number', dimension: 'mass', unit: 'kg' },
  { id: 'score', name: 'score', label: 'Score', kind: 'number' },
  { id: 'pain', name: 'pain', label: 'Pain', kind: 'yes-no' },
  { id: 'note', name: 'note', label: 'Note', kind: 'text' },
];
const headings = ['Athlete', 'Day', 'Load (kg)', 'Score', 'Pain', 'Note'];

type Row = readonly [
  string | null,
  number | null,
  number | null,
  number | null,
  boolean | null,
  string | null,
];

/** Texts that a cell can hold: any, but not blanks alone, and without halves of characters, which no encoding keeps. */
const text = fc
  .oneof(
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
    fc.string({
      unit: fc.constantFrom('"', ';', ',', '\t', '\n', '\r', '|', "'", ' ', '=', '-', 'a', 'é', '1'),
      minLength: 1,
      maxLength: 10,
    }),
  )
  .map((t) => t.replace(/[^\P{Cc}\t\n\r]|\ufeff/gu, ''))
  .filter((t) => t.trim() !== '');
const score = fc.oneof(
  fc.integer({ min: -1_000_000, max: 1_000_000 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => x + 0),
);
const row: fc.Arbitrary<Row> = fc.tuple(
  fc.option(text, { nil: null }),
  fc.option(fc.integer({ min: 1, max: 80_000 }), { nil: null }),
  fc.option(
    fc.integer({ min: 0, max: 7000 }).map((n) => n / 10),
    { nil: null },
  ),
  fc.option(score, { nil: null }),
  fc.option(fc.boolean(), { nil: null }),
  fc.option(text, { nil: null }),
);

const dialect = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  decimal: fc.constantFrom<'.' | ','>('.', ','),
  quoteAll: fc.boolean(),
  lastLineEnd: fc.boolean(),
  encoding: fc.constantFrom(
    'utf-8',
    'utf-8 with mark',
    'utf-16le with mark',
    'utf-16be with mark',
    'utf-32le with mark',
    'utf-32be with mark',
  ),
});
type Dialect = typeof dialect extends fc.Arbitrary<infer D> ? D : never;

/** An export written for this test, by RFC 4180 with the dialect's marks. */
function write(rows: readonly Row[], d: Dialect): Uint8Array<ArrayBuffer> {
  const special = new RegExp(`["\\r\\n${d.delimiter === '|' ? '\\|' : d.delimiter}]`);
  const cell = (t: string): string =>
    d.quoteAll || special.test(t) || /^[\s"]|\s$/.test(t) ? `"${t.replaceAll('"', '""')}"` : t;
  const number = (x: number): string => String(x).replace('.', d.decimal);
  const safe = (t: string): string => (/^'*[=+\-@\t\r\n＝＋－＠]/.test(t) ? `'${t}` : t);
  const lines = rows.map(([athlete, day, load, score, pain, note]) =>
    [
      athlete === null ? '' : safe(athlete),
      day === null ? '' : isoFromSerial(day)!,
      load === null ? '' : number(load),
      score === null ? '' : number(score),
      pain === null ? '' : pain ? 'yes' : 'no',
      note === null ? '' : safe(note),
    ]
      .map(cell)
      .join(d.delimiter),
  );
  const all = [headings.map(cell).join(d.delimiter), ...lines].join(d.lineEnd);
  return encode(d.lastLineEnd ? all + d.lineEnd : all, d.encoding);
}

function encode(t: string, encoding: string): Uint8Array<ArrayBuffer> {
  if (encoding.startsWith('utf-8'))
    return new TextEncoder().encode(encoding.includes('mark') ? `\ufeff${t}` : t);
  if (encoding.startsWith('utf-32')) {
    const points = [...`\ufeff${t}`];
    const wide = new Uint8Array(4 * points.length);
    const wideView = new DataView(wide.buffer);
    for (const [i, point] of points.entries())
      wideView.setUint32(4 * i, point.codePointAt(0)!, encoding.startsWith('utf-32le'));
    return wide;
  }
  const bytes = new Uint8Array(2 * (t.length + 1));
  const view = new DataView(bytes.buffer);
  for (const [i, unit] of [...`\ufeff${t}`.split('')].entries())
    view.setUint16(2 * i, unit.charCodeAt(0), encoding.startsWith('utf-16le'));
  return bytes;
}

function emptySheet(): { book: ReturnType<typeof createBook>; sheet: () => Sheet } {
  const book = createBook();
  applyEdit(book, {
    do: 'add-sheet',
    index: 0,
    sheet: {
      id: 'log',
      name: 'log',
      label: 'Log',
      purpose: 'gathered',
      rows: 0,
      columns: columns.map((column) => ({ column })),
    },
  });
  return { book, sheet: () => book.sheets[0]! };
}

/** Line breaks inside a cell come in as line feeds, whatever the file has (XML 1.0, section 2.11, does the same). */
const cellsOf = (r: Row): Cell[] =>
  r.map((v, i) =>
    i === 1 && v !== null ? { date: v as number } : typeof v === 'string' ? v.replace(/\r\n|\r/g, '\n') : v,
  );
const isFilled = (r: Row): boolean => r.some((v) => v !== null);

describe('a table of ours', () => {
  test('comes back equal from any dialect that says where its cells end', () => {
    fc.assert(
      fc.property(fc.array(row.filter(isFilled), { minLength: 1, maxLength: 12 }), dialect, (rows, d) => {
        const { book, sheet } = emptySheet();
        const imported = importFile(
          write(rows, d),
          { sheet: sheet(), book },
          {
            // What a recipe of this file would say; texts full of marks could be read otherwise.
            choices: {
              delimiter: d.delimiter as ',',
              quote: '"',
              decimal: d.decimal,
              preamble: 0,
              headingLines: 1,
              unitsLine: false,
              footer: 0,
            },
          },
        );
        expect(imported.report.rows).toMatchObject({ in: rows.length, placed: rows.length, held: 0 });
        applyEdit(book, { do: 'batch', edits: imported.edits });
        const back = rows.map((_, i) => columns.map((c) => sheet().cells.get(c.id)!.get(i)));
        expect(back).toEqual(rows.map(cellsOf));
      }),
      { numRuns: 400 },
    );
  });

  test('an ordinary one is read right with nothing said about its dialect', () => {
    const word = fc.constantFrom(
      'Ada Holm',
      'Bo Lind',
      'Çelik, Ece',
      'Jörg "Jo" Mäder',
      "D'Arcy, Finn",
      'Ingrid',
    );
    const ordinary = fc.tuple(
      word,
      fc.integer({ min: 40_000, max: 46_000 }),
      fc.integer({ min: 200, max: 3000 }).map((n) => n / 10),
      fc.integer({ min: 1, max: 2000 }).map((n) => n / 100),
      fc.boolean(),
      fc.constantFrom('felt fine', 'slow, but steady', 'knee; left', 'said "stop"', 'two\nlines'),
    ) as fc.Arbitrary<Row>;
    fc.assert(
      fc.property(
        fc.array(ordinary, { minLength: 4, maxLength: 30 }),
        dialect.filter((d) => d.quoteAll || d.decimal === '.' || d.delimiter !== ','),
        (rows, d) => {
          const { book, sheet } = emptySheet();
          const imported = importFile(write(rows, d), { sheet: sheet(), book });
          expect(imported.findings.delimiter.value).toBe(d.delimiter);
          expect(imported.report.rows).toMatchObject({ in: rows.length, placed: rows.length, held: 0 });
          expect(imported.report.cells.held).toBe(0);
          applyEdit(book, { do: 'batch', edits: imported.edits });
          const back = rows.map((_, i) => columns.map((c) => sheet().cells.get(c.id)!.get(i)));
          expect(back).toEqual(rows.map(cellsOf));
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('line ends', () => {
  const ends = fc.constantFrom('\n', '\r\n', '\r');

  test('that are mixed in one file lose no row and no value', () => {
    const line = fc.tuple(
      fc.integer({ min: 1, max: 999 }),
      fc.constantFrom('steady', '"two\nlines"', '"two\r\nlines"', '"two\rlines"', '"said ""stop"""'),
      ends,
    );
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 40 }), ends, (lines, first) => {
        const text = `Load (kg),Note${first}${lines.map(([n, t, end]) => `${n},${t}${end}`).join('')}`;
        const { report, preview } = importFile(new TextEncoder().encode(text), { sheet: null });
        expect(report.rows).toMatchObject({ in: lines.length, placed: lines.length, held: 0 });
        expect(preview.first.map(({ cells }) => cells[0])).toEqual(lines.slice(0, 20).map(([n]) => n));
      }),
      { numRuns: 300 },
    );
  });

  test('that change far into a long file lose no row', () => {
    const rows = 600_000;
    const endOf = (i: number) => (i < 300_000 ? '\r\n' : i % 3 === 0 ? '\r' : '\n');
    const lines = Array.from({ length: rows }, (_, i) => `${i % 200},${i % 7}.5${endOf(i)}`);
    const { report, findings } = importFile(new TextEncoder().encode(`Load (kg),Reps\r\n${lines.join('')}`), {
      sheet: null,
    });
    expect(findings.partial).toBe(true);
    expect(report.rows).toMatchObject({ in: rows, placed: rows, held: 0 });
    expect(report.lines.total).toBe(rows + 1);
  });

  test('that are mixed keep each row that is not imported apart, as it came', () => {
    const text = 'Load (kg),Reps\r1,2\r\n3,4,spilled\n5,6\r7\r8,9\n10,11';
    const { report, heldRows } = importFile(new TextEncoder().encode(text), { sheet: null });
    expect(report.rows).toMatchObject({ in: 6, placed: 4, held: 2 });
    expect(heldRows.map(({ line, raw }) => [line, raw])).toEqual([
      [3, '3,4,spilled'],
      [5, '7'],
    ]);
  });
});

describe('damage to a file', () => {
  const damage = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    how: fc.constantFrom('delete', 'insert', 'change', 'cut', 'repeat'),
    byte: fc.oneof(
      fc.constantFrom(...[...'",;\t\n\r\'|'].map((c) => c.charCodeAt(0))),
      fc.integer({ min: 0, max: 255 }),
    ),
    length: fc.integer({ min: 1, max: 40 }),
  });

  function hurt(
    bytes: Uint8Array,
    d: { at: number; how: string; byte: number; length: number },
  ): Uint8Array<ArrayBuffer> {
    const list = [...bytes];
    const at = Math.floor(d.at * list.length);
    if (d.how === 'delete') list.splice(at, d.length);
    else if (d.how === 'insert') list.splice(at, 0, d.byte);
    else if (d.how === 'change') list[at] = d.byte;
    else if (d.how === 'cut') list.length = at;
    else list.splice(at, 0, ...list.slice(at, at + d.length));
    return Uint8Array.from(list);
  }

  test('loses no line silently and never throws anything but a refusal', () => {
    fc.assert(
      fc.property(
        fc.array(row.filter(isFilled), { minLength: 1, maxLength: 15 }),
        dialect,
        fc.array(damage, { minLength: 1, maxLength: 6 }),
        (rows, d, damages) => {
          const bytes = damages.reduce<Uint8Array>(hurt, write(rows, d));
          for (const target of [null, emptySheet().sheet()]) {
            let imported: ReturnType<typeof importFile>;
            try {
              imported = importFile(bytes, { sheet: target });
            } catch (error) {
              if (error instanceof IntakeRefusal) {
                expect(error.message.length).toBeGreaterThan(20);
                continue;
              }
              throw error;
            }
            const { rows: r, lines, cells } = imported.report;
            expect(r.in).toBe(r.placed + r.held);
            expect(imported.heldRows).toHaveLength(r.held);
            const { total, ...parts } = lines;
            expect(Object.values(parts).reduce((a, b) => a + b, 0)).toBe(total);
            // The lines of the text, counted without any parser.
            const t = decodeAll(bytes, imported.findings.encoding.value);
            const counted = t.split(/\r\n|\r|\n/);
            if (counted.at(-1) === '') counted.pop();
            expect(total).toBe(counted.length);
            expect(cells.held).toBeLessThanOrEqual(r.in * 40);
          }
        },
      ),
      { numRuns: 600 },
    );
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { columnNamed, createBook } from '../../src/book/book.ts';
import type { Cell } from '../../src/book/cells.ts';
import type { Sheet } from '../../src/book/model.ts';
import { type Choices, type Findings, type Imported, IntakeRefusal } from '../../src/intake/index.ts';
import { isoFromSerial } from '../../src/units/date.ts';
import { importFile, inspect } from './at-once.ts';

// Small files written for these tests after shapes that spreadsheets, phones, plates and people produce; everybody in
// them is invented. What each must come to was worked out by hand and stands beside it.
interface Expected {
  readonly about: string;
  readonly choices?: Choices;
  readonly refused?: string;
  readonly encoding?: string;
  readonly byteOrderMark?: boolean;
  readonly delimiter?: string;
  readonly quote?: string;
  readonly lineEnd?: string;
  readonly preamble?: number;
  readonly headingLines?: number;
  readonly unitsLine?: boolean;
  readonly footer?: number;
  readonly shortRows?: string;
  /** "heading|kind|unit". */
  readonly columns?: readonly string[];
  readonly columnNames?: readonly string[];
  readonly width?: number;
  readonly decimal?: Readonly<Record<string, string>>;
  readonly dateOrder?: Readonly<Record<string, string>>;
  /** Of the decimal mark, date order or clock of a column. */
  readonly certainty?: Readonly<Record<string, string>>;
  readonly rows?: readonly [arrived: number, placed: number, held: number];
  readonly lines?: Readonly<Record<string, number>>;
  readonly heldRows?: readonly (readonly [line: number, reason: string])[];
  readonly heldCells?: number;
  readonly cells?: readonly (readonly [row: number, column: string, value: unknown])[];
  readonly notes?: readonly string[];
  readonly notNotes?: readonly string[];
}

const folder = join(import.meta.dirname, 'corpus');
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.csv'))
  .map((name) => name.slice(0, -4));

describe('the corpus', () => {
  test('has at least 60 files', () => {
    expect(names.length).toBeGreaterThanOrEqual(60);
  });

  test.each(names)('%s comes in as its description says', (name) => {
    const bytes = new Uint8Array(readFileSync(join(folder, `${name}.csv`)));
    const expected = JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8')) as Expected;
    const options = {
      name: `${name}.csv`,
      now: '2026-06-30T12:00:00Z',
      ...(expected.choices ? { choices: expected.choices } : {}),
    };
    if (expected.refused !== undefined) {
      expect(reasonOf(() => inspect(bytes, options))).toBe(expected.refused);
      expect(reasonOf(() => importFile(bytes, { sheet: null }, options))).toBe(expected.refused);
      return;
    }
    const imported = importFile(bytes, { sheet: null, label: 'table' }, options);
    checkFindings(imported.findings, expected);
    checkPlacing(imported, expected);
    const book = createBook();
    applyEdit(book, { do: 'batch', edits: imported.edits });
    const [sheet] = book.sheets;
    for (const [row, column, value] of expected.cells ?? [])
      expect([row, column, shown(sheet!, column, row)]).toEqual([row, column, value]);
    if (expected.columnNames) expect(sheet!.columns.map((c) => c.name)).toEqual(expected.columnNames);
    if (expected.width) expect(sheet!.columns).toHaveLength(expected.width);
  });
});

function reasonOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof IntakeRefusal) return error.note.reason;
    throw error;
  }
  return 'imported';
}

function checkFindings(found: Findings, expected: Expected): void {
  for (const key of [
    'encoding',
    'delimiter',
    'quote',
    'preamble',
    'headingLines',
    'unitsLine',
    'footer',
    'shortRows',
  ] as const)
    if (expected[key] !== undefined) expect([key, found[key].value]).toEqual([key, expected[key]]);
  if (expected.byteOrderMark !== undefined) expect(found.byteOrderMark).toBe(expected.byteOrderMark);
  if (expected.lineEnd !== undefined) expect(found.lineEnd).toBe(expected.lineEnd);
  if (expected.columns)
    expect(found.columns.map((c) => `${c.heading}|${c.kind.value}|${c.unit.value ?? ''}`)).toEqual(
      expected.columns,
    );
  const column = (heading: string) => found.columns.find((c) => c.heading === heading)!;
  for (const [heading, mark] of Object.entries(expected.decimal ?? {}))
    expect(column(heading).decimal.value).toBe(mark);
  for (const [heading, order] of Object.entries(expected.dateOrder ?? {}))
    expect(column(heading).dateOrder?.value).toBe(order);
  for (const [heading, certainty] of Object.entries(expected.certainty ?? {})) {
    const { decimal, dateOrder, clock } = column(heading);
    expect([decimal.certainty, dateOrder?.certainty, clock?.certainty]).toContain(certainty);
  }
}

function checkPlacing({ report, heldRows }: Imported, expected: Expected): void {
  const { rows, lines, cells, notes } = report;
  expect(rows.in).toBe(rows.placed + rows.held);
  expect(rows.placed).toBe(rows.added + rows.updated + rows.unchanged);
  const { total, ...parts } = lines;
  expect(total).toBe(Object.values(parts).reduce((a, b) => a + b, 0));
  if (expected.rows) expect([rows.in, rows.placed, rows.held]).toEqual(expected.rows);
  if (expected.lines) expect(lines).toMatchObject(expected.lines);
  if (expected.heldRows) expect(heldRows.map((h) => [h.line, h.reason.reason])).toEqual(expected.heldRows);
  expect(cells.held).toBe(expected.heldCells ?? 0);
  const reasons: readonly string[] = notes.map((n) => n.reason);
  for (const reason of expected.notes ?? []) expect(reasons).toContain(reason);
  for (const reason of expected.notNotes ?? []) expect(reasons).not.toContain(reason);
}

/** A cell as the descriptions write it: dates in ISO 8601, held texts alone. */
function shown(sheet: Sheet, name: string, row: number): unknown {
  const column = columnNamed(sheet, name);
  if (!column) return `no column ${name} among ${sheet.columns.map((c) => c.name).join(', ')}`;
  const cell: Cell = sheet.cells.get(column.id)!.get(row);
  if (cell === null || typeof cell !== 'object') return cell;
  if ('date' in cell) return isoFromSerial(cell.date);
  return 'held' in cell ? { held: cell.held } : cell;
}

/** Opens a workbook file and reads one of its tables. */
import type { Progress } from '../../api.ts';
import { IntakeRefusal } from '../../sentences/index.ts';
import { hashing } from '../hash.ts';
import type { Prepared, PrepareOptions } from '../prepared.ts';
import type { Grid } from './grid.ts';
import { readTable, readTables } from './ods.ts';
import { type OpenEntry, readFrame, readSheet } from './xlsx.ts';
import { Allowance, MOST_UNPACKED, readDirectory, unpack } from './zip.ts';

const PAUSE = 4;

/** Runs an inner task, telling from time to time that it goes on. */
function* telling<T>(task: Generator<void, T>, total: number): Generator<Progress, T> {
  for (let n = 0; ; n++) {
    const step = task.next();
    if (step.done) return step.value;
    if (n % PAUSE === 0) yield { done: 0, total, about: 'opening the workbook' };
  }
}

/**
 * Takes one table out of a zipped workbook (.xlsx, .ods) as CSV.
 * @throws IntakeRefusal when the archive is damaged, locked, too large, or no workbook
 */
export function* opening(bytes: Uint8Array, options: PrepareOptions): Generator<Progress, Prepared> {
  const name = options.name ?? '';
  const entries = readDirectory(bytes, name);
  const allowance = new Allowance(name, options.largestUnpacked ?? MOST_UNPACKED);
  const open: OpenEntry = (path) => {
    const entry = entries.get(path);
    return entry && unpack(bytes, entry, allowance, name);
  };
  const total = bytes.length;
  const kind = entries.has('xl/workbook.xml') ? 'xlsx' : entries.has('content.xml') ? 'ods' : null;
  if (kind === null)
    throw new IntakeRefusal('not-a-table', {
      name,
      what: 'a zipped file without a workbook in it',
      remedy: 'Unpack it first.',
    });
  const found =
    kind === 'xlsx'
      ? yield* telling(fromXlsx(open, options.table, name), total)
      : yield* telling(fromOds(open, options.table, name), total);
  const hash = yield* hashing(bytes);
  const pieces: Uint8Array[] = [];
  const utf8 = new TextEncoder();
  let lines = '';
  let size = 0;
  const flush = (): void => {
    const piece = utf8.encode(lines);
    pieces.push(piece);
    size += piece.length;
    lines = '';
  };
  for (const line of found.grid.csv()) {
    lines += line;
    if (lines.length > 1 << 17) {
      flush();
      yield { done: 0, total, about: 'opening the workbook' };
    }
  }
  flush();
  const csv = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    csv.set(piece, at);
    at += piece.length;
  }
  return {
    bytes: csv,
    options: {
      choices: { encoding: 'utf-8', delimiter: ',', quote: '"' },
      hash,
      size: bytes.length,
      workbook: { kind, table: found.table, tables: found.tables },
    },
  };
}

interface Found {
  readonly grid: Grid;
  readonly table: string;
  readonly tables: readonly string[];
}

function* fromXlsx(open: OpenEntry, wanted: string | undefined, name: string): Generator<void, Found> {
  const { sheets, first1904 } = yield* readFrame(open, name);
  const tables = sheets.filter((s) => !s.hidden).map((s) => s.name);
  let found: Found | null = null;
  for (const sheet of sheets) {
    if (wanted === undefined ? sheet.hidden : sheet.name !== wanted) continue;
    const grid = yield* readSheet(open, sheet, first1904, name);
    found = { grid, table: sheet.name, tables };
    // The first table with rows, unless one was asked for.
    if (grid.height > 1 || wanted !== undefined) break;
  }
  return found ?? noTable(wanted, tables, name);
}

function* fromOds(open: OpenEntry, wanted: string | undefined, name: string): Generator<void, Found> {
  const tables = yield* readTables(open, name);
  let found: Found | null = null;
  for (const table of wanted === undefined ? tables : tables.filter((t) => t === wanted)) {
    const grid = yield* readTable(open, table, name);
    found = { grid, table, tables };
    if (grid.height > 1) break;
  }
  return found ?? noTable(wanted, tables, name);
}

function noTable(wanted: string | undefined, tables: readonly string[], name: string): never {
  throw new IntakeRefusal('workbook-no-table', { name, table: wanted ?? '', tables: tables.join(', ') });
}

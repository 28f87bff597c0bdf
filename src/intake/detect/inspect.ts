import type { Choices, Encoding, Finding, Findings, IntakeOptions, Progress, Shape } from '../api.ts';
import {
  type Dialect,
  decodeAll,
  type EncodingFinding,
  findDialect,
  findingEncoding,
  hashing,
  isEncoding,
  kindOfFile,
  oneLineEnd,
  parseText,
  parsingText,
} from '../read/index.ts';
import { IntakeRefusal, note } from '../sentences/index.ts';
import { findFooter } from './footer.ts';
import { findLayout, type LayoutFindings } from './layout.ts';
import { findRowIsSet } from './log.ts';
import { findShape, lookingAtColumns, tableNotes, tableOf, withColumns } from './table.ts';

/** A file with everything that was found out about it, ready to be placed. */
export interface Inspected {
  readonly findings: Findings;
  readonly dialect: Dialect;
  readonly layout: LayoutFindings;
  /** The shape rows are brought into, with the columns that were found for it. */
  readonly shape: Shape | null;
}

const LARGEST = 512 * 1024 * 1024;
/** Files up to this are looked at whole before anything is placed; of longer ones the beginning and the end. */
const WHOLE = 4 * 1024 * 1024;
/** Part of the beginning; its findings hold for the rest unless the rest says otherwise. */
export const HEAD = 512 * 1024;
const TAIL = 64 * 1024;
const LEAST_LINES = 100;
/** Records in which the table must begin. */
const HEAD_ROWS = 100;
/** Records at the end that can be totals and remarks. */
const END_ROWS = 60;
const SAMPLE = 20;

const isBlankRow = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '');

/** Looks at a file and writes nothing. @throws IntakeRefusal */
export function* inspecting(bytes: Uint8Array, options: IntakeOptions = {}): Generator<Progress, Inspected> {
  const name = options.name ?? '';
  const choices = options.choices ?? {};
  const largest = options.largest ?? LARGEST;
  if (bytes.length > largest) throw new IntakeRefusal('too-large', { name, size: bytes.length, largest });
  if (kindOfFile(bytes, name) === 'workbook') throw new IntakeRefusal('workbook-unopened', { name });
  yield { done: 0, total: bytes.length, about: 'looking at the file' };
  const { encoding, byteOrderMark } = yield* chosenEncoding(bytes, name, choices);
  // Columns made from names in the rows are known only when all rows were seen.
  const long = bytes.length > WHOLE && choices.shape?.to !== 'wide';
  const beginning = decodeAll(long ? bytes.subarray(0, HEAD) : bytes, encoding.value);
  // Where a few lines fill the beginning it says too little about the rest.
  const partial = long && oneLineEnd(beginning).split('\n', LEAST_LINES).length === LEAST_LINES;
  const head = long && !partial ? decodeAll(bytes, encoding.value) : beginning;
  if (head.trim() === '') throw new IntakeRefusal('blank-file', { name });
  const dialect = findDialect(head, choices);
  const rows = yield* parsingText(partial ? wholeLines(oneLineEnd(head)) : head, dialect.dialect);
  yield { done: 0, total: bytes.length, about: 'looking at the file' };
  const layout = findLayout(rows.slice(0, HEAD_ROWS), choices, dialect.saidInFirstLine);
  const width = layout.headings.length;
  const end = partial ? tailRows(bytes, encoding.value, dialect.dialect) : rows.slice(layout.skip);
  const footer = findFooter(end.slice(-END_ROWS), width, choices);
  const body = rows
    .slice(layout.skip, partial ? rows.length : rows.length - footer.value)
    .filter((row) => !isBlankRow(row));
  if (body.length === 0) throw new IntakeRefusal('only-headings', { name, columns: width });
  yield { done: 0, total: bytes.length, about: 'looking at the columns' };
  const shape = findShape(layout.headings, choices);
  const table = tableOf(body, layout, shape.value, name);
  const looked = yield* lookingAtColumns(table, dialect.delimiter.value, choices);
  const hash = options.hash ?? (yield* hashing(bytes));
  const fromWorkbook = <T>(finding: Finding<T>): Finding<T> =>
    options.workbook
      ? { ...finding, certainty: 'sure', because: note('from-workbook', { table: options.workbook.table }) }
      : finding;
  const findings: Findings = {
    name,
    size: options.size ?? bytes.length,
    hash,
    workbook: options.workbook ?? null,
    encoding: fromWorkbook(encoding),
    byteOrderMark,
    delimiter: fromWorkbook(dialect.delimiter),
    quote: fromWorkbook(dialect.quote),
    lineEnd: dialect.lineEnd,
    preamble: layout.preamble,
    headingLines: layout.headingLines,
    unitsLine: layout.unitsLine,
    footer,
    shortRows: findShortRows(body, width, choices),
    shape,
    rowIsSet: findRowIsSet(looked.columns, choices)?.finding ?? null,
    columns: looked.columns,
    rows: table.rows.length,
    partial,
    sample: table.rows.slice(0, SAMPLE),
    notes: [
      ...(partial ? [note('looked-at-part', { rows: body.length })] : []),
      ...(shape.value === null && shape.certainty === 'doubtful' ? [shape.because] : []),
      ...tableNotes(table, looked, layout.headingLines.value > 0, choices),
    ],
  };
  return { findings, dialect: dialect.dialect, layout, shape: withColumns(shape.value, table.headings) };
}

function* chosenEncoding(
  bytes: Uint8Array,
  name: string,
  choices: Choices,
): Generator<Progress, EncodingFinding> {
  const found = yield* findingEncoding(bytes, name);
  if (choices.encoding === undefined) return found;
  if (!isEncoding(choices.encoding))
    throw new IntakeRefusal('unknown-encoding', {
      encoding: choices.encoding,
      found: found.encoding.value,
    });
  return {
    ...found,
    encoding: {
      value: choices.encoding,
      certainty: 'sure',
      because: note('chosen'),
      others: [found.encoding.value],
    },
  };
}

function wholeLines(text: string): string {
  const end = text.lastIndexOf('\n');
  return end < 0 ? text : text.slice(0, end + 1);
}

function tailRows(bytes: Uint8Array, encoding: Encoding, dialect: Dialect): (readonly string[])[] {
  // A start at a whole number of four bytes keeps the parts of UTF-16 and UTF-32 together.
  const from = Math.max(0, bytes.length - TAIL) & ~3;
  const text = oneLineEnd(decodeAll(bytes.subarray(from), encoding));
  const begin = text.indexOf('\n');
  return parseText(text.slice(begin + 1), dialect);
}

/** Rows that end early are damage, unless the file makes a habit of it. */
function findShortRows(
  body: readonly (readonly string[])[],
  width: number,
  choices: Choices,
): Finding<'hold' | 'place'> {
  if (choices.shortRows) return { value: choices.shortRows, certainty: 'sure', because: note('chosen') };
  const short = body.filter((row) => row.length < width).length;
  const habit = short >= 0.2 * body.length && short >= 2;
  return {
    value: habit ? 'place' : 'hold',
    certainty: short === 0 || habit ? 'likely' : 'doubtful',
    because: habit ? note('rows-often-short', { count: short, rows: body.length }) : note('rows-complete'),
    others: [habit ? 'hold' : 'place'],
  };
}

import type { Choices, ColumnFinding, Encoding, Finding, Findings, IntakeOptions, Progress } from './api.ts';
import { findColumn, habitsOf } from './columns.ts';
import { decodePieces, findEncoding, isEncoding } from './decode.ts';
import { findDialect } from './dialect.ts';
import { hashOf } from './hash.ts';
import { kindOfFile } from './kind-of-file.ts';
import { findFooter, findLayout, type LayoutFindings } from './layout.ts';
import { ColumnLook } from './look.ts';
import { type Dialect, parseText } from './parse.ts';
import { IntakeRefusal, type Note, note } from './sentences.ts';

/** A file with everything that was found out about it, ready to be placed. */
export interface Inspected {
  readonly findings: Findings;
  readonly dialect: Dialect;
  readonly layout: LayoutFindings;
}

const LARGEST = 512 * 1024 * 1024;
/** Files up to this are looked at whole before anything is placed; of longer ones the beginning and the end. */
const WHOLE = 6 * 1024 * 1024;
const HEAD = 1024 * 1024;
const TAIL = 64 * 1024;
const HEAD_ROWS = 100;
const SAMPLE = 20;

const isBlankRow = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '');

/** Looks at a file and writes nothing. @throws IntakeRefusal */
export function* inspecting(bytes: Uint8Array, options: IntakeOptions = {}): Generator<Progress, Inspected> {
  const name = options.name ?? '';
  const choices = options.choices ?? {};
  const largest = options.largest ?? LARGEST;
  if (bytes.length > largest) throw new IntakeRefusal('too-large', { name, size: bytes.length, largest });
  if (kindOfFile(bytes, name) === 'workbook')
    throw new IntakeRefusal('not-a-table', { name, what: 'a zipped workbook' });
  yield { done: 0, total: bytes.length, about: 'looking at the file' };
  const { encoding, byteOrderMark } = chosenEncoding(bytes, name, choices);
  const partial = bytes.length > WHOLE;
  const headBytes = partial ? bytes.subarray(0, HEAD) : bytes;
  const head = [...decodePieces(headBytes, encoding.value)].join('');
  if (head.trim() === '') throw new IntakeRefusal('blank-file', { name });
  const dialect = findDialect(head, choices);
  const rows = headRows(partial ? wholeLines(head, dialect.dialect.newline) : head, dialect.dialect);
  const tail = partial ? tailRows(bytes, encoding.value, dialect.dialect) : rows;
  const layout = findLayout(rows.slice(0, HEAD_ROWS), choices, dialect.saidInFirstLine);
  const width = layout.headings.length;
  const endRows = (partial ? tail : rows.slice(layout.skip)).slice(-60);
  const footer = findFooter(endRows, width, choices);
  const body = rows
    .slice(layout.skip, partial ? rows.length : rows.length - footer.value)
    .filter((r) => !isBlankRow(r));
  if (body.length === 0) throw new IntakeRefusal('only-headings', { name, columns: layout.headings.length });
  const { columns, looks } = lookAtColumns(body, layout, dialect.delimiter.value, choices);
  const hash = hashOf(bytes);
  const findings: Findings = {
    name,
    size: bytes.length,
    hash,
    encoding,
    byteOrderMark,
    delimiter: dialect.delimiter,
    quote: dialect.quote,
    lineEnd: dialect.lineEnd,
    preamble: layout.preamble,
    headingLines: layout.headingLines,
    unitsLine: layout.unitsLine,
    footer,
    shortRows: findShortRows(body, width, choices),
    columns,
    rows: body.length,
    partial,
    sample: body.slice(0, SAMPLE),
    notes: [...notesOf(layout, columns, partial, body.length), ...notesOfLooks(columns, looks)],
  };
  return { findings, dialect: dialect.dialect, layout };
}

function chosenEncoding(
  bytes: Uint8Array,
  name: string,
  choices: Choices,
): { encoding: Finding<Encoding>; byteOrderMark: boolean } {
  const found = findEncoding(bytes, name);
  if (choices.encoding === undefined) return found;
  if (!isEncoding(choices.encoding))
    throw new IntakeRefusal('unknown-encoding', { encoding: choices.encoding, found: found.encoding.value });
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

function wholeLines(text: string, newline: string): string {
  const end = text.lastIndexOf(newline);
  return end < 0 ? text : text.slice(0, end + 1);
}

const headRows = (text: string, dialect: Dialect): string[][] => parseText(text, dialect);

function tailRows(bytes: Uint8Array, encoding: Encoding, dialect: Dialect): string[][] {
  // An even start keeps the halves of UTF-16 together.
  const from = Math.max(0, bytes.length - TAIL) & ~1;
  const text = [...decodePieces(bytes.subarray(from), encoding)].join('');
  const begin = text.indexOf(dialect.newline);
  return parseText(text.slice(begin + 1), dialect);
}

function lookAtColumns(
  body: readonly (readonly string[])[],
  layout: LayoutFindings,
  delimiter: string,
  choices: Choices,
): { columns: ColumnFinding[]; looks: ColumnLook[] } {
  const looks = layout.headings.map(() => new ColumnLook());
  for (const row of body) {
    if (row.length > looks.length) continue;
    for (let i = 0; i < looks.length; i++) looks[i]!.see(row[i] ?? '');
  }
  const habits = habitsOf(looks, choices, delimiter);
  const columns = looks.map((look, i) =>
    findColumn(i, layout.headings[i]!, layout.units?.[i] ?? null, look, habits, choices),
  );
  return { columns: withOwnLabels(columns), looks };
}

/** Blank headings get a number, and headings that come again get one behind them, so that none is mistaken for another. */
function withOwnLabels(columns: readonly ColumnFinding[]): ColumnFinding[] {
  const taken = new Set<string>();
  return columns.map((column) => {
    const wanted = column.label === '' ? `Column ${column.index + 1}` : column.label;
    let label = wanted;
    for (let i = 2; taken.has(label.toLowerCase()); i++) label = `${wanted} ${i}`;
    taken.add(label.toLowerCase());
    return { ...column, label };
  });
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

function notesOf(
  layout: LayoutFindings,
  columns: readonly ColumnFinding[],
  partial: boolean,
  rows: number,
): Note[] {
  const notes: Note[] = [];
  if (partial) notes.push(note('looked-at-part', { rows }));
  const counts = new Map<string, number[]>();
  layout.headings.forEach((heading, i) => {
    if (heading === '') return;
    const key = heading.toLowerCase();
    counts.set(key, [...(counts.get(key) ?? []), i]);
  });
  for (const places of counts.values())
    if (places.length > 1)
      notes.push(
        note('duplicate-heading', {
          heading: layout.headings[places[0]!]!,
          count: places.length,
          names: places.map((i) => `"${columns[i]!.label}"`).join(', '),
        }),
      );
  if (layout.headingLines.value > 0)
    for (const c of columns)
      if (c.heading === '' && c.filled > 0)
        notes.push(note('blank-heading', { position: c.index + 1, label: c.label }));
  return notes;
}

function notesOfLooks(columns: readonly ColumnFinding[], looks: readonly ColumnLook[]): Note[] {
  return columns.flatMap(({ kind, heading, label }, i) => {
    const { dates } = looks[i]!;
    const zones = dates.of('zone');
    if (kind.value !== 'date' || zones === 0) return [];
    return [note('time-zones', { heading: heading || label, count: zones, example: dates.example('zone')! })];
  });
}

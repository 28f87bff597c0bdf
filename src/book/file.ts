import { unitOf } from '../units/unit.ts';
import { columnNamed, createBook, type LiveBook, sheetNamed } from './book.ts';
import { Cells } from './cells.ts';
import { readCells } from './file-cells.ts';
import {
  type ColumnFrame,
  type Frame,
  frameSchema,
  isRecord,
  limits,
  type SheetFrame,
} from './file-frame.ts';
import { jsonProblem } from './json.ts';
import { CURRENT_FORMAT, migrations } from './migrations/index.ts';
import type { Column, Json, Sheet } from './model.ts';
import { partNames } from './model.ts';
import { nameKey, nameProblem } from './names.ts';

/** A text that is no book, or a damaged one. The message says what arrived, what is accepted and what to do. */
export class BookFileError extends Error {
  override readonly name = 'BookFileError';
  /** The book was written in a newer format than this program reads. */
  readonly newer: boolean;
  constructor(message: string, newer = false) {
    super(message);
    this.newer = newer;
  }
}

const WANTED = 'A book is a file NAME.leverbook.json, as this program saves it.';

/** Opens a book from the text of its file. The text is hostile until checked. @throws BookFileError */
export function readBook(text: string): LiveBook {
  const raw = migrated(parsed(text));
  const frame = frameSchema.safeParse(raw);
  if (!frame.success) {
    const [issue] = frame.error.issues;
    return damaged(issue?.path ?? [], issue?.message ?? 'something unexpected');
  }
  return build(frame.data);
}

function parsed(text: string): Record<string, unknown> {
  if (text.trim() === '') throw new BookFileError(`The file is empty. ${WANTED}`);
  if (text.length > limits.characters)
    throw new BookFileError(
      `The file has ${text.length} characters; books up to ${limits.characters} can be opened.`,
    );
  let raw: unknown;
  try {
    raw = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (error) {
    const where = error instanceof Error ? error.message : String(error);
    throw new BookFileError(
      `The file is not JSON (${where}). ${WANTED} If it was one, open an earlier copy.`,
    );
  }
  if (!isRecord(raw) || !('leverbook' in raw))
    throw new BookFileError(`The file is JSON, but not a Leverbook file. ${WANTED}`);
  return raw;
}

function migrated(raw: Record<string, unknown>): Record<string, unknown> {
  const format = raw.leverbook;
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1)
    throw new BookFileError(
      `The file does not say which format it is in ("leverbook": 1 is expected). ${WANTED}`,
    );
  if (format > CURRENT_FORMAT)
    throw new BookFileError(
      `This book was written by a newer Leverbook (format ${format}); this one reads up to ${CURRENT_FORMAT}. Update Leverbook to open it; the file was not changed.`,
      true,
    );
  let book = raw;
  for (let from = format; from < CURRENT_FORMAT; from++) book = migrations.get(from)!(book);
  return book;
}

type Path = readonly PropertyKey[];

function damaged(path: Path, problem: string): never {
  const at = path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`))
    .join('')
    .replace(/^\./, '');
  throw new BookFileError(
    `The book file is damaged${at ? ` at ${at.slice(0, 120)}` : ''}: ${problem.slice(0, 300)}. Fix it there with a text editor, or open an earlier copy; the file was not changed.`,
  );
}

function build(frame: Frame): LiveBook {
  const book = createBook(frame.title);
  const ids = new Set<string>();
  let size = 0;
  for (const sheet of frame.sheets)
    for (const { cells, formula } of sheet.columns)
      if (cells?.length || formula !== undefined) size += sheet.rows;
  if (size > limits.cells) damaged(['sheets'], `${size} cells; at most ${limits.cells} are accepted`);
  frame.sheets.forEach((sheet, s) => {
    const path = ['sheets', s];
    const problem = nameProblem(sheet.name);
    if (problem) damaged([...path, 'name'], problem.replace(/\.$/, ''));
    if (sheetNamed(book, sheet.name)) damaged([...path, 'name'], `a second sheet "${sheet.name}"`);
    const id = sheet.id ?? sheet.name;
    if (ids.has(id)) damaged(path, `a second sheet with the id "${id}"`);
    ids.add(id);
    book.sheets = [...book.sheets, buildSheet(sheet, id, path)];
  });
  buildNames(book, frame);
  for (const part of partNames)
    for (const [key, value] of Object.entries(frame.parts?.[part] ?? {})) {
      const wrong =
        key === '__proto__'
          ? { path: key, problem: 'a key that no record may have' }
          : jsonProblem(value, key);
      if (wrong) damaged(['parts', part, wrong.path], wrong.problem);
      book.parts[part].set(key, value as Json);
    }
  return book;
}

function buildSheet(frame: SheetFrame, id: string, path: Path): Sheet {
  const columns: Column[] = [];
  const cells = new Map<string, Cells>();
  const names = new Set<string>();
  frame.columns.forEach((columnFrame, c) => {
    const at = [...path, 'columns', c];
    const column = buildColumn(columnFrame, at);
    if (names.has(nameKey(column.name))) damaged([...at, 'name'], `a second column "${column.name}"`);
    if (cells.has(column.id)) damaged(at, `a second column with the id "${column.id}"`);
    names.add(nameKey(column.name));
    columns.push(column);
    const raw = columnFrame.cells ?? [];
    if (raw.length > frame.rows)
      damaged([...at, 'cells'], `${raw.length} cells in a sheet of ${frame.rows} rows`);
    cells.set(
      column.id,
      raw.length === 0
        ? new Cells(frame.rows)
        : readCells(raw, frame.rows, column.kind, (i, problem) => damaged([...at, 'cells', i], problem)),
    );
  });
  const { name, purpose, note, rows } = frame;
  return {
    id,
    name,
    label: frame.label ?? name,
    purpose,
    ...(note === undefined ? {} : { note }),
    columns,
    rows,
    cells,
  };
}

function buildColumn(frame: ColumnFrame, path: Path): Column {
  const { cells: _, id, label, ...rest } = frame;
  const problem = nameProblem(frame.name);
  if (problem) damaged([...path, 'name'], problem.replace(/\.$/, ''));
  if (frame.dimension && frame.kind !== 'number')
    damaged([...path, 'dimension'], `a dimension of a ${frame.kind} column`);
  if (frame.unit !== undefined && unitOf(frame.unit)?.dimension !== frame.dimension)
    damaged(
      [...path, 'unit'],
      `"${frame.unit}", which is not a unit of ${frame.dimension ?? 'a plain number'}`,
    );
  if (frame.per && frame.kind !== 'number') damaged([...path, 'per'], `rates of a ${frame.kind} column`);
  // What is absent in the file is absent in memory: zod leaves no undefined keys behind, only the type says it could.
  return { ...rest, id: id ?? frame.name, label: label ?? frame.name } as Column;
}

function buildNames(book: LiveBook, frame: Frame): void {
  for (const [n, named] of (frame.names ?? []).entries()) {
    const path = ['names', n];
    const sheet = sheetNamed(book, named.sheet);
    if (!sheet) damaged([...path, 'sheet'], `"${named.sheet}", which is not a sheet of this book`);
    const column = columnNamed(sheet, named.column);
    if (!column) damaged([...path, 'column'], `"${named.column}", which is not a column of ${sheet.name}`);
    if (named.row > sheet.rows)
      damaged([...path, 'row'], `row ${named.row} of a sheet of ${sheet.rows} rows`);
    const problem = nameProblem(named.name);
    if (problem) damaged([...path, 'name'], problem.replace(/\.$/, ''));
    if (book.names.has(nameKey(named.name)))
      damaged([...path, 'name'], `a second cell named "${named.name}"`);
    const { name, note, dimension, unit, per, role } = named;
    if (unit !== undefined && unitOf(unit)?.dimension !== dimension)
      damaged([...path, 'unit'], `"${unit}", which is not a unit of ${dimension ?? 'a plain number'}`);
    book.names.set(nameKey(name), {
      name,
      sheet: sheet.id,
      column: column.id,
      row: named.row - 1,
      ...(note === undefined ? {} : { note }),
      ...(dimension === undefined ? {} : { dimension }),
      ...(unit === undefined ? {} : { unit }),
      ...(per === undefined ? {} : { per }),
      ...(role === undefined ? {} : { role }),
    });
  }
}

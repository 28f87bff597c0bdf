/** The command `calc`: imports files into a book and prints a sheet. */
import { basename, join } from 'node:path';
import { BookFileError } from '../book/file.ts';
import { Refusal as BookRefusal } from '../book/refusal.ts';
import type { Progress } from '../calc/api.ts';
import { differencesInWords, IntakeRefusal, sentence } from '../intake/index.ts';
import { underHeadings } from '../session/checks/kind-words.ts';
import { CannotRead, type Read, readingFile } from '../session/imports/read-file.ts';
import { Session } from '../session/session.ts';
import { Refusal } from './exit.ts';
import { readBytes, readText } from './files.ts';
import { jsonLines } from './json-lines.ts';
import { nearest } from './nearest.ts';
import { type OnConflict, onConflict } from './on-conflict.ts';
import { print, say } from './print.ts';
import { runTelling, Telling } from './progress.ts';
import { checkTargets, type Target } from './targets.ts';
import { begin, computing } from './thread.ts';
import { writeTogether } from './write-together.ts';

interface Options {
  readonly import?: readonly string[];
  readonly onConflict?: OnConflict;
  /** The name of the option before it was --on-conflict. */
  readonly differing?: OnConflict;
  readonly sheet?: readonly string[];
  readonly out?: string;
  readonly json?: boolean;
  readonly xlsx?: string;
  readonly save?: string;
  readonly replace?: boolean;
  readonly timeout?: number;
}

/**
 * Opens a book, imports files, recalculates and writes. Everything that can be refused is refused before anything is
 * computed, and everything is computed before anything is written.
 */
export async function calcCommand(bookPath: string, options: Options): Promise<void> {
  begin();
  const decided = onConflict(options);
  const session = openBook(bookPath, options.timeout !== undefined);
  const wanted = (options.sheet ?? []).map((name) => sheetNamed(session, name, '--sheet').id);
  const files = (options.import ?? []).map((text) => {
    const { sheet, file } = importOf(text);
    return {
      sheet: sheetNamed(session, sheet, '--import').id,
      file,
      bytes: readBytes(file, 'a CSV, XLSX or ODS file'),
    };
  });

  const sheets = session.outline().sheets.filter((sheet) => wanted.length === 0 || wanted.includes(sheet.id));
  const tables =
    options.out === undefined
      ? []
      : sheets.map(({ id, name }) => ({ id, path: join(options.out!, `${name}.csv`), option: '--out' }));
  const named = (['xlsx', 'save'] as const).flatMap((option): Target[] =>
    options[option] === undefined ? [] : [{ path: options[option], option: `--${option}` }],
  );
  const [xlsx, save] = [
    named.find(({ option }) => option === '--xlsx'),
    named.find(({ option }) => option === '--save'),
  ];
  const targeting = {
    replace: options.replace ?? false,
    // The book itself may be replaced where --save names it.
    reads: files.map(({ file }) => file),
  };
  checkTargets([...tables, ...(xlsx ? [xlsx] : [])], { ...targeting, reads: [...targeting.reads, bookPath] });
  checkTargets([...tables, ...named], targeting);

  for (const { sheet, file, bytes } of files) await importFile(session, sheet, file, bytes, decided);
  await runTelling(session.recalculate(), new Telling(), (next) => computing(formulaOf(session, next)));
  computing('the output');
  report(session);

  if (options.json) for (const sheet of sheets) for (const line of jsonLines(session, sheet.id)) print(line);
  const written = [
    ...tables.map(({ id, ...target }) => ({ ...target, text: session.toCsv(id) })),
    ...(xlsx ? [{ ...xlsx, text: await xlsxOf(session) }] : []),
    ...(save ? [{ ...save, text: session.save() }] : []),
  ];
  if (written.length > 0) writeTogether(written, targeting);
  for (const { path } of written) say(`wrote ${path}`);
  if (!options.json && written.length === 0)
    say(
      'No file was written. Add --out FOLDER for CSV files, --xlsx FILE, --json for lines, or --save NEWBOOK.',
    );
}

/** The book as a workbook file; what writes it is loaded when it is asked for. */
async function xlsxOf(session: Session): Promise<Uint8Array> {
  const { workbookContent } = await import('../session/xlsx/content.ts');
  const { writeWorkbook } = await import('../session/xlsx/write.ts');
  const now = new Date();
  try {
    const content = await runTelling(
      session.ask((context) => workbookContent(context, now)),
      new Telling(),
    );
    return await writeWorkbook(content, now);
  } catch (error) {
    if (error instanceof BookRefusal) throw new Refusal(error.message);
    throw error;
  }
}

function openBook(path: string, careful: boolean): Session {
  computing(`the book ${path}`);
  try {
    return Session.openStale(readText(path, 'a .leverbook.json file'), { careful });
  } catch (error) {
    if (error instanceof BookFileError) throw new Refusal(`${path}: ${error.message}`);
    throw error;
  }
}

function importOf(text: string): { sheet: string; file: string } {
  const at = text.indexOf('=');
  if (at < 1 || at === text.length - 1)
    throw new Refusal(`--import got "${text}"; it takes SHEET=FILE.csv, such as roster=club.csv.`);
  return { sheet: text.slice(0, at).trim(), file: text.slice(at + 1) };
}

function sheetNamed(session: Session, name: string, option: string) {
  const { sheets } = session.outline();
  const found = sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  if (found) return found;
  const names = sheets.map((sheet) => sheet.name);
  const near = nearest(name, names);
  throw new Refusal(
    `${option} names a sheet "${name}" that the book does not have.${near ? ` Did you mean ${near}?` : ''} It has: ${names.join(', ') || 'none'}.`,
  );
}

/** Reads a file for a sheet and writes it there; what would be asked on the page is refused, with what to do. */
async function importFile(
  session: Session,
  sheet: string,
  file: string,
  bytes: Uint8Array,
  ofDiffering: OnConflict | undefined,
): Promise<void> {
  computing(`the import of ${file}`);
  const { prepared, reading } = await readFile(session, sheet, file, bytes, ofDiffering);
  const { fits, replacing, differing } = reading;
  if (fits.length > 0)
    throw new Refusal(
      `${file}: several import settings of ${reading.sheet.label} fit equally well: ${fits.map(({ title }) => `“${title}”`).join(', ')}. No file was written. Remove those that are not meant from the book.`,
    );
  if (replacing)
    throw new Refusal(
      `${file}: ${replacing.rows} rows of ${reading.sheet.label} would be replaced, and ${replacing.files.length === 0 ? 'they did not come from a file' : `they came from ${replacing.files.join(', ')}`}. No file was written. Add --on-conflict overwrite to replace them.`,
    );
  if (differing && differing.decided === null)
    throw new Refusal(
      `${file}: ${differing.count === 1 ? '1 row is' : `${differing.count} rows are`} in the sheet already, by ${prepared.imported.differing!.key.join(' + ')}, with other values: ${differencesInWords(prepared.imported.differing!)}. No file was written. Decide with --on-conflict: keep (sheet values), overwrite (file values) or append (new rows).`,
    );
  const done = session.writePlanned(prepared);
  if (!done.ok) throw new Refusal(done.sentence);
  const { rows, cells, notes } = prepared.imported.report;
  say(
    `${basename(file)}: ${rows.placed} of ${rows.in} rows imported${rows.left > 0 ? ` (${rows.left} keep sheet values)` : ''}, ${rows.held} not imported; ${cells.held} cells unreadable`,
  );
  for (const note of notes) say(`  ${sentence(note)}`);
  for (const row of prepared.imported.heldRows.slice(0, 10))
    say(`  line ${row.line} not imported: ${sentence(row.reason)}`);
  if (prepared.imported.heldRows.length > 10)
    say(`  and ${prepared.imported.heldRows.length - 10} more rows not imported`);
}

async function readFile(
  session: Session,
  sheet: string,
  file: string,
  bytes: Uint8Array,
  ofDiffering: OnConflict | undefined,
): Promise<Read> {
  try {
    const decisions = {
      sheet,
      ...(ofDiffering ? { ofDiffering } : {}),
      ...(ofDiffering === 'take' ? { replace: true as const } : {}),
    };
    return await runTelling(await readingFile(session, bytes, basename(file), decisions), new Telling());
  } catch (error) {
    if (error instanceof IntakeRefusal || error instanceof CannotRead)
      throw new Refusal(`${file}: ${error.message}`);
    throw error;
  }
}

/** The formula that is computed next, by where it is and what it says. */
function formulaOf(session: Session, { about, place }: Progress): string {
  const called = about.replace(/^Calculating /, '');
  const sheet = session.current.sheets.find(({ id }) => id === place?.sheet);
  if (!sheet || !place) return called;
  const cell = place.row === undefined ? undefined : sheet.cells.get(place.column)?.get(place.row);
  const own = cell !== null && typeof cell === 'object' && 'formula' in cell ? cell.formula : undefined;
  const formula = own ?? sheet.columns.find(({ id }) => id === place.column)?.formula;
  return `${called} of ${sheet.name}${formula === undefined ? '' : `: =${formula}`}`;
}

/** Says what Checks lists, by kind, with the first of each. */
function report(session: Session): void {
  const doubts = session.doubts();
  if (doubts.length === 0) return;
  say(`Checks: ${doubts.length}`);
  for (const { heading, items } of underHeadings(doubts))
    say(`  ${heading}: ${items.length}; first: ${items[0]!.sentence}`);
}

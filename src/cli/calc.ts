import { existsSync } from 'node:fs';
import { basename, join } from 'node:path';
import { BookFileError } from '../book/file.ts';
import { Refusal as BookRefusal } from '../book/refusal.ts';
import { differencesInWords, IntakeRefusal, preparing as opening, sentence } from '../intake/index.ts';
import { type Prepared, preparing } from '../session/bring-in.ts';
import { Session } from '../session/session.ts';
import { Exit, Refusal } from './exit.ts';
import { readBytes, readText, writeTogether } from './files.ts';
import { jsonLines } from './json-lines.ts';
import { nearest } from './nearest.ts';
import { print } from './print.ts';
import { runTelling, Telling } from './progress.ts';

interface Options {
  readonly import?: readonly string[];
  readonly differing?: 'leave' | 'take' | 'add';
  readonly sheet?: readonly string[];
  readonly out?: string;
  readonly json?: boolean;
  readonly xlsx?: string;
  readonly save?: string;
  readonly replace?: boolean;
}

/**
 * Opens a book, brings files in, recalculates and writes. Everything that can be refused is refused before anything is
 * computed, and everything is computed before anything is written.
 */
export async function calcCommand(bookPath: string, options: Options): Promise<void> {
  for (const option of ['save', 'xlsx'] as const) {
    const path = options[option];
    if (path !== undefined && existsSync(path) && !options.replace)
      throw new Refusal(`${path} exists. Choose another name for --${option}, or add --replace.`);
  }
  const session = openBook(bookPath);
  const wanted = (options.sheet ?? []).map((name) => sheetNamed(session, name, '--sheet').id);
  const files = (options.import ?? []).map((text) => {
    const { sheet, file } = importOf(text);
    return {
      sheet: sheetNamed(session, sheet, '--import').id,
      file,
      bytes: readBytes(file, 'a CSV, XLSX or ODS file'),
    };
  });

  process.once('SIGINT', () => {
    process.stderr.write('\nleverbook: stopped; nothing was written.\n');
    process.exit(Exit.stopped);
  });
  for (const { sheet, file, bytes } of files) await bringIn(session, sheet, file, bytes, options.differing);
  await runTelling(session.recalculate(), new Telling());
  report(session);

  const sheets = session.outline().sheets.filter((sheet) => wanted.length === 0 || wanted.includes(sheet.id));
  if (options.json) for (const sheet of sheets) for (const line of jsonLines(session, sheet.id)) print(line);
  const written = [
    ...(options.out === undefined
      ? []
      : sheets.map((sheet) => ({
          path: join(options.out!, `${sheet.name}.csv`),
          text: session.toCsv(sheet.id),
        }))),
    ...(options.xlsx === undefined ? [] : [{ path: options.xlsx, text: await xlsxOf(session) }]),
    ...(options.save === undefined ? [] : [{ path: options.save, text: session.save() }]),
  ];
  if (written.length > 0) writeTogether(written);
  for (const { path } of written) process.stderr.write(`wrote ${path}\n`);
  if (!options.json && written.length === 0)
    process.stderr.write(
      'Nothing was written. Add --out FOLDER for CSV files, --xlsx FILE, --json for lines, or --save NEWBOOK.\n',
    );
}

/** The book as a workbook file; what writes it is loaded when it is asked for. */
async function xlsxOf(session: Session): Promise<Uint8Array> {
  const { workbookContent } = await import('../session/xlsx/content.ts');
  const { writeWorkbook } = await import('../session/xlsx/write.ts');
  const now = new Date();
  try {
    const content = await runTelling(
      session.ask((viewed) => workbookContent(viewed, now)),
      new Telling(),
    );
    return await writeWorkbook(content, now);
  } catch (error) {
    if (error instanceof BookRefusal) throw new Refusal(error.message);
    throw error;
  }
}

function openBook(path: string): Session {
  try {
    return Session.openStale(readText(path, 'a .leverbook.json file'));
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

async function bringIn(
  session: Session,
  sheet: string,
  file: string,
  bytes: Uint8Array,
  ofDiffering: Options['differing'],
): Promise<void> {
  let prepared: Prepared;
  try {
    const now = new Date().toISOString();
    const name = basename(file);
    const { bytes: table, options } = await runTelling(await opening(bytes, { name }), new Telling());
    prepared = await runTelling(
      preparing(session, {
        ...options,
        ...(ofDiffering ? { ofDiffering } : {}),
        bytes: table,
        name,
        sheet,
        now,
      }),
      new Telling(),
    );
  } catch (error) {
    if (error instanceof IntakeRefusal) throw new Refusal(`${file}: ${error.message}`);
    throw error;
  }
  const { differing } = prepared.taken;
  if (differing && differing.decided === null)
    throw new Refusal(
      `${file}: ${differing.count === 1 ? '1 row is' : `${differing.count} rows are`} in the sheet already, by ${differing.key.join(' + ')}, with other values: ${differencesInWords(differing)}. Nothing was written. Say what is to become of them: --differing leave keeps the sheet’s rows, take puts the file’s values into them, add makes them further rows.`,
    );
  const done = session.bringIn(prepared);
  if (!done.ok) throw new Refusal(done.sentence);
  const { rows, cells } = prepared.taken.report;
  process.stderr.write(
    `${basename(file)}: ${rows.in} rows in = ${rows.placed} placed${rows.left > 0 ? ` (${rows.left} of them left as the sheet has them)` : ''} + ${rows.held} held; ${cells.held} cells held\n`,
  );
  for (const note of prepared.taken.report.notes) process.stderr.write(`  ${sentence(note)}\n`);
  for (const row of prepared.taken.heldRows.slice(0, 10))
    process.stderr.write(`  line ${row.line} held: ${sentence(row.reason)}\n`);
  if (prepared.taken.heldRows.length > 10)
    process.stderr.write(`  and ${prepared.taken.heldRows.length - 10} more held rows\n`);
}

/** Says what the book doubts, by kind, with the first of each. */
function report(session: Session): void {
  const doubts = session.doubts();
  if (doubts.length === 0) return;
  const kinds = new Map<string, string[]>();
  for (const { about, sentence } of doubts) kinds.set(about, [...(kinds.get(about) ?? []), sentence]);
  process.stderr.write(doubts.length === 1 ? '1 doubt:\n' : `${doubts.length} doubts:\n`);
  for (const [about, sentences] of kinds)
    process.stderr.write(`  ${about}: ${sentences.length}; first: ${sentences[0]}\n`);
}

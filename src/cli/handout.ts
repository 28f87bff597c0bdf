import { join } from 'node:path';
import { BookFileError } from '../book/file.ts';
import { Refusal as BookRefusal } from '../book/refusal.ts';
import { handoutDocument } from '../session/handouts/document.ts';
import { handoutsOf } from '../session/handouts/handouts.ts';
import type { Paper } from '../session/handouts/settings.ts';
import { Session } from '../session/session.ts';
import { Exit, Refusal } from './exit.ts';
import { readText, writeTogether } from './files.ts';
import { nearest } from './nearest.ts';
import { findChromium, printAll } from './pdf.ts';
import { runTelling, Telling } from './progress.ts';

interface Options {
  readonly sheet?: string;
  readonly athlete: readonly string[];
  readonly out: string;
  readonly paper: Paper;
}

/** Writes a page for each athlete as HTML and, where a Chromium is present, as PDF. All of them, or nothing. */
export async function handoutCommand(bookPath: string, options: Options): Promise<void> {
  const chromium = findChromium();
  const session = openBook(bookPath);
  process.once('SIGINT', () => {
    process.stderr.write('\nleverbook: stopped; nothing was written.\n');
    process.exit(Exit.stopped);
  });
  await runTelling(session.recalculate(), new Telling());
  const made = madeFor(session, options.sheet);
  const wanted = chosen(made.handouts, options.athlete);
  for (const note of made.notes) process.stderr.write(`${note}\n`);

  const names = fileNames(wanted.map(({ athlete }) => athlete));
  const pages = wanted.map((handout, index) => ({
    name: names[index]!,
    text: handoutDocument({ ...made, handouts: [handout] }, options.paper),
  }));
  const files: { path: string; text: string | Uint8Array }[] = pages.map(({ name, text }) => ({
    path: join(options.out, `${name}.html`),
    text,
  }));
  if (chromium !== undefined) {
    const pdfs = await printAll(
      chromium,
      pages.map(({ text }) => text),
    );
    pdfs.forEach((text, index) => {
      files.push({ path: join(options.out, `${pages[index]!.name}.pdf`), text });
    });
  }
  writeTogether(files);
  for (const { path } of files) process.stderr.write(`wrote ${path}\n`);
  if (chromium === undefined)
    process.stderr.write(
      'No PDF: no Chromium was found on PATH. Name one in LEVERBOOK_CHROMIUM, or print the pages from a browser.\n',
    );
}

function openBook(path: string): Session {
  try {
    return Session.openStale(readText(path, 'a .leverbook.json file'));
  } catch (error) {
    if (error instanceof BookFileError) throw new Refusal(`${path}: ${error.message}`);
    throw error;
  }
}

function madeFor(session: Session, sheet: string | undefined) {
  try {
    return session.ask((viewed) => handoutsOf(viewed, sheet === undefined ? {} : { sheet }));
  } catch (error) {
    if (error instanceof BookRefusal) throw new Refusal(error.message);
    throw error;
  }
}

/** The handouts of the athletes named; all of them where none is named. */
function chosen<T extends { readonly athlete: string }>(
  all: readonly T[],
  names: readonly string[],
): readonly T[] {
  if (names.length === 0) return all;
  return names.flatMap((name) => {
    const found = all.filter(({ athlete }) => athlete.toLowerCase() === name.trim().toLowerCase());
    if (found.length > 0) return found;
    const near = nearest(name, [...new Set(all.map(({ athlete }) => athlete))]);
    throw new Refusal(
      `--athlete names "${name}", whom the sheet does not have.${near ? ` Did you mean ${near}?` : ''}`,
    );
  });
}

/** A file name for each athlete, none twice, that every system can keep. */
export function fileNames(athletes: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return athletes.map((athlete) => {
    const plain =
      athlete
        .normalize('NFC')
        .toLowerCase()
        .replace(/[^\p{L}\p{N}]+/gu, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 60) || 'athlete';
    let name = plain;
    for (let n = 2; taken.has(name); n++) name = `${plain}-${n}`;
    taken.add(name);
    return name;
  });
}

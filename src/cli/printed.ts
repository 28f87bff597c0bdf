import { join } from 'node:path';
import { BookFileError } from '../book/file.ts';
import { Session } from '../session/session.ts';
import { Refusal } from './exit.ts';
import { readText } from './files.ts';
import { findChromium, printAll } from './pdf.ts';
import { say } from './print.ts';
import { runTelling, Telling } from './progress.ts';
import { checkTargets } from './targets.ts';
import { type Written, writeTogether } from './write-together.ts';

/** Opens a book and works out its values; a Chromium that is named and cannot be run is refused first. */
export async function openBook(path: string): Promise<Session> {
  findChromium();
  const session = opened(path);
  await runTelling(session.recalculate(), new Telling());
  return session;
}

function opened(path: string): Session {
  try {
    return Session.openStale(readText(path, 'a .leverbook.json file'));
  } catch (error) {
    if (error instanceof BookFileError) throw new Refusal(`${path}: ${error.message}`);
    throw error;
  }
}

/** Writes documents as HTML and, where a Chromium is present, as PDF. All of them, or nothing. */
export async function writePrinted(
  { out, replace = false }: { readonly out: string; readonly replace?: boolean },
  pages: readonly { readonly name: string; readonly text: string }[],
): Promise<void> {
  const chromium = findChromium();
  const target = (name: string, text: string | Uint8Array): Written => ({
    path: join(out, name),
    option: '--out',
    text,
  });
  const files: Written[] = pages.map(({ name, text }) => target(`${name}.html`, text));
  checkTargets(
    [...files, ...(chromium === undefined ? [] : pages.map(({ name }) => target(`${name}.pdf`, '')))],
    { replace },
  );
  if (chromium !== undefined) {
    const pdfs = await printAll(
      chromium,
      pages.map(({ text }) => text),
    );
    pdfs.forEach((text, index) => {
      files.push(target(`${pages[index]!.name}.pdf`, text));
    });
  }
  writeTogether(files, { replace });
  for (const { path } of files) say(`wrote ${path}`);
  if (chromium === undefined)
    say(
      'No PDF: no Chromium was found on PATH. Name one in LEVERBOOK_CHROMIUM, or print the pages from a browser.',
    );
}

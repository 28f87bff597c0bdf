import { join } from 'node:path';
import { BookFileError } from '../book/file.ts';
import { Session } from '../session/session.ts';
import { Exit, Refusal } from './exit.ts';
import { readText, writeTogether } from './files.ts';
import { findChromium, printAll } from './pdf.ts';
import { runTelling, Telling } from './progress.ts';

/** Opens a book and works out its values; a Chromium that is named and cannot be run is refused first. */
export async function openBook(path: string): Promise<Session> {
  findChromium();
  const session = opened(path);
  process.once('SIGINT', () => {
    process.stderr.write('\nleverbook: stopped; nothing was written.\n');
    process.exit(Exit.stopped);
  });
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
  out: string,
  pages: readonly { readonly name: string; readonly text: string }[],
): Promise<void> {
  const chromium = findChromium();
  const files: { path: string; text: string | Uint8Array }[] = pages.map(({ name, text }) => ({
    path: join(out, `${name}.html`),
    text,
  }));
  if (chromium !== undefined) {
    const pdfs = await printAll(
      chromium,
      pages.map(({ text }) => text),
    );
    pdfs.forEach((text, index) => {
      files.push({ path: join(out, `${pages[index]!.name}.pdf`), text });
    });
  }
  writeTogether(files);
  for (const { path } of files) process.stderr.write(`wrote ${path}\n`);
  if (chromium === undefined)
    process.stderr.write(
      'No PDF: no Chromium was found on PATH. Name one in LEVERBOOK_CHROMIUM, or print the pages from a browser.\n',
    );
}

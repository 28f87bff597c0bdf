import { type Database, keysOf, type TextRow, type VersionRow } from './database.ts';
import type { Files } from './files.ts';

/* Named versions outside of the database: a file each, beside the book's second journal. */

const nameOf = (book: string, number: number): string => `${book}.v${number}`;
const named = /^(.+)\.v(\d+)$/;

type Head = VersionRow & Pick<TextRow, 'seal'>;

/** Where that does not work, the database has the version as before. */
export async function writeVersion(files: Files, version: VersionRow, text: TextRow): Promise<void> {
  const head: Head = { ...version, seal: text.seal };
  await files.write(nameOf(version.book, version.number), head, text.bytes).catch(() => undefined);
}

export const removeVersion = (files: Files, book: string, number: number): Promise<void> =>
  files.remove(nameOf(book, number));

/** Numbers of a book's versions that have a file. */
export const versionsIn = async (files: Files, book: string): Promise<readonly number[]> =>
  (await files.names()).flatMap((name) => {
    const [, of, number] = named.exec(name) ?? [];
    return of === book ? [Number(number)] : [];
  });

/** Has every version of a book in both places. Answers how many the database lacked. */
export async function matchVersions(database: Database, files: Files, book: string): Promise<number> {
  const here = await database.getAllKeys('versions', keysOf(book));
  const inFiles = new Set(await versionsIn(files, book));
  for (const key of here) {
    if (inFiles.delete(key[1])) continue;
    const [version, text] = [await database.get('versions', key), await database.get('texts', key)];
    if (version && text) await writeVersion(files, version, text);
  }
  let missing = 0;
  for (const number of inFiles) {
    const found = await files.read(nameOf(book, number));
    if (!found) continue;
    const { seal, ...version } = found.head as Head;
    const transaction = database.transaction(['versions', 'texts'], 'readwrite', { durability: 'strict' });
    await Promise.all([
      transaction.objectStore('versions').put(version),
      transaction.objectStore('texts').put({ book, number, bytes: found.body, seal }),
      transaction.done,
    ]);
    missing++;
  }
  return missing;
}

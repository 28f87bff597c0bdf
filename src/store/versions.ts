import { BookFileError, readBook } from '../book/file.ts';
import { writeBook } from '../book/file-write.ts';
import type { Book } from '../book/model.ts';
import { type Database, keysOf, type VersionRow } from './database.ts';
import { failed, faultOf, type Outcome } from './faults.ts';
import type { Files } from './files.ts';
import { pack, unpack } from './pack.ts';
import { sealOf } from './seal.ts';
import { removeVersion, writeVersion } from './version-files.ts';

/** A book as it was when somebody gave that a name. */
export type NamedVersion = Pick<VersionRow, 'number' | 'name' | 'time' | 'size'>;

/**
 * Named versions of books, each a packed book file: they outlive formats of the journal. Like the journal they stand in the
 * database and, where a page can have files, beside it.
 */
export class Versions {
  private readonly database: Database;
  private readonly files: Files | undefined;
  constructor(database: Database, files?: Files) {
    this.database = database;
    this.files = files;
  }

  /** Keeps the book as it is under a name. */
  async keep(id: string, book: Book, name: string): Promise<Outcome<{ version: NamedVersion }>> {
    try {
      const text = writeBook(book);
      const bytes = await pack(text);
      const keys = await this.database.getAllKeys('versions', keysOf(id));
      const number = (keys.at(-1)?.[1] ?? 0) + 1;
      const seal = await sealOf(bytes, { book: id, sequence: number, before: 'version' });
      const version: VersionRow = { book: id, number, name, time: Date.now(), size: text.length };
      const packed = { book: id, number, bytes, seal };
      const transaction = this.database.transaction(['versions', 'texts'], 'readwrite', {
        durability: 'strict',
      });
      await Promise.all([
        transaction.objectStore('versions').add(version),
        transaction.objectStore('texts').add(packed),
        transaction.done,
      ]);
      if (this.files) await writeVersion(this.files, version, packed);
      return { ok: true, version: shown(version) };
    } catch (reason) {
      return { ok: false, fault: faultOf(reason) };
    }
  }

  /** The versions of a book, the newest first. */
  async list(id: string): Promise<readonly NamedVersion[]> {
    return (await this.database.getAll('versions', keysOf(id))).map(shown).toReversed();
  }

  /** The book of a version. */
  async read(id: string, number: number): Promise<Outcome<{ book: Book }>> {
    try {
      const row = await this.database.get('texts', [id, number]);
      if (!row) return failed('missing');
      const seal = await sealOf(row.bytes, { book: id, sequence: number, before: 'version' });
      if (seal !== row.seal) return failed('failed', 'this version is damaged and cannot be read');
      return { ok: true, book: readBook(await unpack(row.bytes)) };
    } catch (reason) {
      if (reason instanceof BookFileError) return failed(reason.newer ? 'newer' : 'failed', reason.message);
      return { ok: false, fault: faultOf(reason) };
    }
  }

  async remove(id: string, number: number): Promise<void> {
    // First: what stands in a file only is taken for lost by the database.
    if (this.files) await removeVersion(this.files, id, number);
    const transaction = this.database.transaction(['versions', 'texts'], 'readwrite');
    await Promise.all([
      transaction.objectStore('versions').delete([id, number]),
      transaction.objectStore('texts').delete([id, number]),
      transaction.done,
    ]);
  }
}

const shown = ({ number, name, time, size }: VersionRow): NamedVersion => ({ number, name, time, size });

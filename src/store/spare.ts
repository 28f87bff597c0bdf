import { bytesToHex } from '@noble/hashes/utils.js';
import { digest } from './seal.ts';

/** A second copy of a book, as the text of its file. */
export interface SpareCopy {
  readonly id: string;
  /** Grows with every copy of the book. */
  readonly number: number;
  /** Milliseconds since 1970, UTC. */
  readonly time: number;
  readonly origin?: string;
  readonly text: string;
}

interface Head extends Omit<SpareCopy, 'text'> {
  readonly digest: string;
}

const FOLDER = 'leverbook spare copies';
/** Two files a book, written in turn: while one is written the other is whole. */
const SLOTS = ['0', '1'] as const;
/** Bytes at the beginning of a file for what is to be known of it. They are written last: without them the file is none. */
const HEAD = 2_048;
/** Books larger than this, in bytes of their text, have no second copy. */
const LARGEST = 60_000_000;

/**
 * Second copies of books, in files of the page's own (File System Standard, WHATWG) and not in the database: a browser may
 * find its database damaged after it was ended at a bad moment, and then it deletes all of it. Where a browser has no such
 * files there are no copies, and nothing else changes.
 */
export class SpareCopies {
  /** Writes a copy over the older of a book's two. Answers whether it stands. */
  async write({ id, origin, text }: Pick<SpareCopy, 'id' | 'origin' | 'text'>): Promise<boolean> {
    try {
      const folder = await folderOfCopies();
      const bytes = new TextEncoder().encode(text);
      if (!folder || bytes.length > LARGEST) return false;
      const [a, b] = await Promise.all(SLOTS.map((slot) => headOf(folder, id, slot)));
      const head: Head = {
        id,
        number: 1 + Math.max(a?.number ?? 0, b?.number ?? 0),
        time: Date.now(),
        ...(origin === undefined ? {} : { origin: origin.slice(0, 200) }),
        digest: bytesToHex(await digest(bytes)),
      };
      const slot = (a?.number ?? 0) <= (b?.number ?? 0) ? SLOTS[0] : SLOTS[1];
      const file = await folder.getFileHandle(`${id}.${slot}`, { create: true });
      const open = await file.createSyncAccessHandle();
      try {
        open.truncate(0);
        open.write(bytes, { at: HEAD });
        open.flush();
        open.write(new TextEncoder().encode(JSON.stringify(head)), { at: 0 });
        open.flush();
      } finally {
        open.close();
      }
      return true;
    } catch {
      // No room, or a browser that lets pages have no files: the database keeps the book as before.
      return false;
    }
  }

  /** The books that have copies. */
  async ids(): Promise<ReadonlySet<string>> {
    const ids = new Set<string>();
    try {
      for await (const name of (await folderOfCopies())?.keys() ?? []) ids.add(name.replace(/\.[01]$/, ''));
    } catch {
      // Then there are none.
    }
    return ids;
  }

  /** The newest whole copy of a book. */
  async read(id: string): Promise<SpareCopy | undefined> {
    const folder = await folderOfCopies().catch(() => undefined);
    if (!folder) return undefined;
    const heads = await Promise.all(
      SLOTS.map(async (slot) => ({ slot, head: await headOf(folder, id, slot) })),
    );
    for (const { slot, head } of heads.sort((a, b) => (b.head?.number ?? 0) - (a.head?.number ?? 0))) {
      if (!head) continue;
      const file = await (await folder.getFileHandle(`${id}.${slot}`)).getFile();
      const bytes = new Uint8Array(await file.slice(HEAD).arrayBuffer());
      if (bytesToHex(await digest(bytes)) !== head.digest) continue;
      const { digest: _, ...about } = head;
      return { ...about, text: new TextDecoder().decode(bytes) };
    }
    return undefined;
  }

  async remove(id: string): Promise<void> {
    const folder = await folderOfCopies().catch(() => undefined);
    for (const slot of SLOTS) await folder?.removeEntry(`${id}.${slot}`).catch(() => undefined);
  }
}

async function folderOfCopies(): Promise<FileSystemDirectoryHandle | undefined> {
  const storage = globalThis.navigator?.storage as Partial<StorageManager> | undefined;
  const root = await storage?.getDirectory?.();
  return root?.getDirectoryHandle(FOLDER, { create: true });
}

async function headOf(
  folder: FileSystemDirectoryHandle,
  id: string,
  slot: string,
): Promise<Head | undefined> {
  try {
    const file = await (await folder.getFileHandle(`${id}.${slot}`)).getFile();
    const text = (await file.slice(0, HEAD).text()).replaceAll('\u0000', '');
    const head = JSON.parse(text) as Partial<Head>;
    const whole =
      head.id === id &&
      Number.isSafeInteger(head.number) &&
      typeof head.time === 'number' &&
      typeof head.digest === 'string' &&
      (head.origin === undefined || typeof head.origin === 'string');
    return whole ? (head as Head) : undefined;
  } catch {
    return undefined;
  }
}

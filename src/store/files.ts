import { recordHead, recordsIn, type Source } from './record.ts';

/** A file that is open for nobody else, as the File System Standard (WHATWG) has it. */
export type Access = Pick<
  FileSystemSyncAccessHandle,
  'read' | 'write' | 'truncate' | 'flush' | 'getSize' | 'close'
>;

/** A worker that was just ended gives its files back a moment later. */
const TRIES = 10;
const PAUSE = 30;
/** Large bodies are written in parts of this size, so that whatever else is to be done waits for no more than one. */
const PART = 1 << 20;

/** The files in which second journals stand: the page's own, outside of IndexedDB. */
export class Files {
  private readonly folder: FileSystemDirectoryHandle;
  private constructor(folder: FileSystemDirectoryHandle) {
    this.folder = folder;
  }

  /** Undefined in a browser that lets pages have no such files (private windows, older ones). */
  static async open(name: string): Promise<Files | undefined> {
    try {
      const storage = globalThis.navigator?.storage as Partial<StorageManager> | undefined;
      const root = await storage?.getDirectory?.();
      const folder = await root?.getDirectoryHandle(`${name} journals`, { create: true });
      return folder && new Files(folder);
    } catch {
      return undefined;
    }
  }

  async names(): Promise<readonly string[]> {
    const names: string[] = [];
    for await (const name of this.folder.keys()) names.push(name);
    return names;
  }

  /** Undefined where there is no such file, or another worker has it open. */
  async access(name: string, { create = false, patient = false } = {}): Promise<Access | undefined> {
    for (let tries = patient ? TRIES : 1; tries > 0; tries--) {
      try {
        const access = await (await this.folder.getFileHandle(name, { create })).createSyncAccessHandle();
        // Browsers in which the rest of it answered later are left out.
        if (typeof access.getSize() === 'number') return access;
        access.close();
        return undefined;
      } catch (reason) {
        if (!(reason instanceof DOMException) || reason.name !== 'NoModificationAllowedError')
          return undefined;
        if (tries > 1) await new Promise((resolve) => setTimeout(resolve, PAUSE));
      }
    }
    return undefined;
  }

  /** @throws DOMException when another worker has it open */
  async remove(name: string): Promise<void> {
    await this.folder.removeEntry(name).catch((reason: unknown) => {
      if (!(reason instanceof DOMException) || reason.name !== 'NotFoundError') throw reason;
    });
  }

  /** Writes a file of one record. */
  async write(name: string, head: object, body: Uint8Array<ArrayBuffer>): Promise<void> {
    const access = await this.access(name, { create: true });
    if (!access) return;
    try {
      access.truncate(0);
      await putRecord(access, 0, head, body);
    } finally {
      access.close();
    }
  }

  /** The record of such a file; undefined when it is not whole. */
  async read(
    name: string,
  ): Promise<{ readonly head: unknown; readonly body: Uint8Array<ArrayBuffer> } | undefined> {
    const access = await this.access(name);
    if (!access) return undefined;
    try {
      const source = sourceOf(access);
      const [found] = recordsIn(source);
      return found && { head: found.head, body: source.read(found.body.at, found.body.length) };
    } finally {
      access.close();
    }
  }
}

export const sourceOf = (access: Access): Source => ({
  size: access.getSize(),
  read(at, length) {
    const bytes = new Uint8Array(length);
    const got = access.read(bytes, { at });
    return got === length ? bytes : bytes.slice(0, got);
  },
});

/** Writes all of the bytes and answers where they end. @throws DOMException or Error when there is no room */
export function put(access: Access, at: number, bytes: Uint8Array<ArrayBuffer>): number {
  if (access.write(bytes, { at }) !== bytes.length) throw new Error('not all of it was written');
  return at + bytes.length;
}

/** Writes a record in parts, each of them on the disk before the next, and answers where it ends. */
export async function putRecord(
  access: Access,
  at: number,
  head: object,
  body: Uint8Array<ArrayBuffer>,
): Promise<number> {
  let end = put(access, at, recordHead(head, body.length));
  for (let from = 0; from < body.length; from += PART) {
    end = put(access, end, body.subarray(from, from + PART));
    access.flush();
    if (from + PART < body.length) await new Promise((resolve) => setTimeout(resolve));
  }
  return end;
}

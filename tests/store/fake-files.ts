interface FakeFile {
  bytes: Uint8Array<ArrayBuffer>;
  open: boolean;
}

/** The page's own files as the File System Standard (WHATWG) has them in a worker, for a runtime that has none. */
export class FakeFiles {
  readonly files = new Map<string, FakeFile>();
  /** Bytes that there is room for. */
  room = Number.POSITIVE_INFINITY;
  /** Writes after which the worker is as good as killed: nothing reaches the files any more. */
  writes = Number.POSITIVE_INFINITY;

  /** As `navigator.storage`. */
  readonly storage = {
    getDirectory: async () => ({ getDirectoryHandle: async () => this.folder }),
  };

  private workers = 0;

  /** Every worker has ended: what it had open is free again, and it writes no more. */
  letGo(): void {
    this.workers++;
    for (const file of this.files.values()) file.open = false;
    this.writes = Number.POSITIVE_INFINITY;
  }

  private readonly folder = {
    keys: async function* (this: FakeFiles) {
      yield* [...this.files.keys()];
    }.bind(this),
    getFileHandle: async (name: string, { create = false } = {}) => {
      if (!this.files.has(name)) {
        if (!create) throw new DOMException(name, 'NotFoundError');
        this.files.set(name, { bytes: new Uint8Array(0), open: false });
      }
      const file = this.files.get(name)!;
      return { createSyncAccessHandle: async () => this.accessTo(file) };
    },
    removeEntry: async (name: string) => {
      if (this.files.get(name)?.open) throw new DOMException(name, 'NoModificationAllowedError');
      if (!this.files.delete(name)) throw new DOMException(name, 'NotFoundError');
    },
  };

  private accessTo(file: FakeFile) {
    if (file.open) throw new DOMException('open', 'NoModificationAllowedError');
    file.open = true;
    const worker = this.workers;
    const lives = () => worker === this.workers && this.writes >= 0;
    return {
      getSize: () => file.bytes.length,
      read(into: Uint8Array, { at }: { at: number }): number {
        const part = file.bytes.subarray(at, at + into.length);
        into.set(part);
        return part.length;
      },
      write: (bytes: Uint8Array, { at }: { at: number }): number => {
        this.writes--;
        if (!lives()) throw new DOMException('killed', 'InvalidStateError');
        const used = [...this.files.values()].reduce((sum, one) => sum + one.bytes.length, 0);
        const size = Math.max(file.bytes.length, at + bytes.length);
        if (used + size - file.bytes.length > this.room)
          throw new DOMException('no room', 'QuotaExceededError');
        const next = new Uint8Array(size);
        next.set(file.bytes);
        next.set(bytes, at);
        file.bytes = next;
        return bytes.length;
      },
      truncate: (size: number) => {
        if (!lives()) return;
        const next = new Uint8Array(size);
        next.set(file.bytes.subarray(0, size));
        file.bytes = next;
      },
      flush: () => undefined,
      close: () => {
        if (worker === this.workers) file.open = false;
      },
    };
  }
}

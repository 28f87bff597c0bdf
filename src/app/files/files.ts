/** A file that the open book came from or was written to. */
export interface BookFile {
  readonly name: string;
  /** There when the browser lets a page write to the file it opened. */
  readonly handle?: FileHandle;
}

/** The parts of the File System Access API that are used here; not every browser has it. */
export interface FileHandle {
  readonly name: string;
  getFile(): Promise<File>;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
}

interface Pickers {
  showOpenFilePicker?(options: object): Promise<readonly FileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileHandle>;
}

const pickers = (): Pickers => globalThis as unknown as Pickers;

const bookTypes = [{ description: 'Leverbook book', accept: { 'application/json': ['.json'] } }];

/** Largest book file that is read, in bytes: beyond it the page would run out of memory before it could say why. */
const largest = 200 * 1024 * 1024;

export interface PickedText {
  readonly file: BookFile;
  readonly text: string;
}

/** Asks for a book file. Null when the person thought better of it. @throws Error with a sentence for a file too large. */
export async function pickBook(): Promise<PickedText | null> {
  const open = pickers().showOpenFilePicker;
  if (!open) {
    const file = await uploadedFile('.json,application/json');
    return file && { file: { name: file.name }, text: await textOf(file) };
  }
  try {
    const [handle] = await open.call(globalThis, { types: bookTypes });
    if (!handle) return null;
    return { file: { name: handle.name, handle }, text: await textOf(await handle.getFile()) };
  } catch (reason) {
    if (isAbort(reason)) return null;
    throw reason;
  }
}

/**
 * Writes a book: to its own file where the browser can, to one that is asked for when there is none or `elsewhere` is
 * wanted, and as a download where there is no such thing. The file is asked for first: a browser lets a page ask only
 * just after a key or a click. Null when the person thought better of it. @throws Error with a sentence
 */
export async function writeBook(
  text: () => Promise<string>,
  file: BookFile | null,
  name: string,
  elsewhere: boolean,
): Promise<BookFile | null> {
  const ask = pickers().showSaveFilePicker;
  if (!ask) {
    download(await text(), name, 'application/json');
    return { name };
  }
  try {
    const handle =
      (!elsewhere && file?.handle) || (await ask.call(globalThis, { suggestedName: name, types: bookTypes }));
    // What stood in the file stays until all is written.
    const stream = await handle.createWritable();
    await stream.write(await text());
    await stream.close();
    return { name: handle.name, handle };
  } catch (reason) {
    if (isAbort(reason)) return null;
    throw new Error(`${file?.name ?? name} was not written: ${whyNot(reason)}`);
  }
}

/** Why a file could not be written, and what to do. */
function whyNot(reason: unknown): string {
  const name = reason instanceof DOMException ? reason.name : '';
  if (name === 'NotAllowedError')
    return 'the browser was not allowed to. Save again and allow it, or save a copy.';
  if (name === 'NotFoundError') return 'the file is no longer there. Save a copy.';
  if (name === 'NoModificationAllowedError')
    return 'another program has the file open. Close it there, or save a copy.';
  if (name === 'QuotaExceededError') return 'the disk is full. Make room, or save a copy.';
  return `${reason instanceof Error ? reason.message : String(reason)}. Save a copy.`;
}

/** Hands a text or a picture to the person as a file. */
export function download(text: string | Blob | Uint8Array<ArrayBuffer>, name: string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** A file name from a title. */
export const fileNameFor = (title: string, ending: string): string =>
  `${
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '') || 'book'
  }${ending}`;

export async function textOf(file: File): Promise<string> {
  if (file.size > largest)
    throw new Error(
      `${file.name} is ${Math.round(file.size / 1024 / 1024)} MB; books up to 200 MB can be opened. Split it into smaller books.`,
    );
  return file.text();
}

function uploadedFile(accept: string): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null), { once: true });
    input.addEventListener('cancel', () => resolve(null), { once: true });
    input.click();
  });
}

const isAbort = (reason: unknown): boolean => reason instanceof DOMException && reason.name === 'AbortError';

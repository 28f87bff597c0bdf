import { type FileHandle, textOf } from '../files/files.ts';
import { guarded, openBook } from '../state/actions.ts';
import { mayLeave } from '../state/leave.ts';
import { type Page, say } from '../state/page.ts';
import { type Arrived, importFiles } from './file-import.ts';

/** Files that are dropped anywhere on the page, or pasted, come in or are opened. Answers how to stop that. */
export function receiveFiles(page: Page): () => void {
  const over = (event: DragEvent) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'copy';
    document.documentElement.classList.add('file-over');
  };
  const leave = (event: DragEvent) => {
    if (event.relatedTarget === null) document.documentElement.classList.remove('file-over');
  };
  const drop = (event: DragEvent) => {
    document.documentElement.classList.remove('file-over');
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length === 0) return;
    event.preventDefault();
    // Where the browser can hand out the file itself, the book is saved to it later; it must be asked for at once.
    const handles = [...(event.dataTransfer?.items ?? [])].map((item) =>
      (item as HandedItem).getAsFileSystemHandle?.(),
    );
    void received(page, files, handles);
  };
  const paste = (event: ClipboardEvent) => {
    const files = [...(event.clipboardData?.files ?? [])].filter(({ type }) => !type.startsWith('image/'));
    if (files.length === 0) return;
    event.preventDefault();
    event.stopPropagation();
    void received(page, files, []);
  };
  window.addEventListener('dragover', over);
  window.addEventListener('dragleave', leave);
  window.addEventListener('drop', drop);
  window.addEventListener('paste', paste, { capture: true });
  return () => {
    window.removeEventListener('dragover', over);
    window.removeEventListener('dragleave', leave);
    window.removeEventListener('drop', drop);
    window.removeEventListener('paste', paste, { capture: true });
  };
}

/** The part of the File System Access API that a drop has, in browsers that know it. */
interface HandedItem extends DataTransferItem {
  getAsFileSystemHandle?(): Promise<FileHandle | null>;
}

const isBook = ({ name }: File): boolean => /\.json$/i.test(name);

/** A book takes the place of the open one; everything else is brought into it. */
async function received(
  page: Page,
  files: readonly File[],
  handles: readonly (Promise<FileHandle | null> | undefined)[],
): Promise<void> {
  const books = files.filter(isBook);
  if (books.length === 0) {
    importFiles(page, files.map(arrived));
    return;
  }
  const [book] = books;
  if (files.length > 1) {
    say(page, `${book!.name} is a book: drop it alone to open it. Nothing was opened or imported.`, 'wrong');
    return;
  }
  if (!mayLeave(page)) return;
  await guarded(page, async () => {
    const handle = await handles[0]?.catch(() => null);
    const file = handle ? { name: book!.name, handle } : { name: book!.name };
    return openBook(page, await textOf(book!), file, book!.name);
  });
}

export const arrived = (file: File): Arrived => ({ name: file.name, file });

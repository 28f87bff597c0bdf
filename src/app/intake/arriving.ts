import type { Page } from '../state/page.ts';
import { type Arrived, bringIn } from './bringing.ts';

/** Files that are dropped anywhere on the page, or pasted, come in. Answers how to stop that. */
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
    bringIn(page, files.map(arrived));
  };
  const paste = (event: ClipboardEvent) => {
    const files = [...(event.clipboardData?.files ?? [])].filter(({ type }) => !type.startsWith('image/'));
    if (files.length === 0) return;
    event.preventDefault();
    event.stopPropagation();
    bringIn(page, files.map(arrived));
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

export const arrived = (file: File): Arrived => ({ name: file.name, file });

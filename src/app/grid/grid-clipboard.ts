import type Handsontable from 'handsontable/base';
import type { GridHost, GridSelection } from './host.ts';

/** The page's copy, cut and paste, while the keyboard belongs to the grid. Answers how to stop listening. */
export function listenToClipboard(
  hot: Handsontable,
  host: Pick<GridHost, 'copy' | 'paste'>,
  selection: () => GridSelection | null,
  hasFocus: () => boolean,
): () => void {
  /** True while no cell is being edited, too: then the clipboard is the editor's. */
  const takesKeys = (): boolean => hot.isListening() && !hot.getActiveEditor()?.isOpened() && hasFocus();
  const copied = (event: ClipboardEvent): void => {
    const chosen = takesKeys() ? selection() : null;
    if (chosen) host.copy(chosen, event.type === 'cut', event);
  };
  const pasted = (event: ClipboardEvent): void => {
    if (!takesKeys()) return;
    event.preventDefault();
    host.paste(event.clipboardData?.getData('text/plain') ?? '');
  };
  document.addEventListener('copy', copied);
  document.addEventListener('cut', copied);
  document.addEventListener('paste', pasted);
  return () => {
    document.removeEventListener('copy', copied);
    document.removeEventListener('cut', copied);
    document.removeEventListener('paste', pasted);
  };
}

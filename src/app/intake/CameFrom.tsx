import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CameFrom as Origin } from '../../session/imports.ts';
import { usePage } from '../shell/context.ts';
import { rowsInWords } from './words.ts';

/** Below the sheet: the file its rows came from last, and whether rows are held. */
export function CameFrom() {
  const page = usePage();
  const from = useSignal<Origin | null>(null);
  const id = page.sheet.value?.id;
  // Another book may have a sheet of that id and as many changes behind it: the outline itself tells them apart.
  const outline = page.outline.value;
  useEffect(() => {
    let gone = false;
    if (id === undefined) from.value = null;
    else
      void page.service.cameFrom(id).then((found) => {
        if (!gone) from.value = found;
      });
    return () => {
      gone = true;
    };
  }, [id, outline]);
  const { value } = from;
  if (!value || id === undefined) return null;
  const date = new Date(value.time);
  const when = Number.isNaN(date.getTime())
    ? value.time
    : date.toLocaleDateString('en-GB', { dateStyle: 'medium' });
  return (
    <button
      type="button"
      class="came-from"
      onClick={() => {
        page.dialogue.value = { is: 'imports', sheet: id };
      }}
    >
      {value.heldRows > 0 && <strong>{`${rowsInWords(value.heldRows)} held; `}</strong>}
      {`from ${value.file || 'pasted rows'}, ${when}`}
    </button>
  );
}

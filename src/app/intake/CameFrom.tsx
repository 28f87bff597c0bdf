import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CameFrom as Origin } from '../../session/imports/imports.ts';
import { writeMoment } from '../../units/date.ts';
import { usePage } from '../state/context.ts';
import { gone } from '../state/follow.ts';
import { rowsInWords } from './import-words.ts';

/** Below the sheet: the file its rows came from last, and whether rows are held. */
export function CameFrom() {
  const page = usePage();
  const from = useSignal<Origin | null>(null);
  const id = page.sheet.value?.id;
  // Another book may have a sheet of that id and as many changes behind it: the outline itself tells them apart.
  const outline = page.outline.value;
  useEffect(() => {
    let over = false;
    if (id === undefined) from.value = null;
    else
      void page.service.cameFrom(id).then((found) => {
        if (!over) from.value = found;
      }, gone);
    return () => {
      over = true;
    };
  }, [id, outline]);
  const { value } = from;
  if (!value || id === undefined) return null;
  const date = new Date(value.time);
  const when = Number.isNaN(date.getTime()) ? value.time : writeMoment(date);
  return (
    <button
      type="button"
      class="came-from"
      onClick={() => {
        page.dialogue.value = { is: 'imports', sheet: id };
      }}
    >
      {value.heldRows > 0 && <strong>{`${rowsInWords(value.heldRows)} not imported; `}</strong>}
      {`from ${value.file || 'pasted rows'}, ${when}`}
    </button>
  );
}

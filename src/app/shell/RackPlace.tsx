/** Where rack mode is shown; its code is loaded when it is. */
import { useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { openBefore } from '../rack/remembered.ts';
import { usePage } from '../state/context.ts';
import { Later } from './Later.tsx';

const rackMode = async () => (await import('../rack/RackMode.tsx')).RackMode;

/** Rack mode over the sheet, while it is on; a tab that is loaded again goes on where it was. */
export function RackPlace() {
  const page = usePage();
  const looked = useRef(false);
  useSignalEffect(() => {
    const { outline, rack, sheetId, chart } = page;
    const book = outline.value;
    if (!book) return;
    if (!looked.current) {
      looked.current = true;
      const before = openBefore(book.title);
      if (before && book.sheets.some(({ id }) => id === before.sheet)) {
        sheetId.value = before.sheet;
        rack.value = { sheet: before.sheet, row: before.row };
        return;
      }
    }
    // Another sheet or a chart was opened, or the sheet is gone.
    const now = rack.value;
    if (now && (sheetId.value !== now.sheet || chart.value !== null)) rack.value = null;
  });
  return page.rack.value && <Later load={rackMode} of={{}} failed={() => (page.rack.value = null)} />;
}

import { useEffect, useRef } from 'preact/hooks';
import { usePage } from '../state/context.ts';
import { useFollow } from '../state/follow.ts';
import type { Page } from '../state/page.ts';
import { Below } from './Below.tsx';
import './cell.css';
import { draft } from './draft.ts';
import { Equals } from './FormulaLine.tsx';
import { placeField } from './field.ts';
import { boxIn, stepAside } from './place.ts';
import { completing, hand, inCell, leaveCell, shifts } from './writing.ts';

/** The editor that opens over a cell for a formula: the same as in the line above the sheet, with the same text. */
export function CellFormula() {
  const page = usePage();
  const frame = useRef<HTMLDivElement>(null);
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => (host.current ? placeField(page, 'cell', host.current) : undefined), [page]);
  useFollow(() => {
    const element = frame.current;
    const now = inCell.value ? draft.value : null;
    const here = now !== null && page.sheetId.value === now.sheet && page.chart.value === null;
    if (now && !here) leaveCell();
    if (!element) return;
    if (element.hidden) element.dataset.aside = 'false';
    element.hidden = !here;
    if (!here) return;
    shifts.value;
    const room = roomOf(page);
    const cell = page.grid.current?.boxOf(now.row, now.column);
    if (room) boxIn(element, room, cell ?? null);
    const pointed = document.querySelectorAll('.sheet-grid td.pointed');
    if (pointed.length > 0)
      stepAside(
        element,
        [...pointed].slice(-1).map((td) => td.getBoundingClientRect()),
      );
  });
  const open = inCell.value;
  useEffect(() => {
    if (!open) return;
    const over = ({ clientX: x, clientY: y }: PointerEvent) => {
      if (frame.current) stepAside(frame.current, [{ left: x, right: x + 1, top: y, bottom: y + 1 }]);
    };
    // It grows with its text, and once the text is laid out.
    const grows = new ResizeObserver(() => {
      shifts.value++;
    });
    if (frame.current?.firstElementChild) grows.observe(frame.current.firstElementChild);
    window.addEventListener('pointermove', over);
    return () => {
      grows.disconnect();
      window.removeEventListener('pointermove', over);
    };
  }, [open]);
  const now = inCell.value ? draft.value : null;
  return (
    <div ref={frame} class={`cell-formula${completing.value ? ' completing' : ''}`} hidden>
      <div class="cell-formula-box">
        {now?.scope === 'column' && <Equals />}
        <div ref={host} class="cell-formula-editor" />
      </div>
      {now && hand.value === 'cell' && <Below />}
    </div>
  );
}

/** The part of the window that shows cells. */
function roomOf(page: Page): DOMRect | null {
  const place = document.querySelector('.sheet-grid .ht_master .wtHolder');
  return page.grid.current && place ? place.getBoundingClientRect() : null;
}

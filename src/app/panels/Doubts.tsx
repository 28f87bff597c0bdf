import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Doubt, Outline } from '../../session/api.ts';
import { usePage } from '../shell/context.ts';
import { goTo } from '../state/actions.ts';

const kinds: Readonly<Record<Doubt['about'], string>> = {
  held: 'Held',
  dimension: 'Dimension',
  slow: 'Slow',
  cycle: 'Cycle',
  hung: 'Stopped',
  error: 'Error',
};

/** Everything that the book doubts, each with a jump to its place. */
export function Doubts() {
  const page = usePage();
  const list = useSignal<readonly Doubt[] | null>(null);
  const asked = useRef(0);
  useSignalEffect(() => {
    if (!page.outline.value) return;
    const turn = ++asked.current;
    void page.service.doubts().then((found) => {
      if (turn === asked.current) list.value = found;
    });
  });
  const outline = page.outline.value;
  if (!outline || !list.value) return null;
  if (list.value.length === 0)
    return (
      <p class="panel-note">
        Nothing is in doubt: every value fits its column, every formula has a result, and units and dimensions
        agree.
      </p>
    );
  return (
    <ul class="doubts">
      {list.value.map((doubt) => (
        <li key={JSON.stringify([doubt.place, doubt.about, doubt.sentence])}>
          <button type="button" onClick={() => goTo(page, doubt.place)}>
            <span class={`doubt-kind ${doubt.about}`}>{kinds[doubt.about]}</span>
            <span class="doubt-place">{placeInWords(outline, doubt)}</span>
            <span class="doubt-sentence">{doubt.sentence}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function placeInWords(outline: Outline, { place }: Doubt): string {
  const sheet = outline.sheets.find(({ id }) => id === place.sheet);
  const column = sheet?.columns.find(({ id }) => id === place.column);
  const where = `${sheet?.label ?? ''}, ${column?.label ?? ''}`;
  return place.row === undefined ? `${where}, every row` : `${where}, row ${place.row + 1}`;
}

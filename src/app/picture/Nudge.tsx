/** Moves the selected point by single pixels without a keyboard. */
import { useSignal } from '@preact/signals';
import { labelOf } from '../../session/picture/readings.ts';
import type { Digitising } from './digitising.ts';
import { within } from './picture-view.ts';

const ways = [
  ['←', 'left', -1, 0],
  ['↑', 'up', 0, -1],
  ['↓', 'down', 0, 1],
  ['→', 'right', 1, 0],
] as const;

/** One button a direction, by 1 px of the picture or by 10. A finger covers what it points at; these do not. */
export function Nudge({ at }: { at: Digitising }) {
  const ten = useSignal(false);
  const id = at.active.value;
  const point = at.points.value[id];
  const by = ten.value ? 10 : 1;
  const name = labelOf(id);
  return (
    <div class="picture-actions">
      <span>Move {name.toLowerCase()}</span>
      {ways.map(([sign, way, x, y]) => (
        <button
          key={way}
          type="button"
          class="firm"
          disabled={!point}
          aria-label={`Move ${name.toLowerCase()} ${way} by ${by} px`}
          onClick={() => {
            if (point && at.medium.value)
              at.place(id, within({ x: point.x + x * by, y: point.y + y * by }, at.medium.value));
          }}
        >
          {sign}
        </button>
      ))}
      <button
        type="button"
        class="firm"
        aria-pressed={ten.value}
        onClick={() => {
          ten.value = !ten.value;
        }}
      >
        10 px
      </button>
    </div>
  );
}

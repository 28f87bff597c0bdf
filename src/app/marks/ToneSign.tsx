import type { Tone } from '../../session/marks/mark-record.ts';
import { signs } from './tones.ts';

/** The shape of a tone beside its word, which says it. */
export function ToneSign({ tone }: { tone: Tone }) {
  const { filled, lined } = signs[tone];
  return (
    <span class={`tone-sign ${tone}`} aria-hidden="true">
      <svg viewBox="0 0 12 12" class="mark-sign" aria-hidden="true">
        {filled && <path d={filled} fill="currentColor" />}
        {lined && <path d={lined} fill="none" stroke="currentColor" stroke-width="1.6" />}
      </svg>
    </span>
  );
}

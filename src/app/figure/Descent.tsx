/** The slider that moves the figure down into the squat. */
import type { Signal } from '@preact/signals';
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { PostureFigure } from '../../session/api.ts';
import { depthInWords } from './figure-words.ts';

interface Props {
  readonly frames: Signal<readonly PostureFigure[]>;
  readonly moment: Signal<PostureFigure | null>;
  readonly ask: () => Promise<readonly PostureFigure[]>;
}

/** Milliseconds from one posture to the next: a descent of about three seconds. */
const PACE = 80;

/** Goes through the descent, posture by posture or played. Who wants less motion steps. */
export function Descent({ frames, moment, ask }: Props) {
  const playing = useSignal(false);
  const timer = useRef<ReturnType<typeof setInterval> | undefined>(undefined);
  const stop = () => {
    clearInterval(timer.current);
    playing.value = false;
  };
  useEffect(() => () => clearInterval(timer.current), []);
  // Another lifter or set-up has come: what was playing is over.
  if (moment.value === null && playing.peek() && frames.value.length === 0) stop();
  const index = moment.value ? frames.value.indexOf(moment.value) : -1;
  const ready = async (): Promise<readonly PostureFigure[]> => {
    if (frames.value.length === 0) frames.value = await ask();
    return frames.value;
  };
  const show = async (to: (last: number) => number) => {
    stop();
    const all = await ready();
    moment.value = all[Math.max(0, Math.min(all.length - 1, to(all.length - 1)))] ?? null;
  };
  const play = async () => {
    const all = await ready();
    if (all.length === 0) return;
    let next = index >= 0 && index < all.length - 1 ? index : 0;
    moment.value = all[next] ?? null;
    playing.value = true;
    timer.current = setInterval(() => {
      next++;
      if (next >= all.length || frames.peek() !== all) return stop();
      moment.value = all[next] ?? null;
    }, PACE);
  };
  const still = globalThis.matchMedia?.('(prefers-reduced-motion: reduce)').matches ?? false;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a row everywhere
    <div class="descent" role="group" aria-label="Descent">
      <span>Descent</span>
      {!still && (
        <button type="button" class="firm" onClick={() => (playing.value ? stop() : void play())}>
          {playing.value ? 'Pause' : 'Play'}
        </button>
      )}
      <button
        type="button"
        class="firm"
        onClick={() => void show((last) => (index < 0 ? 0 : Math.min(last, index + 1)))}
      >
        Step down
      </button>
      <button type="button" class="firm" disabled={index <= 0} onClick={() => void show(() => index - 1)}>
        Step up
      </button>
      {moment.value && (
        <button
          type="button"
          class="firm"
          onClick={() => {
            stop();
            moment.value = null;
          }}
        >
          Close
        </button>
      )}
      <span class="soft" aria-live={playing.value ? 'off' : 'polite'}>
        {moment.value && depthInWords(moment.value)}
      </span>
    </div>
  );
}

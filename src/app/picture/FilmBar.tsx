import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Digitising } from './digitising.ts';
import { seek } from './medium.ts';

/** Frames per second of most phones' films; the field beside it says otherwise. */
const RATE = 30;

/** Play, a frame back and forth, and the time of the frame on show. */
export function FilmBar({ at }: { at: Digitising }) {
  const film = at.medium.value!.element as HTMLVideoElement;
  const playing = useSignal(false);
  const rate = useSignal(RATE);
  useEffect(() => {
    const told = () => {
      at.time.value = film.currentTime;
      playing.value = !film.paused;
    };
    const events = ['timeupdate', 'seeked', 'play', 'pause', 'ended'] as const;
    for (const event of events) film.addEventListener(event, told);
    return () => {
      for (const event of events) film.removeEventListener(event, told);
    };
  }, [film]);
  const step = (frames: number) => {
    film.pause();
    const next = film.currentTime + frames / rate.value;
    void seek(film, Math.min(Math.max(next, 0), film.duration || next));
  };
  return (
    <div class="film-bar">
      <button type="button" class="firm" onClick={() => void (playing.value ? film.pause() : film.play())}>
        {playing.value ? 'Pause' : 'Play'}
      </button>
      <button type="button" class="firm" title="One frame back" onClick={() => step(-1)}>
        <span aria-hidden="true">−1</span>
        <span class="unseen">One frame back</span>
      </button>
      <button type="button" class="firm" title="One frame forward" onClick={() => step(1)}>
        <span aria-hidden="true">+1</span>
        <span class="unseen">One frame forward</span>
      </button>
      <input
        type="range"
        aria-label="Time in the film"
        min="0"
        max={film.duration || 0}
        step={1 / rate.value}
        value={at.time.value}
        onInput={(event) => void seek(film, Number(event.currentTarget.value))}
      />
      <output>{at.time.value.toFixed(3)} s</output>
      <label class="rate">
        <input
          type="number"
          min="1"
          max="1000"
          value={rate.value}
          onChange={(event) => {
            const value = Number(event.currentTarget.value);
            rate.value = value >= 1 && value <= 1000 ? value : RATE;
          }}
        />
        frames per second
      </label>
    </div>
  );
}

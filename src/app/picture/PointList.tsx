import { POINTS } from '../../session/picture/points.ts';
import type { Digitising } from './digitising.ts';

/** The points in the order they are placed: which are there, which is next, and what each is. */
export function PointList({ at }: { at: Digitising }) {
  const active = POINTS.find(({ id }) => id === at.active.value)!;
  const placed = at.points.value;
  return (
    <section class="points">
      <p class="next-point" aria-live="polite">
        <b>{placed[active.id] ? active.label : `Next: ${active.label}`}</b> {active.where}
      </p>
      <ul>
        {POINTS.map(({ id, label }) => (
          <li key={id}>
            <button
              type="button"
              aria-pressed={id === active.id}
              aria-label={`${label}, ${placed[id] ? 'placed' : 'not placed'}`}
              class={placed[id] ? 'placed' : ''}
              onClick={() => {
                at.active.value = id;
              }}
            >
              <span aria-hidden="true">{placed[id] ? '✓' : '·'}</span> {label}
            </button>
          </li>
        ))}
      </ul>
      {placed[active.id] && (
        <button type="button" class="firm" onClick={() => at.remove(active.id)}>
          Remove {active.label.toLowerCase()}
        </button>
      )}
    </section>
  );
}

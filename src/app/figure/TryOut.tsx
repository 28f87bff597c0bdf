import type { Signal } from '@preact/signals';
import type { Figure } from '../../session/api.ts';
import type { FigureOptions } from '../../session/figure.ts';
import { isPosture } from './words.ts';

interface Slider {
  readonly key: 'lift' | 'depth' | 'ankle' | 'stance';
  readonly label: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly of: (figure: Figure) => number;
}

const posture = ({ lifted, flat }: Figure) =>
  lifted && isPosture(lifted) ? lifted : isPosture(flat) ? flat : null;

const sliders: readonly Slider[] = [
  {
    key: 'lift',
    label: 'Heel lift',
    unit: 'cm',
    min: 0,
    max: 5,
    step: 0.1,
    of: (figure) => posture(figure)?.lift ?? 0,
  },
  {
    key: 'ankle',
    label: 'Ankle range',
    unit: '°',
    min: 0,
    max: 60,
    step: 1,
    of: (figure) => {
      const now = posture(figure);
      return now ? now.shank - now.pitch : 30;
    },
  },
  {
    key: 'depth',
    label: 'Thigh above parallel',
    unit: '°',
    min: -30,
    max: 60,
    step: 1,
    of: (figure) => posture(figure)?.depth ?? 0,
  },
  { key: 'stance', label: 'Feet turned out', unit: '°', min: 0, max: 45, step: 1, of: () => 0 },
];

const placements = ['high-bar', 'low-bar', 'front', 'arms-forward'] as const;

interface Props {
  readonly figure: Figure;
  readonly tried: Signal<FigureOptions>;
  /** Writes the lift that is tried into the row; null where the row has no place for it. */
  readonly keep: ((lift: number) => void) | null;
}

/** Sliders that change the drawing and nothing else. */
export function TryOut({ figure, tried, keep }: Props) {
  const set = (change: FigureOptions) => {
    tried.value = { ...tried.value, ...change };
  };
  const any = Object.keys(tried.value).length > 0;
  return (
    <details class="try-out" open={any}>
      <summary>Try something out</summary>
      <p class="soft">Nothing here touches the data.</p>
      {sliders.map(({ key, label, unit, min, max, step, of }) => {
        const value = tried.value[key] ?? of(figure);
        const shown = step < 1 ? value.toFixed(1) : Math.round(value).toString();
        return (
          <label key={key} class="slider">
            <span>{label}</span>
            <input
              type="range"
              min={min}
              max={max}
              step={step}
              value={value}
              aria-valuetext={`${shown} ${unit}`}
              onInput={(event) => set({ [key]: Number(event.currentTarget.value) })}
            />
            <output>{`${shown.replace('-', '−')}${unit === '°' ? '°' : ` ${unit}`}`}</output>
          </label>
        );
      })}
      <label class="slider">
        <span>Bar</span>
        <select
          value={tried.value.placement ?? ''}
          onChange={(event) => {
            const placement = event.currentTarget.value;
            if (placement) return set({ placement });
            const { placement: _, ...rest } = tried.value;
            tried.value = rest;
          }}
        >
          <option value="">as in the row</option>
          {placements.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      </label>
      <div class="try-actions">
        <button
          type="button"
          class="firm"
          disabled={!any}
          onClick={() => {
            tried.value = {};
          }}
        >
          Back to the row
        </button>
        {keep && tried.value.lift !== undefined && (
          <button type="button" class="strong" onClick={() => keep(tried.value.lift ?? 0)}>
            Keep this lift in the row
          </button>
        )}
      </div>
    </details>
  );
}

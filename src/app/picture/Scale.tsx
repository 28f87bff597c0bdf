import type { Signal } from '@preact/signals';
import type { Digitising } from './digitising.ts';

/** Known length, camera and level line: what turns units of the picture into centimetres and degrees. */
export function Scale({ at }: { at: Digitising }) {
  return (
    <details class="scale-fields">
      <summary>Known length, camera and level line</summary>
      <Length label="Known length" field={at.length} changed={at.changed} min={0.1} max={500} />
      <Length label="Camera distance" field={at.camera} changed={at.changed} min={50} max={5000} />
      <Length label="Known length nearer by" field={at.nearer} changed={at.changed} min={-300} max={300} />
      <label>
        <span>Level line</span>
        <select
          value={at.line.value}
          onChange={(event) => {
            at.line.value = event.currentTarget.value as 'floor' | 'plumb';
            at.changed.value = true;
          }}
        >
          <option value="floor">level, like the floor</option>
          <option value="plumb">upright, like a rack post</option>
        </select>
      </label>
      <label>
        <span>Facing</span>
        <select
          value={at.looks.value ?? ''}
          onChange={(event) => {
            at.looks.value = (event.currentTarget.value || null) as 'right' | 'left' | null;
            at.changed.value = true;
          }}
        >
          <option value="">as toe and heel say ({at.seen.value.facing})</option>
          <option value="right">right</option>
          <option value="left">left</option>
        </select>
      </label>
      <p class="soft">
        A plate is 45 cm across. On the near end of the bar it is about 70 cm nearer than the joints: lengths
        then read 23 % too small at 3 m, 12 % at 6 m, unless both distances are given.
      </p>
    </details>
  );
}

interface LengthProps {
  readonly label: string;
  readonly field: Signal<number> | Signal<number | null>;
  readonly changed: Signal<boolean>;
  readonly min: number;
  readonly max: number;
}

function Length({ label, field, changed, min, max }: LengthProps) {
  return (
    <label>
      <span>{label} (cm)</span>
      <input
        type="number"
        inputMode="decimal"
        min={min}
        max={max}
        step="any"
        value={field.value ?? ''}
        onChange={(event) => {
          const input = event.currentTarget;
          const value = input.valueAsNumber;
          if (input.value === '' && label === 'Camera distance')
            (field as Signal<number | null>).value = null;
          else if (value >= min && value <= max) field.value = value;
          else {
            input.setCustomValidity(`${label} takes ${min} to ${max} cm.`);
            input.reportValidity();
            input.setCustomValidity('');
            input.value = String(field.value ?? '');
            return;
          }
          changed.value = true;
        }}
      />
    </label>
  );
}

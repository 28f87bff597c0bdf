/** The controls that try out a lift, a depth, an ankle or a load without changing data. */
import type { Signal } from '@preact/signals';
import type { Figure, FigureControl } from '../../session/api.ts';
import type { FigureOptions } from '../../session/figure/figure.ts';

interface Props {
  readonly figure: Figure;
  readonly tried: Signal<FigureOptions>;
  /** Writes the lift that is on show into the row. */
  readonly keep: (text: string) => void;
}

type Slide = Exclude<FigureControl, { measure: 'placement' }>;

/** Who or what is drawn beside this row: another test of the lifter, or another lifter. */
function BesideChoice({ figure, tried }: Omit<Props, 'keep'>) {
  const { beside, test } = tried.value;
  const choose = (value: string) => {
    const { beside: _, test: __, ...rest } = tried.value;
    const other = figure.tests[Number(value.slice(1))];
    if (value === '') tried.value = rest;
    else if (value.startsWith('t') && other)
      tried.value = { ...rest, test: { sheet: other.sheet, row: other.row } };
    else tried.value = { ...rest, beside: Number(value.slice(1)) };
  };
  const index = figure.tests.findIndex(({ sheet, row }) => sheet === test?.sheet && row === test.row);
  const now = index >= 0 ? `t${index}` : beside === undefined ? '' : `r${beside}`;
  const rows = (same: boolean) => figure.lifters.filter((one) => (one.same ?? false) === same);
  const option = ({ row, title }: Figure['lifters'][number]) => (
    <option key={row} value={`r${row}`}>
      {title}, row {row + 1}
    </option>
  );
  return (
    <label class="slider">
      <span>Compare with</span>
      <select value={now} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="">no one</option>
        {figure.tests.length + rows(true).length > 0 && (
          <optgroup label="Other tests of this lifter">
            {figure.tests.map(({ sheet, row, title }, i) => (
              <option key={`${sheet} ${row}`} value={`t${i}`}>
                {title}
              </option>
            ))}
            {rows(true).map(option)}
          </optgroup>
        )}
        {rows(false).length > 0 && (
          <optgroup label="Other lifters, at one stature">{rows(false).map(option)}</optgroup>
        )}
      </select>
    </label>
  );
}

/** Set-ups tried out: they change the drawing and nothing else, until the lift is saved. */
export function TryOut({ figure, tried, keep }: Props) {
  const set = (change: FigureOptions) => {
    tried.value = { ...tried.value, ...change };
  };
  const without = (key: keyof FigureOptions) => {
    const { [key]: _, ...rest } = tried.value;
    tried.value = rest;
  };
  const any = Object.keys(tried.value).length > 0;
  return (
    <section class="try-out">
      <h4>Try changes</h4>
      {figure.controls.map((control) =>
        control.measure === 'placement' ? (
          <label key="placement" class="slider">
            <span>{control.label}</span>
            <select value={control.value} onChange={(event) => set({ placement: event.currentTarget.value })}>
              {control.words.map((word) => (
                <option key={word} value={word}>
                  {word}
                </option>
              ))}
            </select>
          </label>
        ) : (
          <Slider
            key={control.measure}
            control={control}
            set={(value) => (value === null ? without(control.measure) : set({ [control.measure]: value }))}
          />
        ),
      )}
      {figure.lifters.length + figure.tests.length > 0 && <BesideChoice figure={figure} tried={tried} />}
      <div class="try-actions">
        <button
          type="button"
          class="firm"
          disabled={!any}
          onClick={() => {
            tried.value = {};
          }}
        >
          Reset to this row
        </button>
        <Keep figure={figure} tried={tried.value} keep={keep} />
      </div>
      <p class="soft small">{note(figure)}</p>
    </section>
  );
}

/** A slider with a field for the exact figure; blank where nothing is known. */
function Slider({ control, set }: { control: Slide; set: (value: number | null) => void }) {
  const { label, unit, least, most, step, value, from } = control;
  const digits = step < 1 ? 1 : 0;
  const text = value === null ? '' : String(Number(value.toFixed(digits)));
  const name = `${label}, ${unit === '°' ? 'degrees' : unit}`;
  return (
    <div class={`slider${from === 'changed here' ? ' tried' : ''}`} title={`From: ${from}`}>
      <span>{label}</span>
      <input
        type="range"
        aria-label={name}
        min={least}
        max={most}
        step={step}
        value={value ?? least}
        aria-valuetext={text === '' ? 'not set' : `${text} ${unit}`}
        onInput={(event) => set(Number(event.currentTarget.value))}
      />
      <span class="slider-field">
        <input
          type="number"
          aria-label={name}
          min={least}
          max={most}
          step={step}
          value={text}
          placeholder="–"
          onChange={(event) => {
            const typed = event.currentTarget.value;
            if (typed === '') return set(null);
            set(Math.max(least, Math.min(most, Number(typed))));
          }}
        />
        <span aria-hidden="true">{unit}</span>
      </span>
    </div>
  );
}

function Keep({
  figure,
  tried,
  keep,
}: {
  figure: Figure;
  tried: FigureOptions;
  keep: (text: string) => void;
}) {
  const place = figure.keep;
  if ('sentence' in place || tried.lift === undefined) return null;
  return (
    <button type="button" class="strong" disabled={!place.changes} onClick={() => keep(place.text)}>
      Save this heel lift
    </button>
  );
}

function note({ keep }: Figure): string {
  if ('sentence' in keep) return `Nothing here changes the data. ${keep.sentence}`;
  return keep.overFormula
    ? `Nothing here changes the data until you save the heel lift. A saved value overrides the formula of ${keep.label} in this row.`
    : 'Nothing here changes the data until you save the heel lift.';
}

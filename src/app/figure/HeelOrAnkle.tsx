/** The table that compares heel lifts with more ankle range. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Figure, HeelOrAnkleRow, HeelOrAnkle as Table, Told } from '../../session/api.ts';
import { devicesSheet } from '../../session/devices.ts';
import { run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { gone } from '../state/follow.ts';
import './heel-or-ankle.css';
import { centimetres, degrees, whole } from './figure-words.ts';

interface Props {
  readonly figure: Figure;
  readonly ask: () => Promise<Table | null>;
}

/** A table that is worked out when somebody opens it: what a heel lift or more ankle range would change. */
export function HeelOrAnkle({ figure, ask }: Props) {
  const open = useSignal(false);
  const table = useSignal<Table | null>(null);
  useEffect(() => {
    if (!open.value) return;
    let late = false;
    ask().then((answer) => {
      if (!late) table.value = answer;
    }, gone);
    return () => {
      late = true;
    };
    // Asked again with every new figure: the row, the book or what is tried out has changed.
  }, [figure, open.value]);
  return (
    <details
      class="heel-or-ankle"
      open={open.value}
      onToggle={(event) => {
        open.value = event.currentTarget.open;
      }}
    >
      <summary>Heel lift, or more ankle range?</summary>
      {open.value && table.value && <Answer table={table.value} />}
    </details>
  );
}

function Answer({ table }: { table: Table }) {
  const page = usePage();
  const { rows, target, stretching, detectable, ankle } = table;
  const { mean, low, high, source } = stretching;
  const devices = page.outline.value?.sheets.find(({ name }) => name === 'devices');
  const missing = [...new Set(rows.map(({ share }) => share.sentence).filter(Boolean))];
  return (
    <>
      <div class="scrolled">
        <table class="figure-numbers">
          <caption class="unseen">What more ankle range or a heel lift changes, by the model</caption>
          <thead>
            <tr>
              <th scope="col">Ankle range</th>
              <th scope="col">Minimum lean</th>
              <th scope="col">Heel lift needed</th>
              <th scope="col">Depth</th>
              <th scope="col">Hip share</th>
              <th scope="col" title="Centre of pressure, % of the foot from the heel">
                Centre of pressure
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.gain} ${row.lift}`} class={row.gain === 0 ? 'main-row' : undefined}>
                <th scope="row">{nameOf(row, ankle)}</th>
                <td>{cell(row.lean, degrees)}</td>
                <td>{row.lift > 0 ? <span class="soft">in use</span> : cell(row.needed, needed)}</td>
                <td>{cell(row.depth, depth)}</td>
                <td>{cell(row.share, (value) => `${whole(value * 100)} %`)}</td>
                <td>{cell(row.centre, (value) => `${whole(value)} %`)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <ul class="small">
        {target ? (
          <li>
            Heel lift needed for {target.from === 'target' ? 'the target lean' : 'the observed lean'} of{' '}
            {degrees(target.lean)}.
          </li>
        ) : (
          <li>Heel lift needed: set a target lean, or digitise a squat of this lifter.</li>
        )}
        <li>
          Weeks of static stretching gained {mean.toFixed(1)}° (95 % interval {low.toFixed(1)}–
          {high.toFixed(1)}) in studies of healthy adults. {source.citation}{' '}
          <span class="source-status">{source.status}</span>
        </li>
        {detectable && (
          <li>
            A retest tells a gain from measuring error from {detectable.wall.toFixed(1)} cm knee-to-wall on:{' '}
            {degrees(detectable.ankle)} for this lifter.
          </li>
        )}
        <li>
          Loads are at the minimum lean, where the hips’ share comes out too low. Compare rows, and read loads
          at an observed lean.
        </li>
        {missing.map((sentence) => (
          <li key={sentence}>Hip share and centre of pressure: {sentence}</li>
        ))}
      </ul>
      <p class="caution">
        A heel lift shifts load from the hips and lower back to the knees. Use one that is firm, non-slip and
        supports the whole heel. Change one thing at a time and stop if the knee hurts.
      </p>
      {devices ? (
        <button
          type="button"
          class="firm"
          onClick={() => {
            page.sheetId.value = devices.id;
            page.selection.value = null;
          }}
        >
          Go to {devices.label}
        </button>
      ) : (
        <button
          type="button"
          class="firm"
          onClick={() => {
            const before = new Set(page.outline.value?.sheets.map(({ id }) => id));
            void run(page, devicesSheet(page.outline.value?.sheets ?? [])).then((done) => {
              const made = page.outline.value?.sheets.find(({ id }) => !before.has(id));
              if (done && made) page.sheetId.value = made.id;
            });
          }}
        >
          Add a sheet of heel devices
        </button>
      )}
    </>
  );
}

const nameOf = ({ gain, lift }: HeelOrAnkleRow, ankle: number): string => {
  const now = `${degrees(ankle)} now`;
  if (lift > 0) return `${now}, ${centimetres(lift)} heel lift`;
  return gain === 0 ? now : `+${gain}°`;
};

const needed = (value: number): string => (value < 0.05 ? 'none' : centimetres(value));

const depth = (value: number): string =>
  Math.round(value) === 0 ? 'parallel' : `${whole(Math.abs(value))}° ${value > 0 ? 'above' : 'below'}`;

const cell = ({ value, sentence }: Told, write: (value: number) => string) =>
  typeof value === 'number' ? (
    write(value)
  ) : (
    <span class="soft" title={sentence}>
      –
    </span>
  );

import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Figure } from '../../session/api.ts';
import type { FigureOptions } from '../../session/figure.ts';
import { usePage } from '../shell/context.ts';
import { Drawing } from './Drawing.tsx';
import './figure.css';
import { run } from '../state/actions.ts';
import { Numbers } from './Numbers.tsx';
import { TryOut } from './TryOut.tsx';
import { isPosture } from './words.ts';

/** The selected lifter at depth. Asks the session again whenever the row or the book changes. */
export function FigurePanel() {
  const page = usePage();
  const figure = useSignal<Figure | null>(null);
  const plates = useSignal(false);
  const asked = useRef(0);
  const tried = useSignal<FigureOptions>({});
  const at = useRef('');
  useSignalEffect(() => {
    const { outline, sheet, selection } = page;
    const id = sheet.value?.id;
    const rows = sheet.value?.rows ?? 0;
    const row = Math.min(selection.value?.row ?? 0, rows - 1);
    if (!outline.value || id === undefined || rows === 0) return;
    // Another lifter is looked at as he or she is.
    const place = `${id} ${row}`;
    if (at.current !== place && Object.keys(tried.peek()).length > 0) tried.value = {};
    at.current = place;
    const turn = ++asked.current;
    void page.service.figure(id, row, tried.value).then((answer) => {
      if (turn === asked.current) figure.value = answer;
    });
  });
  const sheet = page.sheet.value;
  const column = sheet?.columns.find(({ name, formula }) => name === 'lift' && formula === undefined);
  const keep =
    sheet && column
      ? (lift: number) =>
          void run(page, {
            do: 'set-cells',
            sheet: sheet.id,
            row: figure.value?.row ?? 0,
            columns: [column.id],
            texts: [[`${lift} cm`]],
          })
      : null;
  useEffect(() => () => void asked.current++, []);
  const now = figure.value;
  if (!now) return <p class="soft panel-note">Drawing…</p>;
  return (
    <div class="figure-panel">
      <h3 class="figure-title">{now.title}</h3>
      <Told figure={now} plates={plates.value} />
      {(isPosture(now.flat) || (now.lifted && isPosture(now.lifted))) && (
        <label class="check">
          <input
            type="checkbox"
            checked={plates.value}
            onChange={(event) => {
              plates.value = event.currentTarget.checked;
            }}
          />
          Draw a full-size plate (45 cm)
        </label>
      )}
      {now.missing.length === 0 && <TryOut figure={now} tried={tried} keep={keep} />}
      <p class="caution">
        A static side view from lengths and ankle range: good for comparing set-ups of one lifter, not for
        diagnosis. ±1 cm and ±2° of measuring error move the lean by 2–3°. Pain, numbness or a recent injury:
        stop, and see a licensed clinician.
      </p>
    </div>
  );
}

function Told({ figure, plates }: { figure: Figure; plates: boolean }) {
  const flat = figure.flat;
  const lifted = figure.lifted;
  const none = !isPosture(flat) && !(lifted && isPosture(lifted));
  if (none && figure.missing.length > 0)
    return (
      <p class="panel-note">
        The figure needs {listed(figure.missing)} of this row. Fill{' '}
        {figure.missing.length > 1 ? 'them' : 'it'} in, or choose a row of a sheet that has femur, tibia,
        trunk and ankle.
      </p>
    );
  return (
    <>
      <figure>
        <Drawing figure={figure} plates={plates} />
      </figure>
      {!isPosture(flat) && <p class="panel-note">On the flat: {flat.sentence}</p>}
      {lifted && !isPosture(lifted) && <p class="panel-note">With the lift: {lifted.sentence}</p>}
      <Numbers figure={figure} />
    </>
  );
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Figure, NoPosture, PostureFigure } from '../../session/api.ts';
import type { FigureOptions } from '../../session/figure/figure.ts';
import { run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { gone } from '../state/follow.ts';
import { say } from '../state/page.ts';
import { Descent } from './Descent.tsx';
import { Drawing } from './Drawing.tsx';
import { savePng, saveSvg } from './export-figure.ts';
import './figure.css';
import { Explained } from './Explained.tsx';
import { centimetres, isPosture, missingInWords } from './figure-words.ts';
import { Headline } from './Headline.tsx';
import { HeelOrAnkle } from './HeelOrAnkle.tsx';
import { Loads } from './Loads.tsx';
import { Numbers } from './Numbers.tsx';
import { Parts } from './Parts.tsx';
import { TryOut } from './TryOut.tsx';

/** The selected lifter at depth. Asks the session again whenever the row or the book changes. */
export function FigurePanel() {
  const page = usePage();
  const figure = useSignal<Figure | null>(null);
  const plates = useSignal(true);
  const tried = useSignal<FigureOptions>({});
  /** The posture of the descent that is on show, and all of them. */
  const moment = useSignal<PostureFigure | null>(null);
  const descent = useSignal<readonly PostureFigure[]>([]);
  const asked = useRef(0);
  const at = useRef('');
  const drawn = useRef<HTMLElement>(null);
  useSignalEffect(() => {
    const { outline, sheet, selection } = page;
    const id = sheet.value?.id;
    const rows = sheet.value?.rows ?? 0;
    const row = Math.min(selection.value?.row ?? 0, rows - 1);
    if (!outline.value || id === undefined || rows === 0) {
      figure.value = null;
      return;
    }
    // Another lifter is looked at as he or she is.
    const place = `${id} ${row}`;
    if (at.current !== place && Object.keys(tried.peek()).length > 0) tried.value = {};
    at.current = place;
    const turn = ++asked.current;
    const wanted = tried.value;
    void page.service.figure(id, row, wanted).then((answer) => {
      if (turn !== asked.current) return;
      figure.value = answer;
      moment.value = null;
      descent.value = [];
    }, gone);
  });
  useEffect(() => () => void asked.current++, []);
  const now = figure.value;
  if (!now) return <p class="soft panel-note">Select a row to see its figure.</p>;
  if (now.missing.length > 0) return <Missing figure={now} />;
  const save = async (how: typeof savePng) => {
    const svg = drawn.current?.querySelector('svg');
    if (!svg) return;
    try {
      await how(svg, now.title);
    } catch (reason) {
      say(page, reason instanceof Error ? reason.message : String(reason), 'wrong');
    }
  };
  const canDraw = [now.flat, now.lifted].some((stand) => stand && (isPosture(stand) || stand.nearest));
  return (
    <div class="figure-panel">
      <Headline figure={now} />
      {canDraw && (
        <figure ref={drawn}>
          <Drawing
            figure={now}
            plates={plates.value}
            {...(moment.value ? { moment: moment.value, descent: descent.value } : {})}
          />
        </figure>
      )}
      {!isPosture(now.flat) && <Failure where="On the flat" why={now.flat} />}
      {now.lifted && !isPosture(now.lifted) && <Failure where="With the heel lift" why={now.lifted} />}
      <Below figure={now} />
      {canDraw && (
        <Descent
          frames={descent}
          moment={moment}
          ask={() => page.service.descent(now.sheet, now.row, tried.value)}
        />
      )}
      <Numbers figure={now} moment={moment.value} />
      <TryOut
        figure={now}
        tried={tried}
        keep={(text) => {
          if ('sentence' in now.keep) return;
          void run(page, {
            do: 'set-cells',
            sheet: now.sheet,
            row: now.row,
            columns: [now.keep.column],
            texts: [[text]],
          }).then((done) => {
            if (!done) return;
            const { lift: _, ...rest } = tried.value;
            tried.value = rest;
          });
        }}
      />
      {now.loads.length > 0 && <Loads figure={now} />}
      {now.explained && (
        <Explained
          explained={now.explained}
          {...(now.explained.sheet === now.sheet
            ? {}
            : {
                from: page.outline.value?.sheets.find(({ id }) => id === now.explained!.sheet)?.label ?? '',
              })}
        />
      )}
      {now.parts && <Parts parts={now.parts} />}
      {now.parts && (
        <HeelOrAnkle
          key={`${now.sheet} ${now.row}`}
          figure={now}
          ask={() => page.service.heelOrAnkle(now.sheet, now.row, tried.value)}
        />
      )}
      {canDraw && (
        <div class="figure-actions">
          <label class="check">
            <input
              type="checkbox"
              checked={plates.value}
              onChange={(event) => {
                plates.value = event.currentTarget.checked;
              }}
            />
            Show a 45 cm plate, to scale
          </label>
          <button type="button" class="firm" onClick={() => void save(saveSvg)}>
            Save SVG
          </button>
          <button type="button" class="firm" onClick={() => void save(savePng)}>
            Save PNG
          </button>
        </div>
      )}
      <p class="caution">
        A static side view from lengths and ankle range, with the whole ankle range used at every depth: good
        for comparing set-ups of one lifter, not for diagnosis. Together, errors of ±1 cm and ±2° shift the
        lean by about 2–4°. The descent moves the shin in step with the thigh and uses the share of the ankle
        range that the book sets (ankle_share), else three quarters: a working assumption. Pain, numbness or a
        recent injury: stop, and see a licensed clinician.
      </p>
    </div>
  );
}

function Missing({ figure }: { figure: Figure }) {
  const label = usePage().outline.value?.sheets.find(({ id }) => id === figure.sheet)?.label ?? 'The sheet';
  return <p class="panel-note">{missingInWords(figure, label)}</p>;
}

/** Why a set-up cannot be held, and by how far. */
function Failure({ where, why }: { where: string; why: NoPosture }) {
  return (
    <p class="panel-note failure">
      <b>{where}: no posture holds.</b> {why.sentence}
      {why.nearest &&
        ` Drawn at the greatest forward lean: the load is still ${centimetres(-why.nearest.offset)} behind mid-foot.`}
    </p>
  );
}

/** A depth below what the lifter reaches is drawn, and said. */
function Below({ figure: { lifted, flat, numbers } }: { figure: Figure }) {
  const stand = lifted ?? flat;
  const { deepest, limiter } = (lifted && numbers.lifted) ?? numbers.flat;
  if (!isPosture(stand) || typeof deepest.value !== 'number' || stand.depth >= deepest.value - 0.05)
    return null;
  return (
    <p class="panel-note failure">
      Below the deepest position within this lifter’s limits
      {typeof limiter.value === 'string' && limiter.value !== 'none' ? `: limited by ${limiter.value}` : ''}.
    </p>
  );
}

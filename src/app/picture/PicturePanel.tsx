import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Figure } from '../../session/api.ts';
import { observedSheet } from '../../session/picture/columns.ts';
import { postureOver } from '../../session/picture/over.ts';
import type { Observation, Spot } from '../../session/picture/points.ts';
import type { StoredPicture } from '../../session/picture/stored.ts';
import { missingColumns } from '../../session/picture/stored-columns.ts';
import { isPosture } from '../figure/figure-words.ts';
import { run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { gone } from '../state/follow.ts';
import { say } from '../state/page.ts';
import { DigitiseAgain } from './DigitiseAgain.tsx';
import { digitising } from './digitising.ts';
import { FilmBar } from './FilmBar.tsx';
import { type Medium, openMedium } from './medium.ts';
import { Nudge } from './Nudge.tsx';
import { PointList } from './PointList.tsx';
import './picture.css';
import { Readings } from './Readings.tsx';
import { Scale } from './Scale.tsx';
import { SmallCopy } from './SmallCopy.tsx';
import { BONES, type Overlay, Stage } from './Stage.tsx';
import { type Mark, savePicture } from './save.ts';
import { showCopy } from './show-copy.ts';

/** What is being digitised outlives the panel: whoever looks something up in another one finds it as it was. */
const at = digitising();

/** The picture on show is the one that a row's points belong to. */
const isOf = ({ hash, frame }: Medium, seen: Observation | null): boolean =>
  seen?.hash === hash && seen.time === (frame ?? null);

/** A side picture or film of the selected row: joints placed on it, what they say, and the model drawn over it. */
export function PicturePanel() {
  const page = usePage();
  const stored = useSignal<StoredPicture | null>(null);
  const opening = useSignal<number | null>(null);
  const posture = useSignal<readonly { id: string; label: string; figure: Figure }[]>([]);
  const shown = useSignal<ReadonlySet<string>>(new Set(['minimum', 'observed']));
  const blur = useSignal<{ on: boolean; box: readonly [Spot, Spot] | null }>({ on: false, box: null });
  const picker = useRef<HTMLInputElement>(null);
  const row = useRef('');
  const turn = useRef(0);
  /** The row whose copy could not be shown: said once. */
  const spoilt = useRef('');

  useSignalEffect(() => {
    const { outline, sheet, selection } = page;
    const rows = sheet.value?.rows ?? 0;
    if (!outline.value || !sheet.value) return;
    const place = [sheet.value.id, Math.min(selection.value?.row ?? 0, Math.max(rows - 1, 0))] as const;
    const open = at.medium.value;
    const hash = open?.hash;
    const mine = ++turn.current;
    void page.service.picture(...place, hash).then((answer) => {
      if (mine !== turn.current) return;
      stored.value = answer;
      const other = row.current !== place.join(' ');
      row.current = place.join(' ');
      // The book's copy stands in for a file that is not open, and goes with its row.
      const another = open?.copy && (!answer.copy || !isOf(open, answer.seen));
      if ((another || !open) && !at.changed.peek()) {
        if (another) at.show(null);
        at.load(answer.seen);
        if (answer.copy)
          void showCopy(at, answer, () => mine === turn.current).catch((reason: unknown) => {
            if (spoilt.current === row.current) return;
            spoilt.current = row.current;
            say(page, reason instanceof Error ? reason.message : String(reason), 'wrong');
          });
        return;
      }
      // Points that were moved and not saved stay on the picture they belong to.
      if (other && !at.changed.peek() && answer.seen?.hash === hash) at.load(answer.seen);
    }, gone);
  });

  useSignalEffect(() => {
    const place = stored.value;
    const { list } = at.readings.value;
    const lean = list.find(({ id }) => id === 'depth')?.value;
    const shin = list.find(({ id }) => id === 'shin')?.value;
    if (!place || lean === null || lean === undefined) {
      if (posture.peek().length > 0) posture.value = [];
      return;
    }
    const depth = Math.min(Math.max(lean, -60), 90);
    const mine = turn.current;
    void (async () => {
      const minimum = await page.service.figure(place.sheet, place.row, { depth });
      const found = [{ id: 'minimum', label: 'Minimum lean (model)', figure: minimum }];
      const stand = minimum.lifted ?? minimum.flat;
      if (shin !== null && shin !== undefined && minimum.missing.length === 0) {
        const ankle = shin - (isPosture(stand) ? stand.pitch : 0);
        if (ankle >= -10 && ankle <= 70)
          found.push({
            id: 'observed',
            label: 'Model at the observed shin angle',
            figure: await page.service.figure(place.sheet, place.row, { depth, ankle }),
          });
      }
      if (mine === turn.current) posture.value = found;
    })().catch(gone);
  });

  const sheet = page.sheet.value;
  const medium = at.medium.value;
  const readings = at.readings.value;
  const open = async (file: File | undefined) => {
    if (!file) return;
    opening.value = 0;
    try {
      const next = await openMedium(file, (share) => {
        opening.value = share;
      });
      at.show(next);
      blur.value = { on: false, box: null };
      const place = stored.value;
      const same = place ? await page.service.picture(place.sheet, place.row, next.hash) : null;
      at.load(same?.seen?.hash === next.hash ? same.seen : null);
      if (next.is === 'film' && same?.seen?.hash === next.hash && same.seen.time !== null)
        (next.element as HTMLVideoElement).currentTime = same.seen.time;
    } catch (reason) {
      say(page, reason instanceof Error ? reason.message : String(reason), 'wrong');
    } finally {
      opening.value = null;
    }
  };
  const chooser = (
    <>
      <input
        ref={picker}
        class="unseen"
        type="file"
        accept="image/jpeg,image/png,image/webp,video/*"
        tabIndex={-1}
        aria-label="Picture or film"
        onChange={(event) => {
          void open(event.currentTarget.files?.[0]);
          event.currentTarget.value = '';
        }}
      />
      <button type="button" class="firm" onClick={() => picker.current!.click()}>
        {medium ? 'Open another…' : 'Open a picture or film…'}
      </button>
    </>
  );

  if (!sheet) return <p class="soft panel-note">Open a book to digitise a squat.</p>;
  if (missingColumns(sheet).length > 0) {
    const ready = page.outline.value?.sheets.find((one) => missingColumns(one).length === 0);
    return (
      <div class="picture-panel">
        <p class="panel-note">
          A side picture or film gives the observed lean, shin angle and depth. {sheet.label} has no columns
          for its points.
        </p>
        {ready ? (
          <button
            type="button"
            class="firm"
            onClick={() => {
              page.sheetId.value = ready.id;
              page.selection.value = null;
            }}
          >
            Go to {ready.label}
          </button>
        ) : (
          <button
            type="button"
            class="firm"
            onClick={() => {
              const before = new Set(page.outline.value?.sheets.map(({ id }) => id));
              void run(page, observedSheet(page.outline.value?.sheets ?? [], page.outline.value?.names)).then(
                (done) => {
                  const made = page.outline.value?.sheets.find(({ id }) => !before.has(id));
                  if (done && made) page.sheetId.value = made.id;
                },
              );
            }}
          >
            Add a sheet for observed squats
          </button>
        )}
        <p class="soft">
          Pictures stay on this device. The book stores the points, and a small copy only if you ask for it.
        </p>
      </div>
    );
  }

  const overlays: readonly Overlay[] = posture.value.flatMap(({ id, label, figure }) => {
    const stand = figure.lifted ?? figure.flat;
    if (!shown.value.has(id) || !isPosture(stand)) return [];
    const { points, facing } = at.seen.value;
    const joints = postureOver(stand, points, readings.scale, readings.level, facing);
    return joints ? [{ id, label, joints }] : [];
  });
  const leanOf = (id: string): number | null => {
    const figure = posture.value.find((one) => one.id === id)?.figure;
    const stand = figure && (figure.lifted ?? figure.flat);
    return stand && isPosture(stand) ? stand.lean : null;
  };
  const save = (asNew: boolean) => {
    const place = stored.value;
    if (!place) return;
    void run(page, {
      do: 'save-points',
      sheet: place.sheet,
      row: place.row,
      ...(asNew ? { like: place.row } : {}),
      seen: at.seen.value,
    }).then((done) => {
      if (!done) return;
      at.changed.value = false;
      say(page, asNew ? 'Points saved in a new row.' : `Points saved in row ${place.row + 1}.`);
    });
  };
  const savePng = async () => {
    if (!medium) return;
    const colours = { minimum: '#ffd166', observed: '#7ec5ff' } as Record<string, string>;
    const points = at.points.value;
    const marks: Mark[] = overlays.flatMap(({ id, joints }) =>
      (
        [
          ['heel', 'toe'],
          ['ankle', 'knee'],
          ['knee', 'hip'],
          ['hip', 'shoulder'],
        ] as const
      ).map(([a, b]) => ({ from: joints[a], to: joints[b], colour: colours[id] ?? '#fff', dashed: true })),
    );
    for (const [a, b, kind] of BONES)
      if (kind === 'bone' && points[a] && points[b])
        marks.push({ from: points[a], to: points[b], colour: '#fff' });
    for (const id of ['toe', 'heel', 'ankle', 'knee', 'hip', 'shoulder', 'bar'] as const)
      if (points[id]) marks.push({ from: points[id], colour: '#fff' });
    try {
      await savePicture(medium, marks, blur.value.box, `${stored.value?.title ?? 'squat'} observed`);
    } catch (reason) {
      say(page, reason instanceof Error ? reason.message : String(reason), 'wrong');
    }
  };

  return (
    <section
      class="picture-panel"
      aria-label="Picture"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        const file = event.dataTransfer?.files[0];
        if (!file || file.name.endsWith('.json') || file.name.endsWith('.csv')) return;
        event.preventDefault();
        event.stopPropagation();
        void open(file);
      }}
    >
      <h3 class="figure-title">{stored.value?.title}</h3>
      {opening.value !== null && <progress value={opening.value} aria-label="Opening" />}
      {!medium && (
        <>
          <p class="panel-note">
            {stored.value?.seen
              ? `Row ${stored.value.row + 1} has points of ${stored.value.seen.file || 'a picture'}. Open it again to see or move them.`
              : 'Open a picture taken square from the side, at hip height, with the whole lifter in it.'}
          </p>
          {chooser}
        </>
      )}
      {medium && (
        <>
          <Stage
            at={at}
            overlays={overlays}
            blur={blur.value}
            onBlur={(box) => {
              blur.value = { on: true, box };
            }}
          />
          {medium.is === 'film' && <FilmBar at={at} />}
          <div class="picture-actions">
            <button type="button" class="firm strong" onClick={() => save(false)}>
              Save to row {(stored.value?.row ?? 0) + 1}
            </button>
            <button type="button" class="firm" onClick={() => save(true)}>
              Save as new row
            </button>
            <button type="button" class="firm" disabled={!at.canUndo.value} onClick={at.undo}>
              Undo point
            </button>
            {chooser}
          </div>
          {stored.value?.seen && stored.value.seen.hash !== medium.hash && (
            <p class="panel-note">
              Row {stored.value.row + 1} has points of another picture
              {stored.value.seen.file && `, ${stored.value.seen.file}`}. Saving here replaces them.
            </p>
          )}
          {stored.value?.same.some((one) => one.row !== stored.value!.row) && (
            <p class="panel-note">
              Also digitised in row {stored.value.same.find((one) => one.row !== stored.value!.row)!.row + 1}.
            </p>
          )}
        </>
      )}
      <DigitiseAgain
        twice={stored.value?.twice ?? null}
        can={medium !== null && stored.value?.seen?.hash === medium.hash}
        again={() => at.load(null)}
      />
      {medium && (
        <>
          <Nudge at={at} />
          <PointList at={at} />
        </>
      )}
      {(medium || stored.value?.seen) && (
        <>
          <Readings at={at} minimum={leanOf('minimum')} atShin={leanOf('observed')} />
          {medium && (
            <fieldset class="overlay-choice">
              <legend>Drawn over the picture</legend>
              {(['minimum', 'observed'] as const).map((id) => (
                <label key={id} class={`check ${id}`}>
                  <input
                    type="checkbox"
                    checked={shown.value.has(id)}
                    onChange={() => {
                      const next = new Set(shown.value);
                      if (!next.delete(id)) next.add(id);
                      shown.value = next;
                    }}
                  />
                  <i aria-hidden="true" />
                  {id === 'minimum' ? 'Minimum lean (model)' : 'Model at the observed shin angle'}
                </label>
              ))}
              <label class="check">
                <input
                  type="checkbox"
                  checked={blur.value.on}
                  onChange={() => {
                    blur.value = blur.value.on ? { on: false, box: null } : { on: true, box: null };
                  }}
                />
                Blur a rectangle: drag it over the face
              </label>
              <button type="button" class="firm" onClick={() => void savePng()}>
                Save PNG
              </button>
            </fieldset>
          )}
          <Scale at={at} />
        </>
      )}
      {stored.value && <SmallCopy at={at} stored={stored.value} blur={blur.value.box} />}
      <p class="caution">
        A camera that is turned or not at hip height changes every angle. Errors shown are from placing each
        joint to ±1 cm (working assumption). For comparing squats of one lifter, not for diagnosis. Pain,
        numbness or a recent injury: stop and see a licensed clinician.
      </p>
    </section>
  );
}

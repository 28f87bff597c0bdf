/** The small copy of a picture in the book: there when the user asks for it, with its size, and a way to remove it. */
import type { Spot } from '../../session/picture/points.ts';
import type { StoredPicture } from '../../session/picture/stored.ts';
import { run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { say } from '../state/page.ts';
import type { Digitising } from './digitising.ts';
import { showCopy } from './show-copy.ts';
import { smallCopy } from './small-copy.ts';

interface Props {
  readonly at: Digitising;
  readonly stored: StoredPicture;
  /** What is made unrecognisable in the copy. */
  readonly blur: readonly [Spot, Spot] | null;
}

const kB = (bytes: number): string => `${Math.max(1, Math.round(bytes / 1000))} kB`;

export function SmallCopy({ at, stored, blur }: Props) {
  const page = usePage();
  const medium = at.medium.value;
  const { copy, copies, seen, sheet, row } = stored;
  if (!medium && copies.count === 0) return null;
  const file = medium && !medium.copy ? medium : null;
  const { time } = at.seen.value;
  // a row has its frame's time to a ten-thousandth of a second
  const ofRow = seen?.hash === medium?.hash && Math.abs((seen?.time ?? 0) - (time ?? 0)) < 1e-4;
  const tell = (reason: unknown) =>
    say(page, reason instanceof Error ? reason.message : String(reason), 'wrong');
  const save = async () => {
    const made = await smallCopy(file!, blur);
    if (await run(page, { do: 'save-copy', sheet, row, copy: made }))
      say(page, `Copy saved in the book: ${kB((made.jpeg.length * 3) / 4)}.`);
  };
  const removed = (done: boolean) => {
    if (done) say(page, 'Removed from the book. Undo and saved versions still have it.');
  };
  return (
    <fieldset class="small-copy">
      <legend>Copy in this book</legend>
      {copy && (
        <p>
          The book has a small copy of this row’s picture: {kB(copy.bytes)}.
          {medium?.copy && ' Open the file itself for finer detail.'}
        </p>
      )}
      {file && (
        <p class="soft">
          {ofRow
            ? `At most 200 kB. Everyone who gets the book can see it${blur ? '' : '; blur the face first'}.`
            : `Save the points to row ${row + 1} first; a copy belongs to a saved row.`}
        </p>
      )}
      <div class="picture-actions">
        {file && (
          <button type="button" class="firm" disabled={!ofRow} onClick={() => void save().catch(tell)}>
            {ofRow && copy ? 'Replace the copy' : 'Save a small copy in this book'}
          </button>
        )}
        {copy && !medium?.copy && (
          <button type="button" class="firm" onClick={() => void showCopy(at, stored).catch(tell)}>
            Show the copy
          </button>
        )}
        {copy && (
          <button
            type="button"
            class="firm"
            onClick={() => void run(page, { do: 'save-copy', sheet, row, copy: null }).then(removed)}
          >
            Remove the copy
          </button>
        )}
        {copies.count > (copy ? 1 : 0) && (
          <button
            type="button"
            class="firm"
            onClick={() => void run(page, { do: 'remove-copies' }).then(removed)}
          >
            Remove every copy ({copies.count}, {kB(copies.bytes)})
          </button>
        )}
      </div>
    </fieldset>
  );
}

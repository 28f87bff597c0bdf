/** Points placed a second time give the error of placing them. */

import type { DigitisedTwice } from '../../session/picture/digitised-twice.ts';

interface Props {
  readonly twice: DigitisedTwice | null;
  /** The picture on show has points in the row, to be placed a second time. */
  readonly can: boolean;
  readonly again: () => void;
}

const words = { observed_lean: 'lean', shin: 'shin angle', depth: 'depth' } as const;

/** What is known of that error, and the way to know it better. */
export function DigitiseAgain({ twice, can, again }: Props) {
  const found = twice
    ? (Object.keys(words) as (keyof typeof words)[]).flatMap((id) => {
        const sem = twice.sem[id];
        return sem === null ? [] : [`${words[id]} ${sem.toFixed(1)}°`];
      })
    : [];
  if (!can && found.length === 0) return null;
  return (
    <div class="panel-note">
      {found.length > 0 && (
        <p>
          SEM from {twice!.frames} {twice!.frames === 1 ? 'frame' : 'frames'} digitised again:{' '}
          {found.join(', ')}.{twice!.frames < 10 ? ' Few frames give a rough figure.' : ''}
        </p>
      )}
      {can && (
        <p>
          <button type="button" class="firm" onClick={again}>
            Digitise again
          </button>{' '}
          Clears the points to place them a second time. Save them as a new row: the pair gives your SEM.
        </p>
      )}
    </div>
  );
}

/** Unreadable cells of the file by text and reason, with one action for all of a group: leave, clear, read as another. */
import type { FileReading } from '../../session/imports/file-reading.ts';
import type { FileImport } from './file-import.ts';
import { cellsInWords } from './import-words.ts';
import { ReadAs } from './ReadAs.tsx';

interface Props {
  readonly state: FileImport;
  readonly reading: FileReading;
}

const MOST = 50;

export function UnreadableCells({ state, reading }: Props) {
  const { unreadable, columns, cells } = reading;
  const chosen = Object.entries(state.decisions.value.choices?.columns ?? {}).flatMap(([index, { readAs }]) =>
    Object.entries(readAs ?? {}).map(([text, as]) => ({ index: Number(index), text, as })),
  );
  if (unreadable.length === 0 && chosen.length === 0) return null;
  const heading = (at: number) => columns.find(({ index }) => index === at)?.heading ?? '';
  /** What a text of a column is read as; undefined leaves it. */
  const decide = (index: number, text: string, as: string | undefined) => {
    const { [text]: _, ...rest } = state.decisions.value.choices?.columns?.[index]?.readAs ?? {};
    state.decideColumn(index, { readAs: as === undefined ? rest : { ...rest, [text]: as } });
  };
  return (
    <details class="intake-part">
      <summary>Unreadable cells: {cells.held.toLocaleString('en')}</summary>
      <p class="soft">They are imported as they came unless you decide otherwise.</p>
      <ul class="intake-who">
        {unreadable.slice(0, MOST).map(({ index, text, reason, count, line }) => (
          <li key={`${index} ${text} ${reason}`}>
            <p>
              <strong>{heading(index)}</strong>: “{text}” in {cellsInWords(count)},{' '}
              {count === 1 ? `line ${line}` : `first on line ${line}`}. <span class="soft">{reason}</span>
            </p>
            <ReadAs
              label={`${heading(index)}, ${text}`}
              count={count}
              readAs={(as) => decide(index, text, as)}
            />
          </li>
        ))}
        {unreadable.length > MOST && <li>and {unreadable.length - MOST} more</li>}
        {chosen.map(({ index, text, as }) => (
          <li key={`${index} ${text}`}>
            <p>
              <strong>{heading(index)}</strong>: “{text}” is {as === '' ? 'cleared' : `read as ${as}`}.{' '}
              <button type="button" class="firm" onClick={() => decide(index, text, undefined)}>
                Leave as it came
              </button>
            </p>
          </li>
        ))}
      </ul>
    </details>
  );
}

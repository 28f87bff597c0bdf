/** What can be done with all unreadable cells of one text: clear them, read them as another text, leave them. */
import { useSignal } from '@preact/signals';

interface Props {
  /** Column and text, for the field. */
  readonly label: string;
  readonly count: number;
  /** '' clears. */
  readonly readAs: (text: string) => void;
  /** Offered where leaving is an action of its own. */
  readonly leave?: () => void;
}

export function ReadAs({ label, count, readAs, leave }: Props) {
  const text = useSignal('');
  const typed = text.value.trim();
  return (
    <div class="intake-choices intake-read-as">
      {leave && (
        <button type="button" class="firm" onClick={leave}>
          Leave
        </button>
      )}
      <button type="button" class="firm" onClick={() => readAs('')}>
        Clear {count === 1 ? 'the cell' : `all ${count.toLocaleString('en')}`}
      </button>
      <span class="intake-read-text">
        <label>
          Read as{' '}
          <input
            type="text"
            aria-label={`Read as, for ${label}`}
            value={text.value}
            onInput={(event) => {
              text.value = event.currentTarget.value;
            }}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return;
              event.preventDefault();
              if (typed !== '') readAs(typed);
            }}
          />
        </label>
        <button type="button" class="firm" disabled={typed === ''} onClick={() => readAs(typed)}>
          Apply
        </button>
      </span>
    </div>
  );
}

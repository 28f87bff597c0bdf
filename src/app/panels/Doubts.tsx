import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Doubt, Outline } from '../../session/api.ts';
import { underHeadings } from '../../session/checks/kind-words.ts';
import { goTo, run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import type { Page } from '../state/page.ts';
import './doubts.css';

/** A kind shows so many at first. */
const SHOWN = 30;

/** Everything that the book doubts, by kind: what is wrong, what to do, a jump, and a reason to be content with it. */
export function Doubts() {
  const page = usePage();
  const list = useSignal<readonly Doubt[] | null>(null);
  const asked = useRef(0);
  useSignalEffect(() => {
    if (!page.outline.value) return;
    const turn = ++asked.current;
    void page.service.doubts().then((found) => {
      if (turn === asked.current) list.value = found;
    });
  });
  const outline = page.outline.value;
  if (!outline || !list.value) return null;
  const waiting = list.value.filter(({ accepted }) => !accepted);
  const accepted = list.value.filter((doubt) => doubt.accepted);
  const groups = underHeadings(waiting);
  return (
    <div class="doubts">
      {groups.length === 0 && (
        <p class="panel-note">
          Nothing to check: every value fits its column, every formula has a result, and units and dimensions
          agree.
        </p>
      )}
      {groups.map(({ about, heading, items }) => (
        <Group
          key={about}
          title={heading}
          items={items}
          outline={outline}
          page={page}
          quiet={about === 'pending'}
        />
      ))}
      {accepted.length > 0 && (
        <details>
          <summary>Accepted ({accepted.length})</summary>
          <ul>
            {accepted.map((doubt) => (
              <One key={idOf(doubt)} doubt={doubt} outline={outline} page={page} />
            ))}
          </ul>
        </details>
      )}
      <OldTests page={page} />
    </div>
  );
}

const idOf = ({ place, key }: Doubt): string => JSON.stringify([place, key]);

interface GroupProps {
  readonly title: string;
  readonly items: readonly Doubt[];
  readonly outline: Outline;
  readonly page: Page;
  /** Nothing is wrong, only missing. */
  readonly quiet: boolean;
}

function Group({ title, items, outline, page, quiet }: GroupProps) {
  const all = useSignal(false);
  const remedies = new Set(items.map(({ remedy }) => remedy));
  return (
    <section class={quiet ? 'quiet' : undefined}>
      <h3>
        {title} <span class={quiet ? 'count quiet' : 'count'}>{items.length}</span>
      </h3>
      {remedies.size === 1 && <p class="doubt-remedy">{items[0]!.remedy}</p>}
      <ul>
        {items.slice(0, all.value ? undefined : SHOWN).map((doubt) => (
          <One key={idOf(doubt)} doubt={doubt} outline={outline} page={page} remedy={remedies.size > 1} />
        ))}
      </ul>
      {items.length > SHOWN && !all.value && (
        <button
          type="button"
          class="firm"
          onClick={() => {
            all.value = true;
          }}
        >
          Show all {items.length}
        </button>
      )}
    </section>
  );
}

interface OneProps {
  readonly doubt: Doubt;
  readonly outline: Outline;
  readonly page: Page;
  readonly remedy?: boolean;
}

function One({ doubt, outline, page, remedy = false }: OneProps) {
  const reason = useSignal<string | null>(null);
  const where = placeInWords(outline, doubt);
  const accept = async () => {
    const text = reason.value ?? '';
    const on = new Date().toISOString().slice(0, 10);
    if (await run(page, { do: 'accept-doubt', key: doubt.key, reason: text, on })) reason.value = null;
  };
  return (
    <li>
      <button type="button" class="doubt-jump" onClick={() => goTo(page, doubt.place)}>
        {where}
      </button>
      <p class="doubt-sentence">
        {doubt.sentence}
        {doubt.about === 'error' && doubt.results && (
          <span class="soft"> {doubt.results.toLocaleString('en')} results have this cause.</span>
        )}
      </p>
      {remedy && <p class="doubt-remedy">{doubt.remedy}</p>}
      {doubt.accepted ? (
        <p class="doubt-accepted">
          <span>
            Accepted{doubt.accepted.on ? ` on ${doubt.accepted.on}` : ''}: {doubt.accepted.reason}
          </span>
          <button
            type="button"
            class="link"
            aria-label={`Reopen: ${where}`}
            onClick={() => void run(page, { do: 'accept-doubt', key: doubt.key, reason: null })}
          >
            Reopen
          </button>
        </p>
      ) : reason.value === null ? (
        <button
          type="button"
          class="link"
          aria-label={`Accept: ${where}`}
          onClick={() => {
            reason.value = '';
          }}
        >
          Accept…
        </button>
      ) : (
        <form
          class="doubt-form"
          onSubmit={(event) => {
            event.preventDefault();
            void accept();
          }}
        >
          <label>
            Reason
            <input
              type="text"
              maxLength={500}
              value={reason.value}
              ref={(field) => field?.focus()}
              onInput={(event) => {
                reason.value = event.currentTarget.value;
              }}
            />
          </label>
          <button type="submit" class="strong" disabled={reason.value.trim() === ''}>
            Accept
          </button>
          <button
            type="button"
            class="firm"
            onClick={() => {
              reason.value = null;
            }}
          >
            Cancel
          </button>
        </form>
      )}
    </li>
  );
}

const times = [
  [0, 'off'],
  [90, '3 months'],
  [180, '6 months'],
  [365, 'a year'],
  [730, '2 years'],
] as const;

/** From what age on a test is doubted: chosen for the book, and kept in it. */
function OldTests({ page }: { page: Page }) {
  const days = page.outline.value?.testsOlderThan ?? 0;
  const known = times.some(([time]) => time === days);
  return (
    <label class="doubt-old">
      <span>Flag tests older than</span>
      <select
        value={days}
        onChange={(event) => {
          const chosen = Number(event.currentTarget.value);
          void run(page, {
            do: 'set-part',
            part: 'settings',
            key: 'doubts',
            value: chosen === 0 ? null : { testsOlderThan: chosen },
            words: 'Change the age of old tests',
          });
        }}
      >
        {!known && <option value={days}>{days} days</option>}
        {times.map(([time, words]) => (
          <option key={time} value={time}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

function placeInWords(outline: Outline, { place }: Doubt): string {
  const sheet = outline.sheets.find(({ id }) => id === place.sheet);
  const column = sheet?.columns.find(({ id }) => id === place.column);
  const where = `${sheet?.label ?? ''}, ${column?.label ?? ''}`;
  return place.row === undefined ? `${where}, whole column` : `${where}, row ${place.row + 1}`;
}

import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { writeMoment } from '../../units/date.ts';
import type { Comparison, NamedVersion } from '../../worker/protocol.ts';
import { guarded } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { say, settle } from '../state/page.ts';
import { Dialogue, Field } from './Dialogue.tsx';

/** Named versions of the book: keep one, see what is different, go back (undo takes that back too). */
export function VersionsForm({ close }: { close: () => void }) {
  const page = usePage();
  const name = useSignal('');
  const list = useSignal<readonly NamedVersion[]>([]);
  const compared = useSignal<{ readonly number: number; readonly comparison: Comparison } | null>(null);
  const leaving = useSignal<number | null>(null);
  const read = async () => {
    list.value = await page.service.versions();
  };
  useEffect(() => void read(), []);
  const keep = async () => {
    const kept = await page.service.keepVersion(name.value.trim());
    if (!kept.ok) return say(page, kept.sentence, 'wrong');
    name.value = '';
    await read();
  };
  const compare = async (number: number) => {
    const answer = await page.service.compareVersion(number);
    if (answer.ok) compared.value = { number, comparison: answer.comparison };
    else say(page, answer.sentence, 'wrong');
  };
  const remove = (number: number) =>
    guarded(page, async () => {
      await page.service.dropVersion(number);
      leaving.value = null;
      await read();
      return true;
    });
  return (
    <Dialogue title="Versions of this book" close={close}>
      <form
        class="form"
        onSubmit={(event) => {
          event.preventDefault();
          void keep();
        }}
      >
        <Field label="Name this version">
          <span class="with-button">
            <input
              value={name.value}
              placeholder="before the spring test"
              onInput={(event) => {
                name.value = event.currentTarget.value;
              }}
            />
            <button type="submit" class="strong" disabled={!name.value.trim()}>
              Save
            </button>
          </span>
        </Field>
      </form>
      {list.value.length === 0 && <p class="soft version-none">No version is saved yet.</p>}
      <ul class="versions">
        {list.value.map((version) => (
          <li key={version.number}>
            <p>
              <strong>{version.name}</strong>{' '}
              <span class="soft">{writeMoment(new Date(version.time), { time: true })}</span>
            </p>
            {leaving.value === version.number ? (
              <Leaving
                name={version.name}
                stay={() => {
                  leaving.value = null;
                }}
                remove={() => void remove(version.number)}
              />
            ) : (
              <span class="version-actions">
                <button type="button" class="firm" onClick={() => void compare(version.number)}>
                  Show changes
                </button>
                <button
                  type="button"
                  class="firm"
                  onClick={() =>
                    void guarded(page, async () => settle(page, await page.service.goBack(version.number)))
                  }
                >
                  Restore
                </button>
                <button
                  type="button"
                  class="firm"
                  onClick={() => {
                    leaving.value = version.number;
                  }}
                >
                  Remove
                </button>
              </span>
            )}
            {compared.value?.number === version.number && <Differences of={compared.value.comparison} />}
          </li>
        ))}
      </ul>
    </Dialogue>
  );
}

/** Asks before a version goes: this cannot be undone. What is safe comes first, and has the focus. */
function Leaving({ name, stay, remove }: { name: string; stay: () => void; remove: () => void }) {
  const safe = useRef<HTMLButtonElement>(null);
  useEffect(() => safe.current?.focus(), []);
  return (
    <fieldset class="version-leaving">
      <legend>Remove “{name}”? This cannot be undone. The book itself does not change.</legend>
      <span class="version-actions">
        <button ref={safe} type="button" class="firm" onClick={stay}>
          Cancel
        </button>
        <button type="button" class="firm" onClick={remove}>
          Remove permanently
        </button>
      </span>
    </fieldset>
  );
}

function Differences({ of: { differences, cells } }: { of: Comparison }) {
  if (differences.length === 0) return <p class="soft">Nothing has changed since this version.</p>;
  const counts = new Map<string, number>();
  for (const { what } of differences) counts.set(what, (counts.get(what) ?? 0) + 1);
  if (cells > 0) counts.set('cell', cells);
  return (
    <ul class="differences">
      {[...counts].map(([what, count]) => (
        <li key={what}>
          {count} × {what}
        </li>
      ))}
    </ul>
  );
}

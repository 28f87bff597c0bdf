import { useSignal } from '@preact/signals';
import type { Found } from '../../session/sheet/find.ts';
import { goTo, guarded, run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { Dialogue, Field } from './Dialogue.tsx';

/** Finds cells by what they show, and replaces in what was typed. */
export function FindForm({ close }: { close: () => void }) {
  const page = usePage();
  const text = useSignal('');
  const put = useSignal('');
  const everywhere = useSignal(false);
  const matchCase = useSignal(false);
  const whole = useSignal(false);
  const found = useSignal<Found | null>(null);
  const at = useSignal(-1);
  const said = useSignal<string | null>(null);
  const options = () => ({
    ...(matchCase.value ? { matchCase: true } : {}),
    ...(whole.value ? { whole: true } : {}),
  });
  const find = async (step: number) => {
    const sheet = page.sheet.value;
    if (!sheet || !text.value) return;
    await guarded(page, async () => {
      if (found.value === null)
        found.value = await page.service.find({
          text: text.value,
          ...(everywhere.value ? {} : { sheet: sheet.id }),
          ...options(),
        });
      const { places } = found.value;
      if (places.length === 0) return false;
      at.value = (at.value + step + places.length) % places.length;
      goTo(page, places[at.value]!);
      return true;
    });
  };
  const anew = () => {
    found.value = null;
    at.value = -1;
    said.value = null;
  };
  const replace = async () => {
    const sheet = page.sheet.value;
    if (!sheet || !text.value) return;
    const { rows } = sheet.view ?? {};
    // Rows that a filter leaves out are not on show: nobody would see what became of them.
    const filtered = rows?.where?.length ? await page.service.rowsInView(sheet.id, rows) : undefined;
    const done = await run(page, {
      do: 'replace-text',
      sheet: sheet.id,
      find: text.value,
      put: put.value,
      ...options(),
      ...(filtered ? { rows: [...filtered] } : {}),
    });
    anew();
    said.value = done ? (page.notice.peek()?.text ?? null) : null;
  };
  const result = found.value;
  return (
    <Dialogue title="Find and replace" close={close}>
      <form
        class="form"
        onSubmit={(event) => {
          event.preventDefault();
          void find(1);
        }}
      >
        <Field label="Find">
          <input
            value={text.value}
            onInput={(event) => {
              text.value = event.currentTarget.value;
              anew();
            }}
          />
        </Field>
        <Field label="Replace with" hint="Only entered and imported text is replaced; results stay.">
          <input
            value={put.value}
            onInput={(event) => {
              put.value = event.currentTarget.value;
            }}
          />
        </Field>
        <div class="checks">
          {(
            [
              [matchCase, 'Match case'],
              [whole, 'Whole cells only'],
              [everywhere, 'Search all sheets'],
            ] as const
          ).map(([option, label]) => (
            <label key={label} class="check">
              <input
                type="checkbox"
                checked={option.value}
                onChange={(event) => {
                  option.value = event.currentTarget.checked;
                  anew();
                }}
              />
              {label}
            </label>
          ))}
        </div>
        <p role="status" class="soft">
          {said.value}
          {result &&
            (result.places.length === 0
              ? 'Not found.'
              : `${at.value + 1} of ${result.places.length}${result.more ? ' or more' : ''}`)}
        </p>
        <footer class="decide">
          <button type="button" class="firm" onClick={() => void replace()} disabled={!text.value}>
            {page.sheet.value?.view?.rows?.where?.length
              ? 'Replace all in rows shown'
              : 'Replace all in this sheet'}
          </button>
          <button type="button" class="firm" onClick={() => void find(-1)} disabled={!text.value}>
            Previous
          </button>
          <button type="submit" class="strong" disabled={!text.value}>
            Next
          </button>
        </footer>
      </form>
    </Dialogue>
  );
}

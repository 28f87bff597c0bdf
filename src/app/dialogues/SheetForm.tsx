/** The dialogue of a sheet: name, label and purpose. */
import { useSignal } from '@preact/signals';
import type { Purpose } from '../../book/model.ts';
import { properName } from '../../book/names.ts';
import type { SheetOutline } from '../../session/api.ts';
import { run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { Decide, Dialogue, Field } from './Dialogue.tsx';

const purposes: readonly { readonly purpose: Purpose; readonly label: string }[] = [
  { purpose: 'gathered', label: 'Data: measurements and logs as entered' },
  { purpose: 'worked', label: 'Results: tables computed from the data' },
  { purpose: 'notes', label: 'Notes' },
];

/** Name, label, purpose and note of a sheet; a new one begins with a text column and some blank rows. */
export function SheetForm({ sheet, close }: { sheet: SheetOutline | null; close: () => void }) {
  const page = usePage();
  const label = useSignal(sheet?.label ?? '');
  const name = useSignal<string | null>(sheet?.name ?? null);
  const purpose = useSignal<Purpose>(sheet?.purpose ?? 'gathered');
  const note = useSignal(sheet?.note ?? '');
  const proposed = properName(label.value || 'sheet', (taken) =>
    (page.outline.value?.sheets ?? []).some(
      (one) => one.id !== sheet?.id && one.name.toLowerCase() === taken.toLowerCase(),
    ),
  );
  const submit = async (event: Event) => {
    event.preventDefault();
    const parts = {
      name: (name.value ?? proposed).trim(),
      label: label.value.trim() || (name.value ?? proposed),
      purpose: purpose.value,
    };
    const before = new Set(page.outline.value?.sheets.map(({ id }) => id));
    const done = await run(
      page,
      sheet
        ? { do: 'change-sheet', sheet: sheet.id, change: { ...parts, note: note.value.trim() || null } }
        : {
            do: 'add-sheet',
            ...parts,
            ...(note.value.trim() ? { note: note.value.trim() } : {}),
            rows: 0,
            columns: [{ label: purpose.value === 'notes' ? 'Note' : 'Athlete', kind: 'text' as const }],
          },
    );
    if (!done) return;
    if (!sheet) {
      const made = page.outline.value?.sheets.find(({ id }) => !before.has(id));
      if (made) page.sheetId.value = made.id;
    }
    close();
  };
  return (
    <Dialogue title={sheet ? `Sheet ${sheet.label}` : 'New sheet'} close={close}>
      <form class="form" onSubmit={(event) => void submit(event)}>
        <Field label="Label">
          <input
            value={label.value}
            onInput={(event) => {
              label.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label="Name" hint="Used in formulas, as in roster.femur.">
          <input
            class="formula"
            spellcheck={false}
            value={name.value ?? proposed}
            onInput={(event) => {
              name.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label="Purpose">
          <select
            value={purpose.value}
            onChange={(event) => {
              purpose.value = event.currentTarget.value as Purpose;
            }}
          >
            {purposes.map((one) => (
              <option key={one.purpose} value={one.purpose}>
                {one.label}
              </option>
            ))}
          </select>
        </Field>
        <Field label="Note">
          <textarea
            rows={2}
            value={note.value}
            onInput={(event) => {
              note.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Decide label={sheet ? 'Save changes' : 'Add sheet'} close={close} />
      </form>
    </Dialogue>
  );
}

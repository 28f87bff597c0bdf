/** The dialogue of a column: name, label, kind, unit, formula and role. */
import { useSignal } from '@preact/signals';
import type { ColumnKind } from '../../book/model.ts';
import { properName } from '../../book/names.ts';
import type { ColumnOutline, SheetOutline } from '../../session/api.ts';
import { type Dimension, dimensions, type Per, spans } from '../../units/dimension.ts';
import { unitsOf } from '../../units/unit.ts';
import { run, showNewColumn } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { functionHelp } from '../state/functions.ts';
import { Decide, Dialogue, Field } from './Dialogue.tsx';
import { RoleField } from './RoleField.tsx';

const kinds: readonly { readonly kind: ColumnKind; readonly label: string }[] = [
  { kind: 'number', label: 'Number' },
  { kind: 'text', label: 'Text' },
  { kind: 'date', label: 'Date' },
  { kind: 'yes-no', label: 'Yes or no' },
  { kind: 'choice', label: 'List of choices' },
];

interface Props {
  readonly sheet: SheetOutline;
  /** The column to change; null adds one. */
  readonly column: ColumnOutline | null;
  /** Where a new one goes. */
  readonly index: number;
  readonly close: () => void;
}

/** Everything about a column in one place. A new name goes into every formula; the session says into how many. */
export function ColumnForm({ sheet, column, index, close }: Props) {
  const page = usePage();
  const label = useSignal(column?.label ?? '');
  const name = useSignal<string | null>(column?.name ?? null);
  const kind = useSignal<ColumnKind>(column?.kind ?? 'number');
  const dimension = useSignal<Dimension | ''>(column?.dimension ?? '');
  const unit = useSignal(column?.unit ?? '');
  const per = useSignal<Per | ''>(column?.per ?? '');
  const digits = useSignal(column?.format?.digits?.toString() ?? '');
  const percent = useSignal(column?.format?.percent ?? false);
  const choices = useSignal(column?.choices?.join('\n') ?? '');
  const formula = useSignal(column?.formula ?? '');
  const note = useSignal(column?.note ?? '');
  const role = useSignal(column?.role ?? '');
  const proposed = properName(label.value || 'column', (taken) => {
    const same = (name: string) => name.toLowerCase() === taken.toLowerCase();
    return (
      sheet.columns.some((one) => one.id !== column?.id && same(one.name)) ||
      functionHelp.value.some((one) => same(one.name))
    );
  });
  const submit = async (event: Event) => {
    event.preventDefault();
    const parts = {
      label: label.value.trim() || (name.value ?? proposed),
      // A name that nobody chose is the book's to find: it knows every name that is taken.
      ...(name.value === null ? {} : { name: name.value.trim() }),
      kind: kind.value,
      dimension: kind.value === 'number' && dimension.value ? dimension.value : null,
      unit: kind.value === 'number' && dimension.value && unit.value ? unit.value : null,
      per: kind.value === 'number' && per.value ? per.value : null,
      format: formatOf(kind.value, digits.value, percent.value),
      choices: kind.value === 'choice' ? linesOf(choices.value) : null,
      formula: formula.value.trim() || null,
      note: note.value.trim() || null,
      // Said only where it was changed: a column that is renamed here stays what it is.
      ...(role.value === (column?.role ?? '') ? {} : { role: role.value || null }),
    };
    const before = new Set(sheet.columns.map(({ id }) => id));
    const done = await run(
      page,
      column
        ? { do: 'change-column', sheet: sheet.id, column: column.id, change: parts }
        : { do: 'add-column', sheet: sheet.id, index, column: parts },
    );
    if (!done) return;
    if (!column) showNewColumn(page, sheet.id, before);
    close();
  };
  return (
    <Dialogue title={column ? `Column ${column.label}` : 'New column'} close={close}>
      <form class="form" onSubmit={(event) => void submit(event)}>
        <Field label="Label" hint="Shown in the heading.">
          <input
            value={label.value}
            onInput={(event) => {
              label.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label="Name" hint="Used in formulas.">
          <input
            class="formula"
            value={name.value ?? proposed}
            spellcheck={false}
            onInput={(event) => {
              name.value = event.currentTarget.value;
            }}
          />
        </Field>
        <Field label="Kind">
          <select
            value={kind.value}
            onChange={(event) => {
              kind.value = event.currentTarget.value as ColumnKind;
            }}
          >
            {kinds.map((one) => (
              <option key={one.kind} value={one.kind}>
                {one.label}
              </option>
            ))}
          </select>
        </Field>
        {kind.value === 'number' && (
          <>
            <Field label="Measures">
              <select
                value={dimension.value}
                onChange={(event) => {
                  dimension.value = event.currentTarget.value as Dimension | '';
                  unit.value = dimension.value ? dimensions[dimension.value] : '';
                }}
              >
                <option value="">a plain number</option>
                {Object.keys(dimensions).map((one) => (
                  <option key={one} value={one}>
                    {one}
                  </option>
                ))}
              </select>
            </Field>
            {dimension.value && (
              <Field label="Shown and typed in" hint="Saved values do not change.">
                <select
                  value={unit.value}
                  onChange={(event) => {
                    unit.value = event.currentTarget.value;
                  }}
                >
                  {unitsOf(dimension.value).map((one) => (
                    <option key={one.unit} value={one.unit}>
                      {one.unit} ({one.name})
                    </option>
                  ))}
                </select>
              </Field>
            )}
            <Field label="Per" hint="For rates, such as kg per week.">
              <select
                value={per.value}
                onChange={(event) => {
                  per.value = event.currentTarget.value as Per | '';
                }}
              >
                <option value="">no rate</option>
                {spans.map((one) => (
                  <option key={one} value={one}>
                    per {one}
                  </option>
                ))}
              </select>
            </Field>
            <Field label="Decimal places" hint="Empty: all of them.">
              <input
                type="number"
                min="0"
                max="10"
                value={digits.value}
                onInput={(event) => {
                  digits.value = event.currentTarget.value;
                }}
              />
            </Field>
            <label class="check">
              <input
                type="checkbox"
                checked={percent.value}
                onChange={(event) => {
                  percent.value = event.currentTarget.checked;
                }}
              />
              Per cent
            </label>
          </>
        )}
        <RoleField
          sheet={sheet}
          column={{
            id: column?.id,
            name: column?.name ?? name.value ?? proposed,
            label: column?.label ?? label.value,
            kind: kind.value,
            ...(kind.value === 'number' && dimension.value ? { dimension: dimension.value } : {}),
          }}
          role={role}
        />
        {kind.value === 'choice' && (
          <Field label="Choices" hint="One per line.">
            <textarea
              rows={4}
              value={choices.value}
              onInput={(event) => {
                choices.value = event.currentTarget.value;
              }}
            />
          </Field>
        )}
        <Field label="Column formula" hint="Empty: values are entered or imported.">
          <textarea
            class="formula"
            rows={2}
            spellcheck={false}
            value={formula.value}
            onInput={(event) => {
              formula.value = event.currentTarget.value;
            }}
          />
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
        <Decide label={column ? 'Save changes' : 'Add column'} close={close} />
      </form>
    </Dialogue>
  );
}

const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean);

function formatOf(kind: ColumnKind, digits: string, percent: boolean) {
  if (kind !== 'number') return null;
  const wanted = digits.trim() === '' ? undefined : Number(digits);
  if (wanted === undefined && !percent) return null;
  return { ...(wanted === undefined ? {} : { digits: wanted }), ...(percent ? { percent } : {}) };
}

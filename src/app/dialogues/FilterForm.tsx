/** The dialogue for which rows of a sheet are shown. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { ColumnOutline, SheetOutline } from '../../session/api.ts';
import type { Condition } from '../../session/sheet/row-view.ts';
import { changeRows } from '../state/change-view.ts';
import { usePage } from '../state/context.ts';
import { gone } from '../state/follow.ts';
import { Decide, Dialogue, Field } from './Dialogue.tsx';

const ways: readonly { readonly is: Condition['is']; readonly label: string }[] = [
  { is: 'one of', label: 'is one of these values' },
  { is: 'containing', label: 'contains this text' },
  { is: 'from to', label: 'is from … to …' },
  { is: 'filled', label: 'is filled in' },
  { is: 'blank', label: 'is blank' },
  { is: 'held', label: 'is unreadable' },
  { is: 'error', label: 'is an error' },
  { is: 'own value', label: 'is an override of the column formula' },
  { is: 'marked', label: 'is marked by a rule' },
];

/** Values that are listed at most; beyond it, typing part of one finds it. */
const most = 200;

interface Props {
  readonly sheet: SheetOutline;
  readonly column: ColumnOutline;
  readonly close: () => void;
}

/** Which rows to show by one column. */
export function FilterForm({ sheet, column, close }: Props) {
  const page = usePage();
  const present = sheet.view?.rows?.where?.find((one) => one.column === column.id);
  const is = useSignal<Condition['is']>(
    present?.is ?? (column.kind === 'number' || column.kind === 'date' ? 'from to' : 'one of'),
  );
  const text = useSignal(present?.is === 'containing' ? present.text : '');
  const from = useSignal(present?.is === 'from to' ? (present.from ?? '') : '');
  const to = useSignal(present?.is === 'from to' ? (present.to ?? '') : '');
  const chosen = useSignal<ReadonlySet<string>>(new Set(present?.is === 'one of' ? present.texts : []));
  const sought = useSignal('');
  const values = useSignal<readonly (readonly [string, number])[] | null>(null);
  useEffect(() => {
    const index = sheet.columns.findIndex(({ id }) => id === column.id);
    void page.service.tile(sheet.id, 0, Math.min(sheet.rows, 200_000), index, 1).then(({ texts }) => {
      const counts = new Map<string, number>();
      for (const one of texts) counts.set(one, (counts.get(one) ?? 0) + 1);
      values.value = [...counts].sort(([a], [b]) => a.localeCompare(b, undefined, { numeric: true }));
    }, gone);
  }, []);
  const part = sought.value.trim().toLowerCase();
  const listed = values.value?.filter(([value]) => (value || 'blank').toLowerCase().includes(part)) ?? [];
  /** All values that the search leaves, or none of them. */
  const choose = (all: boolean) => {
    const next = new Set(chosen.value);
    for (const [value] of listed) all ? next.add(value) : next.delete(value);
    chosen.value = next;
  };
  const condition = (): Condition | null => {
    switch (is.value) {
      case 'containing':
        return text.value ? { column: column.id, is: 'containing', text: text.value } : null;
      case 'one of':
        return chosen.value.size ? { column: column.id, is: 'one of', texts: [...chosen.value] } : null;
      case 'from to':
        return from.value || to.value
          ? {
              column: column.id,
              is: 'from to',
              ...(from.value ? { from: from.value } : {}),
              ...(to.value ? { to: to.value } : {}),
            }
          : null;
      default:
        return { column: column.id, is: is.value };
    }
  };
  const submit = async (event: Event) => {
    event.preventDefault();
    const one = condition();
    const done = await changeRows(page, `Filter by ${column.label}`, (rows) => ({
      ...rows,
      where: [...(rows.where ?? []).filter((other) => other.column !== column.id), ...(one ? [one] : [])],
    }));
    if (done) close();
  };
  return (
    <Dialogue title={`Filter by ${column.label}`} close={close}>
      <form class="form" onSubmit={(event) => void submit(event)}>
        <Field label={`Rows where ${column.label}`}>
          <select
            value={is.value}
            onChange={(event) => {
              is.value = event.currentTarget.value as Condition['is'];
            }}
          >
            {ways.map((way) => (
              <option key={way.is} value={way.is}>
                {way.label}
              </option>
            ))}
          </select>
        </Field>
        {is.value === 'containing' && (
          <Field label="Text">
            <input
              value={text.value}
              onInput={(event) => {
                text.value = event.currentTarget.value;
              }}
            />
          </Field>
        )}
        {is.value === 'from to' && (
          <>
            <Field label="From">
              <input
                value={from.value}
                onInput={(event) => {
                  from.value = event.currentTarget.value;
                }}
              />
            </Field>
            <Field label="To">
              <input
                value={to.value}
                onInput={(event) => {
                  to.value = event.currentTarget.value;
                }}
              />
            </Field>
          </>
        )}
        {is.value === 'one of' && (
          <div class="value-tools">
            <input
              type="search"
              aria-label="Search the values"
              placeholder="Search"
              value={sought.value}
              onInput={(event) => {
                sought.value = event.currentTarget.value;
              }}
              onKeyDown={(event) => {
                if (event.key === 'Enter') event.preventDefault();
              }}
            />
            <button type="button" class="firm" onClick={() => choose(true)}>
              Select all
            </button>
            <button type="button" class="firm" onClick={() => choose(false)}>
              Select none
            </button>
          </div>
        )}
        {is.value === 'one of' && (
          <fieldset class="value-list">
            <legend class="unseen">Values</legend>
            {listed.length === 0 && values.value && <p class="soft">No value contains “{sought.value}”.</p>}
            {listed.slice(0, most).map(([value, count]) => (
              <label key={value} class="check">
                <input
                  type="checkbox"
                  checked={chosen.value.has(value)}
                  onChange={(event) => {
                    const next = new Set(chosen.value);
                    if (event.currentTarget.checked) next.add(value);
                    else next.delete(value);
                    chosen.value = next;
                  }}
                />
                <span class="value-text">{value || 'blank'}</span>
                <span class="soft">{count}</span>
              </label>
            ))}
            {listed.length > most && (
              <p class="soft">{listed.length - most} more values are not listed; search for them.</p>
            )}
          </fieldset>
        )}
        <Decide label="Apply filter" close={close} />
      </form>
    </Dialogue>
  );
}

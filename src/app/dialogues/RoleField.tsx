/** The field for what a column is. */
import type { Signal } from '@preact/signals';
import type { Column } from '../../book/model.ts';
import { roleIn } from '../../book/roles/column-in-role.ts';
import { fitsRole, NO_ROLE, roles } from '../../book/roles/list.ts';
import type { SheetOutline } from '../../session/api.ts';
import { Field } from './Dialogue.tsx';

interface Props {
  readonly sheet: SheetOutline;
  /** As it is being written; without an id it is not in the sheet yet. */
  readonly column: Pick<Column, 'name' | 'label' | 'kind' | 'dimension'> & {
    readonly id: string | undefined;
  };
  readonly role: Signal<string>;
}

/** What a column is for figure, handouts, checks and charts. Only what fits its kind and unit is offered. */
export function RoleField({ sheet, column, role }: Props) {
  const others = sheet.columns.filter(({ id }) => id !== column.id);
  const found = roleIn({ columns: [...others, column] }, column);
  const groups = new Map<string, { key: string; label: string; taken: string | undefined }[]>();
  for (const [key, { group, label }] of roles) {
    if (!fitsRole(column, key) && key !== role.value) continue;
    const taken = others.find((one) => one.role === key)?.label;
    groups.set(group, [...(groups.get(group) ?? []), { key, label, taken }]);
  }
  if (groups.size === 0 && role.value === '') return null;
  return (
    <Field label="What it is" hint="For figure, handouts, checks and charts. Its name can be anything.">
      <select
        value={role.value}
        onChange={(event) => {
          role.value = event.currentTarget.value;
        }}
      >
        <option value="">
          {found ? `by its name: ${roles.get(found)!.label}` : 'nothing in particular'}
        </option>
        {(found || role.value === NO_ROLE) && <option value={NO_ROLE}>nothing in particular</option>}
        {[...groups].map(([group, list]) => (
          <optgroup key={group} label={group}>
            {list.map(({ key, label, taken }) => (
              <option key={key} value={key} disabled={taken !== undefined}>
                {taken === undefined ? label : `${label} (already: ${taken})`}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </Field>
  );
}

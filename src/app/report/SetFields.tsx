import type { ComponentChildren } from 'preact';
import type { ColumnOutline, SheetOutline } from '../../session/api.ts';

/** A sheet and some of its columns of numbers. */
export function SetFields({
  name,
  sheets,
  sheet,
  columns,
  change,
  remove,
  children,
}: {
  name: string;
  sheets: readonly SheetOutline[];
  sheet: SheetOutline | undefined;
  columns: readonly string[];
  change: (part: { sheet?: string; columns?: string[]; by?: undefined }) => void;
  remove: () => void;
  children?: ComponentChildren;
}) {
  const offered: readonly ColumnOutline[] = sheet?.columns.filter(({ kind }) => kind === 'number') ?? [];
  return (
    <fieldset class="report-set">
      <legend class="unseen">{name}</legend>
      <div class="report-set-head">
        <label>
          Sheet{' '}
          <select
            value={sheet?.name ?? ''}
            onChange={(event) => change({ sheet: event.currentTarget.value, columns: [] })}
          >
            {sheets.map((one) => (
              <option key={one.id} value={one.name}>
                {one.label}
              </option>
            ))}
          </select>
        </label>
        {children}
        <button type="button" class="firm" aria-label={`Remove ${name.toLowerCase()}`} onClick={remove}>
          Remove
        </button>
      </div>
      <div class="report-ticks">
        {offered.length === 0 && <p class="soft">This sheet has no number column.</p>}
        {offered.map((column) => (
          <Tick
            key={column.id}
            label={column.label}
            on={columns.includes(column.name)}
            turn={(on) =>
              change({
                columns: offered
                  .map((one) => one.name)
                  .filter((one) => (one === column.name ? on : columns.includes(one))),
              })
            }
          />
        ))}
      </div>
    </fieldset>
  );
}

export const Tick = ({ label, on, turn }: { label: string; on: boolean; turn: (on: boolean) => void }) => (
  <label class="tick">
    <input type="checkbox" checked={on} onChange={(event) => turn(event.currentTarget.checked)} /> {label}
  </label>
);

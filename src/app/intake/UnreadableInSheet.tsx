/** Unreadable cells of a sheet by column, text and reason: each can be reached, and all of a group settled at once. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { SheetOutline } from '../../session/api.ts';
import type { UnreadableCells, UnreadableGroup } from '../../session/checks/unreadable-cells.ts';
import { goTo, run } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { gone } from '../state/follow.ts';
import { cellsInWords } from './import-words.ts';
import { ReadAs } from './ReadAs.tsx';

const MOST = 50;
/** Rows of a group that are shown as long as not all are asked for. */
const FEW = 12;

export function UnreadableInSheet({ sheet, close }: { sheet: SheetOutline; close: () => void }) {
  const page = usePage();
  const found = useSignal<UnreadableCells | null>(null);
  const left = useSignal<ReadonlySet<string>>(new Set());
  const version = page.outline.value?.version;
  useEffect(() => {
    let over = false;
    void page.service.unreadable(sheet.id).then((cells) => {
      if (!over) found.value = cells;
    }, gone);
    return () => {
      over = true;
    };
  }, [sheet.id, version]);
  const { value } = found;
  if (!value || value.count === 0) return null;
  const open = value.groups.filter((group) => !left.value.has(keyOf(group)));
  const put = value.groups.length - open.length;
  return (
    <section class="intake-unreadable">
      <h3>{cellsInWords(value.count)} unreadable</h3>
      <p class="soft">
        Each cell has its text as it came. Formulas of these rows show errors until it is fixed.
      </p>
      <ul class="intake-who">
        {open.slice(0, MOST).map((group) => (
          <Group
            key={keyOf(group)}
            group={group}
            sheet={sheet}
            close={close}
            leave={() => {
              left.value = new Set([...left.value, keyOf(group)]);
            }}
          />
        ))}
      </ul>
      {open.length + value.more > MOST && (
        <p class="soft">
          and {open.length + value.more - Math.min(open.length, MOST)} more groups after these
        </p>
      )}
      {put > 0 && (
        <p role="status">
          {put === 1 ? 'One group is' : `${put} groups are`} left as it came and stays under Checks.{' '}
          <button
            type="button"
            class="firm"
            onClick={() => {
              left.value = new Set();
            }}
          >
            Show again
          </button>
        </p>
      )}
    </section>
  );
}

const keyOf = ({ column, text, reason }: UnreadableGroup): string => `${column}\u0000${text}\u0000${reason}`;

interface GroupProps {
  readonly group: UnreadableGroup;
  readonly sheet: SheetOutline;
  readonly close: () => void;
  readonly leave: () => void;
}

function Group({ group: { column, text, reason, rows }, sheet, close, leave }: GroupProps) {
  const page = usePage();
  const all = useSignal(false);
  const label = sheet.columns.find(({ id }) => id === column)?.label ?? '';
  const read = (as: string) =>
    void run(page, { do: 'read-unreadable', sheet: sheet.id, column, text, reason, as });
  return (
    <li>
      <p>
        <strong>{label}</strong>: “{text}” in {cellsInWords(rows.length)}. <span class="soft">{reason}</span>
      </p>
      <div class="intake-choices intake-rows">
        {rows.slice(0, all.value ? undefined : FEW).map((row) => (
          <button
            key={row}
            type="button"
            class="link"
            aria-label={`${label}, row ${row + 1}`}
            onClick={() => {
              close();
              goTo(page, { sheet: sheet.id, column, row });
            }}
          >
            row {row + 1}
          </button>
        ))}
        {rows.length > FEW && !all.value && (
          <button
            type="button"
            class="link"
            onClick={() => {
              all.value = true;
            }}
          >
            all {rows.length.toLocaleString('en')} rows
          </button>
        )}
      </div>
      <ReadAs label={`${label}, ${text}`} count={rows.length} readAs={read} leave={leave} />
    </li>
  );
}

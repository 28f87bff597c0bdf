import { command } from '../commands/all.ts';
import { changeRows, conditionInWords } from '../state/change-view.ts';
import { usePage } from '../state/context.ts';
import { orderInWords } from '../state/order-words.ts';
import { arranges } from '../state/shown.ts';
import { Icon } from '../theme/icons.tsx';

/** Says when a sheet is not shown whole and in its own order, and takes each reason away at a touch. */
export function ViewStrip() {
  const page = usePage();
  const sheet = page.sheet.value;
  const rows = sheet?.view?.rows;
  if (!sheet || !rows || !arranges(rows)) return null;
  const label = (id: string) => sheet.columns.find((column) => column.id === id)?.label ?? id;
  const kind = (id: string) => sheet.columns.find((column) => column.id === id)?.kind;
  const shown = page.shown.value?.lines;
  const count = shown?.listed ?? 0;
  return (
    <section class="view-strip" aria-label="Sort, filter and groups">
      {rows.where?.map((one) => (
        <Chip
          key={JSON.stringify(one)}
          text={`Filtered: ${conditionInWords(one, label(one.column))}`}
          off={() =>
            void changeRows(page, 'Remove a filter', (view) => ({
              ...view,
              where: (view.where ?? []).filter((other) => other.column !== one.column),
            }))
          }
        />
      ))}
      {rows.group !== undefined && (
        <Chip
          text={`Grouped by ${label(rows.group)}`}
          off={() => void changeRows(page, 'Remove the grouping', ({ group: _, ...view }) => view)}
        />
      )}
      {rows.sort?.map((one) => (
        <Chip
          key={one.column}
          text={`Sorted by ${label(one.column)}: ${orderInWords(kind(one.column), one.descending)}`}
          off={() =>
            void changeRows(page, 'Remove a sort', (view) => ({
              ...view,
              sort: (view.sort ?? []).filter((other) => other.column !== one.column),
            }))
          }
        />
      ))}
      <span class="soft">
        {count} of {sheet.rows} rows
      </span>
      <button type="button" class="link" onClick={() => void command('arrange-again').run(page)}>
        Re-apply
      </button>
    </section>
  );
}

function Chip({ text, off }: { text: string; off: () => void }) {
  return (
    <span class="chip">
      {text}
      <button type="button" aria-label={`Remove: ${text}`} onClick={off}>
        <Icon name="close" />
      </button>
    </span>
  );
}

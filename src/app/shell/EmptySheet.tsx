import { usePage } from '../state/context.ts';
import { CommandButton } from './CommandButton.tsx';

/** Where there are no rows, or no sheet: what can be done here. */
export function EmptySheet() {
  const page = usePage();
  const { value: outline } = page.outline;
  const { value: sheet } = page.sheet;
  if (!outline || (sheet && sheet.rows > 0)) return null;
  return (
    <div class={`empty-sheet${sheet ? '' : ' alone'}`}>
      {sheet ? (
        <p>
          <strong>No rows yet.</strong> Type into the row marked +, or paste rows from another program. You
          can also drop a CSV, XLSX or ODS file anywhere on the page.
        </p>
      ) : (
        <p>
          <strong>This book has no sheet yet.</strong> Add one, or import a roster or a training log as a
          sheet.
        </p>
      )}
      <div class="empty-tools">
        <CommandButton id={sheet ? 'insert-column-after' : 'add-sheet'} kind="firm" />
        <CommandButton id="bring-in" kind="firm" />
      </div>
    </div>
  );
}

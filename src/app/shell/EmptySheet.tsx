import { command } from '../commands/all.ts';
import { labelOf } from '../commands/command.ts';
import { usePage } from '../state/context.ts';
import { Icon } from '../theme/icons.tsx';
import { CommandButton } from './CommandButton.tsx';

/** What a blank book offers, by the command that adds it. */
const offers: readonly (readonly [id: string, about: string])[] = [
  ['add-body-lengths', 'Femur, tibia, trunk, foot and ankle, with the minimum lean.'],
  ['add-training-log', 'Sets, load and session RPE, with estimated 1RM.'],
  ['add-wall-test', 'Three knee-to-wall trials per side, with ankle range.'],
];

/** Where there are no rows, or no sheet: what can be done here. */
export function EmptySheet() {
  const page = usePage();
  const { value: outline } = page.outline;
  const { value: sheet } = page.sheet;
  if (!outline || (sheet && sheet.rows > 0)) return null;
  const blank = outline.sheets.length <= 1 && (sheet?.columns.length ?? 0) <= 1;
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
      {blank && <Offers />}
      <div class="empty-tools">
        <CommandButton id={sheet ? 'insert-column-after' : 'add-sheet'} kind="firm" />
        <CommandButton id="import-file" kind="firm" />
      </div>
    </div>
  );
}

/** Sheets that are ready to be filled in. */
function Offers() {
  const page = usePage();
  return (
    <ul class="empty-offers" aria-label="Ready-made sheets">
      {offers.map(([id, about]) => {
        const offered = command(id);
        return (
          <li key={id}>
            <button type="button" class="firm" onClick={() => void offered.run(page)}>
              {offered.icon && <Icon name={offered.icon} />}
              <strong>{labelOf(offered, page)}</strong>
              <span class="soft">{about}</span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

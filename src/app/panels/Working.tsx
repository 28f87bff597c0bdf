import { unitSign } from '../grid/units.ts';
import { usePage } from '../shell/context.ts';
import { activeColumn } from '../state/page.ts';

const fromInWords = {
  blank: 'Nothing stands here.',
  value: 'Typed or brought in.',
  held: 'Held as it came: it did not fit the column.',
  'column formula': "The column's formula, for this row.",
  'own formula': 'A formula of this cell alone.',
} as const;

/** How the active cell came about. */
export function Working() {
  const page = usePage();
  const cell = page.cell.value;
  const column = activeColumn(page);
  if (!cell || !column || cell.place.row === undefined)
    return <p class="panel-note">Choose a cell to see how it came about.</p>;
  const formula =
    cell.from === 'own formula'
      ? cell.editText.replace(/^=/, '')
      : cell.from === 'column formula'
        ? cell.columnFormula
        : undefined;
  return (
    <div class="working">
      <h3 class="figure-title">
        {column.label}, row {cell.place.row + 1}
      </h3>
      <p class="working-value">
        {cell.display || <span class="soft">blank</span>}
        {cell.display && column.unit && <span class="soft"> {unitSign(column.unit)}</span>}
      </p>
      <p>{fromInWords[cell.from]}</p>
      {cell.name && (
        <p>
          Its name is <code class="formula">{cell.name}</code>.
        </p>
      )}
      {formula !== undefined && <pre class="formula working-formula">= {formula}</pre>}
      {cell.override && cell.columnFormula !== undefined && (
        <p class="panel-note">
          This cell stands over the column's formula <code class="formula">= {cell.columnFormula}</code>
        </p>
      )}
      {cell.sentence && <p class="working-sentence">{cell.sentence}</p>}
      {column.note && <p class="soft">{column.note}</p>}
    </div>
  );
}

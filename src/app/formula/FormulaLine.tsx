import { useEffect, useRef } from 'preact/hooks';
import { usePage } from '../state/context.ts';
import { useFollow } from '../state/follow.ts';
import type { Page, Scope } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';
import { Icon } from '../theme/icons.tsx';
import { Below } from './Below.tsx';
import { draft, rescoped, targetOf } from './draft.ts';
import { placeField } from './field.ts';
import './line.css';
import { cancel, followText, hand, inCell, labelFields, take, writer } from './writing.ts';

/** The line above the sheet: what is being edited, its text, what it would give. */
export function FormulaLine() {
  const page = usePage();
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!host.current) return;
    page.line.current = writer;
    const remove = placeField(page, 'line', host.current);
    return () => {
      page.line.current = null;
      remove();
    };
  }, [page]);
  useFollow(() => followText(page));

  const target = targetOf(page);
  const column = page.sheet.value?.columns.find(({ id }) => id === target?.column) ?? activeColumn(page);
  if (target && column)
    labelFields(
      target.scope === 'column' ? `${column.label}, whole column` : `Only ${column.address}${target.row + 1}`,
    );
  const editing = draft.value !== null;
  return (
    <section class="formula-line" data-part="line" aria-label="What is being edited">
      <ScopeSwitch page={page} />
      <div class={`formula-box${editing ? ' editing' : ''}${column ? '' : ' idle'}`}>
        {target?.scope === 'column' && <Equals />}
        <div class="formula-editor" ref={host} />
        {editing && (
          <div class="formula-actions">
            <button
              type="button"
              aria-label="Enter the formula"
              title="Enter the formula (Enter)"
              onClick={() => void take(page)}
            >
              <Icon name="check" />
            </button>
            <button
              type="button"
              aria-label="Cancel the edit"
              title="Cancel the edit (Esc)"
              onClick={() => cancel(page)}
            >
              <Icon name="close" />
            </button>
          </div>
        )}
      </div>
      {!(inCell.value && hand.value === 'cell') && <Below />}
    </section>
  );
}

/** A column's formula is written without its sign. */
export function Equals() {
  return (
    <span class="equals" aria-hidden="true">
      =
    </span>
  );
}

function ScopeSwitch({ page }: { page: Page }) {
  const target = targetOf(page);
  const column = page.sheet.value?.columns.find(({ id }) => id === target?.column);
  if (!target || !column) return <p class="scope-none soft">Select a cell or a heading</p>;
  const choose = (scope: Scope) => {
    if (draft.value) draft.value = rescoped(draft.value, scope);
    page.scopeChoice.value = scope;
  };
  const option = (scope: Scope, label: string, about: string) => (
    <label title={about}>
      <input
        type="radio"
        name="scope"
        class="unseen"
        checked={target.scope === scope}
        onChange={() => choose(scope)}
      />
      <span>{label}</span>
    </label>
  );
  return (
    <fieldset class="scope">
      <legend class="unseen">What the line edits</legend>
      {option('column', `${column.name}, whole column`, 'The formula of the whole column')}
      {option('cell', `Only ${column.address}${target.row + 1}`, 'Only this cell')}
    </fieldset>
  );
}

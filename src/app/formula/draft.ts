import { signal } from '@preact/signals';
import type { Place } from '../../session/api.ts';
import type { GridSelection } from '../grid/host.ts';
import { run } from '../state/actions.ts';
import { enter } from '../state/entering.ts';
import type { Page, Scope } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';

/**
 * What is being written in the line above the sheet, in the cell, or in both, and where it will go. It stays there wherever
 * the selection goes.
 */
export interface Draft {
  readonly sheet: string;
  readonly column: string;
  readonly row: number;
  readonly scope: Scope;
  readonly text: string;
  /** What stood there before, where that is known: nothing is done for a text that did not change. */
  readonly was?: string;
}

export const draft = signal<Draft | null>(null);

/** A draft on its way into the book. Until that has answered it stays on show where it belongs. */
const sent = signal<Draft | null>(null);

/** What the line shows and edits now. */
export interface Target {
  readonly sheet: string;
  readonly column: string;
  readonly row: number;
  readonly scope: Scope;
  /** What stands there. */
  readonly text: string;
}

export function targetOf(page: Page): Target | null {
  const now = draft.value;
  if (now) return now;
  if (sent.value && isChosen(page, sent.value)) return sent.value;
  const selection = page.selection.value;
  const column = activeColumn(page);
  if (!selection || !column) return null;
  const { row } = selection;
  const scope = page.scope.value;
  const cell = page.cell.value;
  const told = cell && cell.place.row === row && cell.place.column === column.id ? cell.editText : '';
  return {
    sheet: selection.sheet,
    column: column.id,
    row,
    scope,
    text: scope === 'column' ? (column.formula ?? '') : told,
  };
}

/** Whether the selection is where a draft belongs. */
function isChosen(page: Page, { sheet, column, row, scope }: Draft): boolean {
  const selection = page.selection.value;
  return (
    selection?.sheet === sheet &&
    selection.column === column &&
    page.scope.value === scope &&
    (scope === 'column' || selection.row === row)
  );
}

/** The formula in a text of the line: all of it for a column, what follows "=" for a cell; null for a plain value. */
export const formulaIn = (scope: Scope, text: string): string | null =>
  scope === 'column' ? text : text.startsWith('=') ? text.slice(1) : null;

/** Where a formula of the line stands. */
export const placeOf = ({ sheet, column, row, scope }: Target): Place =>
  scope === 'column' ? { sheet, column } : { sheet, column, row };

/** Puts the draft into the book: into its cell, or all that are chosen. Answers whether it was taken; what is refused stays the draft. */
export async function commitDraft(page: Page, chosen: GridSelection | null = null): Promise<boolean> {
  const now = draft.value;
  if (!now) return true;
  const { sheet, column, row, scope, text, was } = now;
  if (text === was && !chosen) {
    draft.value = null;
    return true;
  }
  // Out of hand while the book takes it in: what is begun meanwhile is a draft of its own.
  sent.value = now;
  draft.value = null;
  const done =
    scope === 'column'
      ? await run(page, { do: 'set-formula', sheet, column, formula: text.trim().replace(/^=/, '') || null })
      : await enter(page, sheet, {
          runs: chosen?.runs ?? [{ row, count: 1 }],
          columns: chosen?.columns ?? [column],
          texts: Array.from({ length: chosen?.rows ?? 1 }, () =>
            (chosen?.columns ?? [column]).map(() => text),
          ),
          formulas: true,
        });
  if (sent.value === now) sent.value = null;
  if (!done && !draft.value) draft.value = now;
  return done;
}

/** The draft for the other scope: the same formula, as the other one writes it. */
export function rescoped(now: Draft, scope: Scope): Draft {
  if (now.scope === scope) return now;
  const formula = formulaIn(now.scope, now.text);
  const text = scope === 'column' ? (formula ?? now.text) : `=${now.text}`;
  const { sheet, column, row } = now;
  return { sheet, column, row, scope, text };
}

import { batch, signal } from '@preact/signals';
import type { FormulaCheck } from '../../session/api.ts';
import type { Preview } from '../../worker/protocol.ts';
import type { FormulaStart, Pointed } from '../grid/host.ts';
import { goTo } from '../state/actions.ts';
import { gone } from '../state/follow.ts';
import type { LineHandle, Page } from '../state/page.ts';
import { activeColumn } from '../state/page.ts';
import { commitDraft, type Draft, draft, formulaIn, placeOf, targetOf } from './draft.ts';
import type { FormulaEditor } from './formula-editor.ts';
import { namePointed } from './point.ts';

/** One draft, and two editors for it: the line above the sheet, and the one that opens in the cell. */

export type Where = 'line' | 'cell';

/** The draft is on show in its cell, too. */
export const inCell = signal(false);
/** The editor that hands are in, or were in last. */
export const hand = signal<Where>('line');
/** True while that one has the focus. */
export const focused = signal(false);
export const caret = signal(0);
export const completing = signal(false);
export const check = signal<FormulaCheck | null>(null);
export const preview = signal<Preview | null>(null);
/** Grows when cells stand elsewhere on the screen. */
export const shifts = signal(0);

const fields: Record<Where, FormulaEditor | null> = { line: null, cell: null };
/** Grows when another editor is there to be told what is written, and what is wrong with it. */
const arrivals = signal(0);
/** The caret stands where it is because of what was typed, and not because it was put there. */
let typed = false;
/** The change that is being made is a name that was pointed at. */
let pointing = false;
/** Counts the questions about the text; only the latest is answered. */
let asked = 0;

export function setField(where: Where, field: FormulaEditor | null): void {
  fields[where] = field;
  arrivals.value = arrivals.peek() + 1;
}

/** Says what is written there to who cannot see where it stands. */
export function labelFields(label: string): void {
  fields.line?.setLabel(label);
  fields.cell?.setLabel(`In the cell: ${label}`);
}

/** The editor that hands are in. */
const inHand = (): FormulaEditor | null => (inCell.peek() && fields[hand.peek()]) || fields.line;

/** What the rest of the page asks of whichever editor is in hand. */
export const writer: LineHandle = {
  focus: () => inHand()?.focus(),
  insert: (text) => inHand()?.insert(text),
  hasFocus: () => inHand()?.hasFocus() ?? false,
  wantsName: () => inHand()?.wantsName() ?? false,
};

/** Begins a formula in the active cell, or goes on with the one that is being written. */
export function begin(page: Page, start: FormulaStart | null): void {
  if (draft.peek()) {
    inHand()?.focus();
    return;
  }
  const selection = page.selection.peek();
  const column = activeColumn(page);
  if (!selection || !column) return;
  const { sheet, row } = selection;
  const scope = start ? 'cell' : 'column';
  const text = start?.text ?? column.formula ?? '';
  const was = start ? start.was : text;
  const at = { from: start?.from ?? text.length, to: start?.to ?? text.length };
  batch(() => {
    page.scopeChoice.value = scope;
    draft.value = { sheet, column: column.id, row, scope, text, ...(was === undefined ? {} : { was }) };
    caret.value = at.to;
    inCell.value = hasRoom();
    hand.value = inCell.value ? 'cell' : 'line';
  });
  inHand()?.take(at);
  // What was there already is there to be changed; what was just typed, to be gone on with.
  typed = was === undefined;
}

/** In a narrow window a cell has no room for a formula: there it is written in the line, which has the whole width. */
const hasRoom = (): boolean => !(globalThis.matchMedia?.('(max-width: 760px)').matches ?? false);

/** Goes on in the other editor, the caret and all that is chosen kept. */
export function goOver(): void {
  const now = inHand();
  if (!draft.peek() || !now || !(inCell.peek() || hasRoom())) return;
  const to: Where = fields.line === now ? 'cell' : 'line';
  const { from, to: end } = now.chosen();
  batch(() => {
    inCell.value = true;
    hand.value = to;
  });
  fields[to]?.take({ from, to: end });
  typed = false;
}

/** The cell is not on show any more: the line has the text, too. */
export function leaveCell(): void {
  if (hand.peek() !== 'cell') return;
  const had = fields.cell?.hasFocus();
  const at = fields.cell?.chosen();
  hand.value = 'line';
  if (had && at) fields.line?.take(at);
}

/** What the editors tell: what is written in either. */
export function changed(page: Page, text: string, at: number): void {
  if (!pointing) page.grid.current?.pointNoMore();
  typed = true;
  const target = targetOf(page);
  batch(() => {
    caret.value = at;
    if (target) draft.value = { ...target, text };
  });
}

/** Writes something else in place of a piece of the formula. */
export function writeInstead(page: Page, { from, to, instead }: FormulaCheck['doubts'][number]): void {
  const target = targetOf(page);
  const formula = target && formulaIn(target.scope, target.text);
  if (!target || formula === null) return;
  const start = target.text.length - formula.length;
  const text = `${target.text.slice(0, start + from)}${instead}${target.text.slice(start + to)}`;
  changed(page, text, start + from + instead.length);
  inHand()?.take({ from: caret.peek(), to: caret.peek() });
}

export function moved(page: Page, at: number): void {
  page.grid.current?.pointNoMore();
  typed = false;
  caret.value = at;
}

/** Writes the name of the place that was pointed at. */
export function point(page: Page, pointed: Pointed): void {
  const target = targetOf(page);
  const name = target && namePointed(page, target, pointed);
  if (!name) return;
  pointing = true;
  inHand()?.point(name);
  pointing = false;
}

/** An arrow key where a cell's name is missing points at one. True when it did. */
export function arrow(page: Page, down: number, across: number, extend: boolean): boolean {
  const target = targetOf(page);
  if (!typed || !target || formulaIn(target.scope, target.text) === null || !inHand()?.lacksName())
    return false;
  const own = target.sheet === page.sheetId.peek() ? target : { row: -1, column: '' };
  page.grid.current?.pointOn(own, down, across, extend);
  return true;
}

/** Takes what is written. The keys go to the sheet at once: what is typed next is meant for it. */
export async function take(page: Page, down = 0, across = 0, everywhere = false): Promise<void> {
  const now = draft.peek();
  const selection = page.selection.peek();
  const chosen = everywhere && selection?.sheet === now?.sheet ? selection : null;
  leave(page, now, down, across, chosen !== null);
  if (!(await commitDraft(page, chosen))) inHand()?.focus();
}

export function cancel(page: Page): void {
  leave(page, draft.peek());
  draft.value = null;
}

/** The focus goes back into the sheet that the draft is for. */
function leave(page: Page, now: Draft | null, down = 0, across = 0, keepChosen = false): void {
  const { grid } = page;
  grid.current?.pointNoMore();
  if (now && now.sheet !== page.sheetId.peek()) goTo(page, now);
  else if (now?.scope === 'cell' && (down || across)) grid.current?.step(down, across, now.text !== '');
  // Its cell may have been scrolled away meanwhile.
  else if (now && inCell.peek() && !keepChosen) grid.current?.select(now.row, now.column);
  else grid.current?.focus();
  endInCell();
}

/** The draft is not on show in its cell any more. */
export function endInCell(): void {
  batch(() => {
    inCell.value = false;
    hand.value = 'line';
    completing.value = false;
  });
}

/** Shows the text in both editors, and asks what is wrong with it and what it would give. Runs whenever it changes. */
export function followText(page: Page): void {
  arrivals.value;
  const target = targetOf(page);
  const version = page.outline.value?.version ?? 0;
  const text = target?.text ?? '';
  fields.line?.setText(text);
  if (inCell.value) fields.cell?.setText(text);
  const formula = target && formulaIn(target.scope, text);
  const turn = ++asked;
  if (!target || formula === null || formula.trim() === '' || version === 0) {
    check.value = null;
    preview.value = null;
    return;
  }
  const shift = text.length - formula.length;
  void page.service.check(formula, placeOf(target)).then((found) => {
    if (turn !== asked) return;
    check.value = shift === 0 ? found : shifted(found, shift);
    for (const field of Object.values(fields)) field?.setCheck(text, check.value);
  }, gone);
  if (!draft.value) {
    preview.value = null;
    return;
  }
  const { sheet, column, row } = target;
  void page.service.preview(formula, { sheet, column, row }).then((found) => {
    if (turn === asked) preview.value = found;
  }, gone);
}

function shifted(found: FormulaCheck, by: number): FormulaCheck {
  const move = <T extends { readonly from: number; readonly to: number }>(span: T): T => ({
    ...span,
    from: span.from + by,
    to: span.to + by,
  });
  return { ...found, problems: found.problems.map(move), tokens: found.tokens.map(move) };
}

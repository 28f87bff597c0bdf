/** The grid library's editor of a cell, in the form that this page needs. */
import Handsontable from 'handsontable/base';
import type { FormulaStart } from './host.ts';
import { Picker } from './picker.ts';
import { type Stroke, strike, strokeOf, type Written } from './waiting.ts';

type Hot = Handsontable.Core;

/** What the editor of a cell needs of its surroundings. Rows and columns are lines and columns of the grid. */
export interface EditorHost {
  editText(line: number, column: number): Promise<string>;
  /** True for a cell that its column's formula fills. */
  isComputed(line: number, column: number): boolean;
  /** What can be picked in that cell; null where there is no list. */
  choices(line: number, column: number): readonly string[] | null;
  enter(line: number, column: number, lines: number, columns: number, text: string): void;
  /** Formulas are written in the formula editor: this text from now on, or the column's formula. */
  writeFormula(start: FormulaStart | null): void;
}

const hosts = new WeakMap<object, EditorHost>();

export function hostEditor(hot: Hot, host: EditorHost): void {
  hosts.set(hot, host);
}

/**
 * The editor that opens in a cell for a plain value. It starts with what was typed, not with what the cell shows (a rounded
 * number would lose its digits), and hands the text over instead of writing it into the grid. A text that is a formula
 * goes on in the formula editor.
 */
export class CellEditor extends Handsontable.editors.TextEditor {
  // Declared, not initialised: the base constructor calls createElements before field initialisers would run.
  declare started: string | null;
  /** What the cell holds, while it is on its way here. */
  declare arriving: Promise<string> | null;
  /** What was done to that text meanwhile. */
  declare strokes: Stroke[];
  declare picker: Picker | null;

  override beginEditing(initial?: unknown, event?: Event): void {
    // Asked once more, it would start over with the cell's text.
    if (this.isOpened()) return;
    const { row, col } = this;
    const host = hosts.get(this.hot);
    const typedOver = typeof initial === 'string';
    if (!typedOver && row !== null && col !== null && host?.isComputed(row, col)) {
      host.writeFormula(null);
      return;
    }
    this.started = typedOver ? null : '';
    this.arriving = null;
    this.originalValue = '';
    super.beginEditing(initial, event);
    if (row === null || col === null || !host) return;
    const choices = host.choices(row, col);
    if (choices) {
      this.picker = new Picker(this.TEXTAREA_PARENT, this.TEXTAREA, choices, (choice) => {
        this.setValue(choice);
        this.finishEditing();
      });
    }
    if (typedOver) return;
    this.strokes = [];
    const arriving = host.editText(row, col);
    this.arriving = arriving;
    void arriving.then(
      (text) => {
        if (this.arriving !== arriving || !this.isOpened()) return;
        this.arriving = null;
        this.started = text;
        const now = this.struck(text);
        this.setValue(now.text);
        this.focus();
        this.TEXTAREA.setSelectionRange(Math.min(now.anchor, now.head), Math.max(now.anchor, now.head));
        if (this.strokes.length === 0) this.picker?.all();
        else this.picker?.narrow();
        this.refreshDimensions();
        this.handOver();
        // A cell that is gone by now has no text to change.
      },
      () => undefined,
    );
  }

  /** The cell's text with what was done to it before it came. */
  struck(text: string): Written {
    return strike({ text, anchor: text.length, head: text.length }, this.strokes);
  }

  /** Arrows belong to the list of choices while there is one. */
  picked(event: KeyboardEvent): boolean {
    return this.picker?.key(event) ?? false;
  }

  override open(): void {
    this.TEXTAREA.removeAttribute('aria-hidden');
    super.open();
  }

  override close(): void {
    // A field that is not open is no part of the grid.
    this.TEXTAREA.setAttribute('aria-hidden', 'true');
    this.picker?.close();
    this.picker = null;
    super.close();
    if (document.activeElement === this.TEXTAREA) this.focus();
  }

  /** The library leaves the focus in a closed field, where keys of the page would be taken for typing. */
  override focus(): void {
    if (this.isOpened()) super.focus();
    else this.hot.getFocusManager().focusOnHighlightedCell();
  }

  override getValue(): unknown {
    return this.picker ? this.picker.chosen() : super.getValue();
  }

  /** A text that turns out to be a formula goes on in the formula editor. */
  handOver(): void {
    const { value: text, selectionStart: from, selectionEnd: to } = this.TEXTAREA;
    if (!text.startsWith('=') || !this.isOpened()) return;
    const { started } = this;
    this.cancelChanges();
    hosts.get(this.hot)?.writeFormula({
      text,
      from: from ?? text.length,
      to: to ?? text.length,
      ...(started === null ? {} : { was: started }),
    });
  }

  override createElements(type?: string): void {
    super.createElements(type);
    this.picker = null;
    this.arriving = null;
    this.strokes = [];
    this.TEXTAREA.addEventListener('keydown', (event) => {
      const stroke = this.arriving && strokeOf(event as KeyboardEvent);
      if (!stroke) return;
      this.strokes.push(stroke);
      event.preventDefault();
      event.stopPropagation();
    });
    this.TEXTAREA.addEventListener('input', (event) => {
      if ((event as InputEvent).isComposing) return;
      if (!this.arriving) return this.handOver();
      // Pasted, dictated, or from a keyboard on the screen.
      this.strokes.push({ is: 'text', text: this.TEXTAREA.value });
      this.setValue('');
    });
    this.TEXTAREA.setAttribute('aria-label', 'Cell');
    this.TEXTAREA.setAttribute('aria-hidden', 'true');
    this.TEXTAREA.setAttribute('autocomplete', 'off');
    this.TEXTAREA.setAttribute('spellcheck', 'false');
  }

  /** Called when editing ends well; `value` is one text in a block of one. */
  override saveValue(value: unknown, everyChosenCell?: boolean): void {
    const text = String((value as readonly (readonly unknown[])[])[0]?.[0] ?? '');
    const { arriving } = this;
    this.arriving = null;
    if (this.row === null || this.col === null || (text === this.started && !arriving)) return;
    const range = everyChosenCell ? this.hot.getSelectedRangeActive() : undefined;
    const from = range?.getTopStartCorner() ?? { row: this.row, col: this.col };
    const to = range?.getBottomEndCorner() ?? from;
    const row = Math.max(from.row ?? 0, 0);
    const column = Math.max(from.col ?? 0, 0);
    const enter = (whole: string) =>
      hosts
        .get(this.hot)
        ?.enter(row, column, (to.row ?? row) - row + 1, (to.col ?? column) - column + 1, whole);
    // Before it came the field is empty, but for a choice from the list.
    if (!arriving || text !== '') {
      enter(text);
      return;
    }
    const { strokes } = this;
    void arriving.then(
      (before) => {
        const { text: whole } = strike({ text: before, anchor: before.length, head: before.length }, strokes);
        if (whole !== before) enter(whole);
      },
      () => undefined,
    );
  }
}

import Handsontable from 'handsontable/base';
import { Picker } from './picker.ts';

type Hot = Handsontable.Core;

/** What the editor of a cell needs of its surroundings. Rows and columns are lines and columns of the grid. */
export interface EditorHost {
  editText(line: number, column: number): Promise<string>;
  /** True for a cell that a formula fills. */
  hasFormula(line: number, column: number): boolean;
  /** What can be picked in that column; null where anything may be typed. */
  choices(column: number): readonly string[] | null;
  enter(line: number, column: number, lines: number, columns: number, text: string): void;
  /** Formulas are written in the line above the sheet: this text from now on, or the one that is there. */
  writeFormula(text: string | null): void;
}

const hosts = new WeakMap<object, EditorHost>();

export function hostEditor(hot: Hot, host: EditorHost): void {
  hosts.set(hot, host);
}

/**
 * The editor that opens in a cell. It starts with what was typed, not with what the cell shows (a rounded number would
 * lose its digits), and hands the text over instead of writing it into the grid. Formulas go to the line above the sheet.
 */
export class CellEditor extends Handsontable.editors.TextEditor {
  // Declared, not initialised: the base constructor calls createElements before field initialisers would run.
  declare started: string | null;
  /** What the cell holds, while it is on its way here. */
  declare arriving: Promise<string> | null;
  /** Home was pressed before that: what is typed goes before it. */
  declare atStart: boolean;
  declare picker: Picker | null;

  override beginEditing(initial?: unknown, event?: Event): void {
    const { row, col } = this;
    const host = hosts.get(this.hot);
    const typedOver = typeof initial === 'string';
    if (!typedOver && row !== null && col !== null && host?.hasFormula(row, col)) {
      host.writeFormula(null);
      return;
    }
    this.started = typedOver ? null : '';
    this.arriving = null;
    this.originalValue = '';
    super.beginEditing(initial, event);
    if (row === null || col === null || !host) return;
    const choices = host.choices(col);
    if (choices) {
      this.picker = new Picker(this.TEXTAREA_PARENT, this.TEXTAREA, choices, (choice) => {
        this.setValue(choice);
        this.finishEditing();
      });
    }
    if (typedOver) return;
    this.atStart = false;
    const arriving = host.editText(row, col);
    this.arriving = arriving;
    void arriving.then(
      (text) => {
        if (this.arriving !== arriving || !this.isOpened()) return;
        this.arriving = null;
        this.started = text;
        const typed = this.TEXTAREA.value;
        this.setValue(this.with(text, typed));
        if (typed === '') this.picker?.all();
        this.focus();
        if (this.atStart) this.TEXTAREA.setSelectionRange(typed.length, typed.length);
        this.refreshDimensions();
        // A cell that is gone by now has no text to change.
      },
      () => undefined,
    );
  }

  /** What was typed before the cell's text came stands where the caret would have been. */
  with(text: string, typed: string): string {
    return this.atStart ? typed + text : text + typed;
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
  }

  override getValue(): unknown {
    return this.picker ? this.picker.chosen() : super.getValue();
  }

  /** A text that turns out to be a formula goes on in the line above the sheet. */
  handOver(): void {
    const text = this.TEXTAREA.value;
    if (!text.startsWith('=') || !this.isOpened()) return;
    this.cancelChanges();
    hosts.get(this.hot)?.writeFormula(text);
  }

  override createElements(type?: string): void {
    super.createElements(type);
    this.picker = null;
    this.arriving = null;
    this.atStart = false;
    this.TEXTAREA.addEventListener('keydown', (event) => {
      const { key } = event as KeyboardEvent;
      if (key === 'Home' || key === 'End') this.atStart = key === 'Home' && this.TEXTAREA.value === '';
    });
    this.TEXTAREA.addEventListener('input', (event) => {
      if (!(event as InputEvent).isComposing) this.handOver();
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
    if (this.row === null || this.col === null || text === this.started) return;
    const range = everyChosenCell ? this.hot.getSelectedRangeActive() : undefined;
    const from = range?.getTopStartCorner() ?? { row: this.row, col: this.col };
    const to = range?.getBottomEndCorner() ?? from;
    const row = Math.max(from.row ?? 0, 0);
    const column = Math.max(from.col ?? 0, 0);
    const enter = (whole: string) =>
      hosts
        .get(this.hot)
        ?.enter(row, column, (to.row ?? row) - row + 1, (to.col ?? column) - column + 1, whole);
    if (arriving)
      void arriving.then(
        (before) => enter(this.with(before, text)),
        () => enter(text),
      );
    else enter(text);
  }
}

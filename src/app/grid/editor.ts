import Handsontable from 'handsontable/base';
import { Picker } from './picker.ts';

type Hot = Handsontable.Core;

/** What the editor of a cell needs of its surroundings. Rows and columns are lines and columns of the grid. */
export interface EditorHost {
  editText(line: number, column: number): Promise<string>;
  /** What can be picked in that column; null where anything may be typed. */
  choices(column: number): readonly string[] | null;
  enter(line: number, column: number, lines: number, columns: number, text: string): void;
  /** The cell holds a formula: it is written in the line above the sheet. */
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
  declare picker: Picker | null;

  override beginEditing(initial?: unknown, event?: Event): void {
    const { row, col } = this;
    const typedOver = typeof initial === 'string';
    this.started = typedOver ? null : '';
    this.originalValue = '';
    super.beginEditing(initial, event);
    if (row === null || col === null) return;
    const host = hosts.get(this.hot);
    const choices = host?.choices(col);
    if (choices) {
      this.picker = new Picker(this.TEXTAREA_PARENT, this.TEXTAREA, choices, (choice) => {
        this.setValue(choice);
        this.finishEditing();
      });
    }
    if (typedOver) return;
    void host?.editText(row, col).then((text) => {
      if (this.row !== row || this.col !== col || !this.isOpened()) return;
      this.started = text;
      if (text.startsWith('=')) {
        this.cancelChanges();
        host.writeFormula(null);
      } else if (this.TEXTAREA.value === '') {
        this.setValue(text);
        this.picker?.all();
        this.focus();
        this.refreshDimensions();
      }
    });
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

  override createElements(type?: string): void {
    super.createElements(type);
    this.picker = null;
    this.TEXTAREA.setAttribute('aria-label', 'Cell');
    this.TEXTAREA.setAttribute('aria-hidden', 'true');
    this.TEXTAREA.setAttribute('autocomplete', 'off');
    this.TEXTAREA.setAttribute('spellcheck', 'false');
  }

  /** Called when editing ends well; `value` is one text in a block of one. */
  override saveValue(value: unknown, everyChosenCell?: boolean): void {
    const text = String((value as readonly (readonly unknown[])[])[0]?.[0] ?? '');
    if (this.row === null || this.col === null || text === this.started) return;
    const range = everyChosenCell ? this.hot.getSelectedRangeActive() : undefined;
    const from = range?.getTopStartCorner() ?? { row: this.row, col: this.col };
    const to = range?.getBottomEndCorner() ?? from;
    const row = Math.max(from.row ?? 0, 0);
    const column = Math.max(from.col ?? 0, 0);
    hosts.get(this.hot)?.enter(row, column, (to.row ?? row) - row + 1, (to.col ?? column) - column + 1, text);
  }
}

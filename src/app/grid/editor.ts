import Handsontable from 'handsontable/base';

type Hot = Handsontable.Core;

/** What the editor of a cell needs of its surroundings. */
export interface EditorHost {
  editText(row: number, column: number): Promise<string>;
  enter(row: number, column: number, rows: number, columns: number, text: string): void;
}

const hosts = new WeakMap<object, EditorHost>();

export function hostEditor(hot: Hot, host: EditorHost): void {
  hosts.set(hot, host);
}

/**
 * The editor that opens in a cell. It starts with what was typed, not with what the cell shows (a rounded number would
 * lose its digits), and hands the text over instead of writing it into the grid.
 */
export class CellEditor extends Handsontable.editors.TextEditor {
  // Declared, not initialised: the base constructor calls createElements before field initialisers would run.
  declare started: string | null;

  override beginEditing(initial?: unknown, event?: Event): void {
    const { row, col } = this;
    const typedOver = typeof initial === 'string';
    this.started = typedOver ? null : '';
    this.originalValue = '';
    super.beginEditing(initial, event);
    if (typedOver || row === null || col === null) return;
    void hosts
      .get(this.hot)
      ?.editText(row, col)
      .then((text) => {
        if (this.row !== row || this.col !== col || !this.isOpened()) return;
        this.started = text;
        if (this.TEXTAREA.value === '') {
          this.setValue(text);
          this.focus();
          this.refreshDimensions();
        }
      });
  }

  override createElements(type?: string): void {
    super.createElements(type);
    this.TEXTAREA.setAttribute('aria-label', 'Cell');
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

import type Handsontable from 'handsontable/base';
import type { CellEditor } from './cell-editor.ts';
import type { GridHost, GridSelection } from './host.ts';
import type { Reach } from './reach.ts';
import type { Showing } from './showing.ts';

/** The keyboard over the grid: which keys are for it at all, and those that mean something else here than to the library. */
export class GridKeys {
  constructor(
    private readonly hot: Handsontable,
    private readonly reach: Reach,
    private readonly showing: Showing,
    private readonly host: GridHost,
    private readonly selection: () => GridSelection | null,
    private readonly step: (down: number, across: number) => void,
  ) {}

  /** True for a key that the library is to leave alone. */
  take(event: KeyboardEvent): boolean {
    // The library listens to the whole document once it was clicked on: what is typed elsewhere is not for the sheet, nor
    // is a key that was pressed elsewhere and closed what it was pressed in, so that the sheet has the focus by now.
    if (!this.reach.hasKeys() || !this.reach.isHere(event.target)) return true;
    const mine = this.own(event);
    if (mine) {
      event.stopImmediatePropagation();
      event.preventDefault();
    }
    return mine;
  }

  private own(event: KeyboardEvent): boolean {
    const editor = this.hot.getActiveEditor() as unknown as CellEditor | undefined;
    if (editor?.isOpened()) return editor.picked(event) || this.downFromHeading(editor, event);
    const selection = event.altKey ? null : this.selection();
    if (!selection) return false;
    const mod = event.ctrlKey || event.metaKey;
    if (event.key === 'Home') this.toStart(mod, event.shiftKey);
    else if (mod) return false;
    else if (event.key === 'Delete' || event.key === 'Backspace') this.host.clear(selection);
    else if (event.key === '=') this.host.writeFormula({ text: '=', from: 1, to: 1 });
    else return false;
    return true;
  }

  /** Typing down a column that was chosen by its heading goes on below, and not round and round in what is chosen. */
  private downFromHeading(
    editor: CellEditor,
    { key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent,
  ): boolean {
    if (key !== 'Enter' || ctrlKey || metaKey || altKey || !this.hot.selection.isSelectedByAnyHeader())
      return false;
    editor.finishEditing();
    this.step(shiftKey ? -1 : 1, 0);
    return true;
  }

  /** To the first column, and with `top` to the first row: frozen columns are columns like others, and the rest scrolls back. */
  private toStart(top: boolean, extend: boolean): void {
    const range = this.hot.getSelectedRangeLast();
    if (!range) return;
    const line = top ? 0 : Math.max((extend ? range.to.row : range.highlight.row) ?? 0, 0);
    if (extend) this.hot.selectCell(range.from.row ?? 0, range.from.col ?? 0, line, 0, false);
    else this.hot.selectCell(line, 0, undefined, undefined, false);
    this.hot.scrollViewportTo({
      row: line,
      col: Math.min(this.showing.shown.frozen, this.showing.columns.length - 1),
      horizontalSnap: 'start',
    });
  }
}

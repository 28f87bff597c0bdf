import { builtInHelp, functionHelp, loadBuiltIns, loadFunctions } from '../state/functions.ts';
import type { Page } from '../state/page.ts';
import { draft, formulaIn, targetOf } from './draft.ts';
import { createEarlyField } from './early.ts';
import type { EditorEvents, FormulaEditor } from './formula-editor.ts';
import {
  arrow,
  cancel,
  changed,
  completing,
  focused,
  goOver,
  hand,
  moved,
  setField,
  take,
  type Where,
} from './writing.ts';

/** Puts an editor of the draft into its place: a plain field until the formula editor has loaded. Answers how to take it away. */
export function placeField(page: Page, where: Where, place: HTMLElement): () => void {
  const label = 'Formula or value';
  const events = eventsOf(page, where);
  let gone = false;
  let field: FormulaEditor = createEarlyField(place, label, events);
  setField(where, field);
  void loadFunctions(page);
  void import('./editor.ts').then(({ createFormulaEditor }) => {
    if (gone) return;
    const early = field;
    const focus = early.hasFocus();
    field = createFormulaEditor(place, label, events, early.chosen());
    setField(where, field);
    early.destroy();
    if (focus) field.take();
  });
  return () => {
    gone = true;
    setField(where, null);
    field.destroy();
  };
}

function eventsOf(page: Page, where: Where): EditorEvents {
  return {
    changed: (text, at) => changed(page, text, at),
    moved: (_text, at) => moved(page, at),
    commit(down, across) {
      // With nothing of a cell in hand, Tab goes on to what comes after the editor.
      if (across && draft.peek()?.scope !== 'cell') return false;
      void take(page, down, across, !down && !across);
      return true;
    },
    cancel: () => cancel(page),
    over: goOver,
    arrow: (...way) => arrow(page, ...way),
    focus(now) {
      if (now) {
        hand.value = where;
        void loadBuiltIns(page);
      }
      if (now || hand.peek() === where) focused.value = now;
    },
    completing: (open) => {
      completing.value = open;
    },
    vocabulary() {
      const target = targetOf(page);
      return {
        functions: functionHelp.value,
        builtIns: builtInHelp.value,
        outline: page.outline.value,
        sheet: page.outline.value?.sheets.find(({ id }) => id === target?.sheet) ?? null,
        inFormula: target !== null && formulaIn(target.scope, target.text) !== null,
      };
    },
  };
}

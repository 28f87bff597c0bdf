import { placeForName } from './caret.ts';
import type { EditorEvents, FormulaEditor } from './formula-editor.ts';

/**
 * A plain field that stands where the formula editor will be until that has loaded: whoever is faster than the network
 * types into it, and the editor takes over the text, the caret and the focus.
 */
export function createEarlyField(host: HTMLElement, label: string, events: EditorEvents): FormulaEditor {
  const field = document.createElement('textarea');
  field.className = 'early-field';
  field.rows = 1;
  field.spellcheck = false;
  field.autocomplete = 'off';
  field.placeholder = 'a value, or = and a formula';
  field.setAttribute('aria-label', label);
  host.append(field);
  const chosen = () => ({ text: field.value, from: field.selectionStart, to: field.selectionEnd });
  field.addEventListener('input', () => events.changed(field.value, field.selectionEnd));
  field.addEventListener('focus', () => events.focus(true));
  field.addEventListener('blur', () => events.focus(false));
  field.addEventListener('keydown', (event) => {
    if (event.isComposing) return;
    if (event.key === 'Enter' && !event.altKey) events.commit(event.shiftKey ? -1 : 1, 0);
    else if (event.key === 'Tab' && events.commit(0, event.shiftKey ? -1 : 1)) event.preventDefault();
    else if (event.key === 'Escape') events.cancel();
    else if (event.key === 'F2') events.over();
    else return;
    event.preventDefault();
    // The focus has gone to the sheet by now, and this key was not meant for it.
    event.stopPropagation();
  });
  const put = (text: string, from: number, to: number) => {
    field.focus();
    field.setRangeText(text, from, to, 'end');
    events.changed(field.value, field.selectionEnd);
  };
  return {
    setText(text) {
      if (field.value !== text) field.value = text;
    },
    chosen,
    setCheck: () => {},
    setLabel: (next) => field.setAttribute('aria-label', next),
    focus() {
      field.focus();
      field.setSelectionRange(field.value.length, field.value.length);
    },
    take(at) {
      field.focus();
      if (at) field.setSelectionRange(at.from, at.to);
    },
    hasFocus: () => document.activeElement === field,
    wantsName: () => placeForName(chosen(), events.vocabulary()) !== null,
    // Arrows are the caret's here.
    lacksName: () => false,
    insert: (text) => put(text, field.selectionStart, field.selectionEnd),
    point(text) {
      const at = placeForName(chosen(), events.vocabulary());
      if (at) put(text, at.from, at.to);
    },
    destroy: () => field.remove(),
  };
}

import { autocompletion, closeBrackets, completionStatus } from '@codemirror/autocomplete';
import { history } from '@codemirror/commands';
import { bracketMatching } from '@codemirror/language';
import { EditorState, StateEffect, StateField } from '@codemirror/state';
import type { DecorationSet } from '@codemirror/view';
import { Decoration, drawSelection, EditorView, keymap, placeholder, tooltips } from '@codemirror/view';
import type { FormulaCheck } from '../../session/api.ts';
import { type Chosen, lacksName, placeForName } from './caret.ts';
import { completeFrom } from './complete.ts';
import type { EditorEvents, FormulaEditor } from './formula-editor.ts';
import { keysFor } from './formula-keys.ts';
import { editorTheme } from './theme.ts';

/**
 * Milliseconds after the editor has got the focus in which nothing is coloured: until then its library takes a caret that
 * the new colours have moved to the start for the browser's doing, and leaves it there.
 */
const SETTLING = 250;

/** Shown while there is nothing. */
const hint = 'a value, or = and a formula';

function hintShown(): HTMLElement {
  const element = document.createElement('span');
  element.textContent = hint;
  return element;
}

const checked = StateEffect.define<FormulaCheck | null>();

const marks = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, transaction) {
    for (const effect of transaction.effects) if (effect.is(checked)) return decorate(effect.value);
    return value.map(transaction.changes);
  },
  provide: (field) => EditorView.decorations.from(field),
});

function decorate(check: FormulaCheck | null): DecorationSet {
  if (!check) return Decoration.none;
  const tokens = check.tokens
    .filter(({ from, to }) => to > from)
    .map(({ from, to, is }) => Decoration.mark({ class: `is-${is}` }).range(from, to));
  const problems = check.problems
    .filter(({ from, to }) => to > from)
    .map(({ from, to }) => Decoration.mark({ class: 'problem' }).range(from, to));
  return Decoration.set([...tokens, ...problems], true);
}

/**
 * The formula editor, in a shadow root: its styles come in as style sheet objects there, so that the page's content
 * security policy needs no exception for them.
 */
export function createFormulaEditor(
  host: HTMLElement,
  label: string,
  events: EditorEvents,
  start: Chosen,
): FormulaEditor {
  const root = host.shadowRoot ?? host.attachShadow({ mode: 'open', delegatesFocus: true });
  root.replaceChildren();
  let quiet = false;
  let focusedAt = 0;
  /** The name that was pointed at last, while nothing else has changed. */
  let pointed: { readonly from: number; readonly to: number } | null = null;
  const view = new EditorView({
    root,
    parent: root,
    state: EditorState.create({
      doc: start.text,
      selection: { anchor: start.from, head: start.to },
      extensions: [
        history(),
        drawSelection(),
        closeBrackets(),
        bracketMatching(),
        autocompletion({
          override: [(context) => completeFrom(context, events.vocabulary())],
          icons: false,
          // Its keys are among ours: Enter first asks whether there is anything left to complete.
          defaultKeymap: false,
        }),
        marks,
        tooltips({ position: 'fixed' }),
        placeholder(hintShown),
        EditorView.lineWrapping,
        EditorView.contentAttributes.of({
          'aria-label': label,
          // editable text takes the focus as it is; checkers of a long, scrolled formula look for this
          tabindex: '0',
          autocapitalize: 'off',
          autocorrect: 'off',
        }),
        // While the list of completions hangs from it; what it says of the list is its library's.
        EditorView.contentAttributes.of(({ state }) =>
          completionStatus(state) === 'active'
            ? { role: 'combobox', 'aria-expanded': 'true' }
            : { 'aria-placeholder': hint },
        ),
        editorTheme,
        keymap.of(keysFor(events)),
        EditorView.updateListener.of((update) => {
          if (update.focusChanged) {
            focusedAt = performance.now();
            events.focus(view.hasFocus);
          }
          if (quiet) return;
          const caret = update.state.selection.main.head;
          if (update.docChanged || update.selectionSet) pointed = null;
          if (update.docChanged) events.changed(update.state.doc.toString(), caret);
          else if (update.selectionSet) events.moved(update.state.doc.toString(), caret);
          const list = completionStatus(update.state) === 'active';
          if (list !== (completionStatus(update.startState) === 'active')) events.completing(list);
        }),
      ],
    }),
  });
  // Enter takes the text: it is one line, however it is broken to fit.
  view.contentDOM.removeAttribute('aria-multiline');
  const silently = (work: () => void) => {
    quiet = true;
    work();
    quiet = false;
  };
  const setCheck = (text: string, check: FormulaCheck | null): void => {
    if (view.state.doc.toString() !== text) return;
    const early = focusedAt + SETTLING - performance.now();
    if (early > 0) setTimeout(() => setCheck(text, check), early);
    else silently(() => view.dispatch({ effects: checked.of(check) }));
  };
  const chosen = (): Chosen => {
    const { from, to } = view.state.selection.main;
    return { text: view.state.doc.toString(), from, to };
  };
  const placeOfName = () => pointed ?? placeForName(chosen(), events.vocabulary());
  return {
    setText(text) {
      if (view.state.doc.toString() === text) return;
      pointed = null;
      silently(() =>
        view.dispatch({
          changes: { from: 0, to: view.state.doc.length, insert: text },
          selection: { anchor: text.length },
          effects: checked.of(null),
        }),
      );
    },
    chosen,
    setCheck,
    setLabel: (next) => view.contentDOM.setAttribute('aria-label', next),
    focus() {
      view.focus();
      view.dispatch({ selection: { anchor: view.state.doc.length } });
    },
    take(at) {
      view.focus();
      if (at) silently(() => view.dispatch({ selection: { anchor: at.from, head: at.to } }));
    },
    hasFocus: () => view.hasFocus,
    wantsName: () => placeOfName() !== null,
    lacksName: () => pointed !== null || lacksName(chosen()),
    insert(text) {
      view.dispatch(view.state.replaceSelection(text));
      view.focus();
    },
    point(name) {
      const at = placeOfName();
      if (!at) return;
      view.focus();
      view.dispatch({
        changes: { ...at, insert: name },
        selection: { anchor: at.from + name.length },
        userEvent: 'input.complete',
      });
      pointed = { from: at.from, to: at.from + name.length };
    },
    destroy: () => view.destroy(),
  };
}

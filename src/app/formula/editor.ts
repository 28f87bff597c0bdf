import {
  acceptCompletion,
  autocompletion,
  closeBrackets,
  closeBracketsKeymap,
  closeCompletion,
  completionKeymap,
  completionStatus,
} from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { EditorState, StateEffect, StateField } from '@codemirror/state';
import type { DecorationSet } from '@codemirror/view';
import { Decoration, drawSelection, EditorView, keymap, placeholder, tooltips } from '@codemirror/view';
import type { FormulaCheck } from '../../session/api.ts';
import { type Chosen, placeForName } from './caret.ts';
import type { Vocabulary } from './complete.ts';
import { completeFrom } from './complete.ts';
import { editorTheme } from './theme.ts';

/** What the formula editor tells its surroundings. */
export interface EditorEvents {
  changed(text: string, caret: number): void;
  moved(text: string, caret: number): void;
  commit(): void;
  cancel(): void;
  focus(focused: boolean): void;
  vocabulary(): Vocabulary;
}

export interface FormulaEditor {
  setText(text: string): void;
  chosen(): Chosen;
  /** Colours and underlines the text by what the session found; ignored when the text has moved on. */
  setCheck(text: string, check: FormulaCheck | null): void;
  setLabel(label: string): void;
  /** Takes the focus, the caret at the end. */
  focus(): void;
  /** Takes the focus, the caret where it is. */
  take(): void;
  hasFocus(): boolean;
  /** True where a name could stand, or where one was just pointed at that another may take the place of. */
  wantsName(): boolean;
  /** Writes over the selection, as if typed. */
  insert(text: string): void;
  /** Writes a name that was pointed at; pointed at again, the next one takes its place. */
  point(name: string): void;
  destroy(): void;
}

/**
 * Milliseconds after the editor has got the focus in which nothing is coloured: until then its library takes a caret that
 * the new colours have moved to the start for the browser's doing, and leaves it there.
 */
const SETTLING = 250;

const checked = StateEffect.define<FormulaCheck | null>();

const marks = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, transaction) {
    for (const effect of transaction.effects) if (effect.is(checked)) return decorate(effect.value);
    return value.map(transaction.changes);
  },
  provide: (field) => EditorView.decorations.from(field),
});

/**
 * Typing over chosen text is done here, not by the browser: where it takes coloured words away, it keeps their look for
 * what is typed by writing a style attribute, which the page's policy forbids.
 */
function typeOver(view: EditorView, event: KeyboardEvent): boolean {
  if (event.key.length !== 1 || event.ctrlKey || event.metaKey || event.altKey || event.isComposing)
    return false;
  if (view.state.selection.main.empty) return false;
  view.dispatch(view.state.replaceSelection(event.key), { userEvent: 'input.type' });
  return true;
}

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
        autocompletion({ override: [(context) => completeFrom(context, events.vocabulary())], icons: false }),
        marks,
        tooltips({ position: 'fixed' }),
        placeholder('a value, or = and a formula'),
        EditorView.lineWrapping,
        EditorView.contentAttributes.of({
          'aria-label': label,
          autocapitalize: 'off',
          autocorrect: 'off',
        }),
        editorTheme,
        keymap.of([
          { any: typeOver },
          { key: 'Tab', run: (v) => completionStatus(v.state) === 'active' && acceptCompletion(v) },
          {
            key: 'Enter',
            run: (v) => {
              if (completionStatus(v.state) === 'active' && acceptCompletion(v)) return true;
              events.commit();
              return true;
            },
            // The focus has gone to the sheet by now, and this key was not meant for it.
            stopPropagation: true,
          },
          {
            key: 'Escape',
            run: (v) => {
              if (closeCompletion(v)) return true;
              events.cancel();
              return true;
            },
            stopPropagation: true,
          },
          {
            key: 'Shift-Enter',
            run: (v) => {
              v.dispatch(v.state.replaceSelection('\n'));
              return true;
            },
          },
          ...closeBracketsKeymap,
          ...completionKeymap.filter(({ key }) => key !== 'Enter' && key !== 'Escape'),
          ...historyKeymap,
          ...defaultKeymap.filter(({ key }) => key !== 'Enter'),
        ]),
        EditorView.updateListener.of((update) => {
          if (quiet) return;
          const caret = update.state.selection.main.head;
          if (update.docChanged || update.selectionSet) pointed = null;
          if (update.docChanged) events.changed(update.state.doc.toString(), caret);
          else if (update.selectionSet) events.moved(update.state.doc.toString(), caret);
          if (update.focusChanged) {
            focusedAt = performance.now();
            events.focus(view.hasFocus);
          }
        }),
      ],
    }),
  });
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
    take: () => view.focus(),
    hasFocus: () => view.hasFocus,
    wantsName: () => placeOfName() !== null,
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

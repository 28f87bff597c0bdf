import {
  acceptCompletion,
  closeBracketsKeymap,
  closeCompletion,
  completionKeymap,
  completionStatus,
  selectedCompletion,
} from '@codemirror/autocomplete';
import { defaultKeymap, historyKeymap } from '@codemirror/commands';
import type { EditorView, KeyBinding } from '@codemirror/view';
import type { EditorEvents } from './formula-editor.ts';

/**
 * The keys of the formula editor. Those that end it have the focus in the sheet by the time the sheet hears of them: they
 * are kept from it.
 */
export function keysFor(events: EditorEvents): readonly KeyBinding[] {
  const arrow = (key: string, down: number, across: number): KeyBinding => {
    const points = (extend: boolean) => (view: EditorView) =>
      completionStatus(view.state) !== 'active' && events.arrow(down, across, extend);
    return { key, run: points(false), shift: points(true) };
  };
  return [
    { any: typeOver },
    arrow('ArrowUp', -1, 0),
    arrow('ArrowDown', 1, 0),
    arrow('ArrowLeft', 0, -1),
    arrow('ArrowRight', 0, 1),
    {
      key: 'Tab',
      run: (view) => completes(view) || events.commit(0, 1),
      shift: () => events.commit(0, -1),
      stopPropagation: true,
    },
    {
      key: 'Enter',
      run: (view) => {
        if (!isWhole(view) && completes(view)) return true;
        events.commit(1, 0);
        return true;
      },
      shift: () => {
        events.commit(-1, 0);
        return true;
      },
      stopPropagation: true,
    },
    {
      key: 'Mod-Enter',
      run() {
        events.commit(0, 0);
        return true;
      },
      stopPropagation: true,
    },
    {
      key: 'Alt-Enter',
      run(view) {
        view.dispatch(view.state.replaceSelection('\n'));
        return true;
      },
    },
    {
      key: 'Escape',
      run(view) {
        if (completionStatus(view.state) === 'active') closeCompletion(view);
        else events.cancel();
        return true;
      },
      stopPropagation: true,
    },
    {
      key: 'F2',
      run() {
        events.over();
        return true;
      },
      stopPropagation: true,
    },
    ...closeBracketsKeymap,
    ...completionKeymap.filter(({ key }) => key !== 'Enter' && key !== 'Escape'),
    ...historyKeymap,
    ...defaultKeymap.filter(({ key }) => key !== 'Enter'),
  ];
}

const completes = (view: EditorView): boolean =>
  completionStatus(view.state) === 'active' && acceptCompletion(view);

/** True where the word before the caret is already all that the list would make of it. */
function isWhole({ state }: EditorView): boolean {
  const chosen = selectedCompletion(state);
  if (!chosen || chosen.apply !== undefined) return false;
  const before = state.sliceDoc(0, state.selection.main.head);
  return before.slice(-chosen.label.length).toLowerCase() === chosen.label.toLowerCase();
}

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

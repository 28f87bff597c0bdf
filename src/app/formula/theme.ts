import { EditorView } from '@codemirror/view';

/** The editor's look, from the page's tokens (custom properties reach into its shadow root). */
export const editorTheme = EditorView.theme({
  '&': { backgroundColor: 'transparent', color: 'var(--ink)' },
  '&.cm-focused': { outline: 'none' },
  '.cm-scroller': {
    fontFamily: 'var(--face-formula)',
    fontSize: '14px',
    lineHeight: '22px',
    maxHeight: '132px',
  },
  '.cm-content': { padding: 'calc((var(--target) - 22px) / 2) 0', caretColor: 'var(--ink)' },
  '.cm-line': { padding: '0 8px' },
  '.cm-cursor': { borderLeftColor: 'var(--ink)', borderLeftWidth: '2px' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground': {
    background: 'var(--brass-wash)',
  },
  '.cm-placeholder': {
    color: 'var(--ink-soft)',
    maxWidth: '100%',
    overflow: 'hidden',
    textOverflow: 'ellipsis',
    whiteSpace: 'nowrap',
  },
  '.is-function': { color: 'var(--steel)', fontWeight: '600' },
  '.is-column, .is-sheet': {
    color: 'var(--ink)',
    textDecoration: 'underline 1px var(--rule-firm)',
    textUnderlineOffset: '3px',
  },
  '.is-name': {
    color: 'var(--brass)',
    textDecoration: 'underline 1px var(--brass-fill)',
    textUnderlineOffset: '3px',
  },
  '.is-cell': { color: 'var(--brass)' },
  '.is-number': { color: 'var(--moss)' },
  '.is-text': { color: 'var(--ochre)' },
  '.is-operator, .is-bracket': { color: 'var(--ink-soft)' },
  '&.cm-focused .cm-matchingBracket': {
    backgroundColor: 'var(--brass-wash)',
    color: 'var(--ink)',
    outline: '1px solid var(--brass-fill)',
  },
  '&.cm-focused .cm-nonmatchingBracket': { backgroundColor: 'transparent', color: 'var(--brick)' },
  '.problem, .is-unknown': {
    textDecoration: 'underline wavy 1.5px var(--brick)',
    textUnderlineOffset: '4px',
  },
  '.cm-tooltip': {
    border: '1px solid var(--rule-firm)',
    backgroundColor: 'var(--raised)',
    color: 'var(--ink)',
    boxShadow: '0 6px 18px var(--shade)',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul': {
    fontFamily: 'var(--face)',
    fontSize: '14px',
    maxHeight: '264px',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': {
    padding: '4px 10px',
    lineHeight: '20px',
    minHeight: '28px',
  },
  '.cm-tooltip-autocomplete ul li[aria-selected]': { background: 'var(--brass-wash)', color: 'var(--ink)' },
  '.cm-completionMatchedText': { textDecoration: 'none', fontWeight: '600' },
  '.cm-completionDetail': {
    color: 'var(--ink-soft)',
    fontStyle: 'normal',
    display: 'inline-block',
    maxWidth: '300px',
    overflow: 'hidden',
    textOverflow: 'ellipsis',
    verticalAlign: 'bottom',
    marginLeft: '10px',
    fontSize: '13px',
  },
  '.cm-tooltip.cm-completionInfo': {
    padding: '8px 10px',
    maxWidth: '320px',
    fontFamily: 'var(--face)',
    fontSize: '13px',
  },
});

/** The preview of what will be printed, in front of the page. */
import { useSignal } from '@preact/signals';
import { type ComponentChildren, render, type VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Paper } from '../../session/handouts/handout-settings.ts';
import { download, fileNameFor } from '../files/files.ts';
import { focusCentre } from '../state/focus.ts';
import type { Page } from '../state/page.ts';
import './preview.css';

interface Props {
  /** What is shown, for readers of the screen, and how much of it. */
  readonly label: string;
  readonly amount: string;
  /** File name without ending. */
  readonly file: string;
  readonly style: (paper: Paper) => string;
  /** A document of its own. */
  readonly html: (paper: Paper) => string;
  readonly close: () => void;
  /** What to know before printing, a sentence each; shown above the pages and never printed. */
  readonly notes?: readonly string[];
  /** Buttons of its own. */
  readonly more?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** Pages as they will be printed, with what can be done with them above. */
export function PrintPreview({ label, amount, file, style, html, close, notes = [], more, children }: Props) {
  const paper = useSignal<Paper>('a4');
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  // The printer's size of paper stands in a style sheet of its own, which goes when the view is closed.
  useEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(style(paper.value));
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== sheet);
    };
  }, [paper.value, style]);
  return (
    <div
      role="dialog"
      aria-modal="true"
      aria-label={label}
      class="handout-frame"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        close();
      }}
    >
      <div class="handout-tools">
        <strong>{amount}</strong>
        {more}
        <label>
          Paper{' '}
          <select
            value={paper.value}
            onChange={(event) => {
              paper.value = event.currentTarget.value as Paper;
            }}
          >
            <option value="a4">A4</option>
            <option value="letter">Letter</option>
          </select>
        </label>
        <button ref={first} type="button" class="strong" onClick={() => globalThis.print()}>
          Print or save as PDF
        </button>
        <button
          type="button"
          class="firm"
          onClick={() => download(html(paper.value), fileNameFor(file, '.html'), 'text/html')}
        >
          Save as HTML
        </button>
        <button type="button" class="firm" onClick={close}>
          Close
        </button>
      </div>
      {notes.length > 0 && (
        <section class="handout-notes" aria-label="Before you print">
          <h2>Before you print</h2>
          <ul>
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </section>
      )}
      <div class="handout-pages">{children}</div>
    </div>
  );
}

/** Shows a preview over the page, which rests until it is closed; then the keys go back to where they went, or to the sheet. */
export function openPreview(page: Page, preview: (close: () => void) => VNode): void {
  page.finderOpen.value = false;
  const box = document.createElement('div');
  box.className = 'handout-view';
  const before = document.activeElement;
  const behind = [...document.body.children].filter((element) => !element.hasAttribute('inert'));
  for (const element of behind) element.setAttribute('inert', '');
  document.body.append(box);
  const close = () => {
    render(null, box);
    box.remove();
    for (const element of behind) element.removeAttribute('inert');
    if (before instanceof HTMLElement && before.isConnected && before !== document.body) before.focus();
    else focusCentre(page);
  };
  render(preview(close), box);
}

import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { handoutDocument, handoutShapes } from '../../session/handouts/document.ts';
import type { Handouts } from '../../session/handouts/handouts.ts';
import type { Paper } from '../../session/handouts/settings.ts';
import { handoutStyle } from '../../session/handouts/style.ts';
import { asElements } from '../figure/Drawing.tsx';
import { download, fileNameFor } from '../files/files.ts';
import './handouts.css';

/** Handouts as they will be printed, with what can be done with them above. */
export function HandoutView({ made, close }: { made: Handouts; close: () => void }) {
  const paper = useSignal<Paper>('a4');
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  // The printer's size of paper stands in a style sheet of its own, which goes when the view is closed.
  useEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(handoutStyle(paper.value));
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== sheet);
    };
  }, [paper.value]);
  const { length } = made.handouts;
  const name = length === 1 ? made.handouts[0]!.athlete : made.title;
  return (
    <div
      role="dialog"
      aria-modal="true"
      aria-label="Handouts"
      class="handout-frame"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        close();
      }}
    >
      <div class="handout-tools">
        <strong>{length === 1 ? 'One page' : `${length} pages`}</strong>
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
          onClick={() =>
            download(handoutDocument(made, paper.value), fileNameFor(name, '-handout.html'), 'text/html')
          }
        >
          Save as HTML
        </button>
        <button type="button" class="firm" onClick={close}>
          Close
        </button>
      </div>
      <div class="handout-pages">{handoutShapes(made).map(asElements)}</div>
    </div>
  );
}

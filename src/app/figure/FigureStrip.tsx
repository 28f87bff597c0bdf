import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Figure } from '../../session/api.ts';
import { usePage } from '../state/context.ts';
import { gone } from '../state/follow.ts';
import { Drawing } from './Drawing.tsx';
import './figure.css';

/** On tablets and phones, over the sheet: the selected lifter in small, and the sentence; a touch opens the figure. */
export function FigureStrip() {
  const page = usePage();
  const figure = useSignal<Figure | null>(null);
  const asked = useRef(0);
  useSignalEffect(() => {
    const turn = ++asked.current;
    const sheet = page.sheet.value;
    const row = Math.min(page.selection.value?.row ?? 0, (sheet?.rows ?? 0) - 1);
    // What was drawn before the book changed is drawn again.
    page.outline.value;
    if (!sheet || row < 0) {
      figure.value = null;
      return;
    }
    void page.service.figure(sheet.id, row, {}).then((answer) => {
      if (turn === asked.current) figure.value = answer;
    }, gone);
  });
  const now = figure.value;
  if (!now?.headline || page.side.value) return null;
  return (
    <section class="figure-strip" aria-label="Figure of the selected row">
      <button
        type="button"
        onClick={() => {
          page.contentsOpen.value = false;
          page.side.value = 'figure';
        }}
      >
        <span aria-hidden="true">
          <Drawing figure={now} plates prefix="strip-" />
        </span>
        <span>
          <b>{now.title}</b>
          <span>{now.headline}</span>
        </span>
      </button>
    </section>
  );
}

import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Charted } from '../../session/charts/chart.ts';
import { perform } from '../commands/all.ts';
import { usePage } from '../state/context.ts';
import { focusCentre } from '../state/focus.ts';
import './charts.css';
import { ChartView } from './ChartView.tsx';
import { PersonPicker, personFor } from './PersonPicker.tsx';

/** The chart on show, over the sheet. Asks the session again whenever the book changes. */
export function ChartPlace() {
  const page = usePage();
  const chart = useSignal<Charted | string | null>(null);
  const asked = useRef(0);
  const { chartPerson: who } = page;
  useSignalEffect(() => {
    const key = page.chart.value;
    const outline = page.outline.value;
    const turn = ++asked.current;
    if (key === null || !outline) {
      chart.value = null;
      return;
    }
    // Undo may have taken the chart away.
    if (!outline.charts.some((known) => known.key === key)) {
      page.chart.value = null;
      return;
    }
    void page.service.chart(key, personFor(page, who.value)).then(
      (answer) => {
        if (turn === asked.current) chart.value = answer;
      },
      (reason: unknown) => {
        if (turn === asked.current) chart.value = reason instanceof Error ? reason.message : String(reason);
      },
    );
  });
  const shown = page.chart.value !== null;
  // The keys come along with what is in the centre, unless they are at work beside it.
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (shown && document.activeElement === document.body) place.current?.focus();
  }, [shown]);
  if (!shown) return null;
  const close = () => {
    page.chart.value = null;
    requestAnimationFrame(() => focusCentre(page));
  };
  return (
    <section ref={place} class="chart-place" data-part="chart" aria-label="Chart" tabIndex={-1}>
      <header class="chart-head">
        <h2>{typeof chart.value === 'object' ? (chart.value?.title ?? 'Drawing the chart…') : 'Chart'}</h2>
        {typeof chart.value === 'object' && chart.value !== null && (
          <PersonPicker people={chart.value.people} person={chart.value.person} who={who} />
        )}
        <button type="button" class="firm" onClick={() => void perform('change-chart', page)}>
          Change…
        </button>
        <button type="button" class="firm" onClick={close}>
          Back to the sheet
        </button>
      </header>
      {typeof chart.value === 'string' && <p class="chart-problem">{chart.value}</p>}
      {chart.value !== null && typeof chart.value === 'object' && <ChartView data={chart.value} />}
    </section>
  );
}

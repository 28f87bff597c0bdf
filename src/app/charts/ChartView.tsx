/** A chart of the book in the centre of the page, with its points as a table and ways to save it. */
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Charted } from '../../session/charts/chart.ts';
import type { ChartPoint } from '../../session/charts/data.ts';
import { sizeFor } from '../../session/charts/drawing/places.ts';
import { asElements } from '../figure/Drawing.tsx';
import { download, fileNameFor } from '../files/files.ts';
import { goTo, guarded } from '../state/actions.ts';
import { usePage } from '../state/context.ts';
import { ChartPanels } from './ChartPanels.tsx';
import { ChartTable } from './ChartTable.tsx';
import { type At, nextPoint, words } from './points.ts';

type Drawer = typeof import('./drawer.ts');

/** A chart with what can be read from it: point by point with mouse and keys, as a table, and out of the page. */
export function ChartView({ data }: { data: Charted }) {
  const page = usePage();
  const view = useRef<HTMLDivElement>(null);
  const width = useSignal(0);
  const table = useSignal(false);
  const at = useSignal<At | null>(null);
  const drawer = useSignal<Drawer | null>(null);
  const many = data.panels.length > 1;

  // The drawing library is loaded when the first chart is shown.
  useEffect(() => {
    void import('./drawer.ts').then((loaded) => {
      drawer.value = loaded;
    });
  }, [drawer]);
  useEffect(() => {
    const element = view.current!;
    const observer = new ResizeObserver(() => {
      if (element.clientWidth > 0) width.value = Math.floor(element.clientWidth);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [width]);
  useEffect(() => {
    at.value = null;
  }, [data, at]);

  const go = ({ row }: ChartPoint) => {
    const sheet = page.outline.value?.sheets.find(({ id }) => id === data.sheet);
    const name = data.record.columns.at(-1);
    const column = sheet?.columns.find((one) => one.name === name) ?? sheet?.columns[0];
    if (sheet && column) goTo(page, { sheet: sheet.id, column: column.id, row });
  };
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key.toLowerCase() === 't') table.value = !table.value;
    else if (event.key === 'Escape') at.value = null;
    else if (event.key === 'Enter' && at.value) go(at.value.point);
    else {
      const next = table.value ? undefined : nextPoint(data, at.value, event.key);
      if (next === undefined) return;
      at.value = next;
    }
    event.preventDefault();
    event.stopPropagation();
  };
  const size = sizeFor(data, Math.max(240, width.value));
  const save = (as: 'svg' | 'png') =>
    void guarded(page, async () => {
      const { savePanels } = await import('./export-chart.ts');
      await savePanels(data, size, view.current!, as);
      return true;
    });
  const saveCsv = () =>
    void guarded(page, async () => {
      const { csvOfChart } = await import('./export-chart.ts');
      download(csvOfChart(data), fileNameFor(data.title, '.csv'), 'text/csv');
      return true;
    });
  const legend = drawer.value?.legendOf(data, size.height);
  const now = at.value && data.panels[at.value.panel]?.points.includes(at.value.point) ? at.value : null;
  return (
    <div class="chart-view" ref={view}>
      {data.needs !== undefined && <p class="chart-needs">{data.needs}</p>}
      {data.needs === undefined && (
        <>
          <div class="chart-tools" role="toolbar" aria-label="This chart">
            <button
              type="button"
              class="firm"
              aria-pressed={table.value}
              onClick={() => {
                table.value = !table.value;
              }}
            >
              Table <kbd>T</kbd>
            </button>
            <button type="button" class="firm" onClick={() => save('svg')}>
              Save as SVG
            </button>
            <button type="button" class="firm" onClick={() => save('png')}>
              Save as PNG
            </button>
            <button type="button" class="firm" onClick={saveCsv}>
              Save as CSV
            </button>
          </div>
          {legend && !table.value && asElements(legend)}
          {many && !table.value && <p class="chart-axes">{axesOf(data)}</p>}
          <div
            class={table.value ? 'chart-stage has-table' : 'chart-stage'}
            // biome-ignore lint/a11y/noNoninteractiveTabindex: its points are read with the keys
            tabIndex={0}
            role="application"
            aria-label={`${data.title}. ${data.notes.join(' ')} Arrow keys move between points, Enter opens the row, T shows the table.`}
            onKeyDown={key}
            onPointerLeave={() => {
              at.value = null;
            }}
          >
            {table.value && <ChartTable data={data} />}
            {!table.value && drawer.value && width.value > 0 && (
              <ChartPanels
                data={data}
                size={size}
                draw={drawer.value.drawPanel}
                at={now}
                read={(next) => {
                  at.value = next;
                }}
                go={go}
              />
            )}
          </div>
          <output class="chart-reading" aria-live="polite">
            {now ? words(data, now.point) : 'Point to a value to read it; Enter opens its row.'}
          </output>
        </>
      )}
      <ul class="chart-notes">
        {data.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </div>
  );
}

/** What the axes of all panels are, said once. */
const axesOf = ({ x, y, beside }: Charted): string =>
  `${beside ? `y-axis above: ${y.label}; below: ${beside.label}` : y.label && `y-axis: ${y.label}`}${y.label ? '. ' : ''}x-axis: ${x.label}. Shared axes.`;

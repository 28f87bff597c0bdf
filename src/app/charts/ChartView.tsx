import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { ChartData, ChartPoint } from '../../session/charts/data.ts';
import { download, fileNameFor } from '../files/files.ts';
import { usePage } from '../shell/context.ts';
import { guarded } from '../state/actions.ts';
import { ChartTable } from './ChartTable.tsx';
import type { Drawn } from './draw.ts';
import { Legend } from './Legend.tsx';
import { nextPoint, words } from './points.ts';

interface Shown {
  readonly drawn: Drawn;
  readonly points: readonly ChartPoint[];
  readonly box: HTMLElement;
}

/** A chart with what can be read from it: point by point with mouse and keys, as a table, and out of the page. */
export function ChartView({ data }: { data: ChartData }) {
  const page = usePage();
  const place = useRef<HTMLDivElement>(null);
  const shown = useRef<readonly Shown[]>([]);
  const width = useSignal(0);
  const table = useSignal(false);
  const at = useSignal<{ readonly panel: number; readonly point: ChartPoint } | null>(null);
  const many = data.panels.length > 1;

  useEffect(() => {
    const element = place.current!;
    const observer = new ResizeObserver(() => {
      if (element.clientWidth > 0) width.value = Math.floor(element.clientWidth);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [width]);

  useEffect(() => {
    const element = place.current;
    if (!element || width.value < 50 || table.value) return;
    let gone = false;
    at.value = null;
    // The drawing library is loaded when the first chart is shown.
    void import('./draw.ts').then(({ drawPanel, drawDots, mostInSvg }) => {
      if (gone) return;
      const columns = many ? Math.max(1, Math.floor(width.value / 300)) : 1;
      const wide = Math.floor((width.value - (columns - 1) * 12) / columns);
      const high = many ? 230 : Math.max(280, Math.min(560, Math.round(wide * 0.62)));
      const count = data.panels.reduce((sum, { points }) => sum + points.length, 0);
      shown.current = data.panels.map((panel) => {
        const box = document.createElement('div');
        box.className = 'chart-box';
        const drawn = drawPanel(data, panel, wide, high, count <= mostInSvg);
        box.append(drawn.svg);
        return { drawn, points: panel.points, box };
      });
      element.replaceChildren(...shown.current.map(({ box }) => box));
      if (count > mostInSvg && data.kind !== 'load')
        shown.current.forEach(({ drawn, box }, index) => {
          const canvas = document.createElement('canvas');
          canvas.setAttribute('aria-hidden', 'true');
          box.prepend(canvas);
          drawDots(canvas, drawn, data.panels[index]!, wide, high);
        });
    });
    return () => {
      gone = true;
    };
  }, [data, width.value, table.value, many, at]);

  // The point being read is ringed in its panel.
  useEffect(() => {
    const now = at.value;
    if (!now) return;
    const one = shown.current[now.panel];
    if (!one) return;
    const [x, y] = one.drawn.at(now.point);
    const ring = document.createElementNS('http://www.w3.org/2000/svg', 'circle');
    for (const [name, value] of Object.entries({ class: 'chart-ring', cx: x, cy: y, r: 7 }))
      ring.setAttribute(name, String(value));
    one.drawn.svg.append(ring);
    return () => ring.remove();
  }, [at.value]);

  const point = (event: PointerEvent) => {
    let best: { panel: number; point: ChartPoint; far: number } | null = null;
    shown.current.forEach(({ drawn, points, box }, panel) => {
      const edge = box.getBoundingClientRect();
      const [px, py] = [event.clientX - edge.left, event.clientY - edge.top];
      if (px < 0 || py < 0 || px > edge.width || py > edge.height) return;
      for (const one of points) {
        const [x, y] = drawn.at(one);
        const far = (x - px) ** 2 + (y - py) ** 2;
        if (!best || far < best.far) best = { panel, point: one, far };
      }
    });
    const found = best as { panel: number; point: ChartPoint; far: number } | null;
    at.value = found && found.far < 40 ** 2 ? { panel: found.panel, point: found.point } : null;
  };
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key.toLowerCase() === 't') table.value = !table.value;
    else if (event.key === 'Escape') at.value = null;
    else {
      const next = table.value ? undefined : nextPoint(data, at.value, event.key);
      if (next === undefined) return;
      at.value = next;
    }
    event.preventDefault();
    event.stopPropagation();
  };
  const svgs = () => shown.current.map(({ drawn }) => drawn.svg);
  const save = (as: 'svg' | 'png') =>
    void guarded(page, async () => {
      const { savePanels } = await import('./export.ts');
      await savePanels(data, svgs(), as);
      return true;
    });
  const saveCsv = () =>
    void guarded(page, async () => {
      const { csvOfChart } = await import('./export.ts');
      download(csvOfChart(data), fileNameFor(data.title, '.csv'), 'text/csv');
      return true;
    });
  const about = `${data.title}. ${data.notes.join(' ')}`;
  return (
    <div class="chart-view">
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
        <button type="button" class="firm" disabled={table.value} onClick={() => save('svg')}>
          Save as SVG
        </button>
        <button type="button" class="firm" disabled={table.value} onClick={() => save('png')}>
          Save as PNG
        </button>
        <button type="button" class="firm" onClick={saveCsv}>
          Save as CSV
        </button>
      </div>
      {data.groups.length > 1 && data.x.is !== 'groups' && !many && <Legend groups={data.groups} />}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: it has the role of an application for its own keys */}
      <div
        class="chart-stage"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: its points are read with the keys
        tabIndex={0}
        role="application"
        aria-label={`${about} Arrow keys go from point to point, T shows the table.`}
        onKeyDown={key}
        onPointerMove={point}
        onPointerDown={point}
        onPointerLeave={() => {
          at.value = null;
        }}
      >
        {table.value && <ChartTable data={data} />}
        <div ref={place} class={many ? 'chart-panels' : 'chart-single'} hidden={table.value} />
      </div>
      <output class="chart-reading" aria-live="polite">
        {at.value ? words(data, at.value.point) : 'Point at a mark, or use the arrow keys, to read it.'}
      </output>
      <ul class="chart-notes">
        {data.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </div>
  );
}

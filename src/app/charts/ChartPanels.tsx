import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { ChartData, ChartPoint } from '../../session/charts/data.ts';
import { classOf } from '../../session/charts/drawing/looks.ts';
import type { drawPanel } from '../../session/charts/drawing/panel.ts';
import type { Size } from '../../session/charts/drawing/places.ts';
import { asElements } from '../figure/Drawing.tsx';
import { type At, words } from './points.ts';

/** How near the pointer must be to a point to read it, px. */
const near = 40;

/** The drawings of a chart. A pointer over them reads the point next to it; the one being read is ringed and told. */
export function ChartPanels({
  data,
  size,
  draw,
  at,
  read,
  go,
}: {
  data: ChartData;
  size: Size;
  draw: typeof drawPanel;
  at: At | null;
  read: (at: At | null) => void;
  go: (point: ChartPoint) => void;
}) {
  const stage = useRef<HTMLDivElement>(null);
  const many = data.panels.length > 1;
  const panels = useMemo(
    () =>
      data.panels.map((panel) => {
        const drawn = draw(data, panel, size, many ? 'shared' : 'named');
        return {
          drawn,
          points: panel.points,
          places: panel.points.map(drawn.at),
          shown: asElements(drawn.shape),
        };
      }),
    [data, size.width, size.height, draw, many],
  );
  // The line of the point that is read stands out among many lines of one colour.
  useEffect(() => {
    if (!at || data.kind !== 'trend') return;
    const lit = [...(stage.current?.querySelectorAll(`.${classOf(at.point.group)}`) ?? [])];
    for (const element of lit) element.classList.add('chart-lit');
    return () => {
      for (const element of lit) element.classList.remove('chart-lit');
    };
  }, [at, data]);

  const readAt = (panel: number, event: PointerEvent) => {
    const { points, places } = panels[panel]!;
    const edge = (event.currentTarget as Element).getBoundingClientRect();
    const [px, py] = [event.clientX - edge.left, event.clientY - edge.top];
    let best = -1;
    let least = near ** 2;
    places.forEach(([x, y], index) => {
      const far = (x - px) ** 2 + (y - py) ** 2;
      if (far < least) [best, least] = [index, far];
    });
    read(best < 0 ? null : { panel, point: points[best]! });
  };
  return (
    <div ref={stage} class={many ? 'chart-panels' : 'chart-single'}>
      {panels.map(({ drawn, shown }, index) => {
        const point = at?.panel === index ? at.point : null;
        return (
          // biome-ignore lint/a11y/noStaticElementInteractions: what the pointer does here, keys do in the stage around it
          <div
            key={index}
            class="chart-box"
            onPointerMove={(event) => readAt(index, event)}
            onPointerDown={(event) => readAt(index, event)}
            onDblClick={() => at && go(at.point)}
          >
            {shown}
            {point && <Reading data={data} point={point} place={drawn.at(point)} width={size.width} />}
          </div>
        );
      })}
    </div>
  );
}

/** A ring about the point and what it says, on the side where there is room. */
function Reading({
  data,
  point,
  place: [x, y],
  width,
}: {
  data: ChartData;
  point: ChartPoint;
  place: readonly [number, number];
  width: number;
}) {
  const left = x > width / 2;
  return (
    <div class="chart-reading-at" style={{ left: `${x}px`, top: `${y}px` }} aria-hidden="true">
      <span class="chart-ring" />
      <span
        class={`chart-tip ${left ? 'is-left' : 'is-right'}`}
        style={{ maxWidth: `${Math.max(140, (left ? x : width - x) - 16)}px` }}
      >
        {words(data, point)}
      </span>
    </div>
  );
}

import { render } from 'preact';
import type { ChartData } from '../../session/charts/data.ts';
import { drawPanel } from '../../session/charts/drawing/panel.ts';
import type { Size } from '../../session/charts/drawing/places.ts';
import { safe } from '../../session/text/csv.ts';
import { isoFromSerial } from '../../units/date.ts';
import { asElements } from '../figure/Drawing.tsx';
import { savePng, saveSvg } from '../figure/export-figure.ts';

/** Saves each panel as a file of its own, with its axes named. */
export async function savePanels(
  data: ChartData,
  size: Size,
  view: HTMLElement,
  as: 'svg' | 'png',
): Promise<void> {
  const save = as === 'svg' ? saveSvg : savePng;
  // Looks are read from the style sheets, so the drawing must stand in the page for a moment.
  const box = document.createElement('div');
  box.className = 'chart-box chart-aside';
  view.append(box);
  try {
    for (const panel of data.panels) {
      render(asElements(drawPanel(data, panel, size).shape), box);
      const svg = box.firstElementChild as SVGSVGElement;
      await save(svg, [data.title, panel.title].filter(Boolean).join(' '));
    }
  } finally {
    render(null, box);
    box.remove();
  }
}

/** What is drawn, point by point, as CSV (RFC 4180). */
export function csvOfChart(data: ChartData): string {
  const grouped = data.groups.length > 0;
  const across = data.x.is === 'groups' ? [] : [data.x.label];
  const last = data.beside?.label ?? 'More';
  const heading = [
    'Name',
    ...(grouped ? ['Group'] : []),
    ...across,
    ...(data.y.label === '' ? [] : [data.y.label]),
    last,
  ];
  const rows = data.panels.flatMap(({ points }) =>
    points.map((point) => [
      safe(point.name),
      ...(grouped ? [safe(data.groups[point.group] ?? '')] : []),
      ...(data.x.is === 'groups'
        ? []
        : [data.x.is === 'date' ? (isoFromSerial(Math.floor(point.x)) ?? '') : String(point.x)]),
      ...(data.y.label === '' ? [] : [String(point.y)]),
      data.beside ? String(point.beside ?? '') : (point.note ?? ''),
    ]),
  );
  const quoted = (cell: string): string => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  return [heading.map(safe), ...rows].map((row) => `${row.map(quoted).join(',')}\r\n`).join('');
}

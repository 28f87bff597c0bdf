import { describe, expect, test } from 'vitest';
import { chartOf } from '../../../src/session/charts/chart.ts';
import type { ChartData } from '../../../src/session/charts/data.ts';
import { legendOf } from '../../../src/session/charts/drawing/legend.ts';
import { drawPanel } from '../../../src/session/charts/drawing/panel.ts';
import { sizeFor } from '../../../src/session/charts/drawing/places.ts';
import type { Shape } from '../../../src/session/figure/drawing/svg-shape.ts';
import { shapeText } from '../../../src/session/figure/drawing/svg-shape.ts';
import { Session } from '../../../src/session/session.ts';
import { squadBook, squadCharts } from './squad.ts';

const squad = squadBook();
for (const [key, value] of Object.entries(squadCharts))
  squad.execute({ do: 'set-part', part: 'charts', key, value });

const chartIn = (session: Session, key: string): ChartData => session.ask((context) => chartOf(context, key));

const all = (shape: Shape): readonly Shape[] => [
  shape,
  ...shape.children.flatMap((child) => (typeof child === 'string' ? [] : all(child))),
];
const texts = (shape: Shape): readonly string[] =>
  all(shape).flatMap(({ tag, children }) =>
    tag === 'text' || tag === 'tspan' ? children.filter((child) => typeof child === 'string') : [],
  );
const marked = (shape: Shape, name: string): readonly Shape[] =>
  all(shape).filter(({ attributes }) => attributes['data-mark'] === name);

const draw = (data: ChartData, panel = 0) => drawPanel(data, data.panels[panel]!, sizeFor(data, 700));

describe('a chart’s drawing', () => {
  test.each(Object.keys(squadCharts))('%s: every panel is drawn, and every point lies within it', (key) => {
    const data = chartIn(squad, key);
    const size = sizeFor(data, 700);
    for (const panel of data.panels) {
      const drawn = drawPanel(data, panel, size);
      expect(drawn.shape.tag).toBe('svg');
      for (const point of panel.points) {
        const [x, y] = drawn.at(point);
        expect(x).toBeGreaterThan(40);
        expect(x).toBeLessThan(size.width);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(size.height);
      }
    }
  });

  test('two measures of one kind are compared on equal axes: equal values lie on the diagonal', () => {
    const data = chartIn(squad, 'pairs');
    const { at, height, width } = draw(data);
    expect(width).toBe(height);
    const place = (x: number, y: number) => at({ x, y, group: 0, name: '', row: 0 });
    const [x0, y0] = place(5, 5);
    const [x1, y1] = place(15, 15);
    // Left and right margins differ from upper and lower ones by a few pixels.
    expect(Math.abs((x1 - x0) / (y0 - y1) - 1)).toBeLessThan(0.05);
  });

  test('many lines carry their names at the ends, none over another', () => {
    const { shape } = draw(chartIn(squad, 'trend'));
    const names = marked(shape, 'names').flatMap((group) => all(group).filter(({ tag }) => tag === 'text'));
    expect(names).toHaveLength(20);
    const heights = names.map(({ attributes }) => Number(attributes.y)).sort((a, b) => a - b);
    heights.slice(1).forEach((y, index) => {
      expect(y - heights[index]!).toBeGreaterThan(12);
    });
  });

  test('the load shows the monotony of each week on an axis of its own', () => {
    const data = chartIn(squad, 'load');
    const { shape } = draw(data);
    expect(texts(shape)).toEqual(expect.arrayContaining(['Session load', 'Monotony', 'Week from', 'Abena']));
    const known = data.panels[0]!.points.filter(({ beside }) => beside !== undefined);
    const dots = marked(shape, 'dot').flatMap((group) => group.children);
    expect(dots).toHaveLength(known.length);
  });

  test('thousands of points become a few paths that hold them all', () => {
    const points = Array.from({ length: 6068 }, (_, row) => ({
      x: row % 97,
      y: row % 89,
      group: row % 2,
      name: `n${row}`,
      row,
    }));
    const data: ChartData = {
      title: 'Many',
      kind: 'scatter',
      sheet: 's',
      x: { label: 'x', is: 'number' },
      y: { label: 'y' },
      groups: ['a', 'b'],
      panels: [{ title: '', points, lines: [], bands: [], levels: [] }],
      notes: [],
    };
    const [group] = marked(draw(data).shape, 'dot');
    const paths = group!.children as readonly Shape[];
    expect(paths.length).toBeLessThan(40);
    const drawn = paths.reduce((sum, { attributes }) => sum + String(attributes.d).split('M').length - 1, 0);
    expect(drawn).toBe(6068);
  });

  test('the key tells groups, areas and lines', () => {
    const legend = legendOf(chartIn(squad, 'pairs'), 500)!;
    expect(legend.children.map((entry) => (entry as Shape).children.at(-1))).toEqual([
      'morning',
      'evening',
      'may be measuring error',
      'no difference',
    ]);
    expect(legendOf(chartIn(squad, 'distribution'), 500)).toBeNull();
  });

  test('texts of the book stay texts', () => {
    const session = Session.create();
    const evil = '</text><script>alert(1)</script>"\'&';
    session.execute({
      do: 'add-sheet',
      name: 'data',
      columns: [
        { name: 'who', label: evil, kind: 'text' },
        { name: 'value_of', label: evil, kind: 'number' },
      ],
    });
    session.execute({
      do: 'set-cells',
      sheet: 'data',
      row: 0,
      columns: ['who', 'value_of'],
      texts: [
        [evil, '1'],
        ['b', '2'],
      ],
    });
    const chart = { title: evil, kind: 'distribution', sheet: 'data', columns: ['value_of'], by: 'who' };
    session.execute({ do: 'set-part', part: 'charts', key: 'c', value: chart });
    const text = shapeText(draw(chartIn(session, 'c')).shape);
    expect(text).not.toContain('<script');
    expect(text).toContain('&lt;script&gt;');
  });
});

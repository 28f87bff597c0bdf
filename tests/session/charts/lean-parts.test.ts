import { describe, expect, test } from 'vitest';
import { chartOf } from '../../../src/session/charts/chart.ts';
import { segmentsOf } from '../../../src/session/charts/drawing/lean-parts-drawing.ts';
import { legendOf } from '../../../src/session/charts/drawing/legend.ts';
import { drawPanel } from '../../../src/session/charts/drawing/panel.ts';
import { sizeFor } from '../../../src/session/charts/drawing/places.ts';
import { shapeText } from '../../../src/session/figure/drawing/svg-shape.ts';
import { observedBook } from '../observed-book.ts';

const session = observedBook([
  ['Ada', '2025-09-01', '50', '26', '0'],
  ['Bo', '2025-09-02', '40', '36', '-4'],
  ['Ada', '2025-11-03', '38', '34', '0'],
  ['Ada', '2025-11-10', '', '', ''],
  ['Cy', '2025-11-10', '42', '30', '0'],
]);
const chart = (more: object, by: object = { by: 'athlete' }) => {
  const sheet = session.outline().sheets.find(({ name }) => name === 'squats')!.id;
  const value = {
    title: 'Leans',
    kind: 'lean-parts',
    sheet,
    columns: ['observed_lean'],
    ...by,
    ...more,
  };
  const done = session.execute({ do: 'set-part', part: 'charts', key: 'chart-1', value });
  if (!done.ok) throw new Error(done.sentence);
  return session.ask((context) => chartOf(context, 'chart-1'));
};

describe('the chart of where leans come from', () => {
  test('has each lifter’s latest squat, high to low; its parts add up to the lean', () => {
    const data = chart({});
    const [panel] = data.panels;
    expect(panel!.points.map(({ name, x, row }) => [name, x, row])).toEqual([
      ['Bo', 40, 1],
      ['Ada', 38, 2],
    ]);
    for (const { parts, lean } of panel!.bars!)
      expect(parts.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(lean, 9);
    // one row without values, one lifter without a build
    expect(data.notes[0]).toMatch(/^2 of 5 rows are left out/);
  });

  test('without athletes has every squat; in panels every lifter’s squats by day, and what changed', () => {
    expect(chart({}, {}).panels[0]!.points.map(({ x }) => x)).toEqual([50, 40, 38]);
    const data = chart({ panels: true });
    expect(data.panels.map(({ title, points }) => [title, points.map(({ x }) => x)])).toEqual([
      ['Ada', [50, 38]],
      ['Bo', [40]],
    ]);
    expect(data.notes.join(' ')).toMatch(
      /Ada: 50° to 38° \(−12°\); changed by more than error: range not used −/,
    );
  });

  test('stacks parts above 0 to the right and those below 0 to the left, without gaps', () => {
    const [panel] = chart({}).panels;
    panel!.bars!.forEach((bar, at) => {
      const mine = segmentsOf(panel!.bars!).filter((one) => one.at === at);
      const right = Math.max(...mine.map(({ to }) => to));
      const left = Math.min(0, ...mine.map(({ to }) => to));
      expect(right + left).toBeCloseTo(bar.lean, 9);
    });
  });

  test('is drawn with every name and a key of letters and colours', () => {
    const data = chart({});
    const size = sizeFor(data, 700);
    const { shape, at } = drawPanel(data, data.panels[0]!, size);
    const text = shapeText(shape);
    for (const name of ['Bo', 'Ada', '40°', '38°']) expect(text).toContain(name);
    const [first, second] = data.panels[0]!.points.map((point) => at(point)[1]);
    expect(second! - first!).toBeGreaterThan(20);
    expect(shapeText(legendOf(data, size.height)!)).toContain('No Range not used');
  });
});

import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { drawingOf } from '../../../src/session/figure/drawing/drawing.ts';
import { DEGREES_PER_NM } from '../../../src/session/figure/drawing/loads-drawing.ts';
import type { Shape } from '../../../src/session/figure/drawing/svg-shape.ts';
import { Session } from '../../../src/session/session.ts';
import { leanOf } from '../posture.ts';

let session: Session;
let rows: Readonly<Record<string, number>>[];
beforeAll(() => {
  session = Session.open(
    readFileSync(new URL('../../../sample-books/squat-screening.leverbook.json', import.meta.url), 'utf8'),
  );
  rows = [...session.records('roster')].map((r) => r.values as Record<string, number>);
});

function* all(shape: Shape): Generator<Shape> {
  yield shape;
  for (const child of shape.children) if (typeof child !== 'string') yield* all(child);
}
const withClass = (drawing: Shape, name: string): Shape => {
  const found = [...all(drawing)].find(({ attributes }) => attributes.class === name);
  if (!found) throw new Error(`nothing of class ${name} is drawn`);
  return found;
};
/** The points of a path of straight lines. */
const pointsOf = (path: Shape): readonly (readonly [number, number])[] =>
  [...String(path.attributes.d).matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [
    Number(m[1]),
    Number(m[2]),
  ]);
const child = (shape: Shape, name: string): Shape =>
  shape.children.find((one): one is Shape => typeof one !== 'string' && one.attributes.class === name)!;
const distance = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!);

describe('the drawing', () => {
  test('has the bar over mid-foot to half a pixel, the links to scale and the lean of the closed form, in every row', () => {
    for (const [row, values] of rows.entries()) {
      const figure = session.figure('roster', row);
      const drawing = drawingOf(figure)!;
      const scale = Number(drawing.attributes['data-scale']);
      const bar = withClass(drawing, 'bar').children[0] as Shape;
      const mid = pointsOf(withClass(drawing, 'midfoot').children[0] as Shape);
      expect(Math.abs(Number(bar.attributes.cx) - mid[0]![0])).toBeLessThan(0.5);
      const [ankle, knee, hip, shoulder] = pointsOf(child(withClass(drawing, 'lifter main'), 'links'));
      const { femur, tibia, trunk, foot } = values as Record<string, number>;
      // Coordinates are written to .01 of a pixel.
      expect(distance(ankle!, knee!)).toBeCloseTo(tibia! * scale, 1);
      expect(distance(knee!, hip!)).toBeCloseTo(femur! * scale, 1);
      expect(distance(hip!, shoulder!)).toBeCloseTo(trunk! * scale, 1);
      const lean = (Math.atan2(shoulder![0] - hip![0], hip![1] - shoulder![1]) * 180) / Math.PI;
      const build = { femur: femur!, tibia: tibia!, trunk: trunk!, foot: foot!, ankle: values.ankle! };
      // "none needed" is drawn flat.
      const lift = typeof values.lift === 'number' ? values.lift : 0;
      expect(lean).toBeCloseTo(leanOf(build, lift)!, 1);
    }
  });

  test('draws a plate of 45 cm to scale about the bar, and none where arms held forward carry no bar', () => {
    const drawing = drawingOf(session.figure('roster', 0))!;
    const plate = withClass(drawing, 'plate');
    // 450 mm: the largest disc of the federations' equipment rules (common practice, no published source).
    expect(Number(plate.attributes.r)).toBeCloseTo(22.5 * Number(drawing.attributes['data-scale']), 6);
    const bar = withClass(drawing, 'bar').children[0] as Shape;
    expect([plate.attributes.cx, plate.attributes.cy]).toEqual([bar.attributes.cx, bar.attributes.cy]);
    const arms = drawingOf(session.figure('roster', 0, { placement: 'arms-forward' }))!;
    expect([...all(arms)].some(({ attributes }) => attributes.class === 'plate')).toBe(false);
  });

  test('draws the moments as arcs as long as they are large', () => {
    const figure = session.figure('roster', 1, { bar: 80, mass: 70, lift: 0 });
    const drawing = drawingOf(figure)!;
    for (const [name, value] of [
      ['hip', figure.numbers.flat.hipMoment.value],
      ['knee', figure.numbers.flat.kneeMoment.value],
    ] as const) {
      const path = child(withClass(drawing, `moment ${name}`), 'moment-arc');
      const [, x1, y1, r, x2, y2] = /^M(\S+) (\S+)A(\S+) .* (\S+) (\S+)$/
        .exec(String(path.attributes.d))!
        .map(Number);
      const chord = Math.hypot(x2! - x1!, y2! - y1!);
      const sweep = (2 * Math.asin(chord / 2 / r!) * 180) / Math.PI;
      expect(sweep).toBeCloseTo((value as number) * DEGREES_PER_NM, 0);
    }
    expect(Number(withClass(drawing, 'centre').attributes['data-centre'])).toBeCloseTo(
      (figure.flat as { centre: readonly number[] }).centre[0]!,
      9,
    );
  });

  test('opens the fan as wide as the error of the lean, both ways', () => {
    const figure = session.figure('roster', 1, { lift: 0 });
    const fan = withClass(drawingOf(figure)!, 'fan').children[0] as Shape;
    const [, hx, hy, ax, ay, bx, by] = /^M(\S+) (\S+)L(\S+) (\S+)A\S+ \S+ 0 0 1 (\S+) (\S+)Z$/
      .exec(String(fan.attributes.d))!
      .map(Number);
    const angle = (x: number, y: number) => (Math.atan2(x - hx!, hy! - y) * 180) / Math.PI;
    expect((angle(bx!, by!) - angle(ax!, ay!)) / 2).toBeCloseTo(rows[1]!.lean_error!, 1);
    expect((angle(bx!, by!) + angle(ax!, ay!)) / 2).toBeCloseTo(rows[1]!.lean!, 1);
  });

  test('draws what no posture holds with the distance behind mid-foot, and says it', () => {
    const own = Session.create();
    const names = ['femur', 'tibia', 'trunk', 'ankle', 'foot'];
    own.execute({ do: 'add-sheet', name: 's', rows: 1, columns: names.map((name) => ({ name })) });
    own.execute({
      do: 'set-cells',
      sheet: 's',
      row: 0,
      columns: names,
      texts: [['60', '30', '40', '5', '22']],
    });
    const drawing = drawingOf(own.figure('s', 0))!;
    const offset = Number(withClass(drawing, 'shortfall').attributes['data-offset']);
    expect(offset).toBeLessThan(0);
    const bar = withClass(drawing, 'bar').children[0] as Shape;
    const [mid] = pointsOf(withClass(drawing, 'midfoot').children[0] as Shape);
    expect(Number(bar.attributes.cx) - mid![0]).toBeCloseTo(
      offset * Number(drawing.attributes['data-scale']),
      1,
    );
    expect(drawing.attributes['aria-label']).toMatch(/no posture is balanced.*behind mid-foot/);
  });
});

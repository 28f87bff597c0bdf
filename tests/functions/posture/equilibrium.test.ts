import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isIssue } from '../../../functions/core/issue.ts';
import { figureOf } from '../../../functions/posture/figure.ts';
import { between, build, give, lifters } from './lifter.ts';

const rad = Math.PI / 180;
type Point = readonly [number, number];

/** Foot, ankle and mid-foot of a foot turned about its ball, by a rotation; nothing of the product in it. */
function foot(length: number, lift: number) {
  const ball = 0.74 * length;
  const phi = Math.asin(lift / ball);
  const turn = (x: number, y: number): Point => [
    ball + (x - ball) * Math.cos(phi) + y * Math.sin(phi),
    -(x - ball) * Math.sin(phi) + y * Math.cos(phi),
  ];
  return {
    phi: phi / rad,
    ankle: turn(0.25 * length, (0.039 / 0.152) * length),
    middle: turn(0.5 * length, 0)[0],
  };
}

/** Between two points, `share` of the way from the first. */
const along = (a: Point, b: Point, share: number): Point => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
];

const bars = {
  'high-bar': [1, -0.09],
  'low-bar': [0.9, -0.11],
  front: [0.98, 0.12],
  goblet: [0.8, 0.45],
} as const;

describe('static equilibrium, segment by segment', () => {
  test('LEAN.LOADED puts the total centre of mass over mid-foot', () => {
    let seen = 0;
    fc.assert(
      fc.property(
        lifters,
        between(40, 160),
        between(0, 300),
        fc.constantFrom('high-bar', 'low-bar', 'front', 'goblet', 'arms-forward'),
        (l, mass, load, placement) => {
          const bar = placement === 'arms-forward' ? 0 : load;
          const beta = give(
            'LEAN.LOADED',
            mass,
            bar,
            ...build(l),
            l.lift,
            l.depth,
            placement,
            l.foot,
            l.stance,
          );
          if (typeof beta !== 'number') return;
          seen++;
          const { phi, ankle, middle } = foot(
            l.foot ?? (0.152 / 0.779) * (l.femur + l.tibia + l.trunk),
            l.lift,
          );
          const flare = Math.cos(l.stance * rad);
          const a: Point = [ankle[0] - middle, ankle[1]];
          const k: Point = [
            a[0] + l.tibia * Math.sin((l.ankle + phi) * rad),
            a[1] + l.tibia * Math.cos((l.ankle + phi) * rad),
          ];
          const h: Point = [
            k[0] - l.femur * Math.cos(l.depth * rad),
            k[1] + l.femur * Math.sin(l.depth * rad),
          ];
          const [ankleAt, knee, hip] = [a, k, h].map(([x, y]): Point => [x * flare, y]) as [
            Point,
            Point,
            Point,
          ];
          // a point of the trunk: so far up its line, so far ahead of it
          const onTrunk = (up: number, ahead: number): Point => [
            hip[0] + l.trunk * (up * Math.sin(beta * rad) + ahead * Math.cos(beta * rad)),
            hip[1] + l.trunk * (up * Math.cos(beta * rad) - ahead * Math.sin(beta * rad)),
          ];
          const shoulder = onTrunk(1, 0);
          const upper: readonly (readonly [number, Point])[] =
            placement === 'arms-forward'
              ? [
                  [0.578, onTrunk(0.66, 0)],
                  [0.1, [shoulder[0] + 0.611 * l.trunk, shoulder[1]]],
                ]
              : placement === 'goblet'
                ? [
                    [0.578, onTrunk(0.66, 0)],
                    [0.1, onTrunk(0.8, 0.25)],
                  ]
                : [[0.678, onTrunk(0.626, 0)]];
          const masses: (readonly [number, Point])[] = [
            [2 * 0.0145 * mass, [0, 0]],
            [2 * 0.0465 * mass, along(knee, ankleAt, 0.433)],
            [2 * 0.1 * mass, along(hip, knee, 0.433)],
            ...upper.map(([share, at]) => [share * mass, at] as const),
          ];
          if (placement !== 'arms-forward')
            masses.push([bar, onTrunk(bars[placement][0], bars[placement][1])]);
          const total = masses.reduce((sum, [m]) => sum + m, 0);
          expect(total).toBeCloseTo(mass + bar, 9);
          expect(masses.reduce((sum, [m, [x]]) => sum + m * x, 0) / total).toBeCloseTo(0, 9);
        },
      ),
      { numRuns: 500 },
    );
    expect(seen).toBeGreaterThan(100);
  });
});

describe('the points of a figure', () => {
  const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);
  test('keep the lengths of the lifter and have the bar over mid-foot', () => {
    fc.assert(
      fc.property(lifters, (l) => {
        const figure = figureOf({ ...l, stance: 0 });
        fc.pre(!isIssue(figure));
        if (isIssue(figure)) return;
        const length = l.foot ?? (0.152 / 0.779) * (l.femur + l.tibia + l.trunk);
        expect(distance(figure.ankle, figure.knee)).toBeCloseTo(l.tibia, 9);
        expect(distance(figure.knee, figure.hip)).toBeCloseTo(l.femur, 9);
        expect(distance(figure.hip, figure.shoulder)).toBeCloseTo(l.trunk, 9);
        expect(distance(figure.heel, figure.ball)).toBeCloseTo(0.74 * length, 9);
        expect(distance(figure.ball, figure.toe)).toBeCloseTo(0.26 * length, 9);
        expect(figure.heel[1]).toBeCloseTo(l.lift, 9);
        expect(figure.bar[0]).toBeCloseTo(0, 9);
        expect(figure.balanced).toBe(l.placement === 'arms-forward' ? 'centre of mass' : 'bar');
        // angles read off the points
        const lean = Math.atan2(figure.shoulder[0] - figure.hip[0], figure.shoulder[1] - figure.hip[1]) / rad;
        expect(lean).toBeCloseTo(figure.lean, 8);
        expect(figure.hip[1] - figure.knee[1]).toBeCloseTo(l.femur * Math.sin(l.depth * rad), 9);
        expect(figure.kneeFlexion).toBeCloseTo(90 + figure.shank - l.depth, 9);
      }),
    );
  });
  test('draw the knees closer to the middle when they are turned out', () => {
    const straight = figureOf({ femur: 42, tibia: 41, trunk: 51, ankle: 38 });
    const turned = figureOf({ femur: 42, tibia: 41, trunk: 51, ankle: 38, stance: 30 });
    if (isIssue(straight) || isIssue(turned)) expect.fail('both stand');
    expect(turned.knee[0]).toBeCloseTo(straight.knee[0] * Math.cos(30 * rad), 9);
    expect(turned.lean).toBeLessThan(straight.lean);
  });
  test('are an issue with a reason where no posture holds', () => {
    expect(figureOf({ femur: 70, tibia: 41, trunk: 30, ankle: 0 })).toMatchObject({
      code: '#NUM!',
      reason: 'hip-too-far-behind',
    });
  });
});

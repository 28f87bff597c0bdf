import { describe, expect, test } from 'vitest';
import { checks } from '../check.ts';
import { evaluate } from '../formula.ts';

const number = (formula: string): number => {
  const outcome = evaluate(formula);
  if (typeof outcome !== 'number') throw new Error(`${formula} gave ${JSON.stringify(outcome)}.`);
  return outcome;
};

// Expected angles and lengths are those of figures drawn on squared paper (3-4-5 triangles, 30° and 45° lines) or of a
// pinhole camera projected here; the definitions are the plane geometry of a picture whose y runs down.

describe('PHOTO.LEVEL takes a level or an upright line', () => {
  checks([
    ['=PHOTO.LEVEL(0, 0, 10, 10)', 45],
    ['=PHOTO.LEVEL(10, 10, 0, 0)', 45],
    ['=PHOTO.LEVEL(0, 0, 10, -10)', -45],
    ['=PHOTO.LEVEL(0, 0, 10, 10.1)', '#NUM!', 'line'],
    ['=PHOTO.LEVEL(5, 0, 5, 100, "plumb")', 0],
    ['=PHOTO.LEVEL(5, 100, 5, 0, "plumb")', 0],
    ['=PHOTO.LEVEL(10, 0, 0, 10, "PLUMB")', 45],
    ['=PHOTO.LEVEL(0, 0, 100, 0, "plumb")', '#NUM!', 'line'],
    ['=PHOTO.LEVEL(3, 3, 3, 3)', '#DIV/0!', 'x2'],
    ['=PHOTO.LEVEL(0, 0, 1, 1, "wall")', '#VALUE!', 'line'],
  ]);
});

describe('PHOTO.LEAN and PHOTO.DEPTH read angles off a picture', () => {
  checks([
    ['=PHOTO.LEAN(100, 200, 100, 100)', 0],
    ['=PHOTO.LEAN(100, 200, 200, 100)', 45],
    ['=PHOTO.LEAN(100, 200, 200, 100, "left")', -45],
    ['=PHOTO.LEAN(100, 100, 100, 200)', 180],
    ['=PHOTO.LEAN(100, 100, 100, 200, "left")', 180],
    ['=PHOTO.LEAN(0, 0, 10, 0)', 90],
    ['=PHOTO.LEAN(100, 200, 200, 100, "right", 5)', 40],
    ['=PHOTO.LEAN(100, 200, 200, 100, "left", 5)', -40],
    ['=PHOTO.LEAN(100, 200, 200, 100, "right", 46)', '#NUM!', 'level'],
    ['=PHOTO.LEAN(7, 7, 7, 7)', '#DIV/0!', 'high_x'],
    ['=PHOTO.DEPTH(200, 100, 100, 100)', 0],
    ['=PHOTO.DEPTH(200, 100, 100, 200)', -45],
    ['=PHOTO.DEPTH(200, 100, 100, 0)', 45],
    ['=PHOTO.DEPTH(100, 100, 200, 0, "left")', 45],
    ['=PHOTO.DEPTH(200, 100, 200, 0)', 90],
    ['=PHOTO.DEPTH(200, 100, 100, 200, "right", 10)', -55],
    ['=PHOTO.DEPTH(1, 1, 1, 1)', '#DIV/0!', 'hip_x'],
  ]);
});

describe('PHOTO.SCALE, PHOTO.AHEAD, PHOTO.LENGTH and PHOTO.ERROR', () => {
  checks([
    ['=PHOTO.SCALE(0, 0, 30, 40, 25)', 0.5],
    ['=PHOTO.SCALE(0, 0, 30, 40, 25, 200, 100)', 1],
    ['=PHOTO.SCALE(0, 0, 30, 40, 25, 200, -200)', 0.25],
    ['=PHOTO.SCALE(0, 0, 30, 40, 0)', '#NUM!', 'length'],
    ['=PHOTO.SCALE(0, 0, 30, 40, 501)', '#NUM!', 'length'],
    ['=PHOTO.SCALE(0, 0, 30, 40, 45, 49)', '#NUM!', 'camera'],
    ['=PHOTO.SCALE(0, 0, 30, 40, 45, 100, 100)', '#NUM!', 'nearer'],
    ['=PHOTO.SCALE(0, 0, 30, 40, 45, , 70)', '#N/A', 'camera'],
    ['=PHOTO.SCALE(0, 0, 0, 0, 45, , 70)', '#N/A', 'camera'],
    ['=PHOTO.SCALE(0, 0, 0, 0, 45)', '#DIV/0!', 'x2'],
    ['=PHOTO.AHEAD(40, 7, 40, 7, 2)', 0],
    ['=PHOTO.AHEAD(50, 7, 40, 90, 2)', 20],
    ['=PHOTO.AHEAD(50, 7, 40, 90, 2, "left")', -20],
    ['=PHOTO.AHEAD(50, 7, 40, 90, 0)', '#NUM!', 'scale'],
    ['=PHOTO.LENGTH(0, 0, 3, 4, 2)', 10],
    ['=PHOTO.LENGTH(1, 1, 1, 1, 2)', 0],
    ['=PHOTO.ERROR(1, 0)', 0],
    [`=PHOTO.ERROR(${Math.SQRT2}, 1)`, 45],
    ['=PHOTO.ERROR(0)', '#DIV/0!', 'length'],
    ['=PHOTO.ERROR(-1)', '#NUM!', 'length'],
    ['=PHOTO.ERROR(10, -1)', '#NUM!', 'point'],
  ]);
});

// A plate 70 cm nearer than the joints: seen through a pinhole at the distance z, a length reads 1 − (z − 70)/z too small.
test.each([
  [300, 0.23],
  [600, 0.12],
])('a plate 70 cm nearer makes lengths read too small from %d cm by a share of %d', (camera, share) => {
  const uncorrected = number('=PHOTO.SCALE(0, 0, 100, 0, 45)');
  const corrected = number(`=PHOTO.SCALE(0, 0, 100, 0, 45, ${camera}, 70)`);
  expect(1 - uncorrected / corrected).toBeCloseTo(share, 2);
});

test('points projected through a pinhole camera give the posture back, rolled and from either side', () => {
  const rad = Math.PI / 180;
  for (const [lean, roll, looks] of [
    [41.3, 0, 'right'],
    [41.3, 7, 'right'],
    [12, -12, 'left'],
    [-5, 3, 'left'],
  ] as const) {
    const [focal, away] = [1400, 420];
    const onPicture = (ahead: number, up: number): string => {
      const [x, y] = [((looks === 'left' ? -ahead : ahead) * focal) / away, (-(up - 90) * focal) / away];
      const [c, s] = [Math.cos(roll * rad), Math.sin(roll * rad)];
      return `${960 + x * c - y * s}, ${540 + x * s + y * c}`;
    };
    const hip = [-20, 55] as const;
    const shoulder = [hip[0] + 51 * Math.sin(lean * rad), hip[1] + 51 * Math.cos(lean * rad)] as const;
    const level = number(`=PHOTO.LEVEL(${onPicture(-100, 0)}, ${onPicture(100, 0)})`);
    expect(level).toBeCloseTo(roll, 9);
    expect(
      number(`=PHOTO.LEAN(${onPicture(...hip)}, ${onPicture(...shoulder)}, "${looks}", ${level})`),
    ).toBeCloseTo(lean, 9);
    const scale = number(`=PHOTO.SCALE(${onPicture(-10, 30)}, ${onPicture(35, 30)}, 45)`);
    expect(number(`=PHOTO.LENGTH(${onPicture(...hip)}, ${onPicture(...shoulder)}, ${scale})`)).toBeCloseTo(
      51,
      9,
    );
    expect(
      number(`=PHOTO.AHEAD(${onPicture(...shoulder)}, ${onPicture(0, 0)}, ${scale}, "${looks}", ${level})`),
    ).toBeCloseTo(shoulder[0], 9);
  }
});

import { describe, expect, test } from 'vitest';
import { checks } from '../check.ts';
import { evaluate } from '../formula.ts';
import { number } from '../posture/lifter.ts';

const rad = Math.PI / 180;

describe('the bar rule', () => {
  // x_hip = −.25 L + S sin a − F, β = asin(−x_hip / √(A² + C²)) − atan2(C, A): written out for one lifter on the flat
  const hip = -0.25 * 26 + 41 * Math.sin(38 * rad) - 42;
  const bar = (along: number, ahead: number) =>
    Math.asin(-hip / (51 * Math.hypot(along, ahead))) / rad - Math.atan2(ahead, along) / rad;
  checks([
    ['=LEAN.PARALLEL(42, 41, 51, 38, 0, "high-bar", 26)', bar(1, -0.09)],
    ['=LEAN.PARALLEL(42, 41, 51, 38, 0, "LOW-BAR", 26)', bar(0.9, -0.11)],
    ['=LEAN.PARALLEL(42, 41, 51, 38, 0, "front", 26)', bar(0.98, 0.12)],
    ['=LEAN.PARALLEL(42, 41, 51, 38, , , 26)', bar(1, -0.09)],
    ['=LEAN.AT(0, 42, 41, 51, 38, 0, "front", 26)', bar(0.98, 0.12)],
    [
      '=LEAN.AT(90, 42, 41, 51, 0, 0, "front", 26)',
      Math.asin(6.5 / (51 * Math.hypot(0.98, 0.12))) / rad - Math.atan2(0.12, 0.98) / rad,
    ],
    ['=LEAN.PARALLEL(42, 41, 51, 38, 0, "goblet")', '#VALUE!', 'placement'],
    ['=LEAN.PARALLEL(42, 41, 51, 38, 0, "behind")', '#VALUE!', 'placement'],
    ['=LEAN.PARALLEL(60, 41, 40, 10)', '#NUM!'],
    ['=LEAN.PARALLEL(58, 40, 59.2, 18, 0, "low-bar")', '#NUM!'],
    ['=LEAN.PARALLEL(42, 41, 51, 38, 15.1)', '#NUM!', 'lift'],
    ['=LEAN.PARALLEL(42, 41, 51, 38, 8.88, "front", 12)', '#NUM!', 'lift'],
    ['=LEAN.PARALLEL(42, 41, 51, 65, 8, "front", 20)', '#NUM!'],
    ['=LEAN.PARALLEL(42, 41, 51, 38, 0, "front", 26, 61)', '#NUM!', 'stance'],
    ['=LEAN.AT(-61, 42, 41, 51, 38)', '#NUM!', 'depth'],
  ]);
  test('a lean below −30° is returned as it comes', () => {
    expect(number('LEAN.AT', 60, 30, 55, 40, 60)).toBeLessThan(-30);
  });
  test('a foot that is made up is not tested against the bounds of a foot', () => {
    // .152/.779 × (15 + 15 + 20) = 9.76 cm
    expect(evaluate('=LEAN.PARALLEL(15, 15, 20, 38)')).toBeTypeOf('number');
    expect(evaluate('=LEAN.PARALLEL(15, 15, 20, 38, 0, "front", 9.76)')).toMatchObject({ parameter: 'foot' });
  });
});

describe('placements of the system rule', () => {
  checks([
    ['=LEAN.LOADED(80, 60, 42, 41, 51, 38, 0, 0, "arms-forward")', '#VALUE!', 'placement'],
    // of two faults the wrong word speaks before the number out of bounds
    ['=LEAN.LOADED(80, 60, 42, 41, 510, 38, 0, 0, "arms-forward")', '#VALUE!', 'placement'],
    ['=LEAN.LOADED(9, 60, 42, 41, 51, 38)', '#NUM!', 'mass'],
    ['=LEAN.LOADED(80, 701, 42, 41, 51, 38)', '#NUM!', 'bar'],
  ]);
  test('goblet and arms forward are answered without a bar', () => {
    expect(evaluate('=LEAN.LOADED(80, 0, 42, 41, 51, 38, 0, 0, "goblet")')).toBeTypeOf('number');
    expect(evaluate('=LEAN.LOADED(80, 0, 42, 41, 51, 38, 0, 0, "arms-forward")')).toBeTypeOf('number');
  });
  test('a light bar asks for more lean than a heavy one', () => {
    const lean = (bar: number) => number('LEAN.LOADED', 80, bar, 42, 41, 51, 38);
    expect(lean(120)).toBeLessThan(lean(60));
  });
});

describe('angles of the joints', () => {
  const pitch = (lift: number, foot: number) => Math.asin(lift / (0.74 * foot)) / rad;
  checks([
    ['=LEAN.SHANK(38)', 38],
    ['=LEAN.SHANK(38, 0)', 38],
    ['=LEAN.SHANK(38, 2, 27)', 38 + pitch(2, 27)],
    ['=LEAN.SHANK(38, 2)', '#N/A', 'foot'],
    ['=LEAN.SHANK(80, 2)', '#N/A', 'foot'],
    ['=LEAN.SHANK(70, 7.3, 20)', '#NUM!'],
    ['=LEAN.SHANK(38, 14.8, 20)', '#NUM!', 'lift'],
    ['=LEAN.KNEE(90, -60)', 240],
    ['=LEAN.KNEE(-30.1)', '#NUM!', 'shank'],
    ['=LEAN.HIP(0)', 90],
    ['=LEAN.HIP(60, -30)', 180],
    ['=LEAN.HIP(-30, 60)', 0],
    ['=LEAN.HIP(90, -60)', 120],
    ['=LEAN.HIP(0, 0, 60)', 90],
    // a level trunk over a level thigh turned out by s: the angle between them is s
    ['=LEAN.HIP(90, 0, 40)', 140],
    ['=LEAN.KNEE.AHEAD(40, 30, 20)', 5 + 20 - 20],
    ['=LEAN.KNEE.AHEAD(40, 30, 20, 14.8)', '#NUM!', 'lift'],
    ['=LEAN.FROM.POINTS(0, 0, 1, 1)', 45],
    ['=LEAN.FROM.POINTS(1, 1, 0, 0)', 45],
    ['=LEAN.FROM.POINTS(0, 5, 3, 5)', 90],
    ['=LEAN.FROM.POINTS(2, 5, 2, 9)', 0],
    ['=LEAN.FROM.POINTS(2, 5, 2, 5)', '#DIV/0!', 'shoulder_x'],
    ['=JOINT.FROM.POINTS(-1, 0, 0, 0, 1, 0)', 180],
    ['=JOINT.FROM.POINTS(2, 0, 0, 0, 1, 0)', 0],
    ['=JOINT.FROM.POINTS(1, 0, 0, 0, 1, 1)', 45],
    ['=JOINT.FROM.POINTS(0, 0, 0, 0, 1, 1)', '#DIV/0!', 'ax'],
    ['=JOINT.FROM.POINTS(1, 1, 0, 0, 0, 0)', '#DIV/0!', 'cx'],
  ]);
});

describe('limits of the descent', () => {
  checks([
    // nothing holds it: an easy build and no limit reached
    ['=LEAN.DEEPEST(30, 45, 60, 50, 0, "front", , 0, 90, 180, 180)', -45],
    ['=LEAN.LIMITER(30, 45, 60, 50, 0, "front", , 0, 90, 180, 180)', 'none'],
    ['=LEAN.DEEPEST(60, 41, 30, 0)', '#NUM!'],
    ['=LEAN.LIMITER(60, 41, 30, 0)', '#NUM!'],
    ['=LEAN.DEEPEST(42, 41, 51, 38, 0, "goblet")', '#VALUE!', 'placement'],
    ['=LEAN.DEEPEST(42, 41, 51, 38, 0, "front", 26, 0, 91)', '#NUM!', 'max_lean'],
    ['=LEAN.DEEPEST(42, 41, 51, 38, 0, "front", 26, 0, 60, 59)', '#NUM!', 'max_hip'],
    ['=LEAN.DEEPEST(42, 41, 51, 38, 0, "front", 26, 0, 60, 145, 181)', '#NUM!', 'max_knee'],
    ['=LEAN.PART("arm", 42, 41, 51, 38)', '#VALUE!', 'part'],
    ['=LEAN.PART("femur", 42, 41, 51, 38, 71)', '#NUM!', 'reference_ankle'],
    ['=LEAN.ERROR(0, 0, 42, 41, 51, 38)', 0],
    ['=LEAN.ERROR(10.1, 0, 42, 41, 51, 38)', '#NUM!', 'sd_length'],
    ['=LEAN.ERROR(1, 31, 42, 41, 51, 38)', '#NUM!', 'sd_ankle'],
    ['=LEAN.ERROR(1, 2, 60, 41, 40, 10)', '#NUM!'],
  ]);
  test('a measuring error of 1 cm and 2° is 2 to 3° of lean, as the cautions say', () => {
    for (const [femur, tibia, trunk, ankle] of [
      [42, 41, 51, 38],
      [40.9, 41.9, 54, 38],
      [37.9, 40.3, 49, 38],
      [45, 40, 48, 30],
    ] as const) {
      const sd = number('LEAN.ERROR', 1, 2, femur, tibia, trunk, ankle);
      expect(sd).toBeGreaterThan(1.5);
      expect(sd).toBeLessThan(3.5);
    }
  });
});

describe('an observed lean taken apart', () => {
  // flat and at parallel, by hand: x_hip = −.25 L + S sin σ − F
  const at = (femur: number, tibia: number, trunk: number, shank: number) =>
    Math.asin((6.5 - tibia * Math.sin(shank * rad) + femur) / (trunk * Math.hypot(1, -0.09))) / rad -
    Math.atan2(-0.09, 1) / rad;
  const seen = '45, 40, 48, 30, 38, 0, "high-bar", 26)';
  checks([
    [`=LEAN.EXPLAIN("reference", 48, 25, 0, ${seen}`, at(0.2987 * 133, 0.3114 * 133, 0.3899 * 133, 38)],
    [`=LEAN.EXPLAIN("use", 48, 25, 0, ${seen}`, at(45, 40, 48, 25) - at(45, 40, 48, 30)],
    [`=LEAN.EXPLAIN("BALANCE", 48, 25, 0, ${seen}`, 48 - at(45, 40, 48, 25)],
    ['=LEAN.EXPLAIN("use", 48, 30, 0, 45, 40, 48, 30)', 0],
    // refusals, in their order
    ['=LEAN.EXPLAIN("arm", 48, 25, 0, 45, 40, 48, 30)', '#VALUE!', 'part'],
    ['=LEAN.EXPLAIN("use", 48, 25, , 45, 40, 48, 30)', '#N/A', 'depth'],
    ['=LEAN.EXPLAIN("use", 48, 25, 0, 45, 40, 48, 99, 38, 0, "goblet")', '#VALUE!', 'placement'],
    ['=LEAN.EXPLAIN("use", 91, 25, 0, 45, 40, 48, 30)', '#NUM!', 'lean'],
    ['=LEAN.EXPLAIN("use", 48, 25, 0, 45, 40, 48, 30, 38, 9, "high-bar", 12)', '#NUM!', 'lift'],
    // the shin angle is looked at whatever the part
    ['=LEAN.EXPLAIN("reference", 48, -11, 0, 45, 40, 48, 30)', '#NUM!', 'shank'],
    ['=LEAN.EXPLAIN("femur", 48, 71, 0, 45, 40, 48, 30)', '#NUM!', 'shank'],
    ['=LEAN.EXPLAIN("balance", 48, 90, 0, 45, 40, 48, 30, 38, 8, "high-bar", 26)', '#NUM!'],
    // a part asks only for the postures that enter it
    ['=LEAN.EXPLAIN("use", 40, 30, 0, 60, 41, 40, 10)', '#NUM!'],
  ]);
  test('a part does without the postures that do not enter it', () => {
    // this lifter has no posture with an ankle range of 10, the reference has, and the observed shin angle has
    expect(evaluate('=LEAN.EXPLAIN("reference", 40, 45, 0, 60, 41, 50, 10)')).toBeTypeOf('number');
    expect(evaluate('=LEAN.EXPLAIN("balance", 40, 45, 0, 60, 41, 50, 10)')).toBeTypeOf('number');
    expect(evaluate('=LEAN.EXPLAIN("use", 40, 45, 0, 60, 41, 50, 10)')).toMatchObject({ code: '#NUM!' });
    expect(evaluate('=LEAN.EXPLAIN("ankle", 40, 45, 0, 60, 41, 50, 10)')).toMatchObject({ code: '#NUM!' });
  });
});

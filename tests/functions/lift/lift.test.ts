import { describe, expect, test } from 'vitest';
import { checks } from '../check.ts';
import { number } from '../posture/lifter.ts';

const rad = Math.PI / 180;

describe('pitch, net lift and the heights on hand', () => {
  checks([
    ['=LIFT.PITCH(0, 27)', 0],
    ['=LIFT.PITCH(7.4, 20)', 30],
    ['=LIFT.PITCH(14.8, 20)', '#NUM!', 'lift'],
    ['=LIFT.PITCH(2, 9)', '#NUM!', 'foot'],
    ['=LIFT.FROM.PITCH(30, 20)', 7.4],
    ['=LIFT.FROM.PITCH(90, 20)', 14.8],
    ['=LIFT.FROM.PITCH(91, 20)', '#NUM!', 'pitch'],
    ['=LIFT.NET(1, 3)', -2],
    ['=LIFT.NET(-1, 3)', '#NUM!', 'heel_stack'],
    ['=LIFT.PICK(2, {3; 2; 1})', 2],
    ['=LIFT.PICK(2, {3; ; "2.5"; 1})', 2.5],
    ['=LIFT.PICK(2, 2.2)', 2.2],
    ['=LIFT.PICK(2, {3; "two"})', '#VALUE!', 'range'],
    ['=LIFT.PICK(2, {;})', '#N/A', 'range'],
    ['=LIFT.PICK(2, {1; 1.9})', '#N/A', 'lift'],
    ['=LIFT.PICK(16, {1; 20})', '#NUM!', 'lift'],
  ]);
});

describe('what a lift stands for', () => {
  // by hand: on the flat the same x_hip, so S' sin a = S sin(a + φ) + x_A − x_B + .25 L
  const phi = Math.asin(2 / (0.74 * 26));
  const ankleAhead = 26 * (-0.25 * Math.cos(phi) + (0.039 / 0.152) * Math.sin(phi)) + 0.25 * 26;
  const carried = 41 * Math.sin(38 * rad + phi) + ankleAhead;
  const level = 41 * Math.sin(38 * rad);
  checks([
    ['=LIFT.AS.TIBIA(2, 42, 41, 51, 38, 0, "high-bar", 26)', carried / Math.sin(38 * rad) - 41],
    ['=LIFT.AS.FEMUR(2, 42, 41, 51, 38, 0, "high-bar", 26)', carried - level],
    ['=LIFT.AS.FEMUR(2, 42, 41, 51, 38, 60, "high-bar", 26)', 2 * (carried - level)],
    ['=LIFT.AS.ANKLE(2, 42, 41, 51, 38, 0, "high-bar", 26)', Math.asin(carried / 41) / rad - 38],
    // the placement and the stance change the lean, not what stands for the lift
    ['=LIFT.AS.ANKLE(2, 42, 41, 51, 38, 0, "low-bar", 26, 30)', Math.asin(carried / 41) / rad - 38],
    ['=LIFT.AS.TIBIA(0, 42, 41, 51, 38)', 0],
    ['=LIFT.AS.TIBIA(0, 42, 41, 51, 0)', 0],
    ['=LIFT.AS.FEMUR(0, 42, 41, 51, 38, 90)', 0],
    ['=LIFT.AS.TIBIA(2, 42, 41, 51, 0)', '#NUM!', 'lift'],
    ['=LIFT.AS.TIBIA(2, 42, 41, 51, 4)', '#NUM!', 'lift'],
    ['=LIFT.AS.FEMUR(2, 42, 41, 51, 38, 90)', '#NUM!', 'lift'],
    ['=LIFT.AS.FEMUR(6, 17, 41, 51, 38)', '#NUM!', 'lift'],
    ['=LIFT.AS.ANKLE(3, 42, 41, 51, 65)', '#NUM!', 'lift'],
    ['=LIFT.CHANGE(0, 42, 41, 51, 38)', 0],
    ['=LIFT.CHANGE(2, 60, 41, 40, 10)', '#NUM!'],
    ['=LIFT.CHANGE(2, 42, 41, 51, 38, 0, "goblet")', '#VALUE!', 'placement'],
  ]);
  test('1 cm counts for a little more ankle range than its pitch', () => {
    const ankle = number('LIFT.AS.ANKLE', 1, 42, 41, 51, 38, 0, 'high-bar', 26);
    const pitch = number('LIFT.PITCH', 1, 26);
    expect(ankle).toBeGreaterThan(pitch);
    expect(ankle).toBeLessThan(1.5 * pitch);
  });
});

describe('the smallest lift', () => {
  checks([
    ['=LIFT.FOR.LEAN(60, 42, 41, 51, 38)', 0],
    ['=LIFT.FOR.LEAN(60, 42, 41, 51, 38, 0, 0)', 0],
    ['=LIFT.FOR.LEAN(20, 42, 41, 51, 38, 0, 0)', '#N/A', 'lean'],
    ['=LIFT.FOR.LEAN(-30, 42, 41, 51, 38, 0, 15, "high-bar", 12)', '#N/A', 'lean'],
    ['=LIFT.FOR.LEAN(91, 42, 41, 51, 38)', '#NUM!', 'lean'],
    ['=LIFT.FOR.LEAN(40, 42, 41, 51, 38, 0, 16)', '#NUM!', 'max_lift'],
    ['=LIFT.FOR.LEAN(40, 42, 41, 51, 38, 0, 5, "goblet")', '#VALUE!', 'placement'],
    // the hip is too far ahead on the flat already, and a lift takes it further
    ['=LIFT.FOR.LEAN(20, 15, 70, 30, 60)', '#N/A', 'lean'],
    ['=LIFT.FOR.DEPTH(60, 42, 41, 51, 38)', 0],
    ['=LIFT.FOR.DEPTH(-46, 30, 45, 60, 50, 5, "front")', '#N/A', 'depth'],
    ['=LIFT.FOR.DEPTH(0, 60, 41, 30, 0, 1)', '#N/A', 'depth'],
    ['=LIFT.FOR.DEPTH(-61, 42, 41, 51, 38)', '#NUM!', 'depth'],
    ['=LIFT.FOR.DEPTH(0, 42, 41, 51, 38, 5, "goblet")', '#VALUE!', 'placement'],
  ]);
  test('no posture on the flat counts as not yet there', () => {
    expect(number('LIFT.FOR.LEAN', 80, 60, 41, 45, 15, 0, 10)).toBeGreaterThan(0);
  });
});

describe('wedges, and shoes on them', () => {
  const lever = 0.74 * 27;
  checks([
    ['=LIFT.BOARD(10, 20)', 30],
    ['=LIFT.BOARD(10, 10)', 90],
    ['=LIFT.BOARD(0, 30)', 0],
    ['=LIFT.BOARD(12, 10)', '#NUM!', 'length'],
    ['=LIFT.BOARD(5, 0)', '#NUM!', 'length'],
    ['=LIFT.BOARD(31, 40)', '#NUM!', 'rise'],
    ['=LIFT.STACK(2, 27)', 2],
    ['=LIFT.STACK(0, 27, 30)', lever / 2],
    // sin(α + β) = sin α cos β + cos α sin β
    ['=LIFT.STACK(2, 27, 10)', 2 * Math.cos(10 * rad) + Math.sqrt(lever * lever - 4) * Math.sin(10 * rad)],
    ['=LIFT.STACK(9, 12)', '#NUM!', 'drop'],
    ['=LIFT.STACK(4, 27, 46)', '#NUM!', 'board'],
    ['=LIFT.STACK(4, 27, 45)', '#NUM!', 'board'],
    ['=LIFT.STACK(7.3, 10, 20)', '#NUM!', 'board'],
  ]);
});

// Monteiro 2022, Hum Mov 23:97–103 (15 lifters, abstract read): the trunk is less inclined on 50 mm than on 25 mm, and on
// 25 mm than barefoot
describe('heel wedges of 25 and 50 mm', () => {
  test.each([
    ['man', 40.927, 41.875, 53.981, 27.118],
    ['woman', 37.941, 40.319, 48.974, 24.629],
  ] as const)('make the survey’s mean %s more upright, step by step', (_, femur, tibia, trunk, foot) => {
    const change = (lift: number) =>
      number('LIFT.CHANGE', lift, femur, tibia, trunk, 38, 0, 'high-bar', foot);
    expect(change(2.5)).toBeLessThan(-1);
    expect(change(5)).toBeLessThan(change(2.5) - 1);
  });
});

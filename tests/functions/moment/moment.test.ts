import { describe, expect, test } from 'vitest';
import { checks } from '../check.ts';
import { number } from '../posture/lifter.ts';

const g = 9.80665;

// by hand at a level trunk (sin 1, cos 0) and an upright one (sin 0, cos 1), trunk 50 cm, femur 40 cm
describe('moments at hip and knee', () => {
  checks([
    ['=MOMENT.HIP(90, 50, 80, 100)', g * (80 * 0.678 * 0.626 * 0.5 + 100 * 0.5)],
    ['=MOMENT.HIP(0, 50, 80, 100)', g * 100 * -0.09 * 0.5],
    ['=MOMENT.HIP(0, 50, 80, 20, "goblet")', g * (80 * 0.1 * 0.25 * 0.5 + 20 * 0.45 * 0.5)],
    ['=MOMENT.HIP(0, 50, 80, 0, "arms-forward")', g * 80 * 0.1 * 0.611 * 0.5],
    ['=MOMENT.HIP(90, 50, 80, 0, "arms-forward")', g * 80 * 0.5 * (0.578 * 0.66 + 0.1 + 0.1 * 0.611)],
    ['=MOMENT.HIP(0, 50, 80, 1, "arms-forward")', '#VALUE!', 'placement'],
    ['=MOMENT.HIP(-31, 50, 80, 1)', '#NUM!', 'lean'],
    ['=MOMENT.KNEE(0, 40, 50, 80, 0)', g * (0.2 * 80 * 0.567 * 0.4 + 80 * 0.678 * 0.4)],
    ['=MOMENT.KNEE(0, 40, 50, 80, 0, 60)', g * (0.2 * 80 * 0.567 * 0.2 + 80 * 0.678 * 0.2)],
    ['=MOMENT.KNEE(0, 40, 50, 80, 0, 0, "front", 60)', g * (0.2 * 80 * 0.567 * 0.2 + 80 * 0.678 * 0.2)],
    [
      '=MOMENT.KNEE(90, 40, 50, 80, 100)',
      g * (0.2 * 80 * 0.567 * 0.4 + 80 * (0.678 * 0.4 - 0.678 * 0.626 * 0.5) + 100 * (0.4 - 0.5)),
    ],
    ['=MOMENT.KNEE(0, 40, 50, 80, 5, 0, "arms-forward")', '#VALUE!', 'placement'],
    ['=MOMENT.SHARE(30, 10)', 0.75],
    ['=MOMENT.SHARE(0, 10)', 0],
    ['=MOMENT.SHARE(10, 0)', 1],
    ['=MOMENT.SHARE(0, 0)', '#DIV/0!', 'hip'],
    ['=MOMENT.SHARE(-1, 10)', '#NUM!', 'hip'],
    ['=MOMENT.SHARE(10, -1)', '#NUM!', 'knee'],
  ]);
});

describe('the lever sum', () => {
  checks([
    ['=MOMENT.ARMS(5, 10, 20)', 40],
    ['=MOMENT.ARMS(5, 10, 20, 30, 40, 50, 60)', (200 + 1200 + 3000) / 5],
    ['=MOMENT.ARMS(5, 10, 20, , , 50, 60)', (200 + 3000) / 5],
    ['=MOMENT.ARMS(5, 10, 20, 30, 40, 50)', '#N/A'],
    ['=MOMENT.ARMS(5, 10, 20, 30)', '#N/A'],
    ['=MOMENT.ARMS(5, 10)', '#N/A'],
    ['=MOMENT.ARMS(0, 10, 20)', '#NUM!', 'lever'],
    ['=MOMENT.ARMS(5, 10, 20, 30, 40, "x", 60)', '#VALUE!', 'weight3'],
  ]);
});

describe('moments at the ankles', () => {
  // shank and trunk upright, thigh level: knee over the ankle at −.25 L, hip a femur behind
  const [ankle, knee, hip] = [-0.05, -0.05, -0.45];
  const shank = knee + 0.433 * (ankle - knee);
  const thigh = hip + 0.433 * (knee - hip);
  const legs = 80 * (0.093 * shank + 0.2 * thigh + 0.678 * hip);
  checks([
    [
      '=MOMENT.ANKLE(0, 0, 80, 100, 40, 40, 50, 20)',
      g * (legs + 100 * (hip - 0.09 * 0.5) - (0.971 * 80 + 100) * ankle),
    ],
    [
      '=MOMENT.ANKLE(0, 0, 80, 0, 40, 40, 50, 20, 0, 0, "arms-forward")',
      g * (legs + 80 * 0.1 * 0.611 * 0.5 - 0.971 * 80 * ankle),
    ],
    ['=MOMENT.ANKLE(0, 0, 80, 5, 40, 40, 50, 20, 0, 0, "arms-forward")', '#VALUE!', 'placement'],
    ['=MOMENT.ANKLE(0, 90, 80, 5, 40, 40, 50, 20)', '#NUM!'],
    ['=MOMENT.ANKLE(0, 0, 80, 5, 40, 40, 50, 20, 14.8)', '#NUM!', 'lift'],
    ['=MOMENT.ANKLE(0, 0, 80, 5, 40, 40, 50, "")', '#N/A', 'foot'],
  ]);
});

// Wretenberg 1996, MSSE 28:218: hip 216 and knee 131 N·m a leg, a share of .62, high bar at parallel
describe('the hips’ share of the load of the survey’s mean man, bar as heavy as he', () => {
  const share = (lean: number) => {
    const hip = number('MOMENT.HIP', lean, 53.981, 80, 80);
    return number('MOMENT.SHARE', hip, number('MOMENT.KNEE', lean, 40.927, 53.981, 80, 80));
  };
  test('comes to the published one at an observed lean of 39.3° (Sato 2013)', () => {
    expect(Math.abs(share(39.28) - 216 / (216 + 131))).toBeLessThan(0.02);
  });
  test('is far below it at the model’s own minimum lean', () => {
    const lean = number('LEAN.PARALLEL', 40.927, 41.875, 53.981, 38, 0, 'high-bar', 27.118);
    expect(share(lean)).toBeLessThan(0.5);
  });
});

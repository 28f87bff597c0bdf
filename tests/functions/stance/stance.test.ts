import { describe, expect, test } from 'vitest';
import { checks } from '../check.ts';
import { number } from '../posture/lifter.ts';

// femur 40 level, shank upright: the hip is 40 cm behind the ankle, so the ankle goes out by 40 sin of the angle
describe('toe-out angle of a stance', () => {
  checks([
    ['=STANCE.ANGLE(60, 20, 40, 41, 0)', 30],
    ['=STANCE.ANGLE(20, 20, 40, 41, 0)', 0],
    ['=STANCE.ANGLE(40, 20, 40, 41, 0, 60)', 30],
    ['=STANCE.ANGLE(40, 20, 40.5, 41, 30)', 30],
    ['=STANCE.ANGLE(90, 20, 40, 41, 0)', '#NUM!', 'width'],
    ['=STANCE.ANGLE(120, 20, 40, 41, 0)', '#NUM!', 'width'],
    ['=STANCE.ANGLE(19, 20, 40, 41, 0)', '#NUM!', 'width'],
    ['=STANCE.ANGLE(40, 20, 40, 41, 90)', '#NUM!', 'shank'],
    ['=STANCE.ANGLE(20, 20, 40, 41, 0, 90)', '#NUM!', 'shank'],
    ['=STANCE.ANGLE(151, 20, 40, 41, 0)', '#NUM!', 'width'],
    ['=STANCE.ANGLE(60, 9, 40, 41, 0)', '#NUM!', 'hips'],
  ]);
  test('puts the backs of the heels about 7 cm closer than the ankles at 30°, as the help says', () => {
    const angle = number('STANCE.ANGLE', 60, 20, 40, 41, 0);
    expect(2 * 0.25 * 27 * Math.sin((angle * Math.PI) / 180)).toBeCloseTo(6.75, 6);
  });
});

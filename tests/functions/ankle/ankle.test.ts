import { describe } from 'vitest';
import { checks } from '../check.ts';

const deg = (radians: number) => (radians * 180) / Math.PI;
const sin = (degrees: number) => Math.sin((degrees * Math.PI) / 180);

// closed form of the geometry, written out here: asin((distance + .75 L − 5) / tibia)
describe('the knee-to-wall test', () => {
  checks([
    ['=ANKLE.FROM.WALL(10, 40, 24)', deg(Math.asin(23 / 40))],
    ['=ANKLE.FROM.WALL(10, 24.6)', deg(Math.asin((10 + 0.75 * 15.2 - 5) / 24.6))],
    ['=ANKLE.FROM.WALL(-10, 40, 20)', 0],
    ['=ANKLE.FROM.WALL(40, 40, 24)', '#NUM!', 'distance'],
    ['=ANKLE.FROM.WALL(41, 40, 24)', '#NUM!', 'distance'],
    ['=ANKLE.FROM.WALL(10, 40, 46)', '#NUM!', 'foot'],
    ['=ANKLE.FROM.WALL(26, 40, 24)', '#NUM!', 'distance'],
    ['=ANKLE.TO.WALL(30, 40, 24)', 40 / 2 - 18 + 5],
    ['=ANKLE.TO.WALL(-10, 40, 24)', 40 * sin(-10) - 13],
    ['=ANKLE.TO.WALL(70, 80, 10)', 80 * sin(70) - 7.5 + 5],
    ['=ANKLE.TO.WALL(71, 80, 10)', '#NUM!', 'ankle'],
  ]);
});

describe('ANKLE.NEEDED', () => {
  checks([
    ['=ANKLE.NEEDED(84, 60, 41, 51, 0, 0, "front")', '#NUM!', 'lean'],
    ['=ANKLE.NEEDED(40, 42, 41, 51, 0, 0, "goblet")', '#VALUE!', 'placement'],
    ['=ANKLE.NEEDED(40, 42, 41, 51, 9, 0, "front", 12)', '#NUM!', 'lift'],
    ['=ANKLE.NEEDED(-31, 42, 41, 51)', '#NUM!', 'lean'],
    ['=ANKLE.NEEDED(0, 60, 15, 51)', '#NUM!', 'lean'],
  ]);
});

// 2 cm under a foot of 27 cm: asin(2 / 19.98) by hand
describe('share of the ankle range in use', () => {
  const pitch = Math.asin(2 / (0.74 * 27)) / (Math.PI / 180);
  checks([
    ['=ANKLE.USED(30, 40)', 0.75],
    ['=ANKLE.USED(44, 40)', 1.1],
    ['=ANKLE.USED(-10, 40)', -0.25],
    ['=ANKLE.USED(30, 40, 2, 27)', (30 - pitch) / 40],
    ['=ANKLE.USED(30, 40, 2)', '#N/A', 'foot'],
    // too little data speaks before the divisor, a bound before both
    ['=ANKLE.USED(30, 0, 2)', '#N/A', 'foot'],
    ['=ANKLE.USED(30, 0)', '#DIV/0!', 'ankle'],
    ['=ANKLE.USED(30, -1, 2)', '#NUM!', 'ankle'],
    ['=ANKLE.USED(30, 40, 9, 12)', '#NUM!', 'lift'],
  ]);
});

import { describe } from 'vitest';
import { checks } from '../check.ts';

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

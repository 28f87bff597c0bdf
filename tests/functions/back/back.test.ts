import { describe } from 'vitest';
import { checks } from '../check.ts';

const g = 9.80665;
const level = g * 0.5 * (0.536 * 80 * (0.744 - 0.2) + 100 * (1 - 0.2));
const upright = g * 0.5 * 100 * -0.09;

// by hand at a level and an upright trunk of 50 cm, 80 kg, 100 kg on a high bar
describe('the load on the back', () => {
  checks([
    ['=MOMENT.BACK(90, 50, 80, 100)', level],
    ['=MOMENT.BACK(0, 50, 80, 100)', upright],
    ['=MOMENT.BACK(90, 50, 80, 0)', g * 0.5 * 0.536 * 80 * (0.744 - 0.2)],
    ['=MOMENT.BACK(90, 50, 80, 100, "goblet")', '#VALUE!', 'placement'],
    ['=MOMENT.BACK(90, 50, 80, 0, "arms-forward")', '#VALUE!', 'placement'],
    ['=BACK.MUSCLE(90, 50, 80, 100)', level / 0.06],
    ['=BACK.MUSCLE(90, 50, 80, 100, , 5)', level / 0.05],
    ['=BACK.MUSCLE(0, 50, 80, 100)', upright / 0.06],
    ['=BACK.MUSCLE(90, 50, 80, 100, "front", 20.1)', '#NUM!', 'lever'],
    ['=BACK.COMPRESSION(90, 50, 80, 100)', level / 0.06],
    ['=BACK.COMPRESSION(0, 50, 80, 100)', -upright / 0.06 + g * (0.536 * 80 + 100)],
    ['=BACK.COMPRESSION(90, 50, 80, 100, "goblet")', '#VALUE!', 'placement'],
    ['=BACK.SHEAR(90, 50, 80, 100)', g * (0.536 * 80 + 100)],
    ['=BACK.SHEAR(0, 50, 80, 100)', 0],
    ['=BACK.SHEAR(0, 50, 80, 100, "arms-forward")', '#VALUE!', 'placement'],
    ['=BACK.SHEAR(0, 50, 80, 100, "front", 6)', '#N/A'],
  ]);
});

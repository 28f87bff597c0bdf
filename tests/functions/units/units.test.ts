import { describe } from 'vitest';
import { checks } from '../check.ts';

// international yard and pound agreement, 1959: an inch is 2.54 cm, a pound .45359237 kg
describe('units in formulas', () => {
  checks([
    ['=IN(1)', 2.54],
    ['=IN(-2)', -5.08],
    ['=IN("1.5")', 3.81],
    ['=LB(1)', 0.45359237],
    ['=LB(0)', 0],
    ['=FT.IN(6, 0)', 182.88],
    ['=FT.IN(5.5, 6)', 182.88],
    ['=MM(1)', 0.1],
    ['=MM("x")', '#VALUE!', 'x'],
    ['=IN("1 in")', '#VALUE!', 'x'],
    ['=FT.IN(6)', '#N/A'],
  ]);
});

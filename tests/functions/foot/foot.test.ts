import { describe } from 'vitest';
import { checks } from '../check.ts';

// a lever with supports at 12 and 74 % of the foot, by hand
describe('FOOT.BALL', () => {
  checks([
    ['=FOOT.BALL(43)', 0.5],
    ['=FOOT.BALL(74)', 1],
    ['=FOOT.BALL(-20)', 0],
    ['=FOOT.BALL("x")', '#VALUE!', 'centre'],
  ]);
});

import { describe } from 'vitest';
import { checks } from '../check.ts';

// differences and ratios by hand; survey and table figures as printed (NATICK/TR-15/007; Dempster 1955; de Leva 1996)
describe('lengths from standing heights', () => {
  checks([
    ['=SEG.FEMUR(95, 15)', 80],
    ['=SEG.FEMUR(95, 14.9)', '#NUM!', 'trochanter_height'],
    ['=SEG.FEMUR(49.6, 34.6)', 15],
    ['=SEG.TIBIA(50, 35.1)', '#NUM!', 'knee_height'],
    ['=SEG.TRUNK(121.5, 101.5)', 20],
    ['=SEG.TRUNK(101.5, 121.5)', '#NUM!', 'shoulder_height'],
    ['=SEG.FEMUR(261, 200)', '#NUM!', 'trochanter_height'],
    ['=SEG.FEMUR(91.5, 0.9)', '#NUM!', 'knee_height'],
  ]);
});

describe('ratios and indices', () => {
  checks([
    ['=SEG.RATIO(3, 4)', 0.75],
    ['=SEG.RATIO(0, 4)', '#NUM!', 'a'],
    ['=SEG.RATIO(0, 0)', '#NUM!', 'a'],
    ['=SEG.RATIO(3, 0)', '#DIV/0!', 'b'],
    ['=SEG.RATIO(3, -4)', '#NUM!', 'b'],
    ['=SEG.CRURAL(40, 50)', 80],
    ['=SEG.CORMIC(88, 176)', 50],
    ['=SEG.CORMIC(39, 176)', '#NUM!', 'sitting_height'],
    ['=SEG.CORMIC(88, 79)', '#NUM!', 'stature'],
  ]);
});

describe('estimates, tables and the survey', () => {
  checks([
    ['=SEG.ESTIMATE("FOOT", 200)', 30.4],
    ['=SEG.ESTIMATE("ankle height", 200, "m")', 8.3],
    ['=SEG.ESTIMATE("femur", 200, "Female")', 46.58],
    ['=SEG.ESTIMATE("arm", 200)', '#VALUE!', 'segment'],
    ['=SEG.FOOT(77.9, 20, 30)', (0.152 / 0.779) * 127.9],
    ['=SEG.MASS("foot", 100)', 1.45],
    ['=SEG.MASS("foot", 100, "deleva-male")', 1.37],
    ['=SEG.MASS("Head", 100, "DELEVA-FEMALE")', 6.68],
    ['=SEG.MASS("head", 100)', '#N/A', 'segment'],
    ['=SEG.MASS("pelvis", 100, "deleva-female")', '#N/A', 'segment'],
    ['=SEG.MASS("knee", 100)', '#VALUE!', 'segment'],
    ['=SEG.MASS("foot", 9)', '#NUM!', 'body_mass'],
    ['=SEG.COM("head-arms-trunk")', 0.626],
    ['=SEG.COM("thigh", "deleva-female")', 0.3612],
    ['=SEG.COM("pelvis")', '#N/A', 'segment'],
    ['=SEG.COM("trunk")', '#N/A', 'segment'],
    ['=SEG.COM("neck")', '#VALUE!', 'segment'],
    ['=SEG.NORM("cormic", "F")', 52.62],
    ['=SEG.NORM("stature", "male", "SD")', 6.855],
    ['=SEG.NORM("hand", "male")', '#VALUE!', 'measure'],
    ['=SEG.NORM("femur", "x")', '#VALUE!', 'sex'],
    ['=SEG.PERCENTILE("tibia", "F", 40.319)', 50],
    // Φ(2) of the tables: .97725 (Abramowitz & Stegun 26.2)
    ['=SEG.PERCENTILE("stature", "M", 189.331)', 97.72498680518208],
  ]);
});

describe('SEG.CHECK', () => {
  const [ratio, trunk, sum] = [
    'femur/tibia is outside 0.6963 to 1.2084',
    'trunk/femur is outside 0.8177 to 1.8337',
    'femur + tibia + trunk is outside 0.72 to 0.84 of stature',
  ];
  checks([
    ['=SEG.CHECK(40, 40, 50)', 'ok'],
    ['=SEG.CHECK(69.63, 100, 60)', '#NUM!', 'tibia'],
    ['=SEG.CHECK(27.852, 40, 40)', 'ok'],
    ['=SEG.CHECK(27.851, 40, 40)', ratio],
    ['=SEG.CHECK(48.337, 40, 60)', ratio],
    ['=SEG.CHECK(40, 40, 32.7)', trunk],
    ['=SEG.CHECK(40, 40, 73.35)', trunk],
    ['=SEG.CHECK(40, 40, 50, 180.6)', sum],
    ['=SEG.CHECK(40, 40, 50, 180.5)', 'ok'],
    ['=SEG.CHECK(40, 40, 50, 154.7)', sum],
    // the first doubt speaks
    ['=SEG.CHECK(60, 40, 40, 260)', ratio],
  ]);
});

import { describe } from 'vitest';
import { checks } from '../check.ts';

// Days as serial numbers; the results can be worked out by hand.
const LOG = '{46003;46001;46002;46002;46010}, {30;10;20;5;40}';
const WHO = '{"Ida";"Bo";"ida ";"Bo";"IDA"}';
const LONG = '{45961;45975;45985;46000}, {70;140;210;280}';

describe('TRAIN.SUM and TRAIN.MEAN', () => {
  checks([
    [`TRAIN.SUM(${LOG}, 46003)`, 65],
    [`TRAIN.SUM(${LOG}, 46003.75)`, 65],
    [`TRAIN.SUM(${LOG}, 46003, 1)`, 30],
    [`TRAIN.SUM(${LOG}, 46002, 1)`, 25],
    [`TRAIN.SUM(${LOG}, 46003, 2, ${WHO}, "ida")`, 50],
    [`TRAIN.SUM(${LOG}, 46003, 2, ${WHO}, " BO ")`, 5],
    [`TRAIN.SUM(${LOG}, 47000)`, 0],
    [`TRAIN.SUM(${LOG}, 40000)`, 0],
    [`TRAIN.SUM(${LOG}, 46003, 7, ${WHO}, "Ada")`, '#N/A', 'dates'],
    [`TRAIN.SUM(${LOG}, 46003, 7, ${WHO})`, '#N/A', 'athlete'],
    [`TRAIN.SUM(${LOG}, 46003, 7, , "Ida")`, '#N/A', 'athletes'],
    [`TRAIN.SUM(${LOG}, 46003, 0)`, '#NUM!', 'days'],
    [`TRAIN.SUM(${LOG}, 46003, 2.5)`, '#NUM!', 'days'],
    [`TRAIN.SUM(${LOG}, "today")`, '#VALUE!', 'on'],
    [`TRAIN.SUM(${LOG}, "46003")`, '#VALUE!', 'on'],
    [`TRAIN.SUM({46001;;46003}, {10;20;}, 46003)`, 10],
    [`TRAIN.SUM({46001;46002}, {10;20;30}, 46003)`, '#VALUE!', 'values'],
    [`TRAIN.SUM({46001;46002}, {10;20}, 46003, 7, {"Ida"}, "Ida")`, '#VALUE!', 'athletes'],
    [`TRAIN.SUM({46001;46002}, {10;20}, 46002, 7, {7;8}, 7)`, 10],
    [`TRAIN.MEAN(${LOG}, 46003, 3)`, 65 / 3],
    [`TRAIN.MEAN(${LOG}, 46003, 4)`, '#N/A', 'dates'],
    [`TRAIN.MEAN(${LOG}, 46005, 5)`, 13],
    [`TRAIN.MEAN(${LOG}, 46003, 3, ${WHO}, "Ida")`, '#N/A', 'dates'],
    [`TRAIN.MEAN(${LOG}, 46003, 2, ${WHO}, "Ida")`, 25],
    [`TRAIN.MEAN({46001}, {""}, 46001, 1)`, '#N/A', 'dates'],
  ]);
});

describe('TRAIN.ACWR and TRAIN.EWMA.RATIO', () => {
  checks([
    // The window (45972, 46000] holds 140 + 210 + 280; the log reaches back over it.
    [`TRAIN.ACWR(${LONG}, 46000)`, 280 / 7 / (630 / 28)],
    [`TRAIN.ACWR(${LONG}, 46000, 7, 28, FALSE)`, 280 / 7 / (350 / 21)],
    [`TRAIN.ACWR(${LONG}, 46000, 7, 40)`, 280 / 7 / (700 / 40)],
    [`TRAIN.ACWR(${LONG}, 46000, 7, 41)`, '#N/A', 'dates'],
    [`TRAIN.ACWR(${LONG}, 46000, 28, 28)`, '#NUM!', 'acute'],
    [`TRAIN.EWMA.RATIO(${LONG}, 46000, 28, 28)`, '#NUM!', 'acute'],
    [`TRAIN.ACWR(${LONG}, 46000, 28, 28, FALSE)`, '#NUM!', 'acute'],
    [`TRAIN.ACWR(${LONG}, 46000, 29, 28)`, '#NUM!', 'acute'],
    [`TRAIN.ACWR(${LONG}, 46100)`, '#DIV/0!', 'values'],
    [`TRAIN.ACWR(${LONG}, 46000, 7, 28, "maybe")`, '#VALUE!', 'coupled'],
    [`TRAIN.EWMA.RATIO({46000;46027}, {0;0}, 46027)`, '#DIV/0!', 'values'],
    [`TRAIN.EWMA.RATIO({46001;46027}, {10;10}, 46027)`, '#N/A', 'dates'],
    [`TRAIN.EWMA.RATIO(${LONG}, 46000, 30, 28)`, '#NUM!', 'acute'],
    [`TRAIN.EWMA({46001;46003}, {10;10}, 46000, 7)`, '#N/A', 'dates'],
    [`TRAIN.EWMA({46001;46003}, {10;10}, 46003, 1)`, 10],
    [`TRAIN.EWMA({46001;46003}, {10;10}, 46002, 1)`, 0],
    [`TRAIN.EWMA({46001;46003}, {10;10}, 46003, 0.5)`, '#NUM!', 'days'],
  ]);
});

describe('TRAIN.MONOTONY and TRAIN.STRAIN', () => {
  checks([
    [`TRAIN.MONOTONY({46001;46002}, {1;3}, 46002, 2)`, Math.SQRT2],
    [`TRAIN.MONOTONY({46001;46002}, {1;3}, 46002, 2, , , "population")`, 2],
    [`TRAIN.STRAIN({46001;46002}, {1;3}, 46002, 2)`, 4 * Math.SQRT2],
    [`TRAIN.MONOTONY({46001;46002}, {1;3}, 46002, 1)`, '#N/A', 'days'],
    [`TRAIN.MONOTONY({46001;46002}, {1;3}, 46002)`, '#N/A', 'dates'],
    [`TRAIN.MONOTONY({46001;46002}, {0;0}, 46002, 2)`, '#DIV/0!', 'values'],
    // Three rows of .1 make the same day as one of .3, whatever the last bit says.
    [`TRAIN.MONOTONY({46001;46001;46001;46002}, {.1;.1;.1;.3}, 46002, 2)`, '#DIV/0!', 'values'],
    [`TRAIN.STRAIN({46001;46002}, {2;2}, 46002, 2)`, '#DIV/0!', 'values'],
    [`TRAIN.STRAIN({46001;46002}, {2;2}, 46002, 2, , , "both")`, '#VALUE!', 'sd'],
  ]);
});

describe('TRAIN.BEST, TRAIN.LAST and TRAIN.SINCE', () => {
  checks([
    [`TRAIN.BEST(${LOG}, 46001, 46003)`, 30],
    [`TRAIN.BEST(${LOG}, 46002.9, 46002.1)`, 20],
    [`TRAIN.BEST(${LOG}, 46004, 46003)`, '#NUM!', 'from'],
    [`TRAIN.BEST(${LOG}, 46004, 46009)`, '#N/A', 'dates'],
    [`TRAIN.BEST(${LOG}, 46001, 46010, ${WHO}, "bo")`, 10],
    [`TRAIN.BEST({46001;46002}, {-3;-5}, 46001, 46002)`, -3],
    [`TRAIN.LAST(${LOG}, 46002)`, 5],
    [`TRAIN.LAST({46002;46001;46002}, {1;2;3}, 46009)`, 3],
    [`TRAIN.LAST({46002.9;46001;46002.1}, {1;2;3}, 46009)`, 3],
    [`TRAIN.LAST(${LOG}, 46000)`, '#N/A', 'dates'],
    [`TRAIN.LAST(${LOG}, 46009, ${WHO}, "IDA")`, 30],
    [`TRAIN.SINCE(${LOG}, 46009)`, 6],
    [`TRAIN.SINCE(${LOG}, 46003.5)`, 0],
    [`TRAIN.SINCE(${LOG}, 46000)`, '#N/A', 'dates'],
    [`TRAIN.SINCE(${LOG}, 46009, ${WHO}, "bo")`, 7],
  ]);
});

describe('TRAIN.TREND', () => {
  checks([
    [`TRAIN.TREND({46015;46001;46008}, {104;100;102})`, 2],
    [`TRAIN.TREND({46001;46008;46015}, {100;102;90}, 46001, 46008)`, 2],
    [`TRAIN.TREND({46001;46008;46015}, {100;102;90}, , 46014)`, 2],
    [`TRAIN.TREND({46001;46008}, {100;102}, 46008)`, '#N/A', 'dates'],
    [`TRAIN.TREND({46001;46001.5}, {100;102})`, '#N/A', 'dates'],
    [`TRAIN.TREND({46001;46008}, {100;102}, 46009, 46001)`, '#NUM!', 'from'],
    [`TRAIN.TREND({46001;46008}, {100;102}, 46020, 46030)`, '#N/A', 'dates'],
    // Two rows on one day: each stands for itself.
    [`TRAIN.TREND({46001;46001;46008}, {100;110;105})`, 0],
    [`TRAIN.TREND({46001;46001;46008}, {100;110;105}, , , , , "theil-sen")`, 0],
    [`TRAIN.TREND({46001;46008}, {100;102}, , , {"Ida";"Bo"}, "Ida")`, '#N/A', 'dates'],
    [`TRAIN.TREND({46001;46008}, {100;100}, , , , , "THEIL-SEN")`, 0],
    [`TRAIN.TREND({46001;46008}, {100;102}, , , , , "lowess")`, '#VALUE!', 'method'],
  ]);
});

describe('TRAIN.SESSION and TRAIN.VOLUME', () => {
  checks([
    ['TRAIN.SESSION(10.5, 60)', '#NUM!', 'rpe'],
    ['TRAIN.SESSION(5, -1)', '#NUM!', 'minutes'],
    ['TRAIN.VOLUME({3;;2}, {5;5;}, {100;100;100})', 1500],
    ['TRAIN.VOLUME({3;""}, {"";5}, {100;100})', '#N/A', 'sets'],
    ['TRAIN.VOLUME({3;3}, {5}, {100;100})', '#VALUE!', 'reps'],
    ['TRAIN.VOLUME(-1, 5, 100)', '#NUM!', 'sets'],
    ['TRAIN.VOLUME(1000, 500, 10000)', 5e9],
    ['TRAIN.VOLUME(0, 5, 100)', 0],
    ['TRAIN.VOLUME("x", 5, 100)', '#VALUE!', 'sets'],
  ]);
});

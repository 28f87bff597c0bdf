import { type Constant, constant, published, type Source } from '../core/source.ts';

/** A published figure of reliability: a standard error, a minimal detectable change, or both. */
export interface Retest {
  readonly about: string;
  readonly unit: 'cm' | 'deg';
  readonly sem?: Constant;
  readonly mdc?: Constant;
  readonly source: Source;
}

const powden = published(
  'Powden 2015, Man Ther 20:524–532, twelve studies: minimal detectable change 1.9 cm; volume and pages from memory',
);
const konor = (range: string) =>
  published(`Konor 2012, IJSPT 7:279–287: ${range}, the middle taken; pages from memory`);
const chisholm = published(
  'Chisholm 2012, Physiother Can 64:347–355: minimal detectable change 1.5 cm between sides; volume and pages from memory',
);

/** Retest figures by test. What is left out is worked out from the other: MDC = z·√2·SEM. */
export const retests = {
  wall: {
    about: 'knee to wall, one trial per side on two occasions',
    unit: 'cm',
    mdc: constant('minimal detectable change, knee to wall', 1.9, 'cm', powden),
    source: powden,
  },
  'wall mean': {
    about: 'knee to wall, mean of three trials in one session',
    unit: 'cm',
    sem: constant('standard error, knee to wall, mean of three', 0.5, 'cm', konor('SEM .4 to .6 cm')),
    mdc: constant(
      'minimal detectable change, knee to wall, mean of three',
      1.3,
      'cm',
      konor('MDC 1.1 to 1.5 cm'),
    ),
    source: konor('SEM .4 to .6 cm, MDC 1.1 to 1.5 cm'),
  },
  'wall sides': {
    about: 'knee to wall, difference between sides',
    unit: 'cm',
    mdc: constant('minimal detectable difference between sides, knee to wall', 1.5, 'cm', chisholm),
    source: chisholm,
  },
  inclinometer: {
    about: 'weight-bearing ankle range by inclinometer',
    unit: 'deg',
    sem: constant('standard error, inclinometer', 1.35, 'deg', konor('SEM 1.3 to 1.4 deg')),
    source: konor('SEM 1.3 to 1.4 deg'),
  },
  goniometer: {
    about: 'weight-bearing ankle range by goniometer',
    unit: 'deg',
    sem: constant('standard error, goniometer', 2.3, 'deg', konor('SEM 1.8 to 2.8 deg')),
    source: konor('SEM 1.8 to 2.8 deg'),
  },
} as const satisfies Record<string, Retest>;
export type RetestWord = keyof typeof retests;
export const retestWords = Object.keys(retests) as [RetestWord, ...RetestWord[]];

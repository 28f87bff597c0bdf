import { type Constant, constant, published } from '../core/source.ts';

/** The 2012 survey of army personnel whose data are public: 4082 men, 1986 women. */
export const surveySource = published(
  'Gordon et al. 2014, NATICK/TR-15/007, computed from the public data, n = 4082 men, 1986 women',
);

export const surveyMeasures = [
  'stature',
  'sitting height',
  'femur',
  'tibia',
  'trunk',
  'foot',
  'femur/tibia',
  'trunk/femur',
  'cormic',
] as const;
export type SurveyMeasure = (typeof surveyMeasures)[number];
export type Sex = 'female' | 'male';

// mean and SD of men, then of women: lengths in cm, ratios plain, the Cormic index in per cent
const printed: Readonly<Record<SurveyMeasure, readonly [number, number, number, number]>> = {
  stature: [175.621, 6.855, 162.847, 6.42],
  'sitting height': [91.829, 3.57, 85.663, 3.305],
  femur: [40.927, 2.842, 37.941, 2.405],
  tibia: [41.875, 2.457, 40.319, 2.591],
  trunk: [53.981, 3.34, 48.974, 2.934],
  foot: [27.118, 1.31, 24.629, 1.244],
  'femur/tibia': [0.9784, 0.0575, 0.9431, 0.0617],
  'trunk/femur': [1.3257, 0.127, 1.2956, 0.1085],
  cormic: [52.31, 1.35, 52.62, 1.41],
};
const units: Readonly<Partial<Record<SurveyMeasure, string>>> = {
  'femur/tibia': '',
  'trunk/femur': '',
  cormic: '%',
};

const entry = (measure: SurveyMeasure, column: number): Constant =>
  constant(
    `${column % 2 === 0 ? 'mean' : 'SD'} of ${measure}, ${column < 2 ? 'men' : 'women'}`,
    printed[measure][column]!,
    units[measure] ?? 'cm',
    surveySource,
  );

const entries = surveyMeasures.map((measure) => [0, 1, 2, 3].map((column) => entry(measure, column)));
export const surveyConstants: readonly Constant[] = entries.flat();

const places = Object.fromEntries(surveyMeasures.map((measure, i) => [measure, i])) as Readonly<
  Record<SurveyMeasure, number>
>;

/** Mean or SD of a measure. */
export const surveyNorm = (measure: SurveyMeasure, sex: Sex, statistic: 'mean' | 'sd'): Constant =>
  entries[places[measure]]![(sex === 'male' ? 0 : 2) + (statistic === 'mean' ? 0 : 1)]!;

/** The survey's mean fractions of stature, men then women. */
const shares = {
  femur: [0.233, 0.2329],
  tibia: [0.2384, 0.2475],
  trunk: [0.3074, 0.3008],
  foot: [0.1544, 0.1513],
  'ankle height': [0.0415, 0.0385],
} as const;
export type StatureSegment = keyof typeof shares;
export const statureSegments = Object.keys(shares) as readonly StatureSegment[] as readonly [
  'femur',
  'tibia',
  'trunk',
  'foot',
  'ankle height',
];

export const surveyShare = (segment: StatureSegment, sex: Sex): Constant =>
  constant(
    `${segment}, survey mean of ${sex === 'male' ? 'men' : 'women'}`,
    shares[segment][sex === 'male' ? 0 : 1],
    'of stature',
    surveySource,
  );

/** Shares of femur + tibia + trunk, mean of the sexes: the build that others are compared with. */
const share = (name: string, value: number) =>
  constant(`${name} of the reference build`, value, 'of femur + tibia + trunk', surveySource);
export const referenceFemur = share('femur', 0.2987);
export const referenceTibia = share('tibia', 0.3114);
export const referenceTrunk = share('trunk', 0.3899);

/** How far the joint line of the knee lies below the epicondyle, cm. */
export const jointLineBelow = {
  male: constant('epicondyle above the knee joint line, men', 2.3, 'cm', surveySource),
  female: constant('epicondyle above the knee joint line, women', 2.8, 'cm', surveySource),
} as const;

/** Limits of plausible build: four SD of the survey, both sexes together; for the sum, a margin around all 6068 people. */
const limit = (name: string, value: number, unit = '') => constant(name, value, unit, surveySource);
export const plausible = {
  femurTibia: [limit('femur/tibia, lowest', 0.6963), limit('femur/tibia, highest', 1.2084)],
  trunkFemur: [limit('trunk/femur, lowest', 0.8177), limit('trunk/femur, highest', 1.8337)],
  sum: [
    limit('femur + tibia + trunk, lowest', 0.72, 'of stature'),
    limit('femur + tibia + trunk, highest', 0.84, 'of stature'),
  ],
} as const;

import { defineFunction } from '../core/define.ts';
import { option } from '../core/parameter.ts';
import { step } from '../posture/steps.ts';
import { sexMaybe, stature } from '../tables/parameters.ts';
import { ankleHeightShare, femurShare, footShare, tibiaShare, trunkShare } from '../tables/stature.ts';
import { type Sex, type StatureSegment, statureSegments, surveyShare } from '../tables/survey.ts';

const drillis = {
  femur: femurShare,
  tibia: tibiaShare,
  trunk: trunkShare,
  foot: footShare,
  'ankle height': ankleHeightShare,
} as const;

// looked up once: a column of estimates must not build constants row by row
const survey = Object.fromEntries(
  statureSegments.map((s) => [s, { male: surveyShare(s, 'male'), female: surveyShare(s, 'female') }]),
) as Readonly<Record<StatureSegment, Readonly<Record<Sex, ReturnType<typeof surveyShare>>>>>;

const shareOf = (segment: StatureSegment, sex: Sex | undefined) =>
  sex === undefined ? drillis[segment] : survey[segment][sex];

/** SEG.ESTIMATE(segment, stature, [sex]): cm from a fraction of stature. @throws nothing. */
export default defineFunction({
  name: 'SEG.ESTIMATE',
  family: 'segments',
  summary: 'A segment’s length estimated from stature, for somebody who was not measured.',
  searchWords: ['from height', 'default length', 'segment fractions', 'missing measure'],
  parameters: [
    option('segment', statureSegments, 'which length'),
    stature(),
    sexMaybe('left out: the fractions of 1966; with a sex: the survey’s mean fractions'),
  ],
  result: { is: 'number', unit: 'cm', about: 'fraction × stature' },
  rule: 'fraction of stature × stature',
  sources: [femurShare.source, surveyShare('femur', 'male').source],
  constants: [
    ...Object.values(drillis),
    ...statureSegments.flatMap((s) => [survey[s].male, survey[s].female]),
  ],
  cautions: [
    'A default only. The fractions of 1966 were never validated for a population; in the survey stature explains less than half the variance of thigh length, and thigh and trunk length are uncorrelated. Measure whenever you can.',
  ],
  notes: ['An estimated build hides exactly what sets one lifter’s lean apart from another’s.'],
  examples: [
    { formula: '=SEG.ESTIMATE("femur", 175.6)', gives: 43.022 },
    { formula: '=SEG.ESTIMATE("trunk", 162.8, "F")', gives: 48.9702 },
  ],
  seeAlso: ['SEG.FEMUR', 'SEG.NORM', 'SEG.CHECK', 'SEG.FOOT'],
  typical: ['femur', 175.6],
  directions: { stature: 1 },
  compute: (segment, stature, sex) => shareOf(segment, sex).value * stature,
  steps: (segment, stature, sex) => {
    const share = shareOf(segment, sex);
    return [
      step('Fraction of stature', 'k', 'table', share.value, '', [share]),
      step(`Estimated ${segment}`, 'k × stature', 'fraction × stature', share.value * stature, 'cm'),
    ];
  },
});

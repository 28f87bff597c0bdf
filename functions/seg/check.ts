import { defineFunction } from '../core/define.ts';
import { femur, statureMaybe, tibia, trunk } from '../tables/parameters.ts';
import { landmarkNote } from '../tables/sources.ts';
import { plausible, surveySource } from '../tables/survey.ts';

const [femurTibia, trunkFemur, sum] = [plausible.femurTibia, plausible.trunkFemur, plausible.sum] as const;
const outside = (value: number, [low, high]: typeof femurTibia): boolean =>
  value < low.value || value > high.value;

const doubts = {
  femurTibia: 'femur/tibia is outside 0.6963 to 1.2084',
  trunkFemur: 'trunk/femur is outside 0.8177 to 1.8337',
  sum: 'femur + tibia + trunk is outside 0.72 to 0.84 of stature',
} as const;

/** SEG.CHECK(femur, tibia, trunk, [stature]): "ok", or what to check, in words. @throws nothing. */
export default defineFunction({
  name: 'SEG.CHECK',
  family: 'segments',
  summary: 'Whether measured lengths fit together: "ok", or what to check, in words.',
  searchWords: ['plausible', 'measuring error', 'typing error', 'quality', 'implausible'],
  parameters: [femur(), tibia(), trunk(), statureMaybe()],
  result: { is: 'text', unit: '', about: '"ok" or what to check', oneOf: ['ok', ...Object.values(doubts)] },
  rule: 'femur/tibia within .6963–1.2084, trunk/femur within .8177–1.8337, their sum within .72–.84 of stature',
  sources: [surveySource],
  constants: [...femurTibia, ...trunkFemur, ...sum],
  cautions: [
    'A flagged length is not proof of an error: measure both sides again first. "ok" does not prove the measures right.',
  ],
  notes: [
    'The limits of the ratios are four SD of the survey, both sexes together; the survey’s 6,068 people have sums of .744 to .810 of stature.',
    landmarkNote,
  ],
  examples: [
    { formula: '=SEG.CHECK(42, 41, 51, 176)', gives: 'ok' },
    {
      formula: '=SEG.CHECK(52, 41, 51)',
      gives: 'femur/tibia is outside 0.6963 to 1.2084',
      says: 'a femur too long for the tibia: measured to the wrong landmark?',
    },
  ],
  seeAlso: ['SEG.RATIO', 'SEG.PERCENTILE', 'SEG.FEMUR'],
  typical: [42, 41, 51, 176],
  compute: (femur, tibia, trunk, stature) => {
    if (outside(femur / tibia, femurTibia)) return doubts.femurTibia;
    if (outside(trunk / femur, trunkFemur)) return doubts.trunkFemur;
    if (stature !== undefined && outside((femur + tibia + trunk) / stature, sum)) return doubts.sum;
    return 'ok';
  },
});

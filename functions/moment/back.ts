import { defineFunction } from '../core/define.ts';
import { backMoment } from '../posture/load.ts';
import { backSteps } from '../posture/load-steps.ts';
import { aboveLumbarCentre, lumbarAlong } from '../tables/dempster.ts';
import { backConstants } from '../tables/load-constants.ts';
import { bar, barPlacement, bodyMass, lean, trunk } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** MOMENT.BACK: N·m about L4/L5. @throws nothing. */
export default defineFunction({
  name: 'MOMENT.BACK',
  family: 'moments',
  summary: 'Moment that the low back bears about L4/L5.',
  searchWords: ['lumbar', 'spine', 'low back', 'trunk moment', 'L4/L5', 'lower back'],
  parameters: [lean(), trunk(), bodyMass(), bar(), barPlacement()],
  result: { is: 'number', unit: 'N·m', about: 'plus: the back extensors work; minus: the trunk flexors' },
  rule: 'g [.536 mass (.744 − .20) trunk sin lean + bar (x_u − .20 trunk sin lean)], x_u the bar ahead of the hip',
  sources: [say.statics, lumbarAlong.source, aboveLumbarCentre.source],
  constants: backConstants,
  cautions: [say.modelCaution, say.loadCaution, say.painCaution],
  notes: [say.observedPosture, say.staticLoad, 'The spine is taken as straight.', say.angleNote],
  examples: [
    { formula: '=MOMENT.BACK(40, 51, 80, 100)', gives: 297.697 },
    {
      formula: '=MOMENT.BACK(0, 51, 80, 100)',
      gives: -45.0125,
      says: 'upright, the bar behind: the flexors work',
    },
  ],
  seeAlso: ['BACK.MUSCLE', 'BACK.COMPRESSION', 'BACK.SHEAR', 'MOMENT.HIP'],
  typical: [40, 51, 80, 100, 'high-bar'],
  directions: { lean: 1, trunk: 1, mass: 1, bar: 1 },
  compute: backMoment,
  steps: backSteps,
});

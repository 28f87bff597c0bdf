import { defineFunction } from '../core/define.ts';
import { backMoment } from '../posture/load.ts';
import { muscleSteps } from '../posture/load-steps.ts';
import { backConstants } from '../tables/load-constants.ts';
import { bar, barPlacement, bodyMass, lean, lever, trunk } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** BACK.MUSCLE: N. @throws nothing. */
export default defineFunction({
  name: 'BACK.MUSCLE',
  family: 'back',
  summary: 'Pull of the back muscles that balances the moment about L4/L5.',
  searchWords: ['erector', 'low back', 'muscle force', 'lumbar'],
  parameters: [lean(), trunk(), bodyMass(), bar(), barPlacement(), lever()],
  result: { is: 'number', unit: 'N', about: 'pull of the extensors; minus: of the flexors' },
  rule: 'MOMENT.BACK / lever',
  sources: [say.statics, say.cholewicki],
  constants: backConstants,
  cautions: [say.modelCaution, say.loadCaution, say.painCaution],
  notes: [
    say.observedPosture,
    say.staticLoad,
    'One muscle at one lever represents all that pull.',
    say.angleNote,
  ],
  examples: [
    { formula: '=BACK.MUSCLE(40, 51, 80, 100)', gives: 4961.61 },
    { formula: '=BACK.MUSCLE(40, 51, 80, 100, "low-bar", 7)', gives: 3684.08 },
  ],
  seeAlso: ['MOMENT.BACK', 'BACK.COMPRESSION', 'MOMENT.ARMS'],
  typical: [40, 51, 80, 100, 'high-bar', 6],
  directions: { lean: 1, trunk: 1, mass: 1, bar: 1, lever: -1 },
  compute: (lean, trunk, mass, bar, placement, lever) =>
    (100 * backMoment(lean, trunk, mass, bar, placement)) / lever,
  steps: muscleSteps,
});

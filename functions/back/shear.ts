import { defineFunction } from '../core/define.ts';
import { sin } from '../posture/angle.ts';
import { weightAbove } from '../posture/load.ts';
import { weightStep } from '../posture/load-steps.ts';
import { step } from '../posture/steps.ts';
import { aboveLumbarMass } from '../tables/dempster.ts';
import { gravity } from '../tables/gravity.ts';
import { bar, barPlacement, bodyMass, lean, trunk } from '../tables/parameters.ts';
import * as say from '../tables/sources.ts';

/** BACK.SHEAR: N on L4/L5, across the trunk. @throws nothing. */
export default defineFunction({
  name: 'BACK.SHEAR',
  family: 'back',
  summary: 'Shear on L4/L5: the weight above, across the trunk.',
  searchWords: ['spine load', 'low back', 'lumbar', 'shear force'],
  parameters: [lean(), trunk(), bodyMass(), bar(), barPlacement()],
  result: { is: 'number', unit: 'N', about: 'force across the trunk, forward plus' },
  rule: 'g (.536 mass + bar) sin lean',
  sources: [say.statics],
  constants: [gravity, aboveLumbarMass],
  cautions: [say.noShearLine, say.modelCaution, say.loadCaution, say.painCaution],
  notes: [
    say.observedPosture,
    say.staticLoad,
    'What the muscles themselves take of the shear is not in it. Trunk and placement do not enter; they keep the order of BACK.COMPRESSION.',
    say.angleNote,
  ],
  examples: [
    { formula: '=BACK.SHEAR(40, 51, 80, 100)', gives: 900.657 },
    { formula: '=BACK.SHEAR(30, 51, 80, 100, "front")', gives: 700.587 },
  ],
  seeAlso: ['BACK.COMPRESSION', 'MOMENT.BACK'],
  typical: [40, 51, 80, 100, 'high-bar'],
  directions: { lean: 1, mass: 1, bar: 1 },
  compute: (lean, _trunk, mass, bar) => weightAbove(mass, bar) * sin(lean),
  steps: (lean, _trunk, mass, bar) => [
    weightStep(mass, bar),
    step('Shear', 'S', 'W sinβ', weightAbove(mass, bar) * sin(lean), 'N'),
  ],
});

import { defineFunction } from '../core/define.ts';
import { cos } from '../posture/angle.ts';
import { backMoment, weightAbove } from '../posture/load.ts';
import { muscleSteps, weightStep } from '../posture/load-steps.ts';
import { step } from '../posture/steps.ts';
import { backConstants } from '../tables/load-constants.ts';
import { bar, barPlacement, bodyMass, lean, lever, trunk } from '../tables/parameters.ts';
import type { Placement } from '../tables/placements.ts';
import * as say from '../tables/sources.ts';

const compression = (
  lean: number,
  trunk: number,
  mass: number,
  bar: number,
  placement: Placement,
  lever: number,
): number =>
  Math.abs((100 * backMoment(lean, trunk, mass, bar, placement)) / lever) +
  weightAbove(mass, bar) * cos(lean);

/** BACK.COMPRESSION: N on L4/L5. @throws nothing. */
export default defineFunction({
  name: 'BACK.COMPRESSION',
  family: 'back',
  summary: 'Compression on L4/L5: the muscles’ pull and the weight above, along the trunk.',
  searchWords: ['spine load', 'disc', 'low back', 'lumbar', 'compressive force'],
  parameters: [lean(), trunk(), bodyMass(), bar(), barPlacement(), lever()],
  result: { is: 'number', unit: 'N', about: 'force along the trunk' },
  rule: '|BACK.MUSCLE| + g (.536 mass + bar) cos lean',
  sources: [say.statics, say.cholewicki, say.niosh],
  constants: backConstants,
  cautions: [say.backLines, say.modelCaution, say.loadCaution, say.painCaution],
  notes: [
    say.observedPosture,
    say.staticLoad,
    'Cappozzo 1985 (MSSE 17:613) has 6 to 10 body weights at L3/L4 for half squats with .8 to 1.6 body weights on the bar.',
    say.angleNote,
  ],
  examples: [
    { formula: '=BACK.COMPRESSION(40, 51, 80, 100)', gives: 6034.97 },
    { formula: '=BACK.COMPRESSION(30, 51, 80, 100, "front")', gives: 6302.84 },
  ],
  seeAlso: ['BACK.SHEAR', 'BACK.MUSCLE', 'MOMENT.BACK'],
  typical: [40, 51, 80, 100, 'high-bar', 6],
  directions: { trunk: 1, mass: 1, bar: 1, lever: -1 },
  compute: compression,
  steps: (lean, trunk, mass, bar, placement, lever) => [
    ...muscleSteps(lean, trunk, mass, bar, placement, lever),
    weightStep(mass, bar),
    step('Compression', 'C', '|F| + W cosβ', compression(lean, trunk, mass, bar, placement, lever), 'N'),
  ],
});

import { defineFunction } from '../core/define.ts';
import { number } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { ballAlongFoot, heelContact } from '../tables/foot.ts';
import * as say from '../tables/sources.ts';

const HEEL = 100 * heelContact.value;
const BALL = 100 * ballAlongFoot.value;

/** FOOT.BALL(centre): share of the weight on the ball of the foot, 0 to 1. @throws nothing. */
export default defineFunction({
  name: 'FOOT.BALL',
  family: 'lean',
  summary: 'Share of the weight on the ball of the foot, from where it acts along the foot.',
  searchWords: ['centre of pressure', 'balance', 'forefoot', 'heel contact', 'weight on the heels'],
  parameters: [number('centre', '%', 'where the weight acts, % of foot length from the heel')],
  result: { is: 'number', unit: '', about: 'share on the ball, 0 to 1; the rest is on the heel' },
  rule: '(centre − 12) / (74 − 12), limited to 0 to 1',
  sources: [definition('lever with two supports, heel and ball')],
  constants: [heelContact, ballAlongFoot],
  cautions: [say.modelCaution],
  notes: [
    'Any number is taken: behind the heel’s contact all is on the heel, ahead of the ball all on the ball.',
  ],
  examples: [
    { formula: '=FOOT.BALL(50)', gives: 0.612903, says: 'over mid-foot' },
    { formula: '=FOOT.BALL(12)', gives: 0 },
    { formula: '=FOOT.BALL(90)', gives: 1 },
  ],
  seeAlso: ['LEAN.OFFSET', 'LEAN.LOADED'],
  typical: [50],
  directions: { centre: 1 },
  compute: (centre) => Math.max(0, Math.min(1, (centre - HEEL) / (BALL - HEEL))),
});

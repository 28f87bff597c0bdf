import { defineFunction } from '../core/define.ts';
import { type Issue, issue } from '../core/issue.ts';
import { number, numberMaybe } from '../core/parameter.ts';
import { definition } from '../core/source.ts';
import { step } from '../posture/steps.ts';

type Handed = readonly (number | undefined)[];

/** Σ weight × arm of the pairs given, N·cm. */
function sumOf(pairs: Handed): number {
  let sum = 0;
  for (let i = 0; i + 1 < pairs.length; i += 2) sum += (pairs[i] ?? 0) * (pairs[i + 1] ?? 0);
  return sum;
}

/** The issue of a weight without its arm, or an arm without its weight. */
function unpaired(pairs: Handed): Issue | undefined {
  for (let i = 0; i < pairs.length; i += 2) {
    const weight = pairs[i];
    const arm = pairs[i + 1];
    if ((weight === undefined) === (arm === undefined)) continue;
    const n = i / 2 + 1;
    const [given, missing] = arm === undefined ? [`weight${n}`, `arm${n}`] : [`arm${n}`, `weight${n}`];
    return issue('#N/A', 'weight-without-arm', { details: { given, missing, value: weight ?? arm ?? 0 } });
  }
  return undefined;
}

/** MOMENT.ARMS(lever, weight1, arm1, …): N. @throws nothing; a weight without its arm gives #N/A. */
export default defineFunction({
  name: 'MOMENT.ARMS',
  family: 'moments',
  summary: 'Force at one lever that balances weights at their arms: the textbook lever sum.',
  searchWords: ['lever', 'seesaw', 'muscle force', 'torque balance', 'physics'],
  parameters: [
    number('lever', 'cm', 'distance of the force from the joint', {
      bounds: {
        above: 0,
        max: 20,
        because: 'A muscle pulls at some distance from the joint, inside the body.',
      },
    }),
    number('weight1', 'N', 'first weight'),
    number('arm1', 'cm', 'its distance from the joint; minus on the other side'),
    numberMaybe('weight2', 'N', 'next weight'),
    numberMaybe('arm2', 'cm', 'its distance from the joint'),
  ],
  repeats: 2,
  result: { is: 'number', unit: 'N', about: 'force at the lever' },
  rule: 'Σ weight × arm / lever',
  sources: [definition('law of the lever')],
  notes: ['Weights in newtons: mass × 9.80665. Arms on the other side of the joint are negative.'],
  examples: [
    { formula: '=MOMENT.ARMS(5, 450, 25, 200, 40)', gives: 3850 },
    { formula: '=MOMENT.ARMS(6, 300, 30, 500, 35, 100, -10)', gives: 4250 },
    { formula: '=MOMENT.ARMS(5, 450, 25, 200)', gives: '#N/A', says: 'a weight without its arm' },
  ],
  seeAlso: ['BACK.MUSCLE', 'MOMENT.BACK'],
  typical: [5, 450, 25, 200, 40],
  directions: { lever: -1, weight1: 1, arm1: 1, weight2: 1, arm2: 1 },
  clash: (_lever, ...pairs) => unpaired(pairs),
  compute: (lever, ...pairs) => unpaired(pairs) ?? sumOf(pairs) / lever,
  steps: (lever, ...pairs) => [
    ...(pairs as Handed).flatMap((weight, i) =>
      i % 2 === 0 && weight !== undefined
        ? [
            step(
              `Moment of weight ${i / 2 + 1}`,
              '',
              'weight × arm / 100',
              (weight * (pairs[i + 1] ?? 0)) / 100,
              'N·m',
            ),
          ]
        : [],
    ),
    step('Force at the lever', 'F', 'sum / lever', sumOf(pairs) / lever, 'N'),
  ],
});

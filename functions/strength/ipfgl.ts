import { defineFunction } from '../core/define.ts';
import { exp } from '../core/elementary/exp.ts';
import { optionOr } from '../core/parameter.ts';
import { type Gear, glLightest, glSource, goodLift, type MeetEvent, type Sex } from '../tables/federation.ts';
import { massParameter, sexParameter, totalParameter } from '../tables/lifting.ts';

const all = Object.values(goodLift).flatMap((sex) =>
  Object.values(sex).flatMap((gear) => Object.values(gear).flat()),
);

function points(total: number, mass: number, sex: Sex, event: MeetEvent, gear: Gear): number {
  if (mass < glLightest.value) return 0;
  const [a, b, c] = goodLift[sex][gear][event];
  return (100 * total) / (a.value - b.value * exp(-c.value * mass));
}

/** STRENGTH.IPFGL(total, mass, sex, [event="full"], [gear="classic"]): points. @throws nothing; 0 below 35 kg. */
export default defineFunction({
  name: 'STRENGTH.IPFGL',
  family: 'strength',
  summary: 'GL points of the powerlifting federation for a total or a bench press.',
  searchWords: ['powerlifting', 'GL points', 'IPF', 'score', 'bench'],
  parameters: [
    totalParameter('total of the meet, or the bench press'),
    massParameter,
    sexParameter,
    optionOr('full', 'event', ['full', 'bench'], 'three lifts, or the bench press alone'),
    optionOr('classic', 'gear', ['classic', 'equipped'], 'without or with supportive gear'),
  ],
  result: { is: 'number', unit: 'points', about: 'GL points' },
  rule: '100 · total / (A − B e^(−C · mass)); 0 below 35 kg',
  sources: [glSource],
  constants: [...all, glLightest],
  examples: [
    {
      formula: '=STRENGTH.IPFGL(1035, 92.04, "M", "full", "equipped")',
      gives: 112.85,
      says: 'the federation’s example',
    },
    {
      formula: '=STRENGTH.IPFGL(122.5, 70.5, "F", "bench")',
      gives: 96.78,
      says: 'the federation’s example',
    },
    { formula: '=STRENGTH.IPFGL(600, 83, "M")', gives: 83.0559495596 },
    { formula: '=STRENGTH.IPFGL(100, 34, "F")', gives: 0 },
  ],
  notes: ['Coefficients in force from 1 May 2020. Below 35 kg the points are 0.'],
  seeAlso: ['STRENGTH.WILKS', 'STRENGTH.DOTS', 'STRENGTH.SINCLAIR'],
  typical: [500, 83, 'male', 'full', 'classic'],
  directions: { total: 1, mass: -1 },
  compute: points,
  steps: (total, mass, sex, event, gear) => [
    {
      name: 'points',
      rule: '100 · total / (A − B e^(−C · mass))',
      value: points(total, mass, sex, event, gear),
      unit: 'points',
      constants: [...goodLift[sex][gear][event], glLightest],
    },
  ],
});

import { describe, expect, test } from 'vitest';
import { registry } from '../../../functions/registry.ts';

/** Everything that the help of a function tells beside its arguments. */
const help = (name: string): string => {
  const { notes = [], cautions = [], sources, examples } = registry.get(name)!;
  return [...notes, ...cautions, ...sources.map((s) => s.citation), ...examples.map((e) => e.formula)].join(
    '\n',
  );
};

describe('the help says', () => {
  test.each<readonly [string, readonly string[], RegExp]>([
    [
      'what a wrong landmark of the knee is worth',
      ['SEG.FEMUR', 'SEG.TIBIA'],
      /2\.3 cm \(men\) or 2\.8 cm \(women\)[\s\S]*4–6° of lean/,
    ],
    [
      'that stature fractions are a default only',
      ['SEG.ESTIMATE'],
      /never validated[\s\S]*less than half the variance/,
    ],
    ['that tables must not be mixed', ['SEG.MASS', 'SEG.COM'], /Never mix/],
    ['that no number of degrees per centimetre holds', ['ANKLE.FROM.WALL'], /3\.6° per cm is about twice/],
    [
      'that the ankle is measured under weight',
      ['LEAN.PARALLEL', 'LEAN.AT', 'LIFT.FOR.LEAN', 'ANKLE.NEEDED'],
      /15–20° lower and must not/,
    ],
    [
      'how other papers measure angles',
      ['LEAN.PARALLEL', 'LEAN.AT', 'LEAN.LOADED', 'LEAN.KNEE', 'MOMENT.HIP'],
      /from the horizontal is 90 less the lean/,
    ],
    [
      'that a lean is the minimum the ankle allows',
      ['LEAN.PARALLEL', 'LEAN.AT', 'LEAN.LOADED'],
      /minimum lean: the whole ankle range is used/,
    ],
    [
      'that a deep position looks too upright',
      ['LEAN.AT'],
      /more upright here than it is[\s\S]*155°|155°[\s\S]*more upright here than it is/,
    ],
    ['that turning out is an upper bound', ['LEAN.PARALLEL', 'LEAN.HIP', 'LEAN.DEEPEST'], /upper bound/],
    [
      'that light bars ask for more lean, or have none',
      ['LEAN.LOADED'],
      /light bar often has no balanced posture[\s\S]*Light bars ask for more lean/,
    ],
    ['that the depth can jump', ['LEAN.DEEPEST'], /can jump/],
    [
      'that a lift’s equivalent is a ceiling, and that studies disagree',
      ['LIFT.CHANGE', 'LIFT.AS.TIBIA', 'LIFT.AS.FEMUR', 'LIFT.AS.ANKLE', 'LIFT.FOR.LEAN', 'LIFT.FOR.DEPTH'],
      /geometric ceiling[\s\S]*Studies disagree[\s\S]*Legg 2017[\s\S]*Lee 2019/,
    ],
    [
      'which equivalent to lead with',
      ['LIFT.AS.TIBIA'],
      /See LIFT\.AS\.ANKLE first[\s\S]*grows without bound/,
    ],
    ['the lean beside a lift for depth', ['LIFT.FOR.DEPTH'], /LEAN\.AT/],
    [
      'where demand goes with a lift',
      ['LIFT.CHANGE', 'LIFT.FOR.LEAN', 'LIFT.PITCH'],
      /shifts load from the hips and lower back to the knees/,
    ],
    ['that with a stance the moment is the side’s', ['MOMENT.KNEE'], /part seen from the side/],
    [
      'that the lines for lifting at work are no pass or fail',
      ['BACK.COMPRESSION', 'BACK.SHEAR'],
      /3400 N and 6400 N[\s\S]*never a pass or a fail/,
    ],
    [
      'how to read a lean',
      ['LEAN.PARALLEL', 'LEAN.AT', 'LEAN.PART', 'LIFT.CHANGE'],
      /whole degrees\. Together, errors of ±1 cm and ±2°/,
    ],
    [
      'whom to see with pain, and who should stand by',
      ['LEAN.PARALLEL', 'LEAN.DEEPEST', 'MOMENT.BACK', 'BACK.COMPRESSION'],
      /(?=[\s\S]*licensed clinician)(?=[\s\S]*spotters)/,
    ],
  ])('%s', (_, names, pattern) => {
    for (const name of names) expect(help(name), name).toMatch(pattern);
  });
  test('of every posture function that it is a static estimate and no diagnosis', () => {
    for (const name of registry.keys())
      if (
        /^(LEAN\.(PARALLEL|AT|LOADED|DEEPEST|LIMITER|OFFSET|PART|ERROR)|LIFT\.(CHANGE|AS|FOR)|MOMENT\.(HIP|KNEE|BACK)|BACK)/.test(
          name,
        )
      )
        expect(help(name), name).toMatch(
          /static model seen from the side: for comparing set-ups of one lifter, not for diagnosis/,
        );
  });
});

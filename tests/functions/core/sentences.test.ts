import { describe, expect, test } from 'vitest';
import { defineFunction } from '../../../functions/core/define.ts';
import { invoke } from '../../../functions/core/invoke.ts';
import { type Issue, isIssue } from '../../../functions/core/issue.ts';
import { functionSentences } from '../../../functions/core/sentence.ts';
import { definition } from '../../../functions/core/source.ts';
import { evaluate } from '../formula.ts';

// One formula or more for each reason; the snapshot beside this file holds the wording of all of them.
const formulas: Readonly<Record<string, readonly string[]>> = {
  'blank-argument': ['=LEAN.PARALLEL(42, 41, , 38)', '=SEG.NORM("femur", "")', '=LIFT.PICK(2, "")'],
  'wrong-kind': [
    '=LEAN.PARALLEL("42 cm", 41, 51, 38)',
    '=LEAN.PARALLEL(TRUE, 41, 51, 38)',
    '=LEAN.PARALLEL(42, 41, 51, 38, 0, "behind")',
    '=LEAN.PARALLEL(42, 41, 51, 38, 0, "goblet")',
    '=MOMENT.BACK(40, 51, 80, 0, "arms-forward")',
  ],
  'many-cells': ['=LEAN.PARALLEL({42; 43; 44}, 41, 51, 38)'],
  'out-of-bounds': [
    '=LEAN.PARALLEL(420, 41, 51, 38)',
    '=BACK.MUSCLE(40, 51, 80, 100, "high-bar", 0)',
    '=SEG.RATIO(42, -1)',
    '=STRENGTH.LOADABLE(100, 20, {20; 10; -5})',
    '=TEST.MDC(1, 1)',
  ],
  'not-whole': ['=TRAIN.SUM({46027;46028}, {300;400}, 46030, 2.5)'],
  'zero-divisor': ['=SEG.RATIO(42, 0)'],
  'too-few-arguments': ['=LEAN.PARALLEL(42, 41)'],
  'too-many-arguments': ['=MM(1, 2)'],
  'unequal-lengths': ['=TEST.BIAS({1;2;3}, {1;2})'],
  'wrong-cell': ['=TEST.SWC({1;2;"ill"})', '=TRAIN.SUM({"2026-01-05"}, {300}, 46030)'],
  'no-spread': ['=COHORT.Z(3, {2;2;2})'],
  'not-finite': ['=IN(1e308)'],
  'lift-past-ball': ['=LIFT.PITCH(9, 12)', '=LEAN.DEEPEST(42, 41, 51, 38, 9, "front", 12)'],
  'shank-level': ['=LEAN.SHANK(70, 7, 20)'],
  'hip-too-far-behind': ['=LEAN.PARALLEL(60, 41, 40, 10)'],
  'hip-too-far-ahead': ['=LEAN.LOADED(80, 100, 15, 70, 30, 60)'],
  'lean-past-level': ['=LEAN.PARALLEL(58, 40, 59.2, 18, 0, "low-bar")'],
  'arms-forward-with-bar': ['=MOMENT.HIP(30, 51, 80, 20, "arms-forward")'],
  'nothing-at-60': ['=LEAN.DEEPEST(60, 41, 30, 0)'],
  'part-without-posture': ['=LEAN.PART("femur", 48, 42, 40, 45, -10)'],
  'explain-without-posture': [
    '=LEAN.EXPLAIN("reference", 40, 30, 0, 42, 41, 51, 38, -10, 0, "arms-forward")',
    '=LEAN.EXPLAIN("femur", 40, 30, 0, 48, 42, 40, 45, -10)',
    '=LEAN.EXPLAIN("use", 40, 30, 0, 60, 41, 40, 10)',
    '=LEAN.EXPLAIN("balance", 40, 5, 0, 60, 41, 40, 10)',
  ],
  'shank-outside-ankle': ['=LEAN.EXPLAIN("use", 40, 5, 0, 42, 41, 51, 38, 38, 8, "high-bar", 26)'],
  'error-without-posture': ['=LEAN.ERROR(1, 2, 50, 40, 41.99, 22, 0, "front")'],
  'lift-without-foot': ['=LEAN.SHANK(38, 2)'],
  'hip-over-ankle': ['=STANCE.ANGLE(40, 17, 30, 45, 50)'],
  'no-such-stance': ['=STANCE.ANGLE(70, 17, 42, 41, 38)', '=STANCE.ANGLE(16, 17, 42, 41, 30)'],
  'board-too-short': ['=LIFT.BOARD(12, 10)'],
  'stack-too-high': ['=LIFT.STACK(4, 27, 45)', '=LIFT.STACK(7.3, 10, 20)'],
  'points-coincide': ['=LEAN.FROM.POINTS(3, 4, 3, 4)', '=JOINT.FROM.POINTS(0, 1, 2, 2, 2, 2)'],
  'line-too-steep': ['=PHOTO.LEVEL(0, 0, 10, 300)', '=PHOTO.LEVEL(0, 0, 300, 10, "plumb")'],
  'nearer-than-camera': ['=PHOTO.SCALE(0, 0, 100, 0, 45, 100, 120)'],
  'nearer-without-camera': ['=PHOTO.SCALE(0, 0, 100, 0, 45, , 70)'],
  'length-out-of-bounds': ['=SEG.FEMUR(91.5, 90)', '=SEG.TRUNK(91.5, 142)'],
  'segment-of-other-table': ['=SEG.MASS("trunk", 80)', '=SEG.COM("pelvis", "deleva-male")'],
  'no-centre-of-mass': ['=SEG.COM("foot")'],
  'wall-too-far': ['=ANKLE.FROM.WALL(30, 41)'],
  'wall-angle-out-of-bounds': ['=ANKLE.FROM.WALL(-10, 30, 10)', '=ANKLE.FROM.WALL(24.8, 41)'],
  'ankle-out-of-bounds': ['=ANKLE.NEEDED(60, 25, 41, 51)'],
  'no-ankle-reaches': ['=ANKLE.NEEDED(0, 70, 20, 51)'],
  'lean-beyond-placement': ['=ANKLE.NEEDED(85, 42, 41, 51, 0, 0, "front")'],
  'no-equivalent': ['=LIFT.AS.TIBIA(2, 42, 41, 51, 0)', '=LIFT.AS.FEMUR(2, 42, 41, 51, 38, 90)'],
  'equivalent-out-of-bounds': ['=LIFT.AS.TIBIA(2, 42, 41, 51, 5)', '=LIFT.AS.ANKLE(3, 42, 41, 51, 65)'],
  'lift-not-enough': [
    '=LIFT.FOR.LEAN(25, 45, 40, 48, 30, 0, 3)',
    '=LIFT.FOR.LEAN(0, 45, 40, 48, 30, 0, 15, "high-bar", 12)',
    '=LIFT.FOR.DEPTH(-10, 46, 38, 47, 24, 1)',
  ],
  'no-lift-on-hand': ['=LIFT.PICK(4, {1; 2; 3})'],
  'both-zero': ['=MOMENT.SHARE(0, 0)'],
  'too-few': ['=LIFT.PICK(2, {;})', '=TEST.SWC({1})', '=COHORT.R({1;2;3}, {2;3;5}, "low")'],
  'who-incomplete': ['=TRAIN.SUM({46027}, {300}, 46030, 7, {"Kim"})'],
  'no-rows': ['=TRAIN.SUM({;}, {;}, 46030)', '=TRAIN.SUM({46027}, {300}, 46030, 7, {"Kim"}, "Jo")'],
  'log-too-short': ['=TRAIN.ACWR({46020;46027}, {300;400}, 46030)'],
  'nothing-in-time': ['=TRAIN.BEST({46027}, {300}, 46040, 46050)'],
  'from-after-to': ['=TRAIN.BEST({46027}, {300}, 46050, 46040)'],
  'no-clear-slope': ['=TEST.REACHED({46001;46008;46015;46022}, {8;9;8;9}, 12)'],
  'target-behind': ['=TEST.REACHED({46001;46008;46015}, {8;9;10}, 7)'],
  'not-published': ['=TEST.PUBLISHED("wall sides", "sem")'],
  'acute-too-long': ['=TRAIN.ACWR({46000;46027}, {300;400}, 46030, 28, 7)'],
  'no-earlier-load': ['=TRAIN.ACWR({46000;46027}, {0;0}, 46030)'],
  'equal-days': ['=TRAIN.MONOTONY({46024;46025;46026;46027;46028;46029;46030}, {3;3;3;3;3;3;3}, 46030)'],
  'reps-and-rir': ['=STRENGTH.MAX(100, 30, "epley", 8)'],
  'no-reps-answer': ['=STRENGTH.REPS(200, 10)'],
  'rpe-band': ['=STRENGTH.RIR(5)'],
  'half-steps': ['=STRENGTH.RIR(8.2)'],
  'velocity-not-falling': ['=STRENGTH.FROM.VELOCITY({60;80}, {0.5;0.6})'],
  'below-threshold': ['=STRENGTH.FROM.VELOCITY({60;80}, {0.2;0.1}, 2)'],
  'not-loadable': ['=STRENGTH.LOADABLE(10, 20, {20;10}, "down")'],
  'too-many-sums': [
    '=STRENGTH.LOADABLE(300, 20, {25.013;20.107;15.211;10.313;5.417;2.519;1.223;0.127;0.631;0.739})',
  ],
  'sides-zero': ['=TEST.SIDES(0, 0)'],
  'zero-pair': ['=TEST.CV({1;1}, {2;-1})'],
  'not-with-method': ['=COHORT.R({1;2;3;4}, {2;3;5;4}, "low", "spearman")'],
  'needs-at': ['=COHORT.FIT({1;2;3;4}, {2;3;5;4}, "predict")'],
  collinear: ['=COHORT.REGRESS({1;2;3;5}, {1,2;2,4;3,6;4,8})'],
  'weight-without-arm': ['=MOMENT.ARMS(5, 450, 25, 200)', '=MOMENT.ARMS(5, 450, 25, , 40)'],
};

const rest = {
  family: 'segments',
  summary: '',
  result: { is: 'number', unit: '', about: '' },
  rule: '',
  sources: [definition('made for the tests')],
  examples: [],
  seeAlso: [],
  typical: [],
} as const;
const fault = defineFunction({
  ...rest,
  name: 'BROKEN',
  parameters: [],
  compute: () => {
    throw new Error('out of memory');
  },
});

const said = (outcome: unknown): { issue: Issue; sentence: string } => {
  if (!isIssue(outcome)) throw new Error(`${JSON.stringify(outcome)} is no issue.`);
  return { issue: outcome, sentence: functionSentences[outcome.reason]!(outcome) };
};

describe('the sentence of each reason', () => {
  const lines = Object.entries(formulas).flatMap(([reason, list]) =>
    list.map((formula) => [reason, formula] as const),
  );
  test.each(lines)('%s: %s', (reason, formula) => {
    const { issue, sentence } = said(evaluate(formula));
    expect(issue.reason).toBe(reason);
    expect(`${issue.code} ${sentence}`).toMatchSnapshot();
    // the function or the argument, what arrived or what is accepted, and what to do: two sentences at least
    expect(sentence).toContain(issue.parameter ? `"${issue.parameter}"` : issue.function);
    expect(sentence.match(/[.;:!?)](?: |$)/g)!.length).toBeGreaterThan(1);
    expect(sentence).not.toMatch(/undefined|NaN|\[object|\d\.\d{5}/);
  });
  test('is shown here, for every reason there is', () => {
    expect(Object.keys(formulas).concat('fault').sort()).toEqual(Object.keys(functionSentences).sort());
  });
  test('fault', () => {
    expect(said(invoke(fault, [])).sentence).toMatchSnapshot();
  });
});

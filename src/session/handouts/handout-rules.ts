import type { HandoutRule } from './handout-settings.ts';

/** Weeks to the next test: time for a training block to show. Common practice, no published source. */
export const usualRetestWeeks = 8;

/**
 * The rules that a new book starts with. Every threshold is a setting of the book: the target is the user's own, the
 * error of the lean is computed from the errors of tape and ankle test, and the difference between sides that counts is
 * `wall_sides`. A rule of which something is missing is reported to the coach, never passed over.
 */
export const usualRules: readonly HandoutRule[] = [
  {
    part: 'finding',
    when: 'lean <= 90',
    say: 'By the model, {lean} is the minimum lean at parallel that your build and ankles allow. All of the ankle range is used; a lifter who uses less leans more.',
  },
  {
    part: 'finding',
    when: 'lean_used <= 90',
    say: 'With {ankle_share} of the ankle range used (a working assumption) the lean is {lean_used}.',
  },
  {
    part: 'finding',
    when: 'lean > target_lean + lean_error',
    say: 'The minimum lean is above the target of {target_lean}, by more than the error.',
  },
  {
    part: 'finding',
    when: 'ABS(lean - target_lean) <= lean_error',
    say: 'The minimum lean equals the target of {target_lean} within error.',
  },
  {
    part: 'finding',
    when: 'lean < target_lean - lean_error',
    say: 'The minimum lean is below the target of {target_lean}, by more than the error.',
  },
  {
    part: 'finding',
    when: 'AND(from_build + from_ankle > lean_error, from_ankle > lean_error, from_ankle > from_build)',
    say: 'Compared with a lifter of average build, most of the extra lean comes from the ankles.',
  },
  {
    part: 'finding',
    when: 'AND(from_build + from_ankle > lean_error, from_build > lean_error, from_build > from_ankle)',
    say: 'Compared with a lifter of average build, most of the extra lean comes from the lengths of thigh, shin and trunk. Training does not alter them: the lean is yours, not a fault.',
  },
  {
    part: 'finding',
    when: 'ABS(wall_left - wall_right) > wall_sides',
    say: 'Knee to wall differs between sides by more than the error: {wall_left} left, {wall_right} right. The smaller ankle range is used.',
  },
  {
    part: 'finding',
    when: 'limiter = "ankle"',
    say: 'By the model, ankle mobility limits your depth.',
  },
  {
    part: 'finding',
    when: 'OR(limiter = "knee", limiter = "hip", limiter = "lean")',
    say: 'By the model, your depth is limited by an assumed value ({limiter}), not a measured one.',
  },
  {
    part: 'try',
    when: 'IF(ISNUMBER(lift), AND(lift > 0, lean > target_lean + lean_error), FALSE)',
    say: 'Try up to {lift} under the heels, with light loads first: by the model, a minimum lean of {lean_lifted} instead of {lean}. Use a firm, non-slip wedge or shoe that supports the whole heel. Change one thing at a time. Stop if the knee hurts. More load goes to the knees, less to the hips and lower back.',
  },
  {
    part: 'try',
    when: 'lean <= target_lean + lean_error',
    say: 'No heel lift is needed for the target of {target_lean}.',
  },
  {
    part: 'try',
    when: 'IF(ISNUMBER(lift), lean_lifted > target_lean + lean_error, FALSE)',
    say: 'Even with that heel lift the minimum lean stays above the target of {target_lean}. Ask your coach about bar placement, stance or another target.',
  },
  {
    part: 'try',
    when: 'OR(limiter = "ankle", from_ankle > lean_error)',
    say: 'Work on ankle range (knee over the toes, heel down, without pain), then measure knee to wall again.',
  },
  {
    part: 'try',
    when: 'ABS(wall_left - wall_right) > wall_sides',
    say: 'Measure both ankles again on another day before acting on the difference between them.',
  },
];

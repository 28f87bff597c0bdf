import type { HandoutRule } from './settings.ts';

/** Weeks to the next test: time for a training block to show. Common practice, no published source. */
export const usualRetestWeeks = 8;

/**
 * The rules that a book begins with. One that asks for columns or named cells that the book does not have says nothing.
 * The step for left and right is the minimal detectable change of knee-to-wall from its standard error of .4 cm
 * (Konor et al. 2012, Int J Sports Phys Ther 7:279–287).
 */
export const usualRules: readonly HandoutRule[] = [
  {
    part: 'finding',
    when: 'lean > target_lean + lean_error',
    say: 'At parallel your trunk is estimated to lean {lean} from the vertical: more than the {target_lean} aimed at, and by more than the measuring error.',
  },
  {
    part: 'finding',
    when: 'ABS(lean - target_lean) <= lean_error',
    say: 'At parallel your trunk is estimated to lean {lean} from the vertical: the same as the {target_lean} aimed at, within the measuring error.',
  },
  {
    part: 'finding',
    when: 'lean < target_lean - lean_error',
    say: 'At parallel your trunk is estimated to lean {lean} from the vertical: less than the {target_lean} aimed at.',
  },
  {
    part: 'finding',
    when: 'AND(from_ankle > lean_error, from_ankle >= from_build)',
    say: 'Compared with a lifter of average build, most of the extra lean comes from the ankles.',
  },
  {
    part: 'finding',
    when: 'AND(from_build > lean_error, from_build > from_ankle)',
    say: 'Compared with a lifter of average build, most of the extra lean comes from the lengths of thigh, shank and trunk. They do not change: the lean is yours, not a fault.',
  },
  {
    part: 'finding',
    when: 'ABS(wall_left - wall_right) > TEST.MDC(0.4)',
    say: 'Your ankles differ: {wall_left} from knee to wall on the left, {wall_right} on the right, more than the test’s own error.',
  },
  {
    part: 'finding',
    when: 'limiter = "ankle"',
    say: 'In the model it is the ankles that end your descent first.',
  },
  {
    part: 'try',
    when: 'AND(lift > 0, lean_lifted < lean)',
    say: 'Try {lift} under the heels (a shoe with a heel, or a wedge), with light loads first. The model then puts the lean at {lean_lifted} instead of {lean}. The work moves from hip and back toward the knees.',
  },
  {
    part: 'try',
    when: 'AND(lift = 0, lean <= target_lean + lean_error)',
    say: 'A heel lift is not needed for the lean that is aimed at.',
  },
  {
    part: 'try',
    when: 'lean_lifted > target_lean + lean_error',
    say: 'Even with the lift the lean stays above the {target_lean} aimed at. Ask your coach about the bar’s place, the stance, or another aim.',
  },
  {
    part: 'try',
    when: 'OR(limiter = "ankle", from_ankle > lean_error)',
    say: 'Work on ankle range (knee over the toes, heel down, without pain), then measure knee to wall again.',
  },
  {
    part: 'try',
    when: 'ABS(wall_left - wall_right) > TEST.MDC(0.4)',
    say: 'Measure both ankles again on another day before acting on the difference between them.',
  },
];

import type { Issue } from '../issue.ts';
import { fig, got, of, type Sentences } from './wording.ts';

const say = (i: Issue, key: string): string => String(i.details?.[key] ?? '');
/** " of Kim" where an athlete was asked for. */
const whose = (i: Issue): string => (i.details?.athlete === undefined ? '' : ` of "${i.details.athlete}"`);

/** Sentences for the reasons that only logs, tests, groups and strength estimates have. */
export const dataSentences: Sentences = {
  'too-few': (i) =>
    `${of(i)} has ${say(i, 'have')}; it needs ${i.expected}. ${i.remedy ?? 'Add rows, or widen the range.'}`,
  'who-incomplete': (i) =>
    `${of(i)} is missing; "athletes" and "athlete" go together to keep one athlete's rows. Add it, or leave both out.`,
  'no-rows': (i) =>
    i.details?.athlete === undefined
      ? `${of(i)} has no row with both a date and a value. Fill the log, or choose its columns.`
      : `${of(i)} has no row${whose(i)} with both a date and a value. Check the spelling of the name, or add rows.`,
  'log-too-short': (i) =>
    `${of(i)}: the rows${whose(i)} start on ${say(i, 'first')}; this window starts on ${say(i, 'needs')}. Use a later day or a shorter window, or add earlier rows.`,
  'nothing-in-time': (i) => `${of(i)} has no row${whose(i)} ${say(i, 'when')}. Take other days, or add rows.`,
  'from-after-to': (i) =>
    `${of(i)} is ${say(i, 'from')}, after "to", ${say(i, 'to')}; it must be the same day or earlier. Exchange the two.`,
  'acute-too-long': (i) =>
    `${of(i)} got ${i.received} days; it accepts fewer than "chronic", ${say(i, 'chronic')} days. Shorten it, or lengthen "chronic".`,
  'no-earlier-load': (i) =>
    `${of(i)}: the load${whose(i)} in the chronic window to ${say(i, 'on')} is 0, and nothing can be divided by it. Use a later day.`,
  'equal-days': (i) =>
    `${of(i)}: the ${say(i, 'days')} days${whose(i)} to ${say(i, 'on')} all carry the same load, so their SD is 0 and monotony has no value. Use another window.`,
  'reps-and-rir': (i) =>
    `${of(i)}: ${say(i, 'reps')} repetitions and ${say(i, 'rir')} in reserve make ${i.received}; the equations accept 1 to 36 together. Check both.`,
  'no-reps-answer': (i) =>
    `${of(i)} got ${i.received} kg, so light beside "max" that ${say(i, 'method')} has no answer within 1 to 36 repetitions. Take a heavier load.`,
  'rpe-band': (i) =>
    `${of(i)} got ${i.received}; repetitions in reserve are defined from 7 to 10, below that the scale is a band of effort and no count (Zourdos 2016). Rate sets at 7 or above, or write the repetitions in reserve yourself.`,
  'half-steps': (i) =>
    `${of(i)} got ${i.received}; it accepts half steps only: 7, 7.5, 8 … 10. Round it to a half.`,
  'velocity-not-falling': (i) =>
    `${of(i)} does not fall as the load rises; a load-velocity line needs slower repetitions at heavier loads. Check the order of the two columns.`,
  'below-threshold': (i) =>
    `${of(i)} got ${i.received} m/s, which the line reaches only at a load below 0 kg. Take a lower threshold, or check the velocities.`,
  'not-loadable': (i) =>
    `${of(i)} got ${i.received} kg; with "${say(i, 'mode')}" it accepts ${i.expected}. Use another mode or other plates.`,
  'too-many-sums': (i) =>
    `${of(i)} holds ${i.received} sizes that make too many different weights to list. Leave out the smallest sizes.`,
  'sides-zero': (i) =>
    `${of(i)} and "${say(i, 'other')}" are both 0, and nothing can be divided by their size. Enter the measured values.`,
  'zero-pair': (i) =>
    `${of(i)}: pair ${say(i, 'pair')} has a mean of 0, and its variation cannot be given in per cent of it. Correct or clear that pair.`,
  'not-with-method': (i) =>
    `${of(i)} got "${i.received}"; with "${say(i, 'method')}" it accepts ${i.expected}. Use another word or method.`,
  'needs-at': (i) =>
    `${of(i)} is blank; "${say(i, 'what')}" needs the x at which the line is read. Add it as the last argument.`,
  'no-clear-slope': (i) =>
    `${of(i)} change by ${fig(i, 'low')} to ${fig(i, 'high')} per week (95 % interval), which includes 0: no date follows; it accepts a clear rise or fall. Add tests, or ask for "slope".`,
  'target-behind': (i) =>
    `${of(i)} got ${got(i)}, which the line passed before the first test on ${i.details?.first}; at ${fig(i, 'slope')} per week it moves away from it. Choose a target ahead of the line.`,
  'not-published': (i) =>
    `${of(i)} got "${i.received}", which was not published for "${say(i, 'test')}"; it accepts ${i.expected}. Take one of these.`,
  collinear: (i) =>
    `${of(i)} holds a column that is a sum of multiples of the others, or the same number throughout; its slope has no value. Leave that column out.`,
};

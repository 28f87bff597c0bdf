import { defineFunction } from '../core/define.ts';
import { secondary } from '../core/source.ts';
import { columnRange } from '../core/value.ts';
import { differencesOf } from '../statistics/columns.ts';
import { standardDeviation } from '../statistics/describe.ts';
import { tooFew } from '../statistics/few.ts';
import { paired, pairNotes } from '../statistics/parameters.ts';

/** TEST.SEM.TRIALS(trial1, trial2): standard error of measurement from two trials, in their unit. @throws nothing; fewer than 2 pairs #N/A. */
export default defineFunction({
  name: 'TEST.SEM.TRIALS',
  family: 'reliability',
  summary: 'Standard error of measurement from two trials of the same subjects.',
  searchWords: ['typical error', 'measurement error', 'test-retest', 'repeatability'],
  parameters: [
    paired('trial1', 'first trial of each subject'),
    paired('trial2', 'second trial of each subject'),
  ],
  result: {
    is: 'number',
    unit: '',
    about: 'standard error of one measurement, in the unit of the trials',
    measures: { same: [0, 1] },
  },
  rule: 'SD(trial2 − trial1) / √2',
  sources: [secondary('Hopkins 2000, Sports Med 30:1–15 (typical error)')],
  notes: [
    'A shift common to all subjects (learning, fatigue) does not count as error here; TEST.BIAS shows it.',
    ...pairNotes,
  ],
  examples: [
    {
      formula: '=TEST.SEM.TRIALS({40;42;44}, {43;42;41})',
      gives: 2.1213,
      says: 'differences 3, 0, −3: SD 3',
    },
    {
      formula: '=TEST.SEM.TRIALS({146;148;170;90;157;156;176;205}, {140;152;152;99;145;153;167;218})',
      gives: 7.556926813,
      says: 'Weir 2005, set A',
    },
  ],
  seeAlso: ['TEST.SEM', 'TEST.MDC', 'TEST.CV'],
  typical: [columnRange(40, 42, 45, 39), columnRange(41, 42, 43, 40)],
  compute: (trial1, trial2) => {
    const differences = differencesOf(trial2, trial1);
    return differences.length < 2
      ? tooFew('trial1', differences.length, 2, 'pair')
      : standardDeviation(differences) / Math.SQRT2;
  },
});

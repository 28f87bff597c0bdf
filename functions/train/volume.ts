import { defineFunction } from '../core/define.ts';
import { numbersIn } from '../core/invoke.ts';
import { issue } from '../core/issue.ts';
import { range } from '../core/parameter.ts';
import { practice } from '../core/source.ts';

const least = (because: string) => ({ together: 'rows', cells: { min: 0, because } }) as const;

/** TRAIN.VOLUME(sets, reps, load): Σ sets × reps × load, kg. @throws nothing; no complete row #N/A. */
export default defineFunction({
  name: 'TRAIN.VOLUME',
  family: 'training log',
  summary: 'Volume load: sets times repetitions times load, added up over rows.',
  searchWords: ['tonnage', 'volume load', 'workload', 'sets and reps'],
  parameters: [
    range('sets', 'number', '', 'sets, one number or a column', least('Sets are counted.')),
    range('reps', 'number', 'reps', 'repetitions of each set', least('Repetitions are counted.')),
    range('load', 'number', 'kg', 'load of each repetition', least('A load weighs something or nothing.')),
  ],
  result: { is: 'number', unit: 'kg', about: 'sets × repetitions × load, summed' },
  rule: 'Σ sets × reps × load over the rows that have all three',
  sources: [practice('Volume load as sets × repetitions × load')],
  notes: ['Rows in which one of the three is blank are left out.'],
  examples: [
    { formula: '=TRAIN.VOLUME(3, 8, 65)', gives: 1560 },
    {
      formula: '=TRAIN.VOLUME({1;1;1}, {10;8;6}, {55;65;75})',
      gives: 1520,
      says: 'set by set',
    },
  ],
  seeAlso: ['TRAIN.SESSION', 'TRAIN.SUM'],
  typical: [3, 8, 65],
  directions: { sets: 1, reps: 1, load: 1 },
  compute: (sets, reps, load) => {
    const [s, r, l] = [numbersIn(sets), numbersIn(reps), numbersIn(load)];
    let sum = 0;
    let rows = 0;
    // Each knows the places of its numbers in order: walk to the places that all three have.
    for (let i = 0, j = 0, k = 0; i < s.at.length && j < r.at.length && k < l.at.length; ) {
      const place = Math.max(s.at[i]!, r.at[j]!, l.at[k]!);
      if (s.at[i] === place && r.at[j] === place && l.at[k] === place) {
        sum += s.values[i++]! * r.values[j++]! * l.values[k++]!;
        rows++;
      } else {
        while (i < s.at.length && s.at[i]! < place) i++;
        while (j < r.at.length && r.at[j]! < place) j++;
        while (k < l.at.length && l.at[k]! < place) k++;
      }
    }
    if (rows > 0) return sum;
    return issue('#N/A', 'too-few', {
      parameter: 'sets',
      expected: 'sets, repetitions and load in one row',
      details: { have: 'no row that is complete' },
    });
  },
});

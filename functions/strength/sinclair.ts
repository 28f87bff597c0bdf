import { defineFunction } from '../core/define.ts';
import { log10 } from '../core/elementary/log.ts';
import { pow, square } from '../core/elementary/pow.ts';
import { optionOr } from '../core/parameter.ts';
import { type Cycle, cycles, type Sex, sinclair, sinclairSources } from '../tables/federation.ts';
import { massParameter, sexParameter, totalParameter } from '../tables/lifting.ts';

function coefficient(mass: number, sex: Sex, cycle: Cycle): number {
  const [a, b] = sinclair[cycle][sex];
  return mass > b.value ? 1 : pow(10, a.value * square(log10(mass / b.value)));
}

/** STRENGTH.SINCLAIR(total, mass, sex, [cycle="2021"]): Sinclair total, kg. @throws nothing. */
export default defineFunction({
  name: 'STRENGTH.SINCLAIR',
  family: 'strength',
  summary: 'Sinclair total of the Olympic lifts: what the lifter would total at the reference body mass.',
  searchWords: ['weightlifting', 'snatch', 'clean and jerk', 'coefficient', 'score', 'IWF'],
  parameters: [
    totalParameter('snatch plus clean and jerk'),
    massParameter,
    sexParameter,
    optionOr('2021', 'cycle', cycles, 'first year of the Olympic cycle whose constants are used'),
  ],
  result: { is: 'number', unit: 'kg', about: 'Sinclair total' },
  rule: 'total · 10^(A · log10(mass/b)²) for mass ≤ b, else total',
  sources: cycles.map((cycle) => sinclairSources[cycle]),
  constants: cycles.flatMap((cycle) => [...sinclair[cycle].male, ...sinclair[cycle].female]),
  cautions: [
    'The constants of the 2025 cycle are from memory: confirm them against the federation sheet before you rank anybody by them. Those of 2017 and 2021 are read in secondary pages.',
  ],
  notes: ['Totals of different cycles are not comparable: each cycle has its own constants.'],
  examples: [
    {
      formula: '=STRENGTH.SINCLAIR(390, 83.5, "M", "2001")',
      gives: 459.028,
      says: 'the federation’s example',
    },
    { formula: '=STRENGTH.SINCLAIR(350, 81, "M")', gives: 444.2015709428 },
    { formula: '=STRENGTH.SINCLAIR(470, 200, "M")', gives: 470, says: 'above the reference body mass' },
  ],
  seeAlso: ['STRENGTH.WILKS', 'STRENGTH.DOTS', 'STRENGTH.IPFGL'],
  typical: [300, 81, 'male', '2021'],
  directions: { total: 1, mass: -1 },
  compute: (total, mass, sex, cycle) => total * coefficient(mass, sex, cycle),
  steps: (total, mass, sex, cycle) => [
    {
      name: 'coefficient',
      rule: '10^(A · log10(mass/b)²)',
      value: coefficient(mass, sex, cycle),
      unit: '',
      constants: sinclair[cycle][sex],
    },
    {
      name: 'Sinclair total',
      rule: 'total · coefficient',
      value: total * coefficient(mass, sex, cycle),
      unit: 'kg',
    },
  ],
});

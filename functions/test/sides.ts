import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { number, optionOr } from '../core/parameter.ts';
import { memory, secondary } from '../core/source.ts';

const size = { min: 0, because: 'A side is measured in size, without a sign.' };

const indices = {
  symmetry: { name: 'symmetry index', rule: '100 (right − left) / (½ (right + left))' },
  limb: { name: 'limb symmetry index', rule: '100 · smaller / larger' },
  max: { name: 'difference over the larger side', rule: '100 (larger − smaller) / larger' },
  total: { name: 'difference over both sides', rule: '100 (larger − smaller) / (larger + smaller)' },
} as const;

function percent(left: number, right: number, index: keyof typeof indices): number {
  const larger = Math.max(left, right);
  const smaller = Math.min(left, right);
  if (index === 'symmetry') return (100 * (right - left)) / (0.5 * (right + left));
  if (index === 'limb') return (100 * smaller) / larger;
  return (100 * (larger - smaller)) / (index === 'max' ? larger : larger + smaller);
}

/** TEST.SIDES(left, right, [index="symmetry"]): per cent. @throws nothing; both sides 0 #DIV/0!. */
export default defineFunction({
  name: 'TEST.SIDES',
  family: 'reliability',
  summary: 'Difference between the two sides of the body, in per cent, by a named index.',
  searchWords: ['asymmetry', 'limb symmetry index', 'LSI', 'left right', 'bilateral deficit'],
  parameters: [
    number('left', '', 'value of the left side', { bounds: size }),
    number('right', '', 'value of the right side', { bounds: size }),
    optionOr('symmetry', 'index', ['symmetry', 'limb', 'max', 'total'], 'which index'),
  ],
  result: {
    is: 'number',
    unit: '%',
    about: 'the index; write its name beside the number',
    measures: 'plain',
  },
  rule: Object.entries(indices)
    .map(([word, { name, rule }]) => `${word}: ${rule} (${name})`)
    .join('\n'),
  sources: [
    secondary('symmetry: Robinson 1987, as printed in BMC Sports Sci Med Rehabil 2021'),
    secondary('limb: Parkinson 2021 (index family)'),
    memory('max and total: Bishop 2018'),
  ],
  cautions: [
    'The four indices give four numbers for one pair of measurements. A figure without the name of its index says nothing, and no threshold is drawn here.',
  ],
  notes: [
    '"symmetry" carries a sign: right − left, positive when the right side is larger. The others do not.',
  ],
  examples: [
    { formula: '=TEST.SIDES(180, 200)', gives: 10.526315789 },
    { formula: '=TEST.SIDES(180, 200, "limb")', gives: 90 },
    { formula: '=TEST.SIDES(180, 200, "max")', gives: 10 },
    { formula: '=TEST.SIDES(180, 200, "total")', gives: 5.263157895 },
  ],
  seeAlso: ['TEST.MDC', 'TEST.CHANGE'],
  typical: [31, 36, 'symmetry'],
  directions: { left: -1, right: 1 },
  compute: (left, right, index) =>
    left === 0 && right === 0
      ? issue('#DIV/0!', 'sides-zero', { parameter: 'left', details: { other: 'right' } })
      : percent(left, right, index),
  steps: (left, right, index) => [
    {
      name: indices[index].name,
      rule: indices[index].rule,
      value: left === 0 && right === 0 ? 'both sides are 0' : percent(left, right, index),
      unit: '%',
    },
  ],
});

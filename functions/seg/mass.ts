import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { optionOr } from '../core/parameter.ts';
import { bodyMass } from '../tables/parameters.ts';
import { massTables, segment, segmentConstants, segmentRow, segmentsOf } from '../tables/segments.ts';

/** SEG.MASS(segment, body_mass, [table]): kg. @throws nothing; a segment of the other table gives #N/A. */
export default defineFunction({
  name: 'SEG.MASS',
  family: 'segments',
  summary: 'Mass of one body segment as a share of body mass.',
  searchWords: ['segment mass', 'body weight', 'inertia', 'anthropometric table'],
  parameters: [
    segment(),
    bodyMass('body_mass'),
    optionOr('dempster', 'table', massTables, 'whose mass fractions'),
  ],
  result: { is: 'number', unit: 'kg', about: 'mass of the segment, one side of limbs' },
  rule: 'fraction × body_mass',
  sources: [segmentConstants('mass')[0]!.source, segmentConstants('mass').at(-1)!.source],
  constants: segmentConstants('mass'),
  cautions: ['Never mix two tables in one sum: their segments are cut at different places.'],
  notes: [
    'Dempster: foot, shank, thigh, head-arms-trunk, pelvis (a part of head-arms-trunk). De Leva: head, trunk, upper arm, forearm, hand, thigh, shank, foot.',
    'The moment functions use Dempster’s table.',
  ],
  examples: [
    { formula: '=SEG.MASS("thigh", 80)', gives: 8 },
    { formula: '=SEG.MASS("trunk", 80, "deleva-male")', gives: 34.768 },
    { formula: '=SEG.MASS("trunk", 80)', gives: '#N/A', says: 'a segment of the other table' },
  ],
  seeAlso: ['SEG.COM', 'MOMENT.HIP'],
  typical: ['thigh', 80, 'dempster'],
  directions: { body_mass: 1 },
  compute: (segment, bodyMass, table) => {
    const row = segmentRow(segment, table);
    if (row) return row.mass.value * bodyMass;
    return issue('#N/A', 'segment-of-other-table', {
      parameter: 'segment',
      received: segment,
      expected: segmentsOf(table),
      details: { table },
    });
  },
});

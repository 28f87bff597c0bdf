import { defineFunction } from '../core/define.ts';
import { issue } from '../core/issue.ts';
import { optionOr } from '../core/parameter.ts';
import { massTables, segment, segmentConstants, segmentRow, segmentsOf } from '../tables/segments.ts';

/** SEG.COM(segment, [table]): fraction of the segment's length. @throws nothing; none in the table gives #N/A. */
export default defineFunction({
  name: 'SEG.COM',
  family: 'segments',
  summary: 'Where a segment’s centre of mass lies, as a fraction of its length from the proximal end.',
  searchWords: ['centre of mass', 'center of gravity', 'segment table'],
  parameters: [segment(), optionOr('dempster', 'table', massTables, 'whose centres of mass')],
  result: { is: 'number', unit: '', about: 'fraction from the proximal end' },
  rule: 'the table’s value',
  sources: [segmentConstants('centre')[0]!.source, segmentConstants('centre').at(-1)!.source],
  constants: segmentConstants('centre'),
  cautions: ['Never mix two tables in one sum: their segments are cut at different places.'],
  notes: [
    'Dempster’s head-arms-trunk counts from the hip along the trunk; the table has no centre of mass for foot and pelvis.',
    'De Leva’s ends: head vertex to gonion, trunk suprasternale to mid-hip, shank knee to lateral malleolus, foot heel to toe.',
  ],
  examples: [
    { formula: '=SEG.COM("thigh")', gives: 0.433 },
    { formula: '=SEG.COM("shank", "deleva-female")', gives: 0.4416 },
    { formula: '=SEG.COM("foot")', gives: '#N/A', says: 'Dempster’s table has none' },
  ],
  seeAlso: ['SEG.MASS', 'LEAN.LOADED'],
  typical: ['thigh', 'dempster'],
  compute: (segment, table) => {
    const row = segmentRow(segment, table);
    if (row?.centre) return row.centre.value;
    return issue('#N/A', row ? 'no-centre-of-mass' : 'segment-of-other-table', {
      parameter: 'segment',
      received: segment,
      expected: segmentsOf(table, true),
      details: { table },
    });
  },
});

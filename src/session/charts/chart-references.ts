/** What a chart points at: its sheet by id, columns of it by name, and what its standard error's formula names. */

import { definePart } from '../../book/references/part.ts';
import { chartRecord } from './chart-record.ts';

export const chartPart = definePart({
  word: 'chart',
  part: 'charts',
  schema: chartRecord,
  references: (chart, { columns, sheets, formulas }) => ({
    ...chart,
    sheet: sheets.ofId(chart.sheet),
    columns: chart.columns.map((name) => columns.named(chart.sheet, name)),
    ...(chart.by === undefined ? {} : { by: columns.named(chart.sheet, chart.by) }),
    ...(typeof chart.sem === 'string' ? { sem: formulas(chart.sem, chart.sheet) } : {}),
  }),
});

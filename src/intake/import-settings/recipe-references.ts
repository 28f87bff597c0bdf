/** What the import settings of a file point at: the sheet they fill, its columns, and where people are listed. */

import { definePart } from '../../book/references/part.ts';
import { recipe } from './recipe-shape.ts';

export const recipePart = definePart({
  word: 'set of import settings',
  part: 'recipes',
  schema: recipe,
  references: (record, { columns, sheets }) => {
    const { sheet, key, who } = record;
    const own = (name: string): string => columns.named(sheet, name);
    const listed = (name: string): string => columns.named(who?.roster, name);
    return {
      ...record,
      sheet: sheets.named(sheet),
      columns: record.columns.map((one) => ({ ...one, column: own(one.column) })),
      ...(key ? { key: key.map(own) } : {}),
      ...(who
        ? {
            who: {
              ...who,
              column: own(who.column),
              roster: sheets.named(who.roster),
              name: listed(who.name),
              ...(who.also ? { also: who.also.map(listed) } : {}),
            },
          }
        : {}),
    };
  },
});

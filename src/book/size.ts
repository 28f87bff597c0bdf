import { type CellRun, isList } from './cells.ts';
import type { Edit } from './edit.ts';
import type { Json } from './model.ts';

/** Roughly how many bytes an edit keeps in memory; what is shared with the book counts too, since it may not stay so. */
export function editSize(edit: Edit): number {
  switch (edit.do) {
    case 'batch':
      return edit.edits.reduce((all, one) => all + editSize(one), 0);
    case 'put-cells':
    case 'add-rows':
      return runs(edit.cells ?? []);
    case 'order-rows':
      return edit.order.length * 4;
    case 'add-column':
      return runs(edit.cells ? [edit.cells] : []);
    case 'add-sheet':
      return runs(edit.sheet.columns.flatMap(({ cells }) => (cells ? [cells] : [])));
    case 'set-part':
      return 200 + textsIn(edit.value);
    default:
      return 200;
  }
}

/** Characters of the texts in a record, two bytes each: a record may have a picture in it. */
const textsIn = (value: Json): number => {
  if (typeof value === 'string') return value.length * 2;
  if (typeof value !== 'object' || value === null) return 0;
  return Object.values(value).reduce((sum: number, one) => sum + textsIn(one as Json), 0);
};

const runs = (all: readonly CellRun[]): number =>
  all.reduce((sum, run) => sum + run.length * (isList(run) ? 24 : run.texts ? 40 : 9), 200);

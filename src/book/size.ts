import { type CellRun, isList } from './cells.ts';
import type { Edit } from './edit.ts';

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
    default:
      return 200;
  }
}

const runs = (all: readonly CellRun[]): number =>
  all.reduce((sum, run) => sum + run.length * (isList(run) ? 24 : run.texts ? 40 : 9), 200);

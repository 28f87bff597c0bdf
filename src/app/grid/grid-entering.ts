import type { ColumnOutline } from '../../session/api.ts';
import { CellMark } from '../../session/sheet/cell-mark.ts';
import type { EditorHost } from './cell-editor.ts';
import type { GridHost } from './host.ts';
import type { Looking } from './looking.ts';
import type { Showing } from './showing.ts';

/** What the editor in a cell is told about it, and where what was typed there goes. */
export function entering(
  showing: Showing,
  looking: Looking,
  host: GridHost,
  /** The last blank line may have been filled in. */
  goOnBelow: (line: number) => void,
): EditorHost {
  return {
    editText: async (line, column) => {
      const at = showing.shown.lines.at(line);
      return at.is === 'row'
        ? host.editText(showing.shown.sheet.id, showing.columns[column]!.id, at.row)
        : '';
    },
    isComputed(line, column) {
      const of = showing.columns[column]!;
      if (of.formula === undefined || showing.shown.lines.at(line).is !== 'row') return false;
      return (looking.tiles.marks(line, showing.indexes[column]!) & CellMark.override) === 0;
    },
    choices: (line, column) =>
      looking.tiles.choices(line, showing.indexes[column]!) ?? choicesOf(showing.columns[column]!),
    enter(line, column, lines, columns, text) {
      const ids = showing.columns.slice(column, column + columns).map(({ id }) => id);
      const runs = showing.shown.lines.runs(line, line + lines - 1);
      const rows = runs.reduce((all, { count }) => all + count, 0);
      const texts = Array.from({ length: rows }, () => ids.map(() => text));
      goOnBelow(line + lines - 1);
      host.enter({ runs, columns: ids, texts, formulas: true });
    },
    writeFormula: (text) => host.writeFormula(text),
  };
}

function choicesOf({ kind, choices, formula }: ColumnOutline): readonly string[] | null {
  if (formula !== undefined) return null;
  if (kind === 'choice') return choices ?? [];
  return kind === 'yes-no' ? ['yes', 'no'] : null;
}

/** How wide a column is where nobody has said so. */
import type { ColumnOutline } from '../../session/api.ts';

const narrowest = 64;
const widest = 230;
/** Average width of a heading's letter, pixels. */
const letter = 7.7;
/** Average width of a cell's letter, and what stands beside a choice: the arrow of its list, padding. */
const cellLetter = 7.2;
const besideChoice = 34;

/** Width of a column in pixels when its own is not set: as its heading, over two lines, and its kind ask for. */
export function widthOf(column: ColumnOutline): number {
  if (column.width !== undefined) return column.width;
  const words = [...column.label.split(/\s+/), ...(column.sign ? [column.sign] : [])];
  const label = twoLines(words.map(({ length }) => length)) * letter + 20;
  const content = contentOf(column);
  const formula = column.formula === undefined ? 0 : 104;
  return Math.round(Math.min(widest, Math.max(narrowest, label, content, formula)));
}

/** What the cells of a kind ask for; a choice is read whole. */
function contentOf({ kind, choices }: ColumnOutline): number {
  if (kind === 'choice')
    return Math.max(66, ...(choices ?? []).map(({ length }) => length * cellLetter + besideChoice));
  return kind === 'text' ? 130 : kind === 'date' ? 96 : 66;
}

/** Letters of the longer line when words are broken into two lines as evenly as they can be. */
function twoLines(lengths: readonly number[]): number {
  const sum = (part: readonly number[]) =>
    part.reduce((all, length) => all + length, 0) + Math.max(0, part.length - 1);
  return Math.min(
    ...lengths.map((_, index) => Math.max(sum(lengths.slice(0, index + 1)), sum(lengths.slice(index + 1)))),
  );
}

/** Width of the row numbers. */
export function rowNumberWidth(rows: number): number {
  return Math.max(40, String(rows).length * 9 + 18);
}

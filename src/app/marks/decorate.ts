import type { Drawing } from '../../session/marks/drawings.ts';
import type { MarksOutline } from '../../session/marks/mark-words.ts';
import './marks.css';
import { scaleBar, sign, trendLine } from './shapes.ts';

/**
 * Puts what a column's marks draw into a cell that holds its text: the sign before it, the scale under it, the line
 * beside it. Answers the classes that the cell is to have for it.
 */
export function decorate(
  cell: HTMLTableCellElement,
  marks: MarksOutline,
  drawing: Drawing,
  at: number,
): string {
  let classes = '';
  const told: string[] = [];
  const share = drawing.scale?.at[at];
  if (drawing.scale && share !== undefined && !Number.isNaN(share)) {
    cell.append(scaleBar(drawing.scale.zero, share));
    classes += ' scaled';
    told.push(`On a scale ${drawing.scale.words}`);
  }
  const line = drawing.trends?.[at];
  if (line) {
    classes += cell.textContent === '' ? ' trended alone' : ' trended';
    cell.prepend(trendLine(line), ' ');
    told.push(line.words);
  }
  const rule = marks.rules[(drawing.rules?.[at] ?? 0) - 1];
  if (rule) {
    cell.prepend(sign(rule.tone, rule.says), ' ');
    classes += ` marked ${rule.tone}`;
    told.unshift(`${rule.says} (${rule.when})`);
  }
  if (told.length > 0) cell.title = told.join('\n');
  return classes;
}

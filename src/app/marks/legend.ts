import type { ColumnOutline } from '../../session/api.ts';
import { sign } from './shapes.ts';
import { drawnInWords } from './words.ts';

/** What the marks on a printed sheet mean, as a list; nothing where there are none. */
export function legendOf(columns: readonly ColumnOutline[]): readonly Element[] {
  const list = document.createElement('dl');
  list.className = 'mark-legend';
  for (const { label, marks } of columns) {
    if (!marks) continue;
    const name = document.createElement('dt');
    name.textContent = label;
    list.append(name);
    for (const { tone, says, when } of marks.rules) {
      const line = document.createElement('dd');
      line.className = tone;
      line.append(sign(tone, ''), ` ${says}, where ${when}`);
      list.append(line);
    }
    for (const words of drawnInWords(marks)) {
      const line = document.createElement('dd');
      line.textContent = words;
      list.append(line);
    }
  }
  return list.childElementCount > 0 ? [list] : [];
}

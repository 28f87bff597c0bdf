/** Finds lines of totals at the end of a table. */
import type { Choices, Finding } from '../api.ts';
import { note } from '../sentences/index.ts';
import { footerWords, LONGEST_VALUE } from '../words.ts';
import { filledOf, isBlank } from './layout.ts';

const words = new Set(footerWords);

/** Finds lines at the end that sum up or comment the table. `rows` are the last records of the file. */
export function findFooter(
  rows: readonly (readonly string[])[],
  width: number,
  choices: Choices,
): Finding<number> {
  if (choices.footer !== undefined)
    return { value: choices.footer, certainty: 'sure', because: note('chosen') };
  // Where rows leave blank cells at their end out, a single cell is a row of somebody without values.
  const short = rows.filter((row) => row.length < width && filledOf(row) > 1).length;
  const endsEarly = short >= 0.2 * rows.length;
  let count = 0;
  let seen = 0;
  let word = '';
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i]!;
    const filled = filledOf(row);
    if (filled === 0) {
      seen++;
      continue;
    }
    const begin = row
      .find((cell) => !isBlank(cell))!
      .trim()
      .slice(0, LONGEST_VALUE);
    const key = begin
      .toLowerCase()
      .replace(/\s*[:=].*$/, '')
      .replace(/\.$/, '');
    // A lone cell is a remark when it is a line of its own or a sentence; a name alone is a row of a roster.
    const alone =
      width > 2 && filled === 1 && ((row.length < width && !endsEarly) || /\S\s+\S+\s+\S|:/.test(begin));
    if (!words.has(key) && !alone) break;
    if (words.has(key) && row.length > 1 && looksLikeRow(row, rows, i)) break;
    seen++;
    count = seen;
    word = begin.slice(0, 30);
  }
  return {
    value: count,
    certainty: count === 0 ? 'sure' : 'likely',
    because: count === 0 ? note('no-footer') : note('footer-words', { word }),
    others: count === 0 ? [] : [0],
  };
}

/** A first cell like "N" or "Min" can be a code among codes: then every row begins so. */
function looksLikeRow(row: readonly string[], rows: readonly (readonly string[])[], at: number): boolean {
  const begin = row[0]!.trim().toLowerCase();
  return (
    begin !== '' && rows.slice(0, at).filter((other) => other[0]?.trim().toLowerCase() === begin).length >= 2
  );
}

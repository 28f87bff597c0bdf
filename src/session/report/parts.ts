import { el, type Shape } from '../figure/drawing/svg-shape.ts';

/** Pieces that a printed report is made of. */

export const section = (title: string, ...content: readonly (Shape | readonly Shape[])[]): Shape =>
  el('section', {}, el('h2', {}, title), ...content);

/** A paragraph for each text, and for each blank line in it. */
export const paragraphs = (...texts: readonly string[]): readonly Shape[] =>
  texts
    .flatMap((text) => text.split(/\n\s*\n/))
    .map((text) => text.trim())
    .filter((text) => text !== '')
    .map((text) => el('p', {}, text));

/** Headings with whether their column holds figures. */
type Headings = readonly (readonly [label: string, numeric?: boolean])[];

/** A table of so few rows stays on one page. */
const shortTable = 16;

/** A date stays on one line. */
const dateShape = /^(?:\d{4}-\d{2}-\d{2}|\d{1,2} [A-Z][a-z]{2} \d{4})$/;

/** A fingerprint or a long formula breaks anywhere; words do not. */
const classOf = (cell: string, numeric: boolean): string | undefined =>
  numeric
    ? 'numeric'
    : dateShape.test(cell)
      ? 'report-date'
      : /\S{30}/.test(cell)
        ? 'report-long'
        : undefined;

export function table(caption: string, headings: Headings, rows: readonly (readonly string[])[]): Shape {
  const [, number = '', text = caption] = /^(Table \d+) (.*)$/s.exec(caption) ?? [];
  return el(
    'table',
    { class: rows.length <= shortTable ? 'report-short' : undefined },
    el('caption', {}, number !== '' && el('strong', {}, `${number} `), text),
    el(
      'thead',
      {},
      el(
        'tr',
        {},
        headings.map(([label, numeric]) =>
          el('th', { scope: 'col', class: numeric ? 'numeric' : undefined }, label),
        ),
      ),
    ),
    el(
      'tbody',
      {},
      rows.map((cells) =>
        el(
          'tr',
          {},
          cells.map((cell, index) =>
            index === 0
              ? el('th', { scope: 'row', class: dateShape.test(cell) ? 'report-date' : undefined }, cell)
              : el('td', { class: classOf(cell, headings[index]?.[1] ?? false) }, cell),
          ),
        ),
      ),
    ),
  );
}

/** "Table 1", "Table 2": counts on. */
export function numbered(): (of: 'Table') => string {
  let last = 0;
  return (of) => `${of} ${++last}`;
}

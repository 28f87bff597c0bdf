import type { Provenance } from '../api.ts';
import type { Prepared } from '../read/index.ts';

/**
 * Held rows that have been mended, as a file of the same kind as the one they came from: its headings above, read the
 * same way. It is taken in by the recipe of that import.
 */
export function mendedRows(rows: readonly string[], { reading }: Pick<Provenance, 'reading'>): Prepared {
  const { delimiter, quote, headings, shape } = reading;
  const named = headings.some((heading) => heading !== '');
  const cell = (text: string): string =>
    quote !== '' && (text.includes(delimiter) || text.includes(quote) || /[\r\n]|^\s|\s$/.test(text))
      ? `${quote}${text.replaceAll(quote, quote + quote)}${quote}`
      : text;
  const lines = named ? [headings.map(cell).join(delimiter), ...rows] : rows;
  return {
    bytes: new TextEncoder().encode(`${lines.join('\n')}\n`),
    options: {
      choices: {
        encoding: 'utf-8',
        delimiter,
        quote,
        preamble: 0,
        headingLines: named ? 1 : 0,
        unitsLine: false,
        footer: 0,
        shape,
      },
    },
  };
}

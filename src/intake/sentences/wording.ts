/** Words that the sentences of the import share: counts, sizes, names of marks and of date orders. */

/** What a sentence is about, by name. */
export type Details = Readonly<Record<string, string | number>>;
export type Say = (d: Details) => string;

export const many = (n: string | number | undefined, one: string, more = `${one}s`): string =>
  `${Number(n).toLocaleString('en')} ${Number(n) === 1 ? one : more}`;
export const bytes = (n: string | number | undefined): string =>
  Number(n) >= 1e6 ? `${(Number(n) / 1e6).toFixed(0)} MB` : `${Number(n).toLocaleString('en')} bytes`;
export const file = (d: Details): string => (d.name ? `"${d.name}"` : 'The file');
export const column = (d: Details): string => `Column "${d.heading}"`;
const markNames: Record<string, string> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'vertical bar',
  '"': 'double quote',
  "'": 'single quote',
  '.': 'point',
};
export const mark = (m: string | number | undefined): string => markNames[String(m)] ?? `"${m}"`;
export const order: Record<string, string> = {
  ymd: 'year-month-day',
  dmy: 'day-month-year',
  mdy: 'month-day-year',
};

import type { Issue } from '../issue.ts';

export type Sentences = Readonly<Record<string, (i: Issue) => string>>;

/** The argument and its function: `"lift" of LEAN.PARALLEL`. */
export const of = (i: Issue): string =>
  i.parameter ? `"${i.parameter}" of ${i.function}` : (i.function ?? 'This function');

/** What arrived, as it arrived. */
export function got(i: Issue): string {
  if (i.received === undefined) return 'nothing';
  if (typeof i.received === 'boolean') return i.received ? 'TRUE' : 'FALSE';
  if (typeof i.received === 'string') return `"${i.received}"`;
  return Number.isFinite(i.received) ? `${i.received}${unitOf(i)}` : 'no finite number';
}

/** Where in a range it stood, if it did: ` in its row 3`. */
export const where = (i: Issue): string =>
  i.details?.row === undefined ? '' : ` in its row ${i.details.row}`;

export const unitOf = (i: Issue): string => (i.unit ? ` ${i.unit}` : '');

/** What to do about it, or else what is usually to be done. */
export const remedyOr = (i: Issue, otherwise: string): string => ` ${i.remedy ?? otherwise}`;

/** A figure of the details, to two decimals. */
export function fig(i: Issue, name: string): string {
  const value = i.details?.[name];
  return typeof value === 'number' ? `${Number(value.toFixed(2))}` : `${value}`;
}

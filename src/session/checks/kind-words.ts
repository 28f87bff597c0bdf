import type { Doubt } from './doubt.ts';

/** Headings of what is to be checked, in the order in which it is listed: what is wrong first, what is only slow last. */
const checkKinds: Readonly<Record<Doubt['about'], string>> = {
  error: 'Errors',
  cycle: 'Circular references',
  hung: 'Formulas that timed out',
  held: 'Unreadable cells',
  pending: 'Missing measures',
  length: 'Implausible lengths',
  ankle: 'Ankle range',
  dimension: 'Units and dimensions',
  blank: 'Blanks counted as 0',
  'old test': 'Old tests',
  setting: 'Settings that match nothing',
  slow: 'Columns computed row by row',
};

/** What is to be checked under its headings; a heading without entries is left out. */
export const underHeadings = (
  doubts: readonly Doubt[],
): readonly {
  readonly about: Doubt['about'];
  readonly heading: string;
  readonly items: readonly Doubt[];
}[] =>
  (Object.keys(checkKinds) as Doubt['about'][])
    .map((about) => ({
      about,
      heading: checkKinds[about],
      items: doubts.filter((doubt) => doubt.about === about),
    }))
    .filter(({ items }) => items.length > 0);

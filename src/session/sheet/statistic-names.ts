import type { Statistic } from './sheet-view.ts';

/** What each statistic of a summary row is called. */
export const statisticNames: Readonly<Record<Statistic, string>> = {
  count: 'n',
  sum: 'sum',
  mean: 'mean',
  sd: 'SD',
  least: 'minimum',
  most: 'maximum',
};

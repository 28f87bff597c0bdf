/** Which arguments are meant; they should measure the same among themselves. */
export type Places = 'all' | 'all but the first' | 'every second' | readonly number[];

/**
 * What the result of a function measures, and thereby what it asks of its arguments: those that it measures the same as
 * are to measure the same among themselves. `plain` is a plain number whatever comes in, `unknown` depends on what is asked.
 */
export type Measures =
  | 'plain'
  | 'date'
  | 'text'
  | 'yes-no'
  | 'unknown'
  /** `dates`: for days of the calendar it gives one; other functions give none of their arguments back as a day. */
  | { readonly same: Places; readonly dates?: true }
  /** What an argument measures, per day or per week. */
  | { readonly of: number; readonly per: 'day' | 'week' }
  | { readonly of: number; readonly power: number }
  /** A word says what is asked for: `usual` where it is left out, `others` for any word but those listed. */
  | {
      readonly word: number;
      readonly usual: Measures;
      readonly words: Readonly<Record<string, Measures>>;
      readonly others: Measures;
      /** Arguments that are to measure the same whatever is asked. */
      readonly alike: readonly number[];
    };

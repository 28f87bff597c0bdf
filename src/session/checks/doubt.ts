/** What the checks answer: plain data. */
import type { CalcDoubt, Place } from '../../calc/api.ts';

/** Something that somebody should look at. Not an error of the book: every value stands. */
export interface Doubt {
  readonly place: Place;
  readonly about: CalcDoubt['about'] | 'held' | 'length' | 'ankle' | 'old test' | 'setting';
  readonly sentence: string;
  /** How many results have this cause, where there are several. */
  readonly results?: number;
  /** What can be done about it. */
  readonly remedy: string;
  /** Texts of which one, entered at the place, settles it. */
  readonly choices?: readonly string[];
  /** Names it in the part `accepted`; another one when what it is about changes. */
  readonly key: string;
  /** Somebody has looked at it and is content, and why. */
  readonly accepted?: Acceptance;
}

export interface Acceptance {
  readonly reason: string;
  /** The day, ISO. */
  readonly on?: string;
}

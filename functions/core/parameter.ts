import type { Range } from './value.ts';

/** Units as the functions see them: the one unit inside for each dimension (see the book's units). */
export type Unit =
  | 'cm'
  | 'deg'
  | 'kg'
  | 'N'
  | 'N·m'
  | 'min'
  | 'm/s'
  | 'days'
  | 'date'
  | 'reps'
  | '%'
  | 'in'
  | 'ft'
  | 'lb'
  | 'mm'
  | 'points'
  | '';

/** Limits of a number, each with the reason for it, so that the sentence can give it. */
export interface Bounds {
  readonly min?: number;
  readonly max?: number;
  /** The limit itself is out. */
  readonly above?: number;
  readonly below?: number;
  /** Why: shown with the limit. */
  readonly because?: string;
}

interface Common<T> {
  readonly name: string;
  /** What it is, in a few words. */
  readonly about: string;
  readonly optional?: boolean;
  /** Carries the type that the kernel is handed; never set. */
  readonly handed?: T;
}

/** A number. With `divisor`, an exact 0 is #DIV/0! (only looked at where no bound comes first). */
export interface NumberParameter<T = number> extends Common<T> {
  readonly kind: 'number';
  readonly unit: Unit;
  readonly bounds: Bounds;
  readonly whole?: boolean;
  readonly divisor?: boolean;
  /** Any unit will do, as long as others are in the same: lengths are no doubt here. */
  readonly anyUnit?: boolean;
  readonly fallback?: number;
}

/**
 * One of a few words, in any case. `aliases` are other spellings. `refused` are words that other functions take, each
 * with what to do instead: refused like any other word, but with that in the sentence.
 */
export interface OptionParameter<T = string> extends Common<T> {
  readonly kind: 'option';
  readonly words: readonly string[];
  readonly aliases?: Readonly<Record<string, string>>;
  readonly refused?: Readonly<Record<string, string>>;
  readonly fallback?: string;
}

/** Free text, compared trimmed and in any case (an athlete's name). Numbers are taken as their text. */
export interface TextParameter<T = string> extends Common<T> {
  readonly kind: 'text';
}

export interface YesNoParameter<T = boolean> extends Common<T> {
  readonly kind: 'yes-no';
  readonly fallback?: boolean;
}

/**
 * Cells handed over as a whole; a single value counts as a range of one. `holds` says what its cells must be:
 * `number` refuses text that reads as no number, `date` refuses all text, `text` takes anything (names).
 * `cells` bounds each number in it. `together` names a group: ranges of one group must be equally long.
 */
export interface RangeParameter<T = Range> extends Common<T> {
  readonly kind: 'range';
  readonly holds: 'number' | 'date' | 'text';
  readonly unit: Unit;
  readonly cells?: Bounds;
  readonly together?: string;
}

export type Parameter<T = unknown> =
  | NumberParameter<T>
  | OptionParameter<T>
  | TextParameter<T>
  | YesNoParameter<T>
  | RangeParameter<T>;

type NumberRest = Partial<Omit<NumberParameter, 'kind' | 'name' | 'about' | 'unit' | 'handed'>>;

/** A required number. */
export function number(
  name: string,
  unit: Unit,
  about: string,
  rest: NumberRest = {},
): NumberParameter<number> {
  return { kind: 'number', name, unit, about, bounds: {}, ...rest };
}

/** A number that may be left out, with the value it then has. */
export function numberOr(
  fallback: number,
  name: string,
  unit: Unit,
  about: string,
  rest: NumberRest = {},
): NumberParameter<number> {
  return { kind: 'number', name, unit, about, bounds: {}, ...rest, optional: true, fallback };
}

/** A number that may be left out; the kernel then gets `undefined` and works it out or does without. */
export function numberMaybe(
  name: string,
  unit: Unit,
  about: string,
  rest: NumberRest = {},
): NumberParameter<number | undefined> {
  return { kind: 'number', name, unit, about, bounds: {}, ...rest, optional: true };
}

export function option<const W extends string>(
  name: string,
  words: readonly W[],
  about: string,
  aliases: Readonly<Record<string, W>> = {},
): OptionParameter<W> {
  return { kind: 'option', name, words, about, aliases };
}

export function optionOr<const W extends string>(
  fallback: W,
  name: string,
  words: readonly W[],
  about: string,
  aliases: Readonly<Record<string, W>> = {},
  refused: Readonly<Record<string, string>> = {},
): OptionParameter<W> {
  return { kind: 'option', name, words, about, aliases, refused, optional: true, fallback };
}

export function optionMaybe<const W extends string>(
  name: string,
  words: readonly W[],
  about: string,
  aliases: Readonly<Record<string, W>> = {},
): OptionParameter<W | undefined> {
  return { kind: 'option', name, words, about, aliases, optional: true };
}

export function textMaybe(name: string, about: string): TextParameter<string | undefined> {
  return { kind: 'text', name, about, optional: true };
}

export function yesNoOr(fallback: boolean, name: string, about: string): YesNoParameter<boolean> {
  return { kind: 'yes-no', name, about, optional: true, fallback };
}

type RangeRest = Pick<RangeParameter, 'cells' | 'together'>;

export function range(
  name: string,
  holds: RangeParameter['holds'],
  unit: Unit,
  about: string,
  rest: RangeRest = {},
): RangeParameter<Range> {
  return { kind: 'range', name, holds, unit, about, ...rest };
}

export function rangeMaybe(
  name: string,
  holds: RangeParameter['holds'],
  unit: Unit,
  about: string,
  rest: RangeRest = {},
): RangeParameter<Range | undefined> {
  return { kind: 'range', name, holds, unit, about, ...rest, optional: true };
}

/** The kernel's argument types, read off its parameters. */
export type Handed<P extends readonly Parameter[]> = {
  [K in keyof P]: P[K] extends { readonly handed?: infer T }
    ? Exclude<T, undefined> | MaybeMissing<P[K]>
    : never;
};
type MaybeMissing<P> = P extends { readonly handed?: infer T }
  ? undefined extends T
    ? undefined
    : never
  : never;

/** True when a number keeps its bounds; not-a-number keeps none. */
export function within(value: number, { min, max, above, below }: Bounds): boolean {
  return (
    !Number.isNaN(value) &&
    (min === undefined || value >= min) &&
    (max === undefined || value <= max) &&
    (above === undefined || value > above) &&
    (below === undefined || value < below)
  );
}

/** The bounds in words: "15 to 80", "above 0 to 20", "0 or more". */
export function boundsInWords({ min, max, above, below }: Bounds): string {
  const low = above !== undefined ? `above ${above}` : min !== undefined ? `${min}` : '';
  const high = below !== undefined ? `below ${below}` : max !== undefined ? `${max}` : '';
  if (low && high)
    return below !== undefined
      ? `${low}${above === undefined ? ' or more,' : ','} ${high}`
      : `${low} to ${high}`;
  if (low) return above !== undefined ? low : `${low} or more`;
  if (high) return below !== undefined ? high : `at most ${high}`;
  return 'any number';
}

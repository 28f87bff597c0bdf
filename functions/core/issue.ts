/** The error values a formula can have. */
export type ErrorCode =
  | '#N/A'
  | '#VALUE!'
  | '#NUM!'
  | '#DIV/0!'
  | '#REF!'
  | '#NAME?'
  | '#CYCLE!'
  | '#SPILL!'
  | '#ERROR!';

/**
 * Why a formula has no value, as data. The sentence is made from it last, in one place (`sentence.ts` for the
 * functions; the formula language adds the reasons that only it knows). It is also the error value itself: a function
 * that is handed an Issue hands it on.
 */
export interface Issue {
  readonly code: ErrorCode;
  /** Which sentence; a key of the sentence table. */
  readonly reason: string;
  readonly function?: string;
  readonly parameter?: string;
  /** What arrived, as it arrived. */
  readonly received?: string | number | boolean;
  /** What is accepted, in words. */
  readonly expected?: string;
  readonly unit?: string;
  /** What to do about it, in words. */
  readonly remedy?: string;
  /** Further figures for the sentence. */
  readonly details?: Readonly<Record<string, string | number>>;
}

export const issue = (code: ErrorCode, reason: string, rest: Omit<Issue, 'code' | 'reason'> = {}): Issue => ({
  code,
  reason,
  ...rest,
});

/** True for an error value. Works on anything a cell or an argument can be. */
export function isIssue(value: unknown): value is Issue {
  return typeof value === 'object' && value !== null && 'code' in value && 'reason' in value;
}

/** True for an error that says no more than that something is not measured yet. */
export const isPending = (of: Issue | undefined): boolean => of?.reason === 'blank-argument';

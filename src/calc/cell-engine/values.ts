import { CellError, ErrorType, type SimpleRangeValue } from 'hyperformula';
import { type ErrorCode, type Issue, issue } from '../../../functions/core/issue.ts';

/** A single value as the cell engine holds it inside. */
export type Inner = Parameters<typeof SimpleRangeValue.fromScalar>[0];

/** A number that the cell engine remembers as a date, time, percentage or currency. */
export type RichNumber = Extract<Inner, { val: number }>;

const codeOf: Readonly<Record<ErrorType, ErrorCode>> = {
  [ErrorType.DIV_BY_ZERO]: '#DIV/0!',
  [ErrorType.NAME]: '#NAME?',
  [ErrorType.VALUE]: '#VALUE!',
  [ErrorType.NUM]: '#NUM!',
  [ErrorType.NA]: '#N/A',
  [ErrorType.CYCLE]: '#CYCLE!',
  [ErrorType.REF]: '#REF!',
  [ErrorType.SPILL]: '#SPILL!',
  [ErrorType.LIC]: '#ERROR!',
  [ErrorType.ERROR]: '#ERROR!',
};
const typeOf = Object.fromEntries(
  Object.entries(codeOf)
    .filter(([type]) => type !== ErrorType.LIC)
    .map(([type, code]) => [code, type]),
) as Readonly<Record<ErrorCode, ErrorType>>;

const issues = new WeakMap<CellError, Issue>();
const errors = new WeakMap<Issue, CellError>();

/** An error value for the cell engine; `issueOfError` gives the same Issue back. */
export function errorOf(of: Issue): CellError {
  let error = errors.get(of);
  if (!error) {
    error = new CellError(typeOf[of.code], of.reason);
    errors.set(of, error);
    issues.set(error, of);
  }
  return error;
}

/** The Issue that went in, or one that carries the engine's own message. */
export function issueOfError(error: CellError, functionName?: string): Issue {
  const known = issues.get(error);
  if (known) return known;
  return issue(codeOf[error.type], 'built-in', {
    ...(functionName ? { function: functionName } : {}),
    details: { message: error.message ?? '' },
  });
}

export const isRich = (value: unknown): value is RichNumber =>
  typeof value === 'object' && value !== null && 'val' in value;

import { log10 } from '../../../functions/core/elementary/log.ts';
import type { Range } from '../../../functions/core/value.ts';
import { mean, standardDeviation } from '../../../functions/statistics/describe.ts';
import { ask } from '../charts/chart-numbers.ts';
import { rangeFrom } from '../charts/read.ts';
import type { ReadContext } from '../open-book.ts';
import type { Chosen } from './chosen.ts';
import {
  columnFound,
  digitsFor,
  fixed,
  labelled,
  numbersIn,
  rowsShown,
  sheetFound,
  unitSignOf,
} from './found.ts';
import type { TrialSet } from './report-settings.ts';

/** One measure's reliability, written as it is printed. */
export interface Reliability {
  readonly title: string;
  /** Sign of the unit that trials and errors are in; blank where the columns have none. */
  readonly unit: string;
  readonly sheet: string;
  readonly trials: readonly { readonly label: string; readonly mean: string; readonly sd: string }[];
  /** Rows with every trial, and rows left out because one is missing. */
  readonly n: number;
  readonly left: number;
  readonly icc: string;
  readonly interval: string;
  /** Of consistency, of one trial: the root of the residual mean square; a shift common to all is not in it. */
  readonly consistency: MeasuringError;
  /** SD · √(1 − ICC), of what the form is of: one trial, or the mean of the trials. */
  readonly byIcc: MeasuringError;
  /** Of two trials only: mean difference, first minus second, with its limits, and the coefficient of variation. */
  readonly bias: string;
  readonly limits: string;
  readonly cv: string;
}

/** A standard error of measurement and the minimal detectable change from it. */
interface MeasuringError {
  readonly sem: string;
  readonly mdc: string;
}

/**
 * ICC with interval (Shrout & Fleiss 1979; McGraw & Wong 1996), the two standard errors of measurement (Weir 2005) with
 * the MDC of each, and bias with limits of two trials (Bland & Altman 1986). All of the same rows: those with every trial.
 */
export function reliabilityOf(
  context: ReadContext,
  set: TrialSet,
  { form, confidence }: Chosen,
): Reliability {
  const sheet = sheetFound(context.book, set.sheet);
  const columns = set.columns.map((name) => columnFound(sheet, name));
  const rows = rowsShown(context, sheet);
  const values = columns.map((column) => numbersIn(context, sheet, column, rows));
  const complete = [...rows.keys()].filter((i) => values.every((of) => !Number.isNaN(of[i]!)));
  const trials = values.map((of) => Float64Array.from(complete, (i) => of[i]!));
  const range = sideBySide(trials);
  const icc = ask('TEST.ICC', range, form);
  const [low, high] = [
    ask('TEST.ICC.LOW', range, form, confidence),
    ask('TEST.ICC.HIGH', range, form, confidence),
  ];
  const enough = complete.length > 1;
  const sem = ask('TEST.SEM.TABLE', range, 'sem');
  // The SD of what the form is of: every single value, or each row's mean.
  const spreadOf = form.endsWith('k')
    ? Float64Array.from(complete, (_, i) => mean(Float64Array.from(trials, (of) => of[i]!)))
    : Float64Array.from(range.numbers);
  const byIcc = enough && icc !== null ? ask('TEST.SEM', standardDeviation(spreadOf), icc) : null;
  const [a, b] = trials.length === 2 ? trials.map((of) => rangeFrom(of)) : [];
  const two = (name: string, ...more: readonly number[]): number | null =>
    a && b ? ask(name, a, b, ...more) : null;
  const digits = digitsFor(columns[0]!, trials[0]?.[0] ?? 1);
  // Errors and what hangs on them: three significant digits of the standard error.
  const fine = sem === null || sem === 0 ? digits : Math.max(0, Math.min(6, 2 - Math.floor(log10(sem))));
  const write = (value: number | null): string => fixed(value, fine, context);
  const whole = (value: number | null): string => fixed(value, digits, context);
  const between = (from: number | null, to: number | null, text: (value: number | null) => string): string =>
    from === null || to === null ? '–' : `${text(from)} to ${text(to)}`;
  const units = new Set(columns.map(unitSignOf));
  const error = (of: number | null): MeasuringError => ({
    sem: write(of),
    mdc: write(of === null ? null : ask('TEST.MDC', of, confidence)),
  });
  return {
    title: set.title || columns.map(({ label }) => label).join(', '),
    unit: units.size === 1 ? [...units][0]! : '',
    sheet: sheet.label,
    trials: columns.map((column, index) => ({
      label: labelled(column),
      mean: whole(enough ? mean(trials[index]!) : null),
      sd: whole(enough ? standardDeviation(trials[index]!) : null),
    })),
    n: complete.length,
    left: rows.length - complete.length,
    icc: fixed(icc, 2, context),
    interval: between(low, high, (value) => fixed(value, 2, context)),
    consistency: error(sem),
    byIcc: error(byIcc),
    bias: write(two('TEST.BIAS')),
    limits: between(two('TEST.LIMIT.LOW', confidence), two('TEST.LIMIT.HIGH', confidence), write),
    cv: fixed(two('TEST.CV'), 1, context),
  };
}

/** Trials as a range: a row for each athlete, a column for each trial. */
function sideBySide(trials: readonly Float64Array[]): Range {
  const rows = trials[0]?.length ?? 0;
  const numbers = Array.from({ length: rows * trials.length }, (_, i) => {
    const trial = trials[i % trials.length]!;
    return trial[Math.floor(i / trials.length)]!;
  });
  return { ...rangeFrom(numbers), rows, columns: trials.length };
}

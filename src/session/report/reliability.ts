import type { Range } from '../../../functions/core/value.ts';
import { mean, standardDeviation } from '../../../functions/statistics/describe.ts';
import { meanSquares } from '../../../functions/statistics/icc.ts';
import { ask } from '../charts/numbers.ts';
import { rangeFrom } from '../charts/read.ts';
import type { Viewed } from '../views.ts';
import { columnFound, digitsFor, fixed, labelled, numbersIn, rowsShown, sheetFound } from './found.ts';
import type { TrialSet } from './settings.ts';

/** One measure's reliability, written as it is printed. */
export interface Reliability {
  readonly title: string;
  readonly sheet: string;
  readonly trials: readonly { readonly label: string; readonly mean: string; readonly sd: string }[];
  /** Rows with every trial, and rows left out because one is missing. */
  readonly n: number;
  readonly left: number;
  readonly form: string;
  readonly icc: string;
  readonly interval: string;
  readonly sem: string;
  readonly mdc: string;
  /** Of two trials only: mean difference, first minus second, with its limits, and the coefficient of variation. */
  readonly bias: string;
  readonly limits: string;
  readonly cv: string;
}

/**
 * ICC with interval (Shrout & Fleiss 1979; McGraw & Wong 1996), SEM as the root of the residual mean square (Weir 2005),
 * which for two trials is the SD of the differences / √2, MDC from it, and bias with limits of two trials (Bland & Altman 1986).
 */
export function reliabilityOf(viewed: Viewed, set: TrialSet, confidence: number): Reliability {
  const sheet = sheetFound(viewed.book, set.sheet);
  const columns = set.columns.map((name) => columnFound(sheet, name));
  const rows = rowsShown(viewed, sheet);
  const values = columns.map((column) => numbersIn(viewed, sheet, column, rows));
  const complete = [...rows.keys()].filter((i) => values.every((of) => !Number.isNaN(of[i]!)));
  const trials = values.map((of) => Float64Array.from(complete, (i) => of[i]!));
  const form = set.form ?? '2,1';
  const range = sideBySide(trials);
  const icc = ask('TEST.ICC', range, form);
  const [low, high] = [
    ask('TEST.ICC.LOW', range, form, confidence),
    ask('TEST.ICC.HIGH', range, form, confidence),
  ];
  const enough = complete.length > 1;
  const sem = enough
    ? Math.sqrt(meanSquares(complete.map((_, i) => Float64Array.from(trials, (of) => of[i]!))).ems)
    : null;
  const mdc = sem === null ? null : ask('TEST.MDC', sem, confidence);
  const [a, b] = trials.length === 2 ? trials.map((of) => rangeFrom(of)) : [];
  const two = (name: string, ...more: readonly number[]): number | null =>
    a && b ? ask(name, a, b, ...more) : null;
  const digits = digitsFor(columns[0]!, trials[0]?.[0] ?? 1);
  // Errors and what hangs on them: three significant digits of the standard error.
  const fine = sem === null || sem === 0 ? digits : Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(sem))));
  const write = (value: number | null): string => fixed(value, fine, viewed);
  const whole = (value: number | null): string => fixed(value, digits, viewed);
  const between = (from: number | null, to: number | null, text: (value: number | null) => string): string =>
    from === null || to === null ? '–' : `${text(from)} to ${text(to)}`;
  const unit = /\(([^()]*)\)$/.exec(labelled(columns[0]!))?.[0] ?? '';
  return {
    title: set.title || `${columns.map(({ label }) => label).join(', ')} ${unit}`.trim(),
    sheet: sheet.label,
    trials: columns.map((column, index) => ({
      label: column.label,
      mean: whole(enough ? mean(trials[index]!) : null),
      sd: whole(enough ? standardDeviation(trials[index]!) : null),
    })),
    n: complete.length,
    left: rows.length - complete.length,
    form,
    icc: fixed(icc, 2, viewed),
    interval: between(low, high, (value) => fixed(value, 2, viewed)),
    sem: write(sem),
    mdc: write(mdc),
    bias: write(two('TEST.BIAS')),
    limits: between(two('TEST.LIMIT.LOW', confidence), two('TEST.LIMIT.HIGH', confidence), write),
    cv: fixed(two('TEST.CV'), 1, viewed),
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

import { square } from '../core/elementary/pow.ts';
import { mean } from './describe.ts';
import { fQuantile } from './distributions.ts';

export type IccForm = '1,1' | '2,1' | '3,1' | '1,k' | '2,k' | '3,k';
export const iccForms = ['1,1', '2,1', '3,1', '1,k', '2,k', '3,k'] as const;

/** Mean squares of n subjects by k trials, in the notation of Shrout & Fleiss 1979. */
export interface MeanSquares {
  readonly n: number;
  readonly k: number;
  /** Between subjects. */
  readonly bms: number;
  /** Between trials. */
  readonly jms: number;
  /** Residual (subjects × trials). */
  readonly ems: number;
  /** Within subjects: trials and residual together. */
  readonly wms: number;
}

/**
 * Two-way analysis of variance without repeats. Each sum of squares comes from its own effects, none as a difference.
 * All is taken as differences from the first value, so that a large offset costs no digits. Effects that are nothing but
 * rounding are 0: 1e-12 of the largest difference, or four last places of the largest value.
 */
export function meanSquares(given: readonly Float64Array[]): MeanSquares {
  const n = given.length;
  const k = given[0]?.length ?? 0;
  const first = given[0]?.[0] ?? 0;
  const rows = given.map((row) => row.map((value) => value - first));
  const subject = rows.map(mean);
  const trial = Array.from({ length: k }, (_, j) => mean(rows.map((row) => row[j]!)));
  const grand = mean(subject);
  const rounding = Math.max(1e-12 * largestOf(rows), 4 * Number.EPSILON * largestOf(given));
  const real = (effect: number) => (Math.abs(effect) <= rounding ? 0 : effect);
  let between = 0;
  let trials = 0;
  let residual = 0;
  let within = 0;
  for (const m of subject) between += square(real(m - grand));
  for (const m of trial) trials += square(real(m - grand));
  rows.forEach((row, i) => {
    row.forEach((value, j) => {
      residual += square(real(value - subject[i]! - (trial[j]! - grand)));
      within += square(real(value - subject[i]!));
    });
  });
  return {
    n,
    k,
    bms: (k * between) / (n - 1),
    jms: (n * trials) / (k - 1),
    ems: residual / ((n - 1) * (k - 1)),
    wms: within / (n * (k - 1)),
  };
}

function largestOf(rows: readonly Float64Array[]): number {
  let largest = 0;
  for (const row of rows) for (const value of row) largest = Math.max(largest, Math.abs(value));
  return largest;
}

/** What is left over in the model of a form: 0 means that its trials agree perfectly. */
export function leftOver(form: IccForm, m: MeanSquares): number {
  if (form[0] === '3') return m.ems;
  return form[0] === '1' ? m.wms : m.ems + m.jms;
}

/** Reliability of a single trial in the model of a form. */
function single(form: IccForm, { n, k, bms, jms, ems, wms }: MeanSquares): number {
  if (form[0] === '1') return (bms - wms) / (bms + (k - 1) * wms);
  if (form[0] === '3') return (bms - ems) / (bms + (k - 1) * ems);
  return (bms - ems) / (bms + (k - 1) * ems + (k * (jms - ems)) / n);
}

/**
 * Reliability of the mean of k trials from that of one (Spearman–Brown, identical to the printed forms). A limit of form 2
 * can fall below −1/(k − 1) with very few subjects; there the mean has none.
 */
function ofMean(r: number, k: number): number {
  const divisor = 1 + (k - 1) * r;
  return divisor > 0 ? (k * r) / divisor : Number.NEGATIVE_INFINITY;
}

/** Intraclass correlation of a form (Shrout & Fleiss 1979, Psychol Bull 86:420–428). */
export function icc(form: IccForm, m: MeanSquares): number {
  if (leftOver(form, m) === 0) return 1;
  if (form === '1,k') return (m.bms - m.wms) / m.bms;
  if (form === '3,k') return (m.bms - m.ems) / m.bms;
  if (form === '2,k') return (m.bms - m.ems) / (m.bms + (m.jms - m.ems) / m.n);
  return single(form, m);
}

/** Confidence limits of a form (McGraw & Wong 1996, Psychol Methods 1:30–46). */
export function iccLimits(form: IccForm, m: MeanSquares, confidence: number): readonly [number, number] {
  if (leftOver(form, m) === 0) return [1, 1];
  const p = (1 + confidence) / 2;
  const limits = form[0] === '2' ? agreementLimits(m, p) : ratioLimits(form, m, p);
  return form.endsWith('k') ? [ofMean(limits[0], m.k), ofMean(limits[1], m.k)] : limits;
}

/** Forms 1 and 3: limits of the ratio of two mean squares. */
function ratioLimits(form: IccForm, { n, k, bms, ems, wms }: MeanSquares, p: number): [number, number] {
  const error = form[0] === '1' ? wms : ems;
  const df = form[0] === '1' ? n * (k - 1) : (n - 1) * (k - 1);
  const ratio = bms / error;
  const low = ratio / fQuantile(p, n - 1, df);
  const high = ratio * fQuantile(p, df, n - 1);
  return [(low - 1) / (low + k - 1), (high - 1) / (high + k - 1)];
}

/** Form 2: Satterthwaite's degrees of freedom, a fraction, of a·JMS + b·EMS. */
function agreementLimits(m: MeanSquares, p: number): [number, number] {
  const { n, k, bms, jms, ems } = m;
  const r = single('2,1', m);
  const a = (k * r) / (n * (1 - r));
  const b = 1 + (k * r * (n - 1)) / (n * (1 - r));
  const v = square(a * jms + b * ems) / (square(a * jms) / (k - 1) + square(b * ems) / ((n - 1) * (k - 1)));
  const noise = k * jms + (k * n - k - n) * ems;
  const low = fQuantile(p, n - 1, v);
  const high = fQuantile(p, v, n - 1);
  return [
    (n * (bms - low * ems)) / (low * noise + n * bms),
    (n * (high * bms - ems)) / (noise + n * high * bms),
  ];
}

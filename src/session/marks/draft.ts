import type { Column, Sheet } from '../../book/model.ts';
import { z } from '../../book/zod.ts';
import type { Calculation } from '../../calc/api.ts';
import type { Locale } from '../../units/locale.ts';
import { bareFormula } from '../text/bare-formula.ts';
import { readTyped, typedText } from '../text/typed.ts';
import {
  type ColumnMarks,
  comparisons,
  type Operand,
  type Rule,
  type Scale,
  spans,
  states,
  tones,
  type When,
} from './mark-record.ts';

/*
 * Marks as they are typed: numbers and dates in the column's unit and the locale's writing, everything that is neither
 * as a formula. Read into a record here, and written back for the next change.
 */

const typed = z.string().max(8192);
const ruleDraft = z.strictObject({
  is: z.enum([...comparisons, ...spans, 'containing', ...states, 'true']),
  /** What it is compared with, or the formula. */
  to: typed.optional(),
  /** The lower end of "between" and "outside". */
  from: typed.optional(),
  tone: z.enum(tones),
  says: z.string().max(200).optional(),
});
export type RuleDraft = z.infer<typeof ruleDraft>;

const id = z.string().min(1).max(300);
export const marksDraft = z.strictObject({
  rules: z.array(ruleDraft).max(30),
  scale: z.strictObject({ from: typed.optional(), to: typed.optional() }).optional(),
  trend: z
    .union([
      z.strictObject({
        is: z.literal('columns'),
        columns: z.array(id).max(60),
        together: z.boolean().optional(),
      }),
      z.strictObject({
        is: z.literal('log'),
        sheet: id,
        dates: id,
        values: id,
        who: id,
        by: id,
        last: z.int().min(2).max(200),
        together: z.boolean().optional(),
      }),
    ])
    .optional(),
});
export type MarksDraft = z.infer<typeof marksDraft>;

export interface Reading {
  readonly calculation: Calculation;
  readonly locale: Locale;
  readonly sheet: Sheet;
  readonly column: Column;
}
type Failed = { readonly sentence: string };
export const failed = (value: object): value is Failed => 'sentence' in value;

export function readRule(draft: RuleDraft, about: Reading): Rule | Failed {
  const when = readWhen(draft, about);
  if (failed(when)) return when;
  const says = draft.says?.trim();
  return { when, tone: draft.tone, ...(says ? { says } : {}) };
}

function readWhen({ is, from = '', to = '' }: RuleDraft, about: Reading): When | Failed {
  switch (is) {
    case 'yes':
    case 'no':
    case 'blank':
    case 'filled':
      return { is };
    case 'containing':
      return to.trim() ? { is, text: to.trim() } : { sentence: 'Say which text it contains.' };
    case 'true': {
      const formula = readFormula(to, about);
      return typeof formula === 'string' ? { is, formula } : formula;
    }
    case 'between':
    case 'outside': {
      const low = readOperand(from, about);
      if (failed(low)) return low;
      const high = readOperand(to, about);
      if (failed(high)) return high;
      if ('number' in low && 'number' in high && low.number > high.number)
        return { sentence: `The lower end ${from.trim()} is above the upper end ${to.trim()}.` };
      return { is, from: low, to: high };
    }
    default: {
      const operand = readOperand(to, about);
      return failed(operand) ? operand : { is, to: operand };
    }
  }
}

export function readScale(draft: NonNullable<MarksDraft['scale']>, about: Reading): Scale | Failed {
  const ends = { from: draft.from?.trim(), to: draft.to?.trim() };
  const scale: { from?: Operand; to?: Operand } = {};
  for (const end of ['from', 'to'] as const) {
    if (!ends[end]) continue;
    const operand = readOperand(ends[end], about);
    if (failed(operand)) return operand;
    scale[end] = operand;
  }
  const { from, to } = scale;
  if (from && to && 'number' in from && 'number' in to && from.number >= to.number)
    return { sentence: `The lower end ${ends.from} of the scale must be below its upper end ${ends.to}.` };
  return scale;
}

/** A number or date of the column; a text where it holds texts; else a formula, such as the name of a cell. */
function readOperand(text: string, about: Reading): Operand | Failed {
  const { column, locale } = about;
  const bare = text.trim();
  if (bare === '') return { sentence: `Enter what ${column.label} is compared with.` };
  if (bare.startsWith('=')) {
    const formula = readFormula(bare, about);
    return typeof formula === 'string' ? { formula } : formula;
  }
  if (column.kind === 'text' || column.kind === 'choice') return { text: bare };
  const cell = readTyped(bare, column, locale, false);
  if (typeof cell === 'number') return { number: cell };
  if (cell !== null && typeof cell === 'object' && 'date' in cell) return { number: cell.date };
  const formula = readFormula(bare, about);
  if (typeof formula === 'string') return { formula };
  // What begins with a figure was meant for a number: the reason why it is none says more.
  const reason = cell !== null && typeof cell === 'object' && 'held' in cell ? cell.reason : undefined;
  return reason !== undefined && /^[\d+\-−.,]/.test(bare) ? { sentence: reason } : formula;
}

function readFormula(text: string, { calculation, sheet, column }: Reading): string | Failed {
  const formula = bareFormula(text);
  if (formula === '')
    return { sentence: `Write a formula that is true for the rows to mark, such as ${column.name} > 10.` };
  const { ok, problems } = calculation.check(formula, { sheet: sheet.id, column: column.id });
  return ok ? formula : { sentence: problems[0]?.sentence ?? 'The formula cannot be read.' };
}

/** A column's marks as an editor starts with them. */
export function draftOf({ rules, scale, trend }: ColumnMarks, column: Column, locale: Locale): MarksDraft {
  const written = (operand: Operand | undefined): string => {
    if (!operand) return '';
    if ('text' in operand) return operand.text;
    if ('number' in operand)
      return typedText(column.kind === 'date' ? { date: operand.number } : operand.number, column, locale);
    return column.kind === 'text' || column.kind === 'choice' ? `=${operand.formula}` : operand.formula;
  };
  return {
    rules: rules.map(({ when, tone, says }): RuleDraft => {
      const rest = { tone, ...(says === undefined ? {} : { says }) };
      if (when.is === 'true') return { is: when.is, to: when.formula, ...rest };
      if (when.is === 'containing') return { is: when.is, to: when.text, ...rest };
      if ('from' in when) return { is: when.is, from: written(when.from), to: written(when.to), ...rest };
      return 'to' in when ? { is: when.is, to: written(when.to), ...rest } : { is: when.is, ...rest };
    }),
    ...(scale ? { scale: { from: written(scale.from), to: written(scale.to) } } : {}),
    ...(trend ? { trend } : {}),
  };
}

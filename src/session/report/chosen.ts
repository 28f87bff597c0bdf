import { type IccForm, iccForms } from '../../../functions/statistics/icc.ts';
import { nameKey } from '../../book/names.ts';
import type { ReadContext } from '../open-book.ts';
import type { ReportSettings } from './report-settings.ts';

/** One form of the ICC and one confidence level for the whole report, with where each comes from. */
export interface Chosen {
  readonly form: IccForm;
  readonly confidence: number;
  /** Named cells of the book that decide; null where the report's own settings or the defaults do. */
  readonly formFrom: string | null;
  readonly confidenceFrom: string | null;
  /** What a named cell says that cannot be used, a sentence each. */
  readonly problems: readonly string[];
}

/** Names of the cells that decide, as the books' own formulas use them. */
const formName = 'icc_form';
const confidenceName = 'confidence_level';
const usual = { form: '2,1', confidence: 0.95 } as const;

/**
 * The book's named cells `icc_form` and `confidence_level` first, so that report and sheets agree; then the report's
 * settings; then 2,1 and 95 %.
 */
export function chosenIn(context: ReadContext, settings: ReportSettings): Chosen {
  const problems: string[] = [];
  const form = valueNamed(context, formName);
  const level = valueNamed(context, confidenceName);
  const formGiven = typeof form === 'string' ? form.replaceAll(/\s/g, '').toLowerCase() : '';
  const formRead = iccForms.find((one) => one === formGiven);
  const levelRead = typeof level === 'number' && level > 0 && level < 1 ? level : undefined;
  const ownForm = settings.form ?? settings.trials?.find((set) => set.form !== undefined)?.form ?? usual.form;
  const ownLevel = settings.confidence ?? usual.confidence;
  if (!isBlank(form) && formRead === undefined)
    problems.push(
      `${formName} is ${told(form)}, which is not a form of the ICC. Use one of ${iccForms.join(' ')}. The report uses ${ownForm}.`,
    );
  if (!isBlank(level) && levelRead === undefined)
    problems.push(
      `${confidenceName} is ${told(level)}, which is not between 0 and 1. For 95 % type 0.95. The report uses ${ownLevel}.`,
    );
  return {
    form: formRead ?? ownForm,
    formFrom: formRead === undefined ? null : formName,
    confidence: levelRead ?? ownLevel,
    confidenceFrom: levelRead === undefined ? null : confidenceName,
    problems,
  };
}

function valueNamed({ book, calculation }: ReadContext, wanted: string): unknown {
  const named = [...book.names.values()].find(({ name }) => nameKey(name) === nameKey(wanted));
  return named === undefined ? null : calculation.value(named.sheet, named.column, named.row);
}

const isBlank = (value: unknown): boolean =>
  value === null || value === undefined || (typeof value === 'string' && value.trim() === '');

const told = (value: unknown): string =>
  typeof value === 'string' ? `"${value}"` : typeof value === 'number' ? String(value) : 'an error';

/** "95 %". */
export const percentOf = ({ confidence }: Chosen): string => `${Math.round(confidence * 1000) / 10} %`;

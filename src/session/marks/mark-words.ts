import type { Column } from '../../book/model.ts';
import { writeDate } from '../../units/date.ts';
import type { Locale } from '../../units/locale.ts';
import { unitSign } from '../../units/sign.ts';
import { displayUnitOf } from '../../units/unit.ts';
import { typedText } from '../text/typed.ts';
import type { ColumnMarks, Operand, Tone, TrendSource, When } from './mark-record.ts';

/** The marks of a column as they are told: a word for each, and when it is shown. */
export interface MarksOutline {
  readonly rules: readonly { readonly tone: Tone; readonly says: string; readonly when: string }[];
  readonly scale?: true;
  readonly trend?: TrendSource['is'];
}

export function marksOutline(
  { rules, scale, trend }: ColumnMarks,
  column: Column,
  locale: Locale,
): MarksOutline {
  return {
    rules: rules.map(({ tone, says, when }) => ({
      tone,
      says: says === undefined ? tone : `${tone}: ${says}`,
      when: whenInWords(when, column, locale),
    })),
    ...(scale ? { scale: true } : {}),
    ...(trend ? { trend: trend.is } : {}),
  };
}

/** When a rule holds, with the column's label: "Lean at parallel is above 45°". */
function whenInWords(when: When, column: Column, locale: Locale): string {
  const operand = (one: Operand): string => operandInWords(one, column, locale);
  const { label } = column;
  switch (when.is) {
    case 'true':
      return when.formula;
    case 'between':
      return `${label} is between ${operand(when.from)} and ${operand(when.to)}`;
    case 'outside':
      return `${label} is outside ${operand(when.from)} to ${operand(when.to)}`;
    case 'containing':
      return `${label} contains “${when.text}”`;
    case 'yes':
    case 'no':
    case 'blank':
      return `${label} is ${when.is}`;
    case 'filled':
      return `${label} is not blank`;
    case 'equal':
      return `${label} is ${operand(when.to)}`;
    case 'unequal':
      return `${label} is not ${operand(when.to)}`;
    default:
      return `${label} is ${when.is} ${operand(when.to)}`;
  }
}

function operandInWords(operand: Operand, column: Column, locale: Locale): string {
  if ('formula' in operand) return operand.formula;
  return 'text' in operand ? `“${operand.text}”` : numberInWords(operand.number, column, locale);
}

/** A number of a column with all its digits and its unit: a bound that is rounded would be another bound. */
export function numberInWords(value: number, column: Column, locale: Locale): string {
  if (column.kind === 'date') return writeDate(value);
  const text = typedText(value, column, locale).replace('-', '−');
  const unit = column.kind === 'number' ? displayUnitOf(column)?.unit : undefined;
  if (unit === undefined) return text;
  return unit === 'deg' ? `${text}°` : `${text} ${unitSign(unit)}`;
}

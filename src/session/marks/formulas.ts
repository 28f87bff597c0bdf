import type { ColumnMarks, Operand, Rule, When } from './mark-record.ts';

/** A column's marks with each operand, and each formula that stands for itself, put through a change. */
function mapped(
  marks: ColumnMarks,
  operand: (one: Operand) => Operand,
  formula: (text: string) => string,
): ColumnMarks {
  const inWhen = (when: When): When => {
    switch (when.is) {
      case 'true':
        return { ...when, formula: formula(when.formula) };
      case 'between':
      case 'outside':
        return { ...when, from: operand(when.from), to: operand(when.to) };
      default:
        return 'to' in when ? { ...when, to: operand(when.to) } : when;
    }
  };
  const { rules, scale, ...rest } = marks;
  return {
    ...rest,
    rules: rules.map((rule): Rule => ({ ...rule, when: inWhen(rule.when) })),
    ...(scale
      ? {
          scale: {
            ...(scale.from ? { from: operand(scale.from) } : {}),
            ...(scale.to ? { to: operand(scale.to) } : {}),
          },
        }
      : {}),
  };
}

export const withFormulas = (marks: ColumnMarks, change: (formula: string) => string): ColumnMarks =>
  mapped(marks, (one) => ('formula' in one ? { formula: change(one.formula) } : one), change);

export const withNumbers = (marks: ColumnMarks, change: (number: number) => number): ColumnMarks =>
  mapped(
    marks,
    (one) => ('number' in one ? { number: change(one.number) } : one),
    (text) => text,
  );

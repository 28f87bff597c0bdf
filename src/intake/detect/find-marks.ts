import type { Choices, DateOrder, DecimalMark, Finding, ThousandsMark } from '../api.ts';
import type { MarkUse } from '../cells/index.ts';
import { note } from '../sentences/index.ts';
import type { ColumnLook } from './look.ts';

/** What the file as a whole tells about its columns. */
export interface FileHabits {
  readonly decimal: DecimalMark | null;
  readonly dateOrder: DateOrder | null;
}

/** Decimal mark and date order that columns prove, for those that cannot tell. */
export function habitsOf(looks: readonly ColumnLook[], choices: Choices, delimiter: string): FileHabits {
  let point = 0;
  let comma = 0;
  let dmy = 0;
  let mdy = 0;
  for (const look of looks) {
    const marks = decimalEvidence(look);
    if (marks.point > marks.comma) point++;
    if (marks.comma > marks.point) comma++;
    if (look.dates.of('dmy', 'dotted') > look.dates.of('mdy')) dmy++;
    else if (look.dates.of('mdy') > 0) mdy++;
  }
  const decimal =
    choices.decimal ?? (comma > point ? ',' : point > comma ? '.' : delimiter === ',' ? '.' : null);
  return { decimal, dateOrder: choices.dateOrder ?? (dmy > mdy ? 'dmy' : mdy > dmy ? 'mdy' : null) };
}

function decimalEvidence(look: ColumnLook): { point: number; comma: number } {
  const all = [look.numbers, look.numberInside];
  const sum = (...keys: Exclude<MarkUse, 'none'>[]): number => all.reduce((n, t) => n + t.of(...keys), 0);
  return {
    point: sum('point', 'comma-thousands'),
    comma: sum('comma', 'point-thousands', 'space-thousands-comma'),
  };
}

/** The decimal mark of a column: what its cells prove, else what the file's other columns do. */
export function findDecimal(look: ColumnLook, habits: FileHabits, choices: Choices): Finding<DecimalMark> {
  if (choices.decimal) return { value: choices.decimal, certainty: 'sure', because: note('chosen') };
  const { point, comma } = decimalEvidence(look);
  const other = (mark: DecimalMark): DecimalMark[] => [mark === '.' ? ',' : '.'];
  if (point !== comma) {
    const value = point > comma ? '.' : ',';
    const example =
      value === '.'
        ? (look.numbers.example('point', 'comma-thousands') ??
          look.numberInside.example('point', 'comma-thousands'))
        : (look.numbers.example('comma', 'point-thousands', 'space-thousands-comma') ??
          look.numberInside.example('comma', 'point-thousands'));
    return {
      value,
      certainty: point > 0 && comma > 0 ? 'likely' : 'sure',
      because: note('decimal-seen', { count: Math.max(point, comma), example: example ?? '' }),
      others: other(value),
    };
  }
  const open = look.numbers.of('point-or-thousands', 'comma-or-thousands');
  if (open > 0) {
    // One group of three after a mark: the habit of the file decides, else the mark is taken as decimal, and asked about.
    const points = look.numbers.of('point-or-thousands') >= look.numbers.of('comma-or-thousands');
    const value = habits.decimal ?? (points ? '.' : ',');
    return {
      value,
      certainty: habits.decimal ? 'likely' : 'doubtful',
      because: note('decimal-ambiguous', {
        example: look.numbers.example(points ? 'point-or-thousands' : 'comma-or-thousands')!,
        mark: value,
      }),
      others: other(value),
    };
  }
  const value = habits.decimal ?? '.';
  return {
    value,
    certainty: 'likely',
    because: habits.decimal ? note('decimal-elsewhere', { mark: value }) : note('decimal-none'),
    others: other(value),
  };
}

/** What stands between groups of three digits in a column. */
export function findThousands(look: ColumnLook, decimal: DecimalMark): ThousandsMark {
  const { numbers } = look;
  if (numbers.of('space-thousands', 'space-thousands-comma') > 0) return ' ';
  if (numbers.of('quote-thousands') > 0) return "'";
  if (decimal === '.' && numbers.of('comma-thousands', 'comma-or-thousands') > 0) return ',';
  if (decimal === ',' && numbers.of('point-thousands', 'point-or-thousands') > 0) return '.';
  return '';
}

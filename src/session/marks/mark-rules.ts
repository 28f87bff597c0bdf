import type { Issue } from '../../../functions/core/issue.ts';
import { Kind, type Range } from '../../../functions/core/value.ts';
import { sheetOf } from '../../book/book.ts';
import type { ReadContext } from '../open-book.ts';
import type { Operand, Rule, When } from './mark-record.ts';
import { remembered } from './remembered.ts';

/** How many rows a rule is about. */
export interface RuleCount {
  /** Rows in which it holds. */
  readonly holds: number;
  /** Rows that show it: in the others an earlier rule holds. */
  readonly shows: number;
  /** Rows in which it came to an error, or to neither yes nor no; and the first of the reasons. */
  readonly errors: number;
  readonly sentence?: string;
}

export interface Ruled {
  /** For each row the rule that it shows, from 1; 0 for none. */
  readonly shown: Uint8Array;
  readonly counts: readonly RuleCount[];
}

/** Which rule each row of a column shows; worked out for the whole column, and again only when a value has changed. */
export function ruledRows(
  context: ReadContext,
  sheet: string,
  column: string,
  rules: readonly Rule[],
): Ruled {
  const { calculation } = context;
  const range = calculation.column(sheet, column);
  const read = rules.map(({ when }) => formulasIn(when).map((formula) => calculation.rows(formula, sheet)));
  return remembered(calculation, `rules ${sheet}\u0000${column}`, [rules, range, ...read.flat()], () =>
    applied(context, sheet, range, rules),
  );
}

/** The same without being kept: for rules that are only tried. */
export function applied(context: ReadContext, sheetId: string, range: Range, rules: readonly Rule[]): Ruled {
  const { rows } = sheetOf(context.book, sheetId);
  const shown = new Uint8Array(rows);
  const counts = rules.map(({ when }, index): RuleCount => {
    const test = testFor(context, sheetId, range, when);
    let [holds, shows, errors] = [0, 0, 0];
    let sentence: string | undefined;
    for (let row = 0; row < rows; row++) {
      const answer = test(row);
      if (answer === true) {
        holds++;
        if (shown[row] !== 0) continue;
        shown[row] = index + 1;
        shows++;
      } else if (answer !== false) {
        errors++;
        sentence ??= answer === 'neither' ? NEITHER : context.calculation.sentence(answer);
      }
    }
    return { holds, shows, errors, ...(sentence === undefined ? {} : { sentence }) };
  });
  return { shown, counts };
}

const NEITHER =
  'The formula returns a text, which is neither true nor false. Compare it, as in limiter = "ankle".';

const formulasIn = (when: When): readonly string[] =>
  when.is === 'true'
    ? [when.formula]
    : [when, ...('from' in when ? [{ to: when.from }] : [])].flatMap((one) =>
        'to' in one && 'formula' in one.to ? [one.to.formula] : [],
      );

type Test = (row: number) => boolean | 'neither' | Issue;

function testFor(context: ReadContext, sheet: string, range: Range, when: When): Test {
  const { kinds, texts } = range;
  switch (when.is) {
    case 'blank':
      return (row) => kinds[row] === Kind.blank;
    case 'filled':
      return (row) => kinds[row] !== Kind.blank;
    case 'yes':
    case 'no': {
      const wanted = when.is === 'yes' ? 1 : 0;
      return (row) => kinds[row] === Kind.yesNo && range.numbers[row] === wanted;
    }
    case 'containing': {
      const wanted = when.text.toLowerCase();
      return (row) => kinds[row] === Kind.text && (texts?.[row] ?? '').toLowerCase().includes(wanted);
    }
    case 'true':
      return truth(context.calculation.rows(when.formula, sheet));
    case 'between':
    case 'outside': {
      const low = compared(range, sideOf(context, sheet, when.from));
      const high = compared(range, sideOf(context, sheet, when.to));
      const inside = when.is === 'between';
      return (row) => {
        const [a, b] = [low(row), high(row)];
        if (typeof a === 'object') return a;
        if (typeof b === 'object') return b;
        if (Number.isNaN(a) || Number.isNaN(b)) return false;
        return (a >= 0 && b <= 0) === inside;
      };
    }
    default:
      return comparing(when.is, range, sideOf(context, sheet, when.to));
  }
}

/** A formula's answers read as IF reads them. */
function truth({ kinds, numbers, errors }: Range): Test {
  return (row) => {
    switch (kinds[row]) {
      case Kind.yesNo:
      case Kind.number:
      case Kind.date:
        return numbers[row] !== 0;
      case Kind.text:
        return 'neither';
      case Kind.error:
        return errors?.[row] ?? { code: '#ERROR!', reason: 'unknown' };
      default:
        return false;
    }
  };
}

type Side = { readonly fixed: number | string } | { readonly range: Range };

function sideOf({ calculation }: ReadContext, sheet: string, operand: Operand): Side {
  if ('number' in operand) return { fixed: operand.number };
  if ('text' in operand) return { fixed: operand.text };
  return { range: calculation.rows(operand.formula, sheet) };
}

function comparing(
  is: 'above' | 'at least' | 'below' | 'at most' | 'equal' | 'unequal',
  range: Range,
  side: Side,
): Test {
  const compare = compared(range, side);
  const holds = {
    above: (c: number) => c > 0,
    'at least': (c: number) => c >= 0,
    below: (c: number) => c < 0,
    'at most': (c: number) => c <= 0,
    equal: (c: number) => c === 0,
    unequal: (c: number) => c !== 0,
  }[is];
  const onlyEqual = is === 'equal' || is === 'unequal';
  return (row) => {
    const c = compare(row);
    if (typeof c === 'object') return c;
    if (Number.isNaN(c)) return false;
    // A text is the same or another; which of two is above says nothing about a lifter.
    if (!onlyEqual && range.kinds[row] === Kind.text) return false;
    return holds(c);
  };
}

/** Below 0, 0 or above 0 where both sides are of a kind; NaN where they cannot be compared; an error of the other side. */
function compared(range: Range, side: Side): (row: number) => number | Issue {
  const { kinds, numbers, texts } = range;
  if ('fixed' in side) {
    const { fixed } = side;
    if (typeof fixed === 'string') {
      const wanted = worded(fixed);
      return (row) => (kinds[row] === Kind.text ? same(worded(texts?.[row] ?? ''), wanted) : Number.NaN);
    }
    return (row) => (isNumber(kinds[row]!) ? difference(numbers[row]!, fixed) : Number.NaN);
  }
  const other = side.range;
  return (row) => {
    const [own, its] = [kinds[row]!, other.kinds[row]!];
    if (its === Kind.error && own !== Kind.blank)
      return other.errors?.[row] ?? { code: '#ERROR!', reason: 'unknown' };
    if (isNumber(own) && isNumber(its)) return difference(numbers[row]!, other.numbers[row]!);
    if (own === Kind.text && its === Kind.text)
      return same(worded(texts?.[row] ?? ''), worded(other.texts?.[row] ?? ''));
    return own === Kind.yesNo && its === Kind.yesNo ? numbers[row]! - other.numbers[row]! : Number.NaN;
  };
}

const isNumber = (kind: number): boolean => kind === Kind.number || kind === Kind.date;
const worded = (text: string): string => text.trim().toLowerCase();
const same = (a: string, b: string): number => (a === b ? 0 : 1);

/** Numbers that differ only by the last bits of a computation are the same. */
const difference = (a: number, b: number): number =>
  Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b)) ? 0 : a - b;

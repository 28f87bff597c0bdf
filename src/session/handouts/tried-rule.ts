import { Kind } from '../../../functions/core/value.ts';
import { sheetOf } from '../../book/book.ts';
import type { ReadContext } from '../open-book.ts';
import { problemOf } from './handout.ts';
import type { HandoutRule } from './handout-settings.ts';

/** What a rule that is being written does in the rows there are. */
export interface TriedRule {
  readonly text: string;
  /** What is wrong with it. */
  readonly sentence?: string;
}

/** For how many rows a rule is true, or why it can be said of nobody. */
export function triedRule(context: ReadContext, sheetId: string, rule: HandoutRule): TriedRule {
  const sheet = sheetOf(context.book, sheetId);
  const problem = problemOf(context, rule, sheet);
  if (problem !== null) return { text: '', sentence: `${problem[0]!.toUpperCase()}${problem.slice(1)}` };
  const { kinds, numbers } = context.calculation.rows(rule.when, sheet.id);
  let said = 0;
  let decided = 0;
  let other = 0;
  for (let row = 0; row < sheet.rows; row++) {
    if (kinds[row] === Kind.yesNo) {
      decided++;
      if (numbers[row] !== 0) said++;
    } else if (kinds[row] === Kind.number || kinds[row] === Kind.text || kinds[row] === Kind.date) other++;
  }
  if (decided === 0 && other > 0)
    return {
      text: '',
      sentence: `The formula returns ${kinds.includes(Kind.text) ? 'texts' : 'numbers'}, not true or false. Compare them with a value, as in lean > target_lean.`,
    };
  return { text: `True in ${said} of ${sheet.rows} ${sheet.rows === 1 ? 'row' : 'rows'}.` };
}

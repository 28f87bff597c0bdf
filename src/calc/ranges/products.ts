/** The sum of products of ranges. */
import { CellError, ErrorType } from 'hyperformula';
import { type Issue, isIssue } from '../../../functions/core/issue.ts';
import { Kind, type Range, valueAt } from '../../../functions/core/value.ts';
import { numberInText } from './criteria.ts';

const unequal = new CellError(ErrorType.VALUE, 'Ranges need to be of equal length.');

/** The number that a cell counts as in a product; undefined when it is none. */
function factor(range: Range, i: number): number | Issue | undefined {
  switch (range.kinds[i]) {
    case Kind.number:
    case Kind.date:
    case Kind.yesNo:
      return range.numbers[i]!;
    case Kind.blank:
      return 0;
    case Kind.text:
      return range.texts![i] === '' ? 0 : numberInText(range.texts![i]!);
    default: {
      const value = valueAt(range, i);
      return isIssue(value) ? value : undefined;
    }
  }
}

/** Sum of the products of cells that stand at the same place; a text that is no number makes its product 0. */
export function sumOfProducts(...ranges: readonly Range[]): number | CellError | Issue {
  const first = ranges[0]!;
  for (const range of ranges)
    if (range.rows !== first.rows || range.columns !== first.columns) return unequal;
  const size = first.rows * first.columns;
  let sum = 0;
  for (let i = 0; i < size; i++) {
    let product = 1;
    for (const range of ranges) {
      const x = range.kinds[i] === Kind.number ? range.numbers[i]! : factor(range, i);
      if (typeof x === 'number') product *= x;
      else if (x === undefined) product = 0;
      else return x;
    }
    sum += product;
  }
  return sum;
}

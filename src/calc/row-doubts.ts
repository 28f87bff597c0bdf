/** A bare column name where many values are meant: in a row it is this row's value, and SUM of one value is that value. */
import type { AnyDefinition } from '../../functions/core/define.ts';
import { parametersFor } from '../../functions/core/invoke.ts';
import { isIssue } from '../../functions/core/issue.ts';
import { registry } from '../../functions/registry.ts';
import type { Span } from './api.ts';
import type { Bound } from './ast.ts';
import type { BookIndex } from './language/book-index.ts';
import { walk } from './language/walk.ts';

/** Something that may not be meant, with what to write instead. */
export interface RowDoubt extends Span {
  readonly sentence: string;
  readonly instead: string;
}

/**
 * Functions that come to one figure of many values: of a single value they only give it back, or fail. COUNT and its kin are
 * not among them: of one cell they ask whether it is filled in.
 */
const OF_MANY = new Set(
  `SUM AVERAGE AVERAGEA MEDIAN MODE MIN MAX PRODUCT SUMSQ STDEV STDEV.S STDEV.P STDEVA STDEVP STDEVPA VAR VAR.S VAR.P VARA VARP
  VARPA AVEDEV DEVSQ GEOMEAN HARMEAN SKEW KURT LARGE SMALL PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC
  QUARTILE.EXC CORREL PEARSON RSQ SLOPE INTERCEPT STEYX COVAR SUMIF COUNTIF AVERAGEIF MATCH TRIMMEAN`.split(
    /\s+/,
  ),
);

/** Every such name in a formula. */
export function rowDoubts(bound: Bound, index: BookIndex): readonly RowDoubt[] {
  const found: RowDoubt[] = [];
  walk<Bound>(bound, (node) => {
    if (node.type !== 'call') return undefined;
    node.args.forEach((argument, at) => {
      if (argument.type !== 'row-of' || !wantsMany(node.name, node.args.length, at)) return;
      const of = index.sheetsById.get(argument.sheet)?.sheet;
      const column = of?.columns.find(({ id }) => id === argument.column);
      if (!of || !column) return;
      const instead = `${of.name}.${column.name}`;
      const sentence = `${column.name} is this row only; ${instead} is the whole column.`;
      found.push({ from: argument.span.from, to: argument.span.to, sentence, instead });
    });
    return undefined;
  });
  return found;
}

function wantsMany(name: string, count: number, at: number): boolean {
  if (registry.has(name)) {
    const parameters = parametersFor(registry.get(name) as AnyDefinition, count);
    return !isIssue(parameters) && parameters[at]?.kind === 'range';
  }
  if (!OF_MANY.has(name)) return false;
  // Several values side by side are many: MIN(left, right).
  if (count === 1) return at === 0;
  if (name === 'MATCH') return at === 1;
  if (/^(CORREL|PEARSON|RSQ|SLOPE|INTERCEPT|STEYX|COVAR)$/.test(name)) return true;
  return /^(LARGE|SMALL|PERCENTILE|QUARTILE|SUMIF|COUNTIF|AVERAGEIF|TRIMMEAN)/.test(name) && at === 0;
}

import type { AnyDefinition, Step } from '../../../functions/core/define.ts';
import { invoke } from '../../../functions/core/invoke.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import { type Argument, isMatrix, type Matrix, rangeOf, type Value } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import { columnNamed, sheetOf } from '../../book/book.ts';
import type { Place } from '../../calc/api.ts';
import type { Node } from '../../calc/ast.ts';
import { childrenOf, parse } from '../../calc/language/index.ts';
import type { ReadContext } from '../open-book.ts';

/** One call of a function of the domain, with what it was handed and how it came to its result. */
export interface Call {
  readonly definition: AnyDefinition;
  readonly node: Node;
  /** The call as it is written. */
  readonly text: string;
  readonly result: Value | Matrix;
  readonly steps: readonly Step[];
}

type CallNode = Extract<Node, { type: 'call' }>;

/**
 * The calls of domain functions in a cell's formula, innermost first, as they would be computed there. Branches that an
 * IF does not take are left out. The formula must be one of that cell (relative addresses moved to its row).
 */
export function callsIn(context: ReadContext, formula: string, place: Required<Place>): readonly Call[] {
  const parsed = parse(formula);
  if (!parsed.ok) return [];
  const found: Call[] = [];
  const textOf = ({ span }: Node): string => formula.slice(span.from, span.to);
  /** `given` are the names and values that LET has set so far. */
  const outcomeOf = (node: Node, given: readonly string[]): Value | Matrix =>
    context.calculation.evaluate(
      given.length ? `LET(${given.join(', ')}, ${textOf(node)})` : textOf(node),
      place,
    );
  const visit = (node: Node, given: readonly string[]): void => {
    if (node.type === 'call' && node.name === 'LET') visitLet(node, given);
    else if (node.type === 'call' && node.name === 'IF') visitIf(node, given);
    else for (const child of childrenOf(node)) visit(child, given);
    const definition = node.type === 'call' ? registry.get(node.name) : undefined;
    if (!definition || node.type !== 'call') return;
    const args = node.args.map((arg) => argumentOf(context, arg, () => outcomeOf(arg, given)));
    found.push({
      definition,
      node,
      text: textOf(node),
      result: outcomeOf(node, given),
      steps: stepsOf(definition, args),
    });
  };
  const visitLet = (node: CallNode, given: readonly string[]): void => {
    const known = [...given];
    node.args.forEach((arg, i) => {
      const names = i % 2 === 0 && i + 1 < node.args.length;
      if (!names) visit(arg, known);
      if (i % 2 === 1) known.push(textOf(node.args[i - 1]!), textOf(arg));
    });
  };
  const visitIf = (node: CallNode, given: readonly string[]): void => {
    const [condition, yes, no] = node.args;
    if (condition) visit(condition, given);
    const met = condition ? outcomeOf(condition, given) : null;
    if (isIssue(met)) return;
    const taken = met === true || (typeof met === 'number' && met !== 0) ? yes : no;
    if (taken) visit(taken, given);
  };
  visit(parsed.node, []);
  return found;
}

/** An argument as its function is handed it. A whole column goes in as it is, dates and blanks kept. */
function argumentOf({ book, calculation }: ReadContext, node: Node, value: () => Value | Matrix): Argument {
  if (node.type === 'empty') return undefined;
  if (node.type === 'qualified') {
    const sheet = book.sheets.find(({ name }) => name.toLowerCase() === node.sheet.toLowerCase());
    const column = sheet && columnNamed(sheetOf(book, sheet.id), node.name);
    if (sheet && column) return calculation.column(sheet.id, column.id);
  }
  const outcome = value();
  return isMatrix(outcome) ? rangeOf(outcome.rows, outcome.columns, outcome.values) : outcome;
}

/** The steps that a function declares, for arguments that pass its checks; none where it has none or they do not. */
function stepsOf(definition: AnyDefinition, args: readonly Argument[]): readonly Step[] {
  const { steps } = definition;
  if (!steps) return [];
  let handed: readonly never[] | undefined;
  const compute = (...given: never[]): number => {
    handed = given;
    return 0;
  };
  const outcome = invoke({ ...definition, compute }, args);
  return handed && !isIssue(outcome) ? steps(...handed) : [];
}

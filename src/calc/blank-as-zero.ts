/**
 * Finds where arithmetic takes a blank for 0: from a formula it makes another one that says, row by row, which of the
 * operands are blank there. That is a formula like any other, so branches not taken and LET are followed as they are.
 */
import { registry } from '../../functions/registry.ts';
import type { Bound, CallNode } from './ast.ts';
import type { Hands } from './builtins/builtin.ts';
import { builtIns } from './builtins/index.ts';
import { cellEngine } from './cell-engine/engine.ts';
import { mayGiveArray } from './cells/may-give-array.ts';
import { parametersOf } from './plan/arguments.ts';

/** A formula that answers the sum of 2^k over the operands k that are blank where arithmetic wants a number. */
export interface BlankFinder {
  readonly formula: Bound;
  readonly operands: readonly Bound[];
}

/** More operands are not told apart: the sum of their powers has to stay exact. */
const MOST = 50;

const isSingle = (node: Bound | undefined): boolean =>
  node === undefined || node.type === 'local' || !mayGiveArray(node);

const isOneColumn = (node: Bound | undefined): boolean =>
  node?.type === 'column-of' || (node?.type === 'cells-of' && node.columns.length === 1);

/** A call that answers a single cell, which may be blank. */
function answersACell({ name, args }: CallNode<Bound>): boolean {
  const hands = builtIns.get(name)?.hands;
  if (!hands) return false;
  if (!('cellFor' in hands)) return args.every(isSingle);
  const { single, column = [] } = hands.cellFor;
  if (single === 'all but the first') return args.length > 1 && args.slice(1).every(isSingle);
  return single.every((i) => isSingle(args[i])) && column.every((i) => isOneColumn(args[i]));
}

/** What looks for blanks in a formula; undefined when it has no arithmetic that could meet one. */
export function blankFinder(formula: Bound): BlankFinder | undefined {
  const finding = new Finding();
  const found = finding.in(formula);
  return found ? { formula: found, operands: finding.operands } : undefined;
}

class Finding {
  readonly operands: Bound[] = [];
  /** Names of LET that may be a blank. */
  private readonly locals = new Set<string>();

  /** The formula that finds blanks in a piece of a formula; undefined when there is nothing to find. */
  in(node: Bound): Bound | undefined {
    switch (node.type) {
      case 'unary':
        return this.operand(node.operator === '-' ? node.operand : undefined, node.operand);
      case 'percent':
        return this.operand(node.operand, node.operand);
      case 'binary': {
        const { operator, left, right } = node;
        if (!'+-*/^'.includes(operator)) return sum([this.in(left), this.in(right)]);
        // a blank divisor is an error, which is told as one
        return sum([this.operand(left, left), this.operand(operator === '/' ? undefined : right, right)]);
      }
      case 'call':
        return this.call(node);
      default:
        return undefined;
    }
  }

  /** An operand of arithmetic: itself, and what stands inside it. */
  private operand(asked: Bound | undefined, inside: Bound): Bound | undefined {
    return sum([asked && this.test(asked), this.in(inside)]);
  }

  private test(operand: Bound): Bound | undefined {
    if (!this.mayBeBlank(operand) || this.operands.length >= MOST) return undefined;
    this.operands.push(operand);
    return call('IF', [call('ISBLANK', [operand]), number(2 ** (this.operands.length - 1)), number(0)]);
  }

  private mayBeBlank(node: Bound): boolean {
    switch (node.type) {
      case 'row-of':
      case 'named':
      case 'cell-of':
        return true;
      case 'local':
        return this.locals.has(node.name);
      case 'call':
        return answersACell(node);
      default:
        return false;
    }
  }

  private call(node: CallNode<Bound> & { readonly type: 'call' }): Bound | undefined {
    const { name, args } = node;
    if (name === 'LET') return this.let(node);
    const hands: Hands | undefined = builtIns.get(name)?.hands;
    if (hands && 'decidedBy' in hands) return this.choice(node, hands.decidedBy(args.length));
    if (hands && 'unless' in hands) return this.instead(hands.unless, args);
    return sum([...this.numbersOf(node), ...args.map((arg) => this.in(arg))]);
  }

  /** Arguments of a function that takes them as single numbers, where a blank counts as 0 too. */
  private numbersOf({ name, args }: CallNode<Bound>): (Bound | undefined)[] {
    if (registry.has(name)) return [];
    const body = cellEngine().body(name);
    const parameters = body && parametersOf(body, args.length);
    return args.map((arg, k) => {
      const wanted = parameters?.[k]?.argumentType;
      return wanted === 'NUMBER' || wanted === 'INTEGER' ? this.test(arg) : undefined;
    });
  }

  /** IF and its kin: what decides is always computed, of the rest only what is taken. */
  private choice(
    node: CallNode<Bound> & { readonly type: 'call' },
    deciding: readonly number[],
  ): Bound | undefined {
    const decides = new Set(deciding);
    const found = node.args.map((arg) => this.in(arg));
    const first = sum(found.filter((_, i) => decides.has(i)));
    if (!node.args.every(isSingle)) return first;
    if (!found.some((of, i) => of && !decides.has(i))) return first;
    const args = node.args.map((arg, i) => (decides.has(i) ? arg : (found[i] ?? number(0))));
    if (node.name === 'IF' && args.length === 2) args.push(number(0));
    return sum([first, call('IFERROR', [{ ...node, args }, number(0)])]);
  }

  private instead(test: string, [value, other]: readonly Bound[]): Bound | undefined {
    if (!value || !other || !isSingle(value)) return undefined;
    const [found, otherwise] = [this.in(value), this.in(other)];
    if (!found && !otherwise) return undefined;
    return call('IF', [call(test, [value]), otherwise ?? number(0), found ?? number(0)]);
  }

  private let(node: CallNode<Bound> & { readonly type: 'call' }): Bound | undefined {
    const found: (Bound | undefined)[] = [];
    for (let i = 0; i + 1 < node.args.length; i += 2) {
      const [name, value] = [node.args[i]!, node.args[i + 1]!];
      found.push(this.in(value));
      if (name.type === 'local' && this.mayBeBlank(value)) this.locals.add(name.name);
    }
    const body = sum([...found, this.in(node.args.at(-1)!)]);
    return body && { ...node, args: [...node.args.slice(0, -1), body] };
  }
}

const nowhere = { from: 0, to: 0 };
const number = (value: number): Bound => ({ type: 'number', value, span: nowhere });
const call = (name: string, args: readonly Bound[]): Bound => ({
  type: 'call',
  name,
  nameSpan: nowhere,
  span: nowhere,
  args,
});

function sum(parts: readonly (Bound | undefined)[]): Bound | undefined {
  return parts.reduce<Bound | undefined>(
    (left, right) =>
      left && right ? { type: 'binary', operator: '+', left, right, span: nowhere } : (left ?? right),
    undefined,
  );
}

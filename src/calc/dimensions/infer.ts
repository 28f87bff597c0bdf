import type { AnyDefinition } from '../../../functions/core/define.ts';
import { parametersFor } from '../../../functions/core/invoke.ts';
import { type Issue, isIssue, issue } from '../../../functions/core/issue.ts';
import type { Unit } from '../../../functions/core/parameter.ts';
import { registry } from '../../../functions/registry.ts';
import { type Dimension, dimensions } from '../../units/dimension.ts';
import type { Span } from '../api.ts';
import type { Bound, CallNode } from '../ast.ts';
import { aDate, equal, inWords, isDate, isKnown, type Measure, perSpan, plain, times } from './measure.ts';
import { passDates, passing, rates } from './passing.ts';

/** Where a formula mixes what does not go together. */
export interface MixedUp {
  readonly span: Span;
  readonly issue: Issue;
}

export interface Inferred {
  readonly measure: Measure;
  readonly mixed: readonly MixedUp[];
}

/** Answers what the numbers of a column measure. */
export type ColumnMeasure = (sheet: string, column: string) => Measure;

/** Answers what a single cell measures where it says more than its column does. */
export type CellMeasure = (sheet: string, column: string, row: number) => Measure | undefined;

/** What the result of a formula measures, and where it adds, compares or hands over what differs. */
export function infer(
  bound: Bound,
  text: string,
  columnMeasure: ColumnMeasure,
  cellMeasure: CellMeasure = () => undefined,
): Inferred {
  const inference = new Inference(text, columnMeasure, cellMeasure);
  return { measure: inference.of(bound, new Map()), mixed: inference.mixed };
}

const byUnit = new Map<string, Dimension>(
  Object.entries(dimensions).map(([d, unit]) => [unit, d as Dimension]),
);

/** What a unit of the functions measures; unknown for those that any number may stand for. */
function measureOfUnit(unit: Unit): Measure {
  const dimension = byUnit.get(unit);
  if (dimension) return { [dimension]: 1 };
  return unit === '' || unit === '%' || unit === 'points' ? plain : 'unknown';
}

type Locals = ReadonlyMap<string, Measure>;

class Inference {
  readonly mixed: MixedUp[] = [];

  constructor(
    private readonly text: string,
    private readonly columnMeasure: ColumnMeasure,
    private readonly cellMeasure: CellMeasure,
  ) {}

  of(node: Bound, locals: Locals): Measure {
    switch (node.type) {
      case 'number':
      case 'text':
      case 'empty':
        return 'any';
      case 'named':
        return (
          this.cellMeasure(node.sheet, node.column, node.row) ?? this.columnMeasure(node.sheet, node.column)
        );
      case 'cell-of':
        return (
          (node.rowMoves ? undefined : this.cellMeasure(node.sheet, node.column, node.row)) ??
          this.columnMeasure(node.sheet, node.column)
        );
      case 'row-of':
      case 'column-of':
        return this.columnMeasure(node.sheet, node.column);
      case 'cells-of':
        return this.together(
          node.columns.map((column) => this.columnMeasure(node.sheet, column)),
          undefined,
        );
      case 'local':
        return locals.get(node.name) ?? 'unknown';
      case 'unary':
        return this.of(node.operand, locals);
      case 'percent':
        return this.of(node.operand, locals);
      case 'binary':
        return this.binary(node, locals);
      case 'call':
        return this.call(node, locals);
      default:
        return 'unknown';
    }
  }

  private words(node: Bound): string {
    const said = this.text.slice(node.span.from, node.span.to);
    return said.length > 40 ? `${said.slice(0, 39)}…` : said;
  }

  private binary(node: Extract<Bound, { type: 'binary' }>, locals: Locals): Measure {
    const left = this.of(node.left, locals);
    const right = this.of(node.right, locals);
    switch (node.operator) {
      case '*':
        return times(left, right);
      case '/':
        return times(left, right, -1);
      case '^':
        return node.right.type === 'number' ? times(plain, left, node.right.value) : 'unknown';
      case '&':
        return 'unknown';
      case '+':
      case '-':
        // A date and a number of days is a date; between two dates lie days.
        if (isDate(left) || isDate(right)) {
          if (isDate(left) && isDate(right)) return 'unknown';
          return isDate(right) && node.operator === '-' ? 'unknown' : aDate;
        }
        return this.together([left, right], node, [node.left, node.right]);
      default:
        this.together([left, right], node, [node.left, node.right]);
        return plain;
    }
  }

  /** The one measure that several values share; tells when they do not. */
  private together(
    measures: readonly Measure[],
    whole: (Bound & { readonly operator?: string; readonly name?: string }) | undefined,
    parts: readonly Bound[] = [],
  ): Measure {
    let common: Measure = 'any';
    let first = 0;
    for (const [i, measure] of measures.entries()) {
      if (measure === 'unknown') return 'unknown';
      if (measure === 'any') continue;
      if (!isKnown(common)) {
        common = measure;
        first = i;
      } else if (!equal(common, measure)) {
        if (whole && parts.length > i)
          this.mixed.push({
            span: whole.span,
            issue: issue('#VALUE!', 'mixed-dimensions', {
              received: this.words(parts[first]!),
              expected: this.words(parts[i]!),
              details: {
                first: inWords(common),
                second: inWords(measure),
                doing: whole.type === 'call' ? (whole.name ?? '') : (whole.operator ?? ''),
              },
            }),
          });
        return 'unknown';
      }
    }
    return common;
  }

  private call(node: CallNode<Bound> & { readonly type: 'call' }, locals: Locals): Measure {
    if (node.name === 'LET') return this.letCall(node, locals);
    const measures = node.args.map((arg) => this.of(arg, locals));
    if (node.name === 'TEST.REACHED') return this.reached(node, measures);
    const rate = rates.get(node.name);
    if (rate) return perSpan(measures[rate.of] ?? 'unknown', rate.per);
    const definition = registry.get(node.name);
    const pass = passing.get(node.name);
    if (definition && !pass) return this.domain(definition, node, measures);
    if (!pass || pass === 'unknown') return 'unknown';
    if (pass === 'plain') return plain;
    if (pass === 'date') return aDate;
    if (pass === 'root') return times(plain, measures[0] ?? 'unknown', 0.5);
    const chosen = measures.map((_, i) => i).filter((i) => pass(i, measures.length));
    const common = this.together(
      chosen.map((i) => measures[i]!),
      node,
      chosen.map((i) => node.args[i]!),
    );
    if (definition?.result.is === 'text' || (isDate(common) && !passDates.has(node.name))) return 'unknown';
    return common;
  }

  /** A day, or by what is asked for the change per week in what the values measure; the target measures the same. */
  private reached(node: CallNode<Bound>, measures: readonly Measure[]): Measure {
    const [, values = 'unknown', target = 'any'] = measures;
    const common = this.together([values, target], { ...node, type: 'call' }, node.args.slice(1, 3));
    const what = node.args[3];
    if (what === undefined || what.type === 'empty') return aDate;
    if (what.type !== 'text') return 'unknown';
    return what.value.trim().toLowerCase() === 'date' ? aDate : perSpan(common, 'week');
  }

  private letCall(node: CallNode<Bound>, locals: Locals): Measure {
    const known = new Map(locals);
    for (let i = 0; i + 1 < node.args.length; i += 2) {
      const name = node.args[i]!;
      if (name.type === 'local') known.set(name.name, this.of(node.args[i + 1]!, known));
    }
    return this.of(node.args.at(-1)!, known);
  }

  private domain(definition: AnyDefinition, node: CallNode<Bound>, measures: readonly Measure[]): Measure {
    const parameters = parametersFor(definition, measures.length);
    if (isIssue(parameters)) return 'unknown';
    measures.forEach((measure, i) => {
      const parameter = parameters[i]!;
      if (parameter.kind !== 'number' && parameter.kind !== 'range') return;
      const wanted = measureOfUnit(parameter.unit);
      if (!isKnown(wanted) || !isKnown(measure) || equal(wanted, measure)) return;
      if (equal(wanted, plain) && (parameter.kind === 'range' || parameter.anyUnit)) return;
      this.mixed.push({
        span: node.args[i]!.span,
        issue: issue('#VALUE!', 'wrong-dimension', {
          function: definition.name,
          parameter: parameter.name,
          received: this.words(node.args[i]!),
          details: { wanted: inWords(wanted), got: inWords(measure) },
        }),
      });
    });
    if (definition.result.is === 'text') return 'unknown';
    return definition.result.unit === 'date' ? aDate : measureOfUnit(definition.result.unit);
  }
}

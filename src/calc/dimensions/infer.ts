import type { AnyDefinition } from '../../../functions/core/define.ts';
import { parametersFor } from '../../../functions/core/invoke.ts';
import { type Issue, isIssue, issue } from '../../../functions/core/issue.ts';
import type { Measures, Places } from '../../../functions/core/measures.ts';
import type { Unit } from '../../../functions/core/parameter.ts';
import { registry } from '../../../functions/registry.ts';
import { type Dimension, dimensions } from '../../units/dimension.ts';
import type { Span } from '../api.ts';
import type { Bound, CallNode } from '../ast.ts';
import { builtIns } from '../builtins/index.ts';
import { aDate, equal, inWords, isDate, isKnown, type Measure, perSpan, plain, times } from './measure.ts';

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

function isMeant(places: Places, i: number): boolean {
  if (places === 'all') return true;
  if (places === 'all but the first') return i > 0;
  return places === 'every second' ? i % 2 === 1 : places.includes(i);
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
    const definition = registry.get(node.name);
    const told = definition ? definition.result.measures : builtIns.get(node.name)?.measures;
    if (told) return this.told(told, node, measures, definition?.result.is === 'text');
    return definition ? this.domain(definition, node, measures) : 'unknown';
  }

  /** What a result measures by what the function's record says of it. */
  private told(
    told: Measures,
    node: CallNode<Bound> & { readonly type: 'call' },
    measures: readonly Measure[],
    isText = false,
  ): Measure {
    if (told === 'plain') return plain;
    if (told === 'date') return aDate;
    if (typeof told === 'string') return 'unknown';
    if ('same' in told) {
      const common = this.same(told.same, node, measures);
      return isText || (isDate(common) && !told.dates) ? 'unknown' : common;
    }
    if ('per' in told) return perSpan(measures[told.of] ?? 'unknown', told.per);
    if ('power' in told) return times(plain, measures[told.of] ?? 'unknown', told.power);
    this.same(told.alike, node, measures);
    const word = node.args[told.word];
    if (word === undefined || word.type === 'empty') return this.told(told.usual, node, measures);
    if (word.type !== 'text') return 'unknown';
    return this.told(told.words[word.value.trim().toLowerCase()] ?? told.others, node, measures);
  }

  private same(
    places: Places,
    node: CallNode<Bound> & { readonly type: 'call' },
    measures: readonly Measure[],
  ): Measure {
    const chosen = measures.map((_, i) => i).filter((i) => isMeant(places, i));
    return this.together(
      chosen.map((i) => measures[i]!),
      node,
      chosen.map((i) => node.args[i]!),
    );
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

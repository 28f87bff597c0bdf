import {
  CellError,
  type EmptyValue,
  type FunctionArgument,
  type FunctionMetadata,
  FunctionPlugin,
  type FunctionPluginDefinition,
  HyperFormula,
  SimpleRangeValue,
} from 'hyperformula';
import { issue } from '../../../functions/core/issue.ts';
import { limits } from '../limits.ts';
import { type Pattern, patternOf } from '../wildcards.ts';
import { type Aggregation, addRangesApart } from './aggregation.ts';
import type { Reading } from './distinct.ts';
import { bodyFor, isOwn } from './own-bodies.ts';
import { withOwnMath } from './own-math.ts';
import { cellEngineSettings } from './settings.ts';
import { errorOf, type Inner, type RichNumber } from './values.ts';

/** What a function of the cell engine is made of: its parameters and its body, apart from cells and formulas. */
export interface FunctionBody {
  readonly name: string;
  readonly metadata: FunctionMetadata;
  readonly parameters: readonly FunctionArgument[];
  /** The body, on arguments that are coerced already. */
  run(...args: unknown[]): Inner | SimpleRangeValue;
  /** Coerces one argument as the engine does; undefined: the kind is wrong; a CellError: the error it gives. */
  coerce(value: Inner | SimpleRangeValue, parameter: FunctionArgument): unknown;
}

/** A criterion of COUNTIF and its kin, read. */
export interface Criterion {
  readonly operator: '>' | '>=' | '<' | '<=' | '=' | '<>';
  /** null asks for blanks (or for anything else). */
  readonly value: number | string | boolean | null;
  /** Present when the value is a text with wildcards; what it stands for where it only has escapes is in `value`. */
  readonly pattern?: Pattern | undefined;
}

export type NumberSort = 'date' | 'time' | 'date-time' | 'percent' | 'currency';

/** The parts of the cell engine that column plans use, so that both read, compare and compute alike. */
export interface CellEngine {
  /** The number a text stands for as an operand, undefined if none. Numbers, percentages, ISO dates, times. */
  numberOfText(text: string): number | RichNumber | undefined;
  /** The number a text stands for when two values are compared: dates and times only. */
  dateOfText(text: string): number | undefined;
  /** Order of two texts. */
  compareTexts(left: string, right: string): number;
  /** A number remembered as a date, … */
  rich(value: number, sort: NumberSort): RichNumber;
  sortOf(value: RichNumber): NumberSort;
  criterion(value: Inner): Criterion | undefined;
  /** Function by name or alias; undefined when its body cannot be taken out of the engine. */
  body(name: string): FunctionBody | undefined;
  has(name: string): boolean;
  /** Evaluates a syntax tree of the engine with values in place of references. */
  evaluate(tree: Tree): Inner | SimpleRangeValue;
}

/** A syntax tree of the cell engine: value nodes may hold anything the engine can. */
export type Tree =
  | { type: 'NUMBER'; value: Inner | SimpleRangeValue }
  | { type: 'EMPTY' }
  | ReferenceTree
  | { type: 'FUNCTION_CALL'; procedureName: string; args: Tree[] }
  | { type: 'ARRAY'; args: Tree[][] }
  | { type: BinaryTree; left: Tree; right: Tree }
  | { type: 'MINUS_UNARY_OP' | 'PLUS_UNARY_OP' | 'PERCENT_OP'; value: Tree };
/** A single cell. Some functions treat what a cell holds otherwise than what is written or computed in its place. */
export interface ReferenceTree {
  type: 'CELL_REFERENCE';
  reference: { sheet: undefined; toSimpleCellAddress(): Held };
}
/** The address that a reference stands for carries the cell's value: there is no grid behind it. */
export interface Held {
  readonly sheet: 0;
  readonly col: 0;
  readonly row: 0;
  readonly read: () => Inner;
}
interface Grid {
  readonly dependencyGraph: { getCellValue(address: Held): Inner };
  readonly functionRegistry: { readonly functions: ReadonlyMap<string, readonly [string, unknown]> };
}
interface Operating {
  binaryRangeWrapper(op: unknown, left: unknown, right: unknown, state: unknown): unknown;
  evaluateAst(tree: unknown, state: unknown): unknown;
}
/** How its plugins spread arrays over functions for single values. */
interface Spreading {
  calculateSizeOfVectorizedResultArray(values: unknown[], parameters: unknown[]): [number, number];
  isRangePassedAsAScalarArgument(value: unknown, parameter: unknown): boolean;
}
export type BinaryTree =
  | 'PLUS_OP'
  | 'MINUS_OP'
  | 'TIMES_OP'
  | 'DIV_OP'
  | 'POWER_OP'
  | 'CONCATENATE_OP'
  | 'EQUALS_OP'
  | 'NOT_EQUAL_OP'
  | 'LESS_THAN_OP'
  | 'LESS_THAN_OR_EQUAL_OP'
  | 'GREATER_THAN_OP'
  | 'GREATER_THAN_OR_EQUAL_OP';

type Interpreter = ConstructorParameters<typeof FunctionPlugin>[0];
type Extended = number | RichNumber;

/** The members of a function plugin that are used here; its subclass below may reach them. */
interface Insides {
  interpreter: Interpreter & {
    criterionBuilder: {
      parseCriterion(
        value: unknown,
        helper: unknown,
      ): { operator: string; value: number | string | boolean | null } | undefined;
    };
    evaluateAst(tree: unknown, state: unknown): Inner | SimpleRangeValue;
  };
  arithmeticHelper: {
    coerceToMaybeNumber(value: string): Extended | undefined;
    stringCmp(left: string, right: string): number;
    ExtendedNumberFactory(value: number, format: { type: string }): Extended;
    coerceScalarToNumberOrError(value: unknown): Extended | CellError;
    eqMatcherFunction(pattern: string): (value: unknown) => boolean;
    neqMatcherFunction(pattern: string): (value: unknown) => boolean;
    requiresRegex(pattern: string): boolean;
    searchString(pattern: string, text: string): number;
    manyToNumbers: (args: unknown[], ofRange: (cells: unknown[]) => number[] | CellError) => unknown;
  };
  dateTimeHelper: { dateStringToDateNumber(text: string): Extended | undefined };
  coerceToType(value: unknown, parameter: FunctionArgument, state: unknown): unknown;
  runFunction: unknown;
}

let insides: Insides | undefined;

/** Hands out the engine's helpers; its one function is never called. */
class Opening extends FunctionPlugin {
  static override implementedFunctions = { 'OPENING.OF.THE.ENGINE': { method: 'opening', parameters: [] } };
  constructor(interpreter: Interpreter) {
    super(interpreter);
    insides = this as unknown as Insides;
  }
  opening(): number {
    return 0;
  }
}

const sorts: Readonly<Record<NumberSort, string>> = {
  date: 'NUMBER_DATE',
  time: 'NUMBER_TIME',
  'date-time': 'NUMBER_DATETIME',
  percent: 'NUMBER_PERCENT',
  currency: 'NUMBER_CURRENCY',
};
const signs: Readonly<Record<string, Criterion['operator']>> = {
  GREATER_THAN: '>',
  GREATER_THAN_OR_EQUAL: '>=',
  LESS_THAN: '<',
  LESS_THAN_OR_EQUAL: '<=',
  EQUAL: '=',
  NOT_EQUAL: '<>',
};
/** Formulas stand nowhere: arrays are computed whole, and no reference is followed. */
const nowhere = { formulaAddress: { sheet: 0, col: 0, row: 0 }, arraysFlag: true, formulaVertex: undefined };

const rawOf = (value: Extended | undefined): number | undefined =>
  typeof value === 'object' ? value.val : value;

let opened: CellEngine | undefined;

/** The one engine behind all plans; made at first use. */
export function cellEngine(): CellEngine {
  opened ??= open();
  return opened;
}

function open(): CellEngine {
  HyperFormula.buildEmpty({
    ...cellEngineSettings,
    functionPlugins: [...HyperFormula.getAllFunctionPlugins(), Opening],
  });
  const inside = insides!;
  const grid = inside.interpreter as unknown as Grid;
  grid.dependencyGraph.getCellValue = (address) => address.read();
  const interpreter = inside.interpreter as unknown as Operating;
  const operate = interpreter.binaryRangeWrapper.bind(interpreter);
  interpreter.binaryRangeWrapper = (op, left, right, state) =>
    tooWide([left, right]) ?? operate(op, left, right, state);
  limitSpreading(interpreter);
  addRangesApart(grid.functionRegistry.functions.get('SUM')![1] as Aggregation);
  inside.arithmeticHelper.manyToNumbers = (args, ofRange) =>
    collectNumbers(args, ofRange, (value) => inside.arithmeticHelper.coerceScalarToNumberOrError(value));
  useOwnWildcards(inside.arithmeticHelper);
  takeTexts();
  const reading: Reading = {
    numberOfText: (text) => rawOf(inside.arithmeticHelper.coerceToMaybeNumber(text)),
    dateOfText: (text) => rawOf(inside.dateTimeHelper.dateStringToDateNumber(text)),
    compareTexts: (left, right) => inside.arithmeticHelper.stringCmp(left, right),
  };
  useOwnBodies(grid, reading);
  const bodies = new Map<string, FunctionBody | undefined>();
  const instances = new Map<FunctionPluginDefinition, Insides>();
  const sortOfClass = new Map<unknown, NumberSort>();
  for (const sort of Object.keys(sorts) as NumberSort[])
    sortOfClass.set(
      Object.getPrototypeOf(inside.arithmeticHelper.ExtendedNumberFactory(1, { type: sorts[sort] })),
      sort,
    );

  const body = (name: string): FunctionBody | undefined => {
    if (!bodies.has(name)) bodies.set(name, takeOut(name, inside, instances, reading));
    return bodies.get(name);
  };
  return {
    numberOfText: (text) => inside.arithmeticHelper.coerceToMaybeNumber(text),
    dateOfText: reading.dateOfText,
    compareTexts: reading.compareTexts,
    rich: (value, sort) =>
      inside.arithmeticHelper.ExtendedNumberFactory(value, { type: sorts[sort] }) as RichNumber,
    sortOf: (value) => sortOfClass.get(Object.getPrototypeOf(value)) ?? 'percent',
    criterion: (value) => {
      const read = inside.interpreter.criterionBuilder.parseCriterion(value, inside.arithmeticHelper);
      return read && criterionOf(signs[read.operator]!, read.value);
    },
    body,
    has: (name) => HyperFormula.getFunctionPlugin(name) !== undefined,
    evaluate: (tree) => withOwnMath(() => inside.interpreter.evaluateAst(tree, nowhere)),
  };
}

function criterionOf(operator: Criterion['operator'], value: Criterion['value']): Criterion {
  const pattern = typeof value === 'string' ? patternOf(value.toLowerCase()) : undefined;
  if (pattern?.literal !== undefined) return { operator, value: pattern.literal };
  return { operator, value, pattern };
}

/** The engine's own turns patterns into regular expressions, which may take for ever and read "|" as "or". */
function useOwnWildcards(helper: Insides['arithmeticHelper']): void {
  const equals = (wanted: string): ((value: unknown) => boolean) => {
    const folded = wanted.toLowerCase();
    const pattern = patternOf(folded);
    return (value) =>
      typeof value === 'string' &&
      (pattern ? pattern.matches(value.toLowerCase()) : value.toLowerCase() === folded);
  };
  helper.eqMatcherFunction = equals;
  helper.neqMatcherFunction = (wanted) => {
    const equal = equals(wanted);
    return (value) => !equal(value);
  };
  helper.requiresRegex = (text) => patternOf(text) !== undefined;
  helper.searchString = (text, within) => patternOf(text)!.search(within);
}

/** A column against a row gives every pair: what would be larger than a range that is handed over ends in an error. */
function tooWide(values: readonly unknown[]): CellError | undefined {
  const ranges = values.filter((value) => value instanceof SimpleRangeValue);
  if (ranges.length < 2) return undefined;
  const cells = Math.max(...ranges.map((of) => of.height())) * Math.max(...ranges.map((of) => of.width()));
  const given = Math.max(...ranges.map((of) => of.height() * of.width()));
  if (cells === given || cells <= limits.handedCells) return undefined;
  return errorOf(issue('#VALUE!', 'array-too-large', { details: { most: limits.handedCells } }));
}

/** What a function for single values makes of arrays would have too many cells. */
class TooWide extends Error {
  constructor(readonly error: CellError) {
    super('too many cells');
  }
}

/** Functions for single values are limited as operators are; the call that would be too large is the error. */
function limitSpreading(interpreter: Operating): void {
  const plugin = FunctionPlugin.prototype as unknown as Spreading;
  const sizeOf = plugin.calculateSizeOfVectorizedResultArray;
  plugin.calculateSizeOfVectorizedResultArray = function (values, parameters) {
    const spread = values.filter((value, i) => this.isRangePassedAsAScalarArgument(value, parameters[i]));
    const error = tooWide(spread);
    if (error) throw new TooWide(error);
    return sizeOf.call(this, values, parameters);
  };
  const evaluate = interpreter.evaluateAst.bind(interpreter);
  interpreter.evaluateAst = (tree, state) => {
    try {
      return evaluate(tree, state);
    } catch (error) {
      if (error instanceof TooWide) return error.error;
      throw error;
    }
  };
}

/** The engine's TEXT takes numbers only; formats have a section for texts. */
function takeTexts(): void {
  const { TEXT } = HyperFormula.getFunctionPlugin('TEXT')!.implementedFunctions;
  const [value, ...rest] = TEXT!.parameters!;
  TEXT!.parameters = [{ ...value, argumentType: 'NOERROR' as FunctionArgument['argumentType'] }, ...rest];
}

/** Lets formulas that the engine evaluates whole use our bodies, as those taken out do. */
function useOwnBodies(grid: Grid, reading: Reading): void {
  const done = new Set<unknown>();
  for (const [method, plugin] of grid.functionRegistry.functions.values()) {
    if (!isOwn(method)) continue;
    const own = plugin as Record<string, unknown>;
    if (done.has(own[method])) continue;
    const original = own[method] as (tree: unknown, state: unknown) => unknown;
    const replaced = function (this: Insides, tree: unknown, state: unknown) {
      const caller = Object.create(this) as Insides;
      const runFunction = this.runFunction as (...all: unknown[]) => unknown;
      caller.runFunction = (args: unknown, at: unknown, metadata: unknown, run: FunctionBody['run']) =>
        runFunction.call(this, args, at, metadata, bodyFor(method, run, reading));
      return original.call(caller, tree, state);
    };
    own[method] = replaced;
    done.add(replaced);
  }
}

/** The numbers of values and ranges. The engine's own way overflows the stack at some 100,000 cells. */
function collectNumbers(
  args: readonly unknown[],
  ofRange: (cells: unknown[]) => number[] | CellError,
  coerce: (value: unknown) => Extended | CellError,
): number[] | CellError {
  const values: (number | SimpleRangeValue)[] = [];
  for (const arg of args) {
    if (arg instanceof SimpleRangeValue) values.push(arg);
    else {
      const number = coerce(arg);
      if (number instanceof CellError) return number;
      values.push(rawOf(number)!);
    }
  }
  const numbers: number[] = [];
  for (const value of values) {
    if (typeof value === 'number') {
      numbers.push(value);
      continue;
    }
    const found = ofRange(value.valuesFromTopLeftCorner());
    if (found instanceof CellError) return found;
    for (const number of found) numbers.push(number);
  }
  return numbers;
}

/**
 * Takes the body of a function out of its plugin: the plugin's method is called with `runFunction` replaced by one that
 * keeps what it is given. Functions whose method does anything else first answer undefined.
 */
function takeOut(
  name: string,
  inside: Insides,
  instances: Map<FunctionPluginDefinition, Insides>,
  reading: Reading,
): FunctionBody | undefined {
  const plugin = HyperFormula.getFunctionPlugin(name);
  if (!plugin) return undefined;
  const metadata = plugin.implementedFunctions[plugin.aliases?.[name] ?? name];
  if (!metadata) return undefined;
  let instance = instances.get(plugin);
  if (!instance) {
    instance = new plugin(inside.interpreter) as unknown as Insides;
    instances.set(plugin, instance);
  }
  let kept: { metadata: FunctionMetadata; run: FunctionBody['run'] } | undefined;
  instance.runFunction = (
    _args: unknown,
    _state: unknown,
    given: FunctionMetadata,
    run: FunctionBody['run'],
  ) => {
    kept = { metadata: given, run: bodyFor(metadata.method, run, reading) as FunctionBody['run'] };
    return 0;
  };
  try {
    const method = (instance as unknown as Record<string, (tree: unknown, state: unknown) => unknown>)[
      metadata.method
    ]!;
    method.call(instance, { type: 'FUNCTION_CALL', procedureName: name, args: [] }, nowhere);
  } catch {
    return undefined;
  }
  if (!kept) return undefined;
  const { run } = kept;
  const own = instance;
  return {
    name,
    metadata: kept.metadata,
    parameters: kept.metadata.parameters ?? [],
    run,
    coerce: (value, parameter) => own.coerceToType(value, parameter, nowhere),
  };
}

export const isError = (value: unknown): value is CellError => value instanceof CellError;
export type Blank = typeof EmptyValue;

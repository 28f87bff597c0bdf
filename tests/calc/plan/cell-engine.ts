import {
  CellError,
  type CellValue,
  CellValueDetailedType,
  DetailedCellError,
  ErrorType,
  FunctionPlugin,
  HyperFormula,
  SimpleRangeValue,
} from 'hyperformula';
import { invoke } from '../../../functions/core/invoke.ts';
import { registry } from '../../../functions/registry.ts';
import { cellEngine } from '../../../src/calc/cell-engine/engine.ts';
import { formatted } from '../../../src/calc/cell-engine/number-format.ts';
import { withOwnMath } from '../../../src/calc/cell-engine/own-math.ts';
import { cellEngineSettings } from '../../../src/calc/cell-engine/settings.ts';
import { argumentOf, innerOfOutcome } from '../../../src/calc/cells/inner-values.ts';
import { columnNames, type RandomSheet } from './data.ts';

/** Hands the functions of the domain to the cell engine as they are: raw arguments in, the outcome out. */
class Domain extends FunctionPlugin {
  static override implementedFunctions = Object.fromEntries(
    [...registry.keys()].map((name) => [
      name,
      { method: 'ask', parameters: [{ argumentType: 'ANY' as never, optionalArg: true }], repeatLastArgs: 1 },
    ]),
  );
  constructor(interpreter: ConstructorParameters<typeof FunctionPlugin>[0]) {
    super(interpreter);
    readPatterns(this.arithmeticHelper as unknown as Patterns);
  }
  ask(
    tree: Parameters<FunctionPlugin['evaluateAst']>[0] & { procedureName: string; args: never[] },
    state: Parameters<FunctionPlugin['evaluateAst']>[1],
  ) {
    const definition = registry.get(tree.procedureName)!;
    const given = tree.args.map((arg) => argumentOf(this.evaluateAst(arg, state)));
    return innerOfOutcome(invoke(definition, given));
  }
}

type Matching = (value: unknown) => boolean;
/** The members of the cell engine that read patterns. */
interface Patterns {
  eqMatcherFunction(pattern: string): Matching;
  neqMatcherFunction(pattern: string): Matching;
  searchString(pattern: string, text: string): number;
  requiresRegex(pattern: string): boolean;
}

/** OpenFormula's wildcards as a regular expression: `?`, `*`, and `~` before one of the three. */
const regexOf = (pattern: string): string =>
  pattern.replaceAll(/~([*?~])|([*?])|([\\^$.|+()[\]{}/-])/g, (_, escaped, wild, special) =>
    escaped ? `\\${escaped}` : wild ? (wild === '*' ? '[^]*' : '[^]') : `\\${special}`,
  );

const reading = new WeakSet<Patterns>();
/** The cell engine's own patterns read "|" as "or" and a tilde before any character as an escape. */
function readPatterns(helper: Patterns): void {
  if (reading.has(helper)) return;
  reading.add(helper);
  helper.eqMatcherFunction = (pattern) => {
    const regex = new RegExp(`^${regexOf(pattern.toLowerCase())}$`, 'u');
    return (value) => typeof value === 'string' && regex.test(value.toLowerCase());
  };
  helper.neqMatcherFunction = (pattern) => {
    const equal = helper.eqMatcherFunction(pattern);
    return (value) => !equal(value);
  };
  helper.requiresRegex = (pattern) => /[*?~]/.test(pattern);
  helper.searchString = (pattern, text) => new RegExp(regexOf(pattern), 'u').exec(text)?.index ?? -1;
}

/** The members of the cell engine's lookups that differ from OpenFormula. */
interface Lookups {
  zeroIfEmptyResult(value: unknown): unknown;
  searchInRange(key: unknown, range: unknown, wild: boolean, options: object, by: Search): number;
  doMatch(key: unknown, range: { width(): number; height(): number }, type: number): unknown;
  columnSearch: Search;
  rowSearch: Search;
}
interface Search {
  advancedFind(matches: Matching, range: unknown, options?: object): number;
}

/** A lookup answers the cell that it finds, blank or not; all that look for equal texts know wildcards, MATCH too. */
function readLookups(): void {
  const lookups = HyperFormula.getFunctionPlugin('VLOOKUP')!.prototype as unknown as Lookups;
  const { searchInRange, doMatch } = lookups;
  if (!lookups.zeroIfEmptyResult || !searchInRange || !doMatch)
    throw new Error('the cell engine looks up in another way now');
  lookups.zeroIfEmptyResult = (value) => value;
  const bare = (text: string): string =>
    text
      .toLowerCase()
      .normalize('NFD')
      .replace(/[\u0300-\u036f]/g, '');
  const matcher = (key: unknown): Matching | undefined => {
    if (typeof key !== 'string' || !/[*?~]/.test(key)) return undefined;
    const regex = new RegExp(`^${regexOf(bare(key))}$`, 'u');
    return (value) => typeof value === 'string' && regex.test(bare(value));
  };
  lookups.searchInRange = function (key, range, wild, options, by) {
    const matches = wild ? matcher(key) : undefined;
    return matches
      ? by.advancedFind(matches, range, options)
      : searchInRange.call(this, key, range, false, options, by);
  };
  lookups.doMatch = function (key, range, type) {
    const matches = type === 0 && (range.width() === 1 || range.height() === 1) ? matcher(key) : undefined;
    if (!matches) return doMatch.call(this, key, range, type);
    const by = range.width() === 1 ? this.columnSearch : this.rowSearch;
    const at = by.advancedFind(matches, range);
    return at < 0 ? new CellError(ErrorType.NA, 'Value not found.') : at + 1;
  };
}

/** Members of the cell engine's functions of numbers: each hands its body over to be run on coerced arguments. */
interface Running {
  runFunction(args: unknown, state: unknown, metadata: unknown, run: (...args: never[]) => unknown): unknown;
  metadata(name: string): unknown;
}

/** Rounding by the decimal arithmetic of Intl, on the 15 digits that count; more where more are asked for. */
function roundedBy(mode: 'halfExpand' | 'expand' | 'trunc') {
  const whole = new Intl.NumberFormat('en', {
    useGrouping: false,
    maximumFractionDigits: 0,
    roundingMode: mode,
  } as object);
  return (x: number, decimals: number): number => {
    const places = Math.trunc(decimals);
    if (!Number.isFinite(x) || (places >= 0 && Number.isInteger(x))) return x;
    const [, size] = x.toExponential(14).split('e');
    const [digits, exponent] = (
      Number(size) + 1 + places >= 15 ? x.toExponential() : x.toExponential(14)
    ).split('e');
    return Number(`${whole.format(`${digits}e${Number(exponent) + places}` as never)}e${-places}`) + 0;
  };
}

function numberOf(text: string): number {
  const read = cellEngine().numberOfText(text)!;
  return typeof read === 'number' ? read : read.val;
}

/** So many steps, in decimal digits. */
function times(step: number, count: number): number {
  const [digits, exponent] = step.toExponential().split('e');
  const places = digits!.replace(/^-?\d\.?/, '').length - Number(exponent);
  return Number(`${BigInt(count) * BigInt(digits!.replace('.', ''))}e${-places}`) + 0;
}

/** The steps that 15 digits of the quotient say. */
const steps = (x: number, step: number, turn: (x: number) => number): number => {
  const count = turn(Number((x / step).toPrecision(15)));
  return Number.isFinite(count) ? times(step, count) : count;
};

/** CEILING and FLOOR. */
const next =
  (turn: (x: number) => number) =>
  (x: number, step: number): unknown => {
    if (x === 0) return 0;
    if (step === 0) return new CellError(ErrorType.DIV_BY_ZERO);
    if (x > 0 && step < 0) return new CellError(ErrorType.NUM, 'Signs of the arguments differ.');
    return steps(x, step, turn);
  };

/** Those that go by the size of the step. */
const bySize =
  (turn: (x: number) => number) =>
  (x: number, step: number, mode?: number): unknown =>
    step === 0 || x === 0 ? 0 : steps(x, mode === 1 && x < 0 ? -Math.abs(step) : Math.abs(step), turn);

/** Rounding as the language rules it. What TEXT answers is tested by itself; here both have the same body. */
function readNumbers(): void {
  const round = roundedBy('halfExpand');
  const bodies: Record<string, (...args: never[]) => unknown> = {
    ROUND: round,
    ROUNDUP: roundedBy('expand'),
    ROUNDDOWN: roundedBy('trunc'),
    INT: Math.floor,
    LOG: (x: number, base: number) =>
      base === 10 ? Math.log10(x) : base === 2 ? Math.log2(x) : Math.log(x) / Math.log(base),
    MROUND: (x: number, step: number) => {
      if (x === 0 || step === 0) return 0;
      if (x > 0 !== step > 0) return new CellError(ErrorType.NUM, 'Signs of the arguments differ.');
      return times(step, round(x / step, 0));
    },
    CEILING: next(Math.ceil),
    FLOOR: next(Math.floor),
    'CEILING.MATH': bySize(Math.ceil),
    'FLOOR.MATH': bySize(Math.floor),
    'CEILING.PRECISE': bySize(Math.ceil),
    'FLOOR.PRECISE': bySize(Math.floor),
    TEXT: (value: unknown, pattern: string) => {
      const plain = typeof value === 'object' && value !== null ? (value as { val: number }).val : value;
      if (typeof plain === 'string')
        return formatted(cellEngine().numberOfText(plain) === undefined ? plain : numberOf(plain), pattern);
      return formatted(typeof plain === 'number' ? plain : Number(plain === true), pattern);
    },
  };
  for (const [name, body] of Object.entries(bodies)) {
    const plugin = HyperFormula.getFunctionPlugin(name)!;
    const { method } = plugin.implementedFunctions[name]!;
    (plugin.prototype as unknown as Record<string, unknown>)[method] = function (
      this: Running,
      tree: { args: unknown },
      state: unknown,
    ) {
      return this.runFunction(tree.args, state, this.metadata(name), body);
    };
  }
}

let registered = false;

/** What the cell engine answers, in the terms of the book. */
export interface Answer {
  readonly value: number | string | boolean | null;
  /** The error code instead of a value. */
  readonly error?: string;
  readonly isDate: boolean;
  /** Part of an array of more than one cell, or refused because it is one. */
  readonly isArray: boolean;
}

/** Evaluates formulas in real cells: the sheet's columns stand in A, B, …; each formula gets a column of its own. */
export function inCells(sheet: RandomSheet, formulas: readonly ((row: number) => string)[]): Answer[][] {
  if (!registered) {
    const names = Object.fromEntries([...registry.keys()].map((name) => [name, name]));
    HyperFormula.registerFunctionPlugin(Domain as never, { enGB: names });
    cellEngine();
    readLookups();
    readNumbers();
    registered = true;
  }
  const first = columnNames.length + 2;
  const apart = 8;
  const content: (string | number | boolean | null)[][] = [];
  for (let row = 0; row < sheet.rows; row++) {
    const line: (string | number | boolean | null)[] = columnNames.map(
      (name) => sheet.cells[name]![row]!.typed,
    );
    while (line.length < first) line.push(null);
    for (const text of formulas) line.push(`=${text(row)}`, ...new Array(apart - 1).fill(null));
    content.push(line);
  }
  // exp, logarithms, powers and angles are ours there too: their last digit is no matter of this comparison
  const engine = withOwnMath(() => HyperFormula.buildFromSheets({ data: content }, cellEngineSettings));
  try {
    return formulas.map((_, f) =>
      Array.from({ length: sheet.rows }, (_, row) => {
        const at = { sheet: 0, row, col: first + f * apart };
        const value: CellValue = engine.getCellValue(at);
        const isArray = engine.isCellPartOfArray(at);
        if (value instanceof DetailedCellError)
          return {
            value: null,
            error: value.value,
            isDate: false,
            isArray: isArray || value.value === '#SPILL!',
          };
        const type = engine.getCellValueDetailedType(at);
        const isDate =
          type === CellValueDetailedType.NUMBER_DATE || type === CellValueDetailedType.NUMBER_DATETIME;
        return { value: value as Answer['value'], isDate, isArray };
      }),
    );
  } finally {
    engine.destroy();
  }
}

export { SimpleRangeValue };

import { registry } from '../../../functions/registry.ts';
import type { Book } from '../../book/model.ts';
import type { BinaryOperator, Bound } from '../ast.ts';
import { readAndBind } from '../graph/formula.ts';
import { indexBook } from '../language/book-index.ts';
import { PERCENT, SIGN, strength, WHOLE } from '../language/operator-order.ts';
import { numberText, quoted } from '../language/print.ts';
import { walk } from '../language/walk.ts';
import { limits } from '../limits.ts';
import type { A1Formula } from './a1-formula.ts';
import { a1FunctionOf } from './a1-functions.ts';

/** Where the columns of a book stand in a workbook file. */
export interface A1Layout {
  /** The sheet as a reference begins with it, `'Club roster'!`. */
  sheet(sheet: string): string;
  /** The column's letters; undefined where its cells do not hold the numbers that formulas here compute with. */
  column(sheet: string, column: string): string | undefined;
  rows(sheet: string): number;
  /** The name under which the file has a named cell; undefined when it has none for it. */
  name(name: string): string | undefined;
  /** Rows above the first row of data. */
  readonly above: number;
}

/** Why a formula cannot be written so that other programs compute the same. */
export interface NoA1 {
  readonly why: 'own function' | 'no such function' | 'unit' | 'array' | 'pattern' | 'error';
  readonly what: string;
}

export const isA1 = (translated: A1Formula | NoA1): translated is A1Formula => Array.isArray(translated);

/** Translates the formulas of a book, as it is at this moment. */
export function a1Translator(
  book: Book,
  layout: A1Layout,
): (formula: string, place: { readonly sheet: string; readonly column: boolean }) => A1Formula | NoA1 {
  const index = indexBook(book);
  return (formula, { sheet, column }) => {
    const { bound } = readAndBind(formula, index, { sheet, column });
    const pieces: (string | number)[] = [];
    try {
      new Writer(layout, sheet, pieces).whole(bound);
    } catch (reason) {
      if (reason instanceof Untranslatable) return reason.no;
      throw reason;
    }
    return joined(pieces);
  };
}

class Untranslatable extends Error {
  readonly no: NoA1;
  constructor(why: NoA1['why'], what: string) {
    super(why);
    this.no = { why, what };
  }
}
function no(why: NoA1['why'], what = ''): never {
  throw new Untranslatable(why, what);
}

const joined = (pieces: readonly (string | number)[]): A1Formula => {
  const out: (string | number)[] = [];
  for (const piece of pieces) {
    const last = out.at(-1);
    if (typeof piece === 'string' && typeof last === 'string') out[out.length - 1] = last + piece;
    else out.push(piece);
  }
  return out;
};

const isRangeNode = ({ type }: Bound): boolean =>
  type === 'column-of' || type === 'cells-of' || type === 'array';

/** What an argument is, as the table of functions has it. An array among others, or a gap, fits nowhere. */
function sortOf(node: Bound): string {
  if (node.type === 'array') return 'k';
  if (node.type === 'empty') return '-';
  if (isRangeNode(node)) return 'r';
  return node.type === 'row-of' || node.type === 'cell-of' || node.type === 'named' ? 'c' : 'v';
}

/** Texts written out must hold no sign that asks for a pattern. */
function withoutPatterns(node: Bound): void {
  walk(node, (part) => (part.type === 'text' && /[*?~]/.test(part.value) ? no('pattern', part.value) : true));
}

function strengthOf(node: Bound): number {
  if (node.type === 'binary') return strength[node.operator as BinaryOperator];
  if (node.type === 'percent') return PERCENT;
  return node.type === 'unary' ? SIGN : WHOLE;
}

/** Writes one formula, piece by piece. */
class Writer {
  private readonly layout: A1Layout;
  private readonly home: string;
  private readonly out: (string | number)[];

  constructor(layout: A1Layout, home: string, out: (string | number)[]) {
    this.layout = layout;
    this.home = home;
    this.out = out;
  }

  /** A formula whose result is one value: a range stands only where a function takes it. */
  whole(node: Bound): void {
    if (isRangeNode(node)) no('array');
    this.write(node);
  }

  private put(...pieces: readonly (string | number)[]): void {
    this.out.push(...pieces);
  }

  private within(node: Bound, least: number): void {
    if (isRangeNode(node)) no('array');
    if (strengthOf(node) >= least) this.write(node);
    else {
      this.put('(');
      this.write(node);
      this.put(')');
    }
  }

  private write(node: Bound): void {
    switch (node.type) {
      case 'number':
        this.put(numberText(node.value));
        break;
      case 'text':
        this.put(quoted(node.value));
        break;
      case 'yes-no':
        this.put(node.value ? 'TRUE' : 'FALSE');
        break;
      case 'error':
        no('error', node.lost ?? node.code);
        break;
      case 'empty':
        break;
      case 'local':
        no('no such function', 'LET');
        break;
      case 'array':
        this.list(node.rows, ';', (row) => this.list(row, ',', (item) => this.write(item)), '{', '}');
        break;
      case 'unary':
        this.put(node.operator);
        this.within(node.operand, SIGN);
        break;
      case 'percent':
        this.within(node.operand, PERCENT);
        this.put('%');
        break;
      case 'binary': {
        const own = strength[node.operator];
        this.within(node.left, own);
        this.put(node.operator);
        this.within(node.right, own + 1);
        break;
      }
      case 'call':
        this.call(node);
        break;
      default:
        this.reference(node);
    }
  }

  private list<T>(
    items: readonly T[],
    between: string,
    write: (item: T) => void,
    before = '',
    after = '',
  ): void {
    this.put(before);
    items.forEach((item, i) => {
      if (i > 0) this.put(between);
      write(item);
    });
    this.put(after);
  }

  private call(node: Extract<Bound, { type: 'call' }>): void {
    const known = a1FunctionOf(node.name);
    if (known?.asIndexMatch) {
      this.lookup(node.name, node.args);
      return;
    }
    if (!known)
      throw new Untranslatable(registry.has(node.name) ? 'own function' : 'no such function', node.name);
    if (!known.accepts.test(node.args.map(sortOf).join(''))) no('array', node.name);
    if (known.patterns) for (const arg of node.args) withoutPatterns(arg);
    this.put(known.name);
    this.list(node.args, ',', (arg) => this.write(arg), '(', ')');
  }

  /** Later than many programs; with its first three arguments INDEX and MATCH do the same. */
  private lookup(name: string, args: readonly Bound[]): void {
    const [wanted, among, from] = args;
    if (args.length !== 3 || among!.type !== 'column-of' || from!.type !== 'column-of')
      throw new Untranslatable('no such function', name);
    withoutPatterns(wanted!);
    this.put('INDEX(');
    this.write(from!);
    this.put(',MATCH(');
    this.write(wanted!);
    this.put(',');
    this.write(among!);
    this.put(',0))');
  }

  private letters(sheet: string, column: string): string {
    return this.layout.column(sheet, column) ?? no('unit', column);
  }

  private on(sheet: string): string {
    return sheet === this.home ? '' : this.layout.sheet(sheet);
  }

  private reference(
    node: Extract<Bound, { type: 'row-of' | 'column-of' | 'named' | 'cell-of' | 'cells-of' }>,
  ): void {
    const { above } = this.layout;
    const fixed = (row: number): string =>
      row + above < limits.rows ? `$${row + above + 1}` : no('error', `row ${row + 1}`);
    switch (node.type) {
      case 'row-of':
        this.put(`${this.on(node.sheet)}${this.letters(node.sheet, node.column)}`, 0);
        break;
      case 'named': {
        const letters = this.letters(node.sheet, node.column);
        this.put(
          this.layout.name(node.name) ?? `${this.layout.sheet(node.sheet)}$${letters}${fixed(node.row)}`,
        );
        break;
      }
      case 'column-of': {
        const letters = this.letters(node.sheet, node.column);
        const last = Math.max(0, this.layout.rows(node.sheet) - 1);
        this.put(`${this.on(node.sheet)}$${letters}${fixed(0)}:$${letters}${fixed(last)}`);
        break;
      }
      case 'cell-of':
        this.put(`${this.on(node.sheet)}$${this.letters(node.sheet, node.column)}`);
        this.put(...(node.rowMoves ? [node.row] : [fixed(node.row)]));
        break;
      case 'cells-of': {
        const all = node.columns.map((column) => this.letters(node.sheet, column));
        if (all.length === 0) no('error', node.type);
        this.put(`${this.on(node.sheet)}$${all[0]}`, ...(node.fromMoves ? [node.from] : [fixed(node.from)]));
        this.put(`:$${all.at(-1)}`, ...(node.toMoves ? [node.to] : [fixed(node.to)]));
      }
    }
  }
}

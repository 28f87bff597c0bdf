import { type CellBlock, CellKind, type Held } from '../../book/cells.ts';
import type { Note } from '../sentences/index.ts';
import { sentence } from '../sentences/index.ts';

/** The first of several things, with the row it stands in. */
export interface First {
  readonly row: number;
  readonly text: string;
}

/** Different texts of a column that are remembered. */
export const MEMORY = 20_000;

/** A text of its own: a slice of a long text would keep all of it in memory. */
export const ownText = (text: string): string => (text.length < 13 ? text : ` ${text}`.slice(1));

/** An apostrophe before a formula sign, as exports put it there so that no program runs the cell (OWASP, CSV Injection). */
const PROTECTED = /^'+[=+\-@\t\r\n＝＋－＠]/;

const isProtected = (text: string): boolean => text.charCodeAt(0) === 39 && PROTECTED.test(text);

/** The text without that apostrophe. */
export const bare = (text: string): string => (isProtected(text) ? text.slice(1) : text);

/** The first cells of an array: without a copy where little is left over, so that a long file is not held twice. */
function fitted<A extends Uint8Array | Float64Array>(array: A, length: number): A {
  return (array.length - length <= length / 8 ? array.subarray(0, length) : array.slice(0, length)) as A;
}

/** One column of the sheet while it is filled from the file, row by row. */
export abstract class ColumnBuilder {
  length = 0;
  filled = 0;
  blank = 0;
  readonly held = new Map<number, Held>();
  firstHeld: (First & { readonly why: Note }) | null = null;
  /** Words taken as missing, with their counts. */
  readonly missingSeen = new Map<string, number>();
  protected kinds: Uint8Array;
  protected numbers: Float64Array;
  private readonly missing: ReadonlySet<string>;

  constructor(missing: readonly string[], expected: number) {
    this.missing = new Set(missing.map((word) => word.toLowerCase()));
    this.kinds = new Uint8Array(expected);
    this.numbers = new Float64Array(expected);
  }

  /** Takes cell `at` of each row; a row that ends before it has a blank there. */
  abstract put(rows: readonly (readonly string[])[], at: number): void;

  /** Room for so many further rows. */
  protected reserve(count: number): void {
    const need = this.length + count;
    if (need <= this.kinds.length) return;
    const size = Math.max(need, Math.ceil(this.kinds.length * 1.5));
    const kinds = new Uint8Array(size);
    kinds.set(this.kinds);
    this.kinds = kinds;
    const numbers = new Float64Array(size);
    numbers.set(this.numbers);
    this.numbers = numbers;
  }

  protected isMissing(trimmed: string): boolean {
    if (!this.missing.has(trimmed.toLowerCase())) return false;
    const word = ownText(trimmed);
    this.missingSeen.set(word, (this.missingSeen.get(word) ?? 0) + 1);
    this.blank++;
    return true;
  }

  protected hold(row: number, text: string, why: Note): void {
    const own = ownText(bare(text));
    this.kinds[row] = CellKind.held;
    this.held.set(row, { held: own, reason: sentence(why) });
    this.firstHeld ??= { row, text: own, why };
  }

  /** The cells as a block; the builder must not be used afterwards. */
  finish(): CellBlock {
    const { length, held } = this;
    return {
      length,
      kinds: fitted(this.kinds, length),
      numbers: fitted(this.numbers, length),
      texts: this.textList(),
      formulas: new Map(),
      held,
    };
  }

  protected textList(): readonly (string | undefined)[] | null {
    return null;
  }
}

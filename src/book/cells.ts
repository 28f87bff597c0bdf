/** The cells of a column: kinds, numbers and texts side by side, with what is rare in maps. */
import {
  type Cell,
  type CellBlock,
  CellKind,
  type CellRun,
  cellOf,
  type Held,
  isList,
  type Snapshot,
} from './cell.ts';

export * from './cell.ts';

// Columns without a value (every computed one) share these zeros and cost no memory of their own.
let zeros = new ArrayBuffer(8 * 1024);
function blankArrays(length: number): { kinds: Uint8Array; numbers: Float64Array } {
  if (zeros.byteLength < length * 8) zeros = new ArrayBuffer(length * 16);
  return { kinds: new Uint8Array(zeros, 0, length), numbers: new Float64Array(zeros, 0, length) };
}

const isShared = (array: Uint8Array | Float64Array): boolean => array.buffer === zeros;

/** Rows [row, row + removed) give way to `added` blank ones. */
interface Move {
  readonly row: number;
  readonly removed: number;
  readonly added: number;
}

/** Fills an array from the old one; where a block moves it is copied as a block. */
function moved<A extends Uint8Array | Float64Array>(
  old: A,
  into: A,
  from: (row: number) => number,
  move: Move | undefined,
): A {
  if (move) {
    into.set(old.subarray(0, move.row));
    into.set(old.subarray(move.row + move.removed), move.row + move.added);
  } else for (let i = 0; i < into.length; i++) into[i] = old[from(i)]!;
  return into;
}

/**
 * The cells of one column: a kind and a number for each row in typed arrays, texts beside them, formulas and held values
 * apart because they are few. Rows beyond `length` do not exist. Arrays are copied on the first write after somebody
 * took a snapshot or a block of them, so readers keep what they got and nothing is held twice.
 */
export class Cells implements CellBlock {
  length: number;
  kinds: Uint8Array;
  numbers: Float64Array;
  texts: (string | undefined)[] | null = null;
  readonly formulas = new Map<number, string>();
  readonly held = new Map<number, Held>();
  /** Counts every change; whoever caches something derived from these cells compares it. */
  version = 0;
  private ownsKinds = false;
  private ownsNumbers = false;
  private ownsTexts = false;

  constructor(length = 0) {
    this.length = length;
    ({ kinds: this.kinds, numbers: this.numbers } = blankArrays(length));
  }

  /** Cells of a given length from a run; what the run does not reach is blank. */
  static from(run: CellRun | undefined, length: number): Cells {
    const cells = new Cells(length);
    if (run) cells.write(0, run);
    return cells;
  }

  get(row: number): Cell {
    return cellOf(this, row);
  }

  set(row: number, cell: Cell): void {
    if (!(row >= 0 && row < this.length)) throw new RangeError(`row ${row} of ${this.length}`);
    this.version++;
    this.put(row, cell);
  }

  /** Writes a run of cells downwards from a row. */
  write(row: number, run: CellRun): void {
    if (row < 0 || row + run.length > this.length)
      throw new RangeError(`row ${row} + ${run.length} of ${this.length}`);
    this.version++;
    if (isList(run)) {
      for (let i = 0; i < run.length; i++) this.put(row + i, run[i] ?? null);
      return;
    }
    this.forget(row, row + run.length);
    if (row === 0 && run.length === this.length) this.adopt(run);
    else {
      this.ownKinds().set(run.kinds, row);
      this.ownNumbers().set(run.numbers, row);
      if (run.texts) {
        const texts = this.ownTexts();
        for (let i = 0; i < run.length; i++) texts[row + i] = run.texts[i];
      }
    }
    for (const [i, formula] of run.formulas) this.formulas.set(row + i, formula);
    for (const [i, held] of run.held) this.held.set(row + i, held);
  }

  /** The cells [from, to) as they are now. */
  block(from = 0, to = this.length): CellBlock {
    const whole = from === 0 && to === this.length;
    const { kinds, numbers, texts } = whole ? this.snapshot() : this;
    const inside = <T>(map: ReadonlyMap<number, T>) =>
      new Map([...map].filter(([row]) => row >= from && row < to).map(([row, value]) => [row - from, value]));
    return {
      length: to - from,
      kinds: whole ? kinds : kinds.slice(from, to),
      numbers: whole ? numbers : numbers.slice(from, to),
      texts: whole ? texts : (texts?.slice(from, to) ?? null),
      formulas: inside(this.formulas),
      held: inside(this.held),
    };
  }

  /** The arrays as they are now, without copying: the next write makes its own. */
  snapshot(): Snapshot {
    this.ownsKinds = false;
    this.ownsNumbers = false;
    this.ownsTexts = false;
    return { kinds: this.kinds, numbers: this.numbers, texts: this.texts };
  }

  /** Makes room: rows from `row` on move down by the length of the run, or by `count` blanks. */
  insert(row: number, count: number, run?: CellRun): void {
    if (run && row === 0 && this.length === 0 && run.length === count && !isList(run)) {
      this.length = count;
      this.write(0, run);
      return;
    }
    const from = (i: number): number => (i < row ? i : i - count);
    this.rebuild(this.length + count, (i) => (i >= row && i < row + count ? -1 : from(i)), {
      row,
      removed: 0,
      added: count,
    });
    if (run) this.write(row, run);
  }

  remove(row: number, count: number): void {
    this.rebuild(this.length - count, (i) => (i < row ? i : i + count), { row, removed: count, added: 0 });
  }

  /** New row i is old row `order[i]`. */
  order(order: ArrayLike<number>): void {
    this.rebuild(this.length, (i) => order[i]!);
  }

  /** True when no cell holds anything. */
  get blank(): boolean {
    if (isShared(this.kinds)) return true;
    for (let i = 0; i < this.length; i++) if (this.kinds[i] !== CellKind.blank) return false;
    return true;
  }

  private put(row: number, cell: Cell): void {
    const before = this.kinds[row];
    if (before === CellKind.formula) this.formulas.delete(row);
    else if (before === CellKind.held) this.held.delete(row);
    else if (before === CellKind.text && typeof cell !== 'string' && this.texts)
      this.ownTexts()[row] = undefined;
    if (cell === null) this.mark(row, CellKind.blank, 0);
    else if (typeof cell === 'number') this.mark(row, CellKind.number, cell);
    else if (typeof cell === 'boolean') this.mark(row, CellKind.yesNo, cell ? 1 : 0);
    else if (typeof cell === 'string') {
      this.mark(row, CellKind.text, 0);
      this.ownTexts()[row] = cell;
    } else if ('date' in cell) this.mark(row, CellKind.date, cell.date);
    else if ('formula' in cell) {
      this.mark(row, CellKind.formula, 0);
      this.formulas.set(row, cell.formula);
    } else {
      this.mark(row, CellKind.held, 0);
      this.held.set(row, cell);
    }
  }

  private mark(row: number, kind: CellKind, number: number): void {
    if (!Number.isFinite(number)) throw new RangeError(`${number} is not a number that a cell can have`);
    if (this.kinds[row] !== kind) this.ownKinds()[row] = kind;
    // A negative zero would be written and read as 0: adding 0 keeps it out.
    if (this.numbers[row] !== number) this.ownNumbers()[row] = number + 0;
  }

  private ownKinds(): Uint8Array {
    if (!this.ownsKinds) this.kinds = this.kinds.slice();
    this.ownsKinds = true;
    return this.kinds;
  }

  private ownNumbers(): Float64Array {
    if (!this.ownsNumbers) this.numbers = this.numbers.slice();
    this.ownsNumbers = true;
    return this.numbers;
  }

  private ownTexts(): (string | undefined)[] {
    if (!this.texts) this.texts = new Array<string | undefined>(this.length);
    else if (!this.ownsTexts) this.texts = this.texts.slice();
    this.ownsTexts = true;
    return this.texts;
  }

  private adopt(block: CellBlock): void {
    this.kinds = block.kinds;
    this.numbers = block.numbers;
    this.texts = block.texts as (string | undefined)[] | null;
    this.ownsKinds = false;
    this.ownsNumbers = false;
    this.ownsTexts = false;
  }

  /** Drops what stands apart from the arrays, and texts, in rows [from, to). */
  private forget(from: number, to: number): void {
    for (const map of [this.formulas, this.held])
      for (const row of [...map.keys()]) if (row >= from && row < to) map.delete(row);
    if (this.texts && !(from === 0 && to === this.length)) {
      const texts = this.ownTexts();
      for (let row = from; row < to; row++) texts[row] = undefined;
    } else this.texts = null;
  }

  /** New row i is old row `from(i)`, or blank for −1. With `move` given, blocks are copied instead of single cells. */
  private rebuild(length: number, from: (row: number) => number, move?: Move): void {
    this.version++;
    const old = { kinds: this.kinds, numbers: this.numbers, texts: this.texts };
    const formulas = [...this.formulas];
    const held = [...this.held];
    this.length = length;
    const blank = blankArrays(length);
    this.ownsKinds = !isShared(old.kinds);
    this.ownsNumbers = !isShared(old.numbers);
    this.kinds = this.ownsKinds ? moved(old.kinds, new Uint8Array(length), from, move) : blank.kinds;
    this.numbers = this.ownsNumbers
      ? moved(old.numbers, new Float64Array(length), from, move)
      : blank.numbers;
    if (old.texts) {
      const texts = new Array<string | undefined>(length);
      for (let i = 0; i < length; i++) {
        const source = from(i);
        if (source >= 0) texts[i] = old.texts[source];
      }
      this.texts = texts;
      this.ownsTexts = true;
    }
    if (formulas.length + held.length === 0) return;
    const place = new Map<number, number>();
    const wanted = new Set([...formulas, ...held].map(([row]) => row));
    for (let i = 0; i < length; i++) if (wanted.has(from(i))) place.set(from(i), i);
    this.formulas.clear();
    this.held.clear();
    for (const [row, value] of formulas) if (place.has(row)) this.formulas.set(place.get(row)!, value);
    for (const [row, value] of held) if (place.has(row)) this.held.set(place.get(row)!, value);
  }
}

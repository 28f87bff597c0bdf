import { Kind, type Range } from '../../../functions/core/value.ts';
import { type Criterion, cellEngine } from '../cell-engine/engine.ts';
import type { Inner } from '../cell-engine/values.ts';

/** Most distinct criteria that are remembered before starting over. */
const REMEMBERED = 20_000;
const read = new Map<string, Criterion | undefined>();

/** Reads a criterion: a value to be equal to, or a text such as ">=5", "<>x", "=". Undefined when it is none. */
export function criterionOf(value: Inner): Criterion | undefined {
  if (typeof value === 'number') return { operator: '=', value };
  if (typeof value !== 'string') return cellEngine().criterion(value);
  if (!read.has(value)) {
    if (read.size >= REMEMBERED) read.clear();
    read.set(value, cellEngine().criterion(value));
  }
  return read.get(value);
}

const numbersInText = new Map<string, number | undefined>();

/** The number that a text in a cell counts as to a criterion that is a number. */
export function numberInText(text: string): number | undefined {
  if (text === '') return undefined;
  if (!numbersInText.has(text)) {
    if (numbersInText.size >= REMEMBERED) numbersInText.clear();
    const number = cellEngine().numberOfText(text);
    numbersInText.set(text, typeof number === 'object' ? number.val : number);
  }
  return numbersInText.get(text);
}

/** How texts are compared with a criterion: in any case. */
const folded = (text: string): string => text.toLowerCase();

/** Whether a text is equal to one that is folded already. Most texts are told apart by a letter that differs. */
function equalsFolded(text: string, fold: string): boolean {
  if (text === fold) return true;
  const n = Math.min(text.length, fold.length);
  for (let k = 0; k < n; k++) {
    const c = text.charCodeAt(k);
    const d = fold.charCodeAt(k);
    if (c === d) continue;
    // beyond ASCII a letter may change its length or its neighbours with its case
    if (c > 127 || d > 127) return folded(text) === fold;
    if (c < 65 || c > 90 || c + 32 !== d) return false;
  }
  if (text.length === fold.length) return true;
  if (text.length < fold.length) return false;
  for (let k = n; k < text.length; k++) if (text.charCodeAt(k) > 127) return folded(text) === fold;
  return false;
}

/** A test of the cells of a range by a criterion. */
export function testOf({ operator, value, pattern }: Criterion, range: Range): (i: number) => boolean {
  const { kinds, texts, numbers } = range;
  const equal = operator === '=';
  const unequal = operator === '<>';
  if (typeof value === 'number') {
    if (!equal && !unequal) return boundTest(operator, value, range);
    return (i) => {
      const kind = kinds[i];
      const number =
        kind === Kind.number || kind === Kind.date
          ? numbers[i]!
          : kind === Kind.text
            ? numberInText(texts![i]!)
            : undefined;
      return number === undefined ? unequal : (number === value) === equal;
    };
  }
  if (!equal && !unequal) return () => false;
  if (value === null) return (i) => (kinds[i] === Kind.blank) === equal;
  if (typeof value === 'boolean')
    return (i) => (kinds[i] === Kind.yesNo && (numbers[i] !== 0) === value) === equal;
  if (pattern) return (i) => (kinds[i] === Kind.text && pattern.matches(folded(texts![i]!))) === equal;
  const fold = folded(value);
  return (i) => (kinds[i] === Kind.text && equalsFolded(texts![i]!, fold)) === equal;
}

function boundTest(operator: Criterion['operator'], value: number, range: Range): (i: number) => boolean {
  const { kinds, numbers } = range;
  const isNumber = (i: number): boolean => kinds[i] === Kind.number || kinds[i] === Kind.date;
  switch (operator) {
    case '<':
      return (i) => numbers[i]! < value && isNumber(i);
    case '<=':
      return (i) => numbers[i]! <= value && isNumber(i);
    case '>':
      return (i) => numbers[i]! > value && isNumber(i);
    default:
      return (i) => numbers[i]! >= value && isNumber(i);
  }
}

const met = new WeakMap<Range, Map<string, Uint8Array>>();
const MASKS = 8;

/** Marks with 1 the cells of a range that meet a criterion; remembered under `signature`. */
export function meeting(criterion: Criterion, range: Range, signature: string): Uint8Array {
  let known = met.get(range);
  if (!known) {
    known = new Map();
    met.set(range, known);
  }
  let cells = known.get(signature);
  if (!cells) {
    cells = new Uint8Array(range.rows * range.columns);
    const test = testOf(criterion, range);
    for (let i = 0; i < cells.length; i++) cells[i] = test(i) ? 1 : 0;
    if (known.size >= MASKS) known.clear();
    known.set(signature, cells);
  }
  return cells;
}

/** Rows of a range by what they are equal to, as criteria see it. */
export interface Groups {
  /** Group of each cell; −1 for cells that no criterion of equality finds. */
  readonly of: Int32Array;
  readonly count: number;
  /** Cells of group g in order: `cells[starts[g]] … cells[starts[g + 1] − 1]`. */
  readonly starts: Int32Array;
  readonly cells: Int32Array;
  /** The group that meets a criterion of equality; −1 when there is none, undefined when groups cannot tell. */
  find(criterion: Criterion): number | undefined;
}

const known = new WeakMap<Range, Groups>();
const looked = new WeakSet<Range>();

/**
 * Whether a criterion of equality is answered from groups. A single question to a column of numbers is answered faster
 * by looking at every cell; to compare every text costs as much as to group them.
 */
export function worthGrouping(range: Range): boolean {
  if (range.kinds[0] === Kind.text || looked.has(range)) return true;
  looked.add(range);
  return false;
}

/** The groups of a range, built once. */
export function groupsOf(range: Range): Groups {
  let groups = known.get(range);
  if (!groups) {
    groups = build(range);
    known.set(range, groups);
  }
  return groups;
}

function build(range: Range): Groups {
  const size = range.rows * range.columns;
  const of = new Int32Array(size).fill(-1);
  const byNumber = new Map<number, number>();
  const byText = new Map<string, number>();
  const asWritten = new Map<string, number>();
  const byYesNo = [-1, -1];
  let blanks = -1;
  let count = 0;
  const numbered = (number: number): number => {
    let group = byNumber.get(number);
    if (group === undefined) {
      group = count++;
      byNumber.set(number, group);
    }
    return group;
  };
  const texted = (text: string): number => {
    const number = numberInText(text);
    if (number !== undefined) return numbered(number);
    const key = folded(text);
    let group = byText.get(key);
    if (group === undefined) {
      group = count++;
      byText.set(key, group);
    }
    return group;
  };
  const { kinds, numbers, texts } = range;
  for (let i = 0; i < size; i++) {
    const kind = kinds[i];
    if (kind === Kind.text) {
      const text = texts![i]!;
      let group = asWritten.get(text);
      if (group === undefined) {
        group = text === '' ? -1 : texted(text);
        asWritten.set(text, group);
      }
      of[i] = group;
    } else if (kind === Kind.number || kind === Kind.date) of[i] = numbered(numbers[i]!);
    else if (kind === Kind.blank) {
      if (blanks === -1) blanks = count++;
      of[i] = blanks;
    } else if (kind === Kind.yesNo) {
      const which = numbers[i] !== 0 ? 1 : 0;
      if (byYesNo[which] === -1) byYesNo[which] = count++;
      of[i] = byYesNo[which]!;
    }
  }
  const starts = new Int32Array(count + 1);
  for (let i = 0; i < size; i++) if (of[i]! >= 0) starts[of[i]! + 1]!++;
  for (let g = 0; g < count; g++) starts[g + 1]! += starts[g]!;
  const next = starts.slice();
  const cells = new Int32Array(starts[count]!);
  for (let i = 0; i < size; i++) {
    const group = of[i]!;
    if (group >= 0) cells[next[group]!++] = i;
  }
  return {
    of,
    count,
    starts,
    cells,
    find({ operator, value, pattern }) {
      if (operator !== '=' || pattern) return undefined;
      if (value === null) return blanks;
      if (typeof value === 'number') return byNumber.get(value) ?? -1;
      if (typeof value === 'boolean') return byYesNo[value ? 1 : 0];
      return asWritten.get(value) ?? byText.get(folded(value)) ?? -1;
    },
  };
}

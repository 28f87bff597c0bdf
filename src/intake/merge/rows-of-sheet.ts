import { type Cell, type CellBlock, CellKind, Cells } from '../../book/cells.ts';
import { isoFromSerial } from '../../units/date.ts';
import type { Progress } from '../api.ts';

/** Rows between two moments at which the work can be cancelled. */
const STEP = 100_000;

const scratch = new DataView(new ArrayBuffer(8));

/** 32 bits that stand for a number. */
function numberBits(value: number): number {
  scratch.setFloat64(0, value);
  return Math.imul(scratch.getUint32(0), 0x9e3779b1) ^ scratch.getUint32(4);
}

/** FNV-1a, 32 bits (Fowler, Noll, Vo). */
function textBits(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h;
}

function cellBits(block: CellBlock, row: number, memory: Map<string, number>): number {
  const kind = block.kinds[row]!;
  switch (kind) {
    case CellKind.blank:
      return 0;
    case CellKind.text:
    case CellKind.held: {
      const text = kind === CellKind.text ? (block.texts?.[row] ?? '') : (block.held.get(row)?.held ?? '');
      let bits = memory.get(text);
      if (bits === undefined) {
        bits = textBits(text) ^ kind;
        if (memory.size < 10_000) memory.set(text, bits);
      }
      return bits;
    }
    case CellKind.formula:
      return textBits(block.formulas.get(row) ?? '');
    default:
      return numberBits(block.numbers[row]!) ^ kind;
  }
}

/** A number for each row that equal rows share; rows with unequal cells hardly do. */
export function* rowHashes(blocks: readonly CellBlock[], rows: number): Generator<Progress, Float64Array> {
  const low = new Uint32Array(rows).fill(0x811c9dc5);
  const high = new Uint32Array(rows).fill(0x9747b28c);
  for (const block of blocks) {
    const memory = new Map<string, number>();
    for (let row = 0; row < rows; row++) {
      if (row % STEP === 0) yield { done: row, total: rows, about: 'comparing rows' };
      const bits = cellBits(block, row, memory);
      low[row] = Math.imul(low[row]! ^ bits, 0x01000193);
      high[row] = Math.imul((high[row]! << 5) ^ (high[row]! >>> 27) ^ bits, 0x85ebca6b);
    }
  }
  const out = new Float64Array(rows);
  for (let row = 0; row < rows; row++) out[row] = (high[row]! & 0x1fffff) * 2 ** 32 + low[row]!;
  return out;
}

/** True when two cells hold the same. */
export function sameCell(a: CellBlock, i: number, b: CellBlock, j: number): boolean {
  const kind = a.kinds[i]!;
  if (kind !== b.kinds[j]) return false;
  if (kind === CellKind.blank) return true;
  if (kind === CellKind.text) return a.texts?.[i] === b.texts?.[j];
  if (kind === CellKind.held) return a.held.get(i)?.held === b.held.get(j)?.held;
  if (kind === CellKind.formula) return a.formulas.get(i) === b.formulas.get(j);
  return a.numbers[i] === b.numbers[j];
}

export const sameRow = (a: readonly CellBlock[], i: number, b: readonly CellBlock[], j: number): boolean =>
  a.every((block, k) => sameCell(block, i, b[k]!, j));

/** A cell as words, in base units and ISO dates. */
export function cellWords(block: CellBlock, row: number): string {
  switch (block.kinds[row]) {
    case CellKind.blank:
      return '';
    case CellKind.text:
      return block.texts?.[row] ?? '';
    case CellKind.held:
      return block.held.get(row)?.held ?? '';
    case CellKind.formula:
      return `=${block.formulas.get(row) ?? ''}`;
    case CellKind.date:
      return isoFromSerial(block.numbers[row]!) ?? String(block.numbers[row]);
    case CellKind.yesNo:
      return block.numbers[row] ? 'yes' : 'no';
    default:
      return String(block.numbers[row]);
  }
}

/** What a row is recognised by: texts in any case, without blanks around them. */
export const cellKey = (block: CellBlock, row: number): string => cellWords(block, row).trim().toLowerCase();

/** Some rows of a block as a block of their own. */
export function pick(block: CellBlock, rows: ArrayLike<number>): CellBlock {
  const length = rows.length;
  const kinds = new Uint8Array(length);
  const numbers = new Float64Array(length);
  const texts: (string | undefined)[] | null = block.texts ? new Array<string | undefined>(length) : null;
  const held = new Map(
    block.held.size === 0
      ? []
      : Array.from({ length }, (_, i) => [i, block.held.get(rows[i]!)] as const).flatMap(([i, h]) =>
          h ? [[i, h] as const] : [],
        ),
  );
  for (let i = 0; i < length; i++) {
    const row = rows[i]!;
    kinds[i] = block.kinds[row]!;
    numbers[i] = block.numbers[row]!;
    if (texts) texts[i] = block.texts![row];
  }
  return { length, kinds, numbers, texts, formulas: new Map(), held };
}

/** One cell of a block. */
export function cellAt(block: CellBlock, row: number): Cell {
  const cells = new Cells(1);
  cells.write(0, pick(block, [row]));
  return cells.get(0);
}

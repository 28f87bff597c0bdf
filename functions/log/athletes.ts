import { Kind, type Range } from '../core/value.ts';
import { once } from '../statistics/memo.ts';

/** The rows of each athlete: a number for each name, and the number of each row (−1 where the name is blank). */
export interface Athletes {
  readonly count: number;
  readonly ofRow: Int32Array;
  readonly numberOf: ReadonlyMap<string, number>;
}

// Bound here once: the loop below reads them for every row.
const { text: TEXT, number: NUMBER, date: DATE, yesNo: YES_NO } = Kind;

/** Names are compared trimmed and in any case. */
export const nameKey = (name: string): string => name.trim().normalize('NFC').toLowerCase();

/** Reads a column of names once. A number stands for its text, so that athletes may have numbers for names. */
export const athletesIn: (range: Range) => Athletes = once((range) => {
  const { kinds, numbers, texts } = range;
  const numberOf = new Map<string, number>();
  // Most rows repeat a name exactly: trimming and folding is done once for each spelling.
  const spellings = new Map<string, number>();
  const ofRow = new Int32Array(kinds.length).fill(-1);
  for (let row = 0; row < kinds.length; row++) {
    const name = nameAt(kinds[row]!, numbers[row]!, texts?.[row]);
    if (name === '') continue;
    let athlete = spellings.get(name);
    if (athlete === undefined) {
      const key = nameKey(name);
      athlete = numberOf.get(key) ?? numberOf.size;
      numberOf.set(key, athlete);
      spellings.set(name, athlete);
    }
    ofRow[row] = athlete;
  }
  return { count: numberOf.size, ofRow, numberOf };
});

function nameAt(kind: number, number: number, text: string | undefined): string {
  if (kind === TEXT) return text ?? '';
  if (kind === NUMBER || kind === DATE) return String(number);
  return kind === YES_NO ? String(number !== 0) : '';
}

/**
 * Wildcards in criteria and lookups, as OpenFormula 1.3, part 4, 3.4 (HOST-USE-WILDCARDS) has them: `?` is any one
 * character, `*` any number of them, none included; `~` before `?`, `*` or `~` takes their meaning away. The whole text has
 * to match (HOST-SEARCH-CRITERIA-MUST-APPLY-TO-WHOLE-CELL). A text is read once from left to right, whatever the pattern:
 * all places in the pattern that may have been reached are carried along as bits.
 */

/** A pattern, read. */
export interface Pattern {
  /** The text that it stands for where it has no wildcard but escapes. */
  readonly literal: string | undefined;
  /** Whether a whole text matches; compared as it is, so case is up to the caller. */
  matches(text: string): boolean;
  /** Where the first match begins in a text, in UTF-16 units; −1 where there is none. */
  search(text: string): number;
}

const ANY = Symbol('any one character');
type Sign = string | typeof ANY;

const SPECIAL = /[*?~]/;

/** The pattern that a text is; undefined for one without wildcards and escapes, which only equals itself. */
export function patternOf(text: string): Pattern | undefined {
  if (!SPECIAL.test(text)) return undefined;
  const { signs, stars } = read(text);
  const literal = stars.size === 0 && !signs.includes(ANY) ? signs.join('') : undefined;
  const forwards = new Places(signs, stars);
  let backwards: Places | undefined;
  return {
    literal,
    matches: (whole) => forwards.run(whole),
    search(within) {
      const n = signs.length;
      backwards ??= new Places(signs.toReversed(), new Set([...stars].map((at) => n - at)));
      return backwards.firstStart(within);
    },
  };
}

/** The signs of a pattern, and before which of them (or after the last) there is a star. */
function read(text: string): { signs: Sign[]; stars: Set<number> } {
  const signs: Sign[] = [];
  const stars = new Set<number>();
  const letters = [...text];
  for (let i = 0; i < letters.length; i++) {
    const letter = letters[i]!;
    const next = letters[i + 1];
    if (letter === '*') stars.add(signs.length);
    else if (letter === '?') signs.push(ANY);
    else if (letter === '~' && next !== undefined && SPECIAL.test(next)) {
      signs.push(next);
      i++;
    } else signs.push(letter);
  }
  return { signs, stars };
}

/** Bits in a word. */
const WORD = 32;

/** Bit i of the places says that the first i signs may have been passed. */
class Places {
  private readonly words: number;
  private readonly any: Int32Array;
  private readonly stays: Int32Array;
  private readonly bySign = new Map<string, Int32Array>();
  private readonly at: Int32Array;

  constructor(
    private readonly signs: readonly Sign[],
    stars: ReadonlySet<number>,
  ) {
    this.words = Math.floor(signs.length / WORD) + 1;
    this.any = this.bits(signs.flatMap((sign, i) => (sign === ANY ? [i] : [])));
    this.stays = this.bits([...stars]);
    for (const sign of new Set(signs))
      if (typeof sign === 'string')
        this.bySign.set(
          sign,
          this.bits(signs.flatMap((other, i) => (other === sign || other === ANY ? [i] : []))),
        );
    this.at = new Int32Array(this.words);
  }

  /** Whether all signs have been passed at the end of the text. */
  run(text: string): boolean {
    this.begin();
    for (const letter of text) if (!this.step(letter)) return false;
    return this.done();
  }

  /** In a text read backwards any place may be the end of a match; the first beginning is the last one that is found. */
  firstStart(text: string): number {
    this.begin();
    let found = this.done() ? text.length : -1;
    for (let end = text.length; end > 0; ) {
      const pair = end > 1 && /^[\uD800-\uDBFF][\uDC00-\uDFFF]$/.test(text.slice(end - 2, end));
      const from = end - (pair ? 2 : 1);
      this.step(text.slice(from, end));
      this.at[0]! |= 1;
      if (this.done()) found = from;
      end = from;
    }
    return found;
  }

  private begin(): void {
    this.at.fill(0);
    this.at[0] = 1;
  }

  /** Passes one character; false when no place is left. */
  private step(letter: string): boolean {
    const passes = this.bySign.get(letter) ?? this.any;
    let carry = 0;
    let left = 0;
    for (let w = 0; w < this.words; w++) {
      const now = this.at[w]!;
      const moved = now & passes[w]!;
      const next = (moved << 1) | carry | (now & this.stays[w]!);
      carry = moved >>> (WORD - 1);
      this.at[w] = next;
      left |= next;
    }
    return left !== 0;
  }

  private done(): boolean {
    const n = this.signs.length;
    return ((this.at[Math.floor(n / WORD)]! >>> (n % WORD)) & 1) === 1;
  }

  private bits(places: readonly number[]): Int32Array {
    const all = new Int32Array(this.words);
    for (const place of places) all[Math.floor(place / WORD)]! |= 1 << (place % WORD);
    return all;
  }
}

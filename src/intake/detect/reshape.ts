import type { HeldRow, Shape } from '../api.ts';
import { readDateForms } from '../cells/index.ts';
import { IntakeRefusal, note } from '../sentences/index.ts';
import { LONGEST_HEADING, readHeading } from './heading.ts';

/** A set of headings that repeat the same measures: one a date, a set or a trial. */
export interface Repeats {
  /** What the repeated part is: "date", "set". Heading of the column that will hold it. */
  readonly name: string;
  /** Headings of the measures. */
  readonly values: readonly string[];
  /** Each repeat: what it is called, and which column of the file holds each measure (-1: none). */
  readonly parts: readonly { readonly name: string; readonly at: readonly number[] }[];
}

const NUMBERED = /^(.*?)[\s_.#-]*(\d{1,3})(?!\d)[\s_.:-]*(.*)$/;
/** What is commonly numbered; anything else with a number behind it is a measure in several trials. */
const COUNTED =
  /^(set|trial|test|attempt|week|wk|day|session|round|block|rep|jump|visit|month|w|d|s|t|satz|woche|tag|serie|semaine)$/i;

/** Finds headings that are dates, or that are the same but for a number; null when there are none. */
export function findRepeats(headings: readonly string[]): Repeats | null {
  const dated = headings.flatMap((heading, i) => (readDateForms(heading) ? [i] : []));
  if (dated.length >= 2)
    return {
      name: 'date',
      values: ['value'],
      parts: dated.map((i) => ({ name: headings[i]!, at: [i] })),
    };
  return findNumbered(headings);
}

interface Numbered {
  readonly index: number;
  readonly before: string;
  readonly number: string;
  readonly after: string;
}

function findNumbered(headings: readonly string[]): Repeats | null {
  const groups = new Map<string, Numbered[]>();
  headings.forEach((heading, index) => {
    const m = heading.length > LONGEST_HEADING ? null : NUMBERED.exec(heading);
    if (!m || (m[1] === '' && m[3] === '')) return;
    const found = { index, before: m[1]!.trim(), number: m[2]!, after: m[3]!.trim() };
    const key = `${found.before}#${found.after}`.toLowerCase();
    groups.set(key, [...(groups.get(key) ?? []), found]);
  });
  const repeated = [...groups.values()].filter((g) => new Set(g.map((n) => n.number)).size >= 2);
  const first = repeated[0];
  if (!first) return null;
  // Several measures belong together when they are numbered under the same word: "Set 1 reps", "Set 1 load".
  const together = repeated.filter((g) => g[0]!.before.toLowerCase() === first[0]!.before.toLowerCase());
  const counted = COUNTED.test(first[0]!.before) || together.length > 1;
  const numbers = [...new Set(together.flatMap((g) => g.map((n) => n.number)))];
  return {
    name: counted ? first[0]!.before.toLowerCase() || 'number' : 'trial',
    values: together.map((g) => {
      const { before, after } = g[0]!;
      if (after !== '' && readHeading(`x ${after}`).label !== 'x') return after;
      return counted
        ? `value${after === '' ? '' : ` ${after}`}`
        : `${before}${after === '' ? '' : ` ${after}`}`;
    }),
    parts: numbers.map((number) => ({
      name: number,
      at: together.map((g) => g.find((n) => n.number === number)?.index ?? -1),
    })),
  };
}

/** Turns records of the file into rows of another shape. Lines go along, so that every row knows where it came from. */
export interface Reshaper {
  readonly headings: readonly string[];
  /** Column of the file that each heading's unit line stands over; -1 for none. */
  readonly from: readonly number[];
  put(row: readonly string[], line: number): void;
  /** The rows that are complete, with their lines; they are taken out. */
  drain(): { rows: (readonly string[])[]; lines: number[] };
  /** The file has ended. */
  end(): void;
  /** Records that have no place in the new shape. */
  readonly held: HeldRow[];
}

/** @throws IntakeRefusal when the headings do not allow the shape */
export function reshaper(shape: Shape, headings: readonly string[], file: string): Reshaper {
  return shape.to === 'long' ? new Lengthener(shape, headings, file) : new Widener(shape, headings, file);
}

const isBlank = (text: string | undefined): boolean => text === undefined || text.trim() === '';

/** One row a repeat: wide to long. */
class Lengthener implements Reshaper {
  readonly headings: readonly string[];
  readonly from: readonly number[];
  readonly held: HeldRow[] = [];
  private readonly kept: readonly number[];
  private readonly repeats: Repeats;
  private rows: (readonly string[])[] = [];
  private lines: number[] = [];

  constructor(shape: Shape & { to: 'long' }, headings: readonly string[], file: string) {
    const repeats = findRepeats(headings);
    if (!repeats)
      throw new IntakeRefusal('nothing-repeats', { name: file, headings: headings.slice(0, 12).join(', ') });
    this.repeats = repeats;
    const used = new Set(repeats.parts.flatMap((part) => part.at));
    this.kept = headings.flatMap((_, i) => (used.has(i) ? [] : [i]));
    const values = repeats.values.length === 1 && shape.value ? [shape.value] : repeats.values;
    this.headings = [...this.kept.map((i) => headings[i]!), shape.name ?? repeats.name, ...values];
    const firsts = repeats.values.map((_, k) => repeats.parts.find((part) => part.at[k]! >= 0)?.at[k] ?? -1);
    this.from = [...this.kept, -1, ...firsts];
  }

  put(row: readonly string[], line: number): void {
    const kept = this.kept.map((i) => row[i] ?? '');
    let written = 0;
    for (const { name, at } of this.repeats.parts) {
      if (at.every((i) => i < 0 || isBlank(row[i]))) continue;
      this.rows.push([...kept, name, ...at.map((i) => (i < 0 ? '' : (row[i] ?? '')))]);
      this.lines.push(line);
      written++;
    }
    if (written > 0) return;
    // Somebody without a value is still somebody.
    this.rows.push([...kept, '', ...this.repeats.values.map(() => '')]);
    this.lines.push(line);
  }

  drain(): { rows: (readonly string[])[]; lines: number[] } {
    const out = { rows: this.rows, lines: this.lines };
    this.rows = [];
    this.lines = [];
    return out;
  }

  end(): void {}
}

/** One column a name: long to wide. */
class Widener implements Reshaper {
  readonly headings: string[];
  readonly from: number[];
  readonly held: HeldRow[] = [];
  private readonly by: readonly number[];
  private readonly name: number;
  private readonly value: number;
  private readonly places = new Map<string, number>();
  private readonly groups = new Map<string, { cells: string[]; line: number }>();
  private ended = false;

  constructor(shape: Shape & { to: 'wide' }, headings: readonly string[], file: string) {
    const find = (heading: string): number => {
      const at = headings.findIndex((h) => h.trim().toLowerCase() === heading.trim().toLowerCase());
      if (at < 0)
        throw new IntakeRefusal('shape-misses', { name: file, heading, headings: headings.join(', ') });
      return at;
    };
    this.by = shape.by.map(find);
    this.name = find(shape.name);
    this.value = find(shape.value);
    this.headings = this.by.map((i) => headings[i]!);
    this.from = [...this.by];
    for (const column of shape.columns ?? []) this.place(column);
  }

  private place(name: string): number {
    const key = name.trim().toLowerCase();
    let at = this.places.get(key);
    if (at === undefined) {
      at = this.headings.length;
      this.places.set(key, at);
      this.headings.push(name.trim());
      this.from.push(this.value);
    }
    return at;
  }

  put(row: readonly string[], line: number): void {
    const by = this.by.map((i) => row[i] ?? '');
    const name = row[this.name] ?? '';
    const key = by.map((cell) => cell.trim().toLowerCase()).join('\u0000');
    let group = this.groups.get(key);
    if (!group) {
      group = { cells: by, line };
      this.groups.set(key, group);
    }
    const value = row[this.value] ?? '';
    if (isBlank(name)) {
      if (!isBlank(value)) this.hold(row, line, 'name-missing', '');
      return;
    }
    const at = this.place(name);
    if (isBlank(value)) return;
    if (!isBlank(group.cells[at])) this.hold(row, line, 'place-taken', name.trim());
    else group.cells[at] = value;
  }

  private hold(
    row: readonly string[],
    line: number,
    reason: 'name-missing' | 'place-taken',
    name: string,
  ): void {
    this.held.push({ line, raw: row.join(';'), reason: note(reason, { name }) });
  }

  drain(): { rows: (readonly string[])[]; lines: number[] } {
    if (!this.ended) return { rows: [], lines: [] };
    const groups = [...this.groups.values()];
    this.groups.clear();
    const width = this.headings.length;
    return {
      rows: groups.map(({ cells }) => Array.from({ length: width }, (_, i) => cells[i] ?? '')),
      lines: groups.map(({ line }) => line),
    };
  }

  end(): void {
    this.ended = true;
  }
}

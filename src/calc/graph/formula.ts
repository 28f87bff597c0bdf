import type { Issue } from '../../../functions/core/issue.ts';
import type { Bound, Node } from '../ast.ts';
import { type FreeFormula, freeFormula } from '../cells/free-formula.ts';
import { mayGiveArray } from '../cells/may-give-array.ts';
import type { Place } from '../cells/place.ts';
import { bind, type Problem } from '../language/bind.ts';
import type { BookIndex } from '../language/book-index.ts';
import { parse } from '../language/parse.ts';
import type { Plan } from '../plan/api.ts';
import { compile } from '../plan/compile.ts';
import { type Reads, readsOf } from './reads.ts';

/** A formula of the book, read and looked up: one for all cells of a sheet that hold the same text. */
export interface Formula {
  readonly text: string;
  readonly bound: Bound;
  readonly problems: readonly Problem[];
  readonly reads: Reads;
  /** In a single cell it may give more than one value. */
  mayGiveArray(): boolean;
  /** Ready for a whole column. */
  plan(): Plan;
  /** Ready for a single cell. */
  free(): FreeFormula;
}

/** Formulas by text and sheet; made anew when the book's names change, keeping what means the same as before. */
export class Formulas {
  private known = new Map<string, Formula>();
  private before = new Map<string, Formula>();

  constructor(
    private index: BookIndex,
    private readonly place: Place,
  ) {}

  /** The names of the book have changed: every formula is looked up again when it is next asked for. */
  renew(index: BookIndex): void {
    this.index = index;
    this.before = this.known;
    this.known = new Map();
  }

  get(text: string, sheet: string, column: boolean): Formula {
    const key = `${column ? 'c' : 'f'}${sheet}\u0000${text}`;
    let formula = this.known.get(key);
    if (!formula) {
      formula = makeFormula(text, this.index, { sheet, column }, this.place);
      const old = this.before.get(key);
      if (old && meaningOf(old) === meaningOf(formula)) formula = old;
      this.known.set(key, formula);
    }
    return formula;
  }
}

const meanings = new WeakMap<Formula, string>();
/** Equal for two formulas that read and compute the same. */
function meaningOf(formula: Formula): string {
  let meaning = meanings.get(formula);
  if (meaning === undefined) {
    meaning = JSON.stringify(formula.bound, (key, value) =>
      key === 'span' || key === 'nameSpan' ? undefined : value,
    );
    meanings.set(formula, meaning);
  }
  return meaning;
}

export function makeFormula(
  text: string,
  index: BookIndex,
  scope: { readonly sheet?: string | undefined; readonly column: boolean },
  place: Place,
): Formula {
  const { bound, problems } = readAndBind(text, index, scope);
  let plan: Plan | undefined;
  let free: FreeFormula | undefined;
  let array: boolean | undefined;
  return {
    text,
    bound,
    problems,
    reads: readsOf(bound),
    mayGiveArray: () => (array ??= mayGiveArray(bound)),
    plan: () => (plan ??= compile(bound)),
    free: () => (free ??= freeFormula(bound, place)),
  };
}

/** Reads and looks up a formula; one that cannot be read is an error value that says so. */
export function readAndBind(
  text: string,
  index: BookIndex,
  scope: { readonly sheet?: string | undefined; readonly column: boolean },
): { readonly bound: Bound; readonly node?: Node; readonly problems: readonly Problem[] } {
  const parsed = parse(text);
  if (parsed.ok) return { ...bind(parsed.node, index, scope), node: parsed.node };
  const { issue, span } = parsed as { issue: Issue; span: Problem['span'] };
  return { bound: { type: 'error', code: issue.code, issue, span }, problems: [{ span, issue }] };
}

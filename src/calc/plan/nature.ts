import type { Bound } from '../ast.ts';
import { builtIns } from '../builtins/index.ts';
import { childrenOf } from '../language/walk.ts';

/** From so many cells on a range is worth the column engine. */
const LARGE = 500;

/** What a piece of a formula is like, by what it is made of. */
export interface Nature {
  /** Reads a whole column or a large range. */
  readonly large: boolean;
  /** Has another value in another row of the sheet. */
  readonly byRow: boolean;
  /** Names that a LET around it gives. */
  readonly locals: ReadonlySet<string>;
  /** Draws random numbers. */
  readonly random: boolean;
  /** May have another value each time: random numbers and the clock. */
  readonly volatile: boolean;
}

const natures = new WeakMap<Bound, Nature>();

export function natureOf(bound: Bound): Nature {
  const known = natures.get(bound);
  if (known) return known;
  const parts = childrenOf(bound).map(natureOf);
  const volatile = bound.type === 'call' ? builtIns.get(bound.name)?.volatile : undefined;
  const nature = {
    large: isLarge(bound) || parts.some((p) => p.large),
    byRow: moves(bound) || parts.some((p) => p.byRow),
    locals: localsOf(bound, parts),
    random: volatile === 'random' || parts.some((p) => p.random),
    volatile: volatile !== undefined || parts.some((p) => p.volatile),
  };
  natures.set(bound, nature);
  return nature;
}

/** True for a formula that has the same value in every row. */
export function isAlone(bound: Bound): boolean {
  const { byRow, locals } = natureOf(bound);
  return !byRow && locals.size === 0;
}

function isLarge(bound: Bound): boolean {
  if (bound.type === 'column-of') return true;
  if (bound.type === 'call' && bound.name === 'SEQUENCE') return !isShortSequence(bound.args);
  return bound.type === 'cells-of' && (bound.to - bound.from + 1) * bound.columns.length >= LARGE;
}

/** A sequence whose size is written out and small; a computed one may be large. */
function isShortSequence([rows, columns]: readonly Bound[]): boolean {
  const size = [rows, columns].map((of) => (!of ? 1 : of.type === 'number' ? of.value : LARGE));
  return size[0]! * size[1]! < LARGE;
}

function moves(bound: Bound): boolean {
  switch (bound.type) {
    case 'row-of':
      return true;
    case 'cell-of':
      return bound.rowMoves;
    case 'cells-of':
      return bound.fromMoves || bound.toMoves;
    case 'call':
      return bound.name === 'ROW' && bound.args.length === 0;
    default:
      return false;
  }
}

const NONE: ReadonlySet<string> = new Set();

function localsOf(bound: Bound, parts: readonly Nature[]): ReadonlySet<string> {
  if (bound.type === 'local') return new Set([bound.name]);
  if (parts.every((p) => p.locals.size === 0)) return NONE;
  const isLet = bound.type === 'call' && bound.name === 'LET';
  const given = new Set<string>();
  const found = new Set<string>();
  for (const [k, part] of parts.entries()) {
    // Every second argument of LET but the last is a name; the values after it may use it.
    const name = isLet && k % 2 === 0 && k < parts.length - 1 ? bound.args[k] : undefined;
    if (name?.type === 'local') given.add(name.name);
    else for (const local of part.locals) if (!given.has(local)) found.add(local);
  }
  // A value that uses its own name means the one around it; such a formula is left to the cell engine.
  return found.size > 0 ? found : NONE;
}

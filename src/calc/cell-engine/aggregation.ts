/** How the cell engine aggregates ranges: each on its own, and joined. */
import { CellError, ErrorType, SimpleRangeValue } from 'hyperformula';
import type { Inner } from './values.ts';

type Coerce = (value: Inner) => Inner | undefined;

/** What SUM and its kin are made of in the cell engine. */
export interface Aggregation {
  evaluateAst(tree: { readonly type: string }, state: unknown): Inner | SimpleRangeValue;
  coerceScalarToNumberOrError(value: Inner): Inner;
  reduce: (
    args: readonly { readonly type: string }[],
    state: unknown,
    start: unknown,
    name: string,
    join: (so: unknown, next: unknown) => unknown,
    map: (value: Inner) => unknown,
    coerce: Coerce,
  ) => unknown;
}

/**
 * Lets SUM and its kin add up a range on its own before it joins the other arguments, as they do with ranges of cells:
 * there are no cells here, and ranges come as values. Without this the last digit would depend on where a formula stands.
 */
export function addRangesApart(plugin: Aggregation): void {
  plugin.reduce = (args, state, start, _name, join, map, coerce) => {
    if (args.length === 0) return new CellError(ErrorType.NA, 'Wrong number of arguments.');
    let so = start;
    for (const arg of args) {
      const value = plugin.evaluateAst(arg, state);
      if (value instanceof SimpleRangeValue) {
        const isRange = arg.type === 'NUMBER';
        let part = isRange ? start : so;
        for (const cell of value.valuesFromTopLeftCorner()) {
          const taken = coerce(cell);
          if (taken instanceof CellError) return taken;
          if (taken !== undefined) part = join(part, map(taken));
        }
        so = isRange ? join(part, so) : part;
        continue;
      }
      const taken = coerce(arg.type === 'CELL_REFERENCE' ? value : plugin.coerceScalarToNumberOrError(value));
      if (taken instanceof CellError) return taken;
      if (taken !== undefined) so = join(so, map(taken));
    }
    return so;
  };
}

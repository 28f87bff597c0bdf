import { SimpleRangeValue } from 'hyperformula';
import { issue } from '../../../functions/core/issue.ts';
import { type Range, type Value, valueAt } from '../../../functions/core/value.ts';
import { cellEngine, type Tree } from '../cell-engine/engine.ts';
import type { Inner } from '../cell-engine/values.ts';
import type { RowArgument } from '../plan/api.ts';
import { ColumnValues } from '../values/column-values.ts';
import { innerOfValue, isDate, rangeInside, valueOf } from './convert.ts';

/** One call of a function of the cell engine for each of `rows` rows. */
export function rowByRow(name: string, args: readonly RowArgument[], rows: number): Range {
  const out = new ColumnValues(rows);
  let row = 0;
  const lazy = (read: () => Inner | SimpleRangeValue): Tree => ({
    type: 'NUMBER',
    get value() {
      return read();
    },
  });
  const tree: Tree = {
    type: 'FUNCTION_CALL',
    procedureName: name,
    args: args.map((arg) => {
      if (arg.is === 'single') return { type: 'NUMBER', value: innerOfValue(arg.value) };
      if (arg.is === 'whole') return lazy(() => rangeInside([arg.values]));
      return lazy(() => innerOfValue(valueAt(arg.values, row)));
    }),
  };
  for (; row < rows; row++) {
    let value: Value;
    try {
      const result = cellEngine().evaluate(tree);
      if (result instanceof SimpleRangeValue)
        value = issue('#SPILL!', 'array-in-row', {
          details: { rows: result.height(), columns: result.width() },
        });
      else {
        value = valueOf(result);
        if (isDate(result)) {
          out.setDate(row, value as number);
          continue;
        }
      }
    } catch (error) {
      value = issue('#ERROR!', 'failed', { details: { message: String(error) } });
    }
    out.set(row, value);
  }
  return out.range();
}

import { describe, type FunctionHelp } from '../../../functions/core/describe.ts';
import { registry } from '../../../functions/registry.ts';
import type { Book } from '../../book/model.ts';
import type { Node } from '../../calc/ast.ts';
import { parse, walk } from '../../calc/language/index.ts';

/** A formula of the book and where it stands. */
export interface Written {
  readonly sheet: string;
  readonly place: string;
  readonly formula: string;
}

/** A function of the domain, and where the book uses it. */
export interface Used {
  readonly help: FunctionHelp;
  readonly places: readonly string[];
}

/** Formulas that cells have of their own are listed one by one up to this many a column. */
const ownListed = 12;

/** The formulas of a book: of columns, and of cells that have their own. */
export function formulasOf({ sheets }: Book): readonly Written[] {
  return sheets.flatMap((sheet) =>
    sheet.columns.flatMap((column): Written[] => {
      const own = [...(sheet.cells.get(column.id)?.formulas ?? [])].sort(([a], [b]) => a - b);
      const name = column.label || column.name;
      return [
        ...(column.formula === undefined
          ? []
          : [{ sheet: sheet.label, place: `${name}, whole column`, formula: `=${column.formula}` }]),
        ...own.map(([row, formula]) => ({
          sheet: sheet.label,
          place: `${name}, row ${row + 1}`,
          formula: `=${formula}`,
        })),
      ];
    }),
  );
}

/** The formulas as a report lists them: long columns of single formulas end in a count. */
export function listed(all: readonly Written[]): readonly Written[] {
  const counts = new Map<string, number>();
  const shown: Written[] = [];
  for (const one of all) {
    const column = `${one.sheet}\n${one.place.replace(/, (row \d+|every row)$/, '')}`;
    const count = (counts.get(column) ?? 0) + 1;
    counts.set(column, count);
    if (count <= ownListed) shown.push(one);
  }
  for (const [column, count] of counts) {
    const [sheet = '', place = ''] = column.split('\n');
    if (count > ownListed)
      shown.push({
        sheet,
        place,
        formula: `and ${count - ownListed} more cells with their own formula`,
      });
  }
  return shown;
}

/** The functions of the domain that formulas call, in the order of their names. */
export function functionsIn(all: readonly Written[]): readonly Used[] {
  const places = new Map<string, Set<string>>();
  for (const { sheet, place, formula } of all) {
    const parsed = parse(formula.slice(1));
    if (!parsed.ok) continue;
    walk<Node>(parsed.node, (node) => {
      if (node.type !== 'call' || !registry.has(node.name)) return undefined;
      const of = places.get(node.name) ?? new Set();
      of.add(`${sheet}: ${place.replace(/, (row \d+|every row)$/, '')}`);
      places.set(node.name, of);
      return undefined;
    });
  }
  return [...places]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, at]) => ({ help: describe(registry.get(name)!), places: [...at] }));
}

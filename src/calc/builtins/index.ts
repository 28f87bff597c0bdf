/** The built-in functions of the language: those of spreadsheets at large. The domain's own have definitions in `functions/`. */
import type { BuiltIn } from './builtin.ts';
import { arrays } from './records/arrays.ts';
import { dates } from './records/dates.ts';
import { distributions } from './records/distributions.ts';
import { finance } from './records/finance.ts';
import { information } from './records/information.ts';
import { logic } from './records/logic.ts';
import { lookup } from './records/lookup.ts';
import { notations } from './records/notations.ts';
import { numbers } from './records/numbers.ts';
import { statistics } from './records/statistics.ts';
import { sums } from './records/sums.ts';
import { tables } from './records/tables.ts';
import { texts } from './records/texts.ts';

export type { BuiltIn } from './builtin.ts';

/** The records by family; `words/` has a file for each. */
export const families = {
  logic,
  sums,
  statistics,
  lookup,
  dates,
  numbers,
  texts,
  information,
  arrays,
  distributions,
  tables,
  notations,
  finance,
} as const satisfies Readonly<Record<string, readonly BuiltIn[]>>;

/** Each record by each of its names. */
export const builtIns: ReadonlyMap<string, BuiltIn> = new Map(
  Object.values(families)
    .flat()
    .flatMap((record) => [record.name, ...record.aliases].map((name) => [name, record] as const)),
);

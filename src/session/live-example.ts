import type { AnyDefinition } from '../../functions/core/define.ts';
import { isIssue } from '../../functions/core/issue.ts';
import type { Parameter } from '../../functions/core/parameter.ts';
import { registry } from '../../functions/registry.ts';
import { columnNamed, sheetOf } from '../book/book.ts';
import type { Sheet } from '../book/model.ts';
import { nameKey } from '../book/names.ts';
import { numberText, quoted } from '../calc/language/print.ts';
import type { Place } from './api.ts';
import { titleOf } from './figure-lifter.ts';
import { outcomeText } from './shown.ts';
import type { Viewed } from './views.ts';

/** A function applied to a row that is at hand. */
export interface LiveExample {
  readonly formula: string;
  /** The result with its unit, or the sentence of an error. */
  readonly result: string;
  readonly error: boolean;
  /** Whose row it is. */
  readonly title: string;
  /** Parameters that the row has nothing for; a plain value stands in for each. */
  readonly standIns: readonly string[];
}

/** What a function gives for a row: its parameters filled from columns and named cells of their names. Null when none is. */
export function liveExample(viewed: Viewed, name: string, place: Required<Place>): LiveExample | null {
  const definition = registry.get(name);
  const sheet = sheetOf(viewed.book, place.sheet);
  if (!definition || place.row < 0 || place.row >= sheet.rows) return null;
  const standIns: string[] = [];
  const args: string[] = [];
  for (const [i, parameter] of definition.parameters.entries()) {
    if (parameter.optional) break;
    const known = fromBook(viewed, sheet, parameter);
    const text = known ?? standIn(definition, parameter, i);
    if (text === undefined) return null;
    if (known === undefined) standIns.push(parameter.name);
    args.push(text);
  }
  if (standIns.length === args.length) return null;
  const formula = `${name}(${args.join(', ')})`;
  const result = viewed.calculation.evaluate(formula, place);
  return {
    formula,
    result: isIssue(result)
      ? viewed.calculation.sentence(result)
      : outcomeText(result, definition.result.unit, viewed.locale).replace(/^"(.*)"$/, '$1'),
    error: isIssue(result),
    title: titleOf(viewed, sheet, place.row),
    standIns,
  };
}

function fromBook({ book }: Viewed, sheet: Sheet, parameter: Parameter): string | undefined {
  const column = columnNamed(sheet, parameter.name);
  if (column) return parameter.kind === 'range' ? `${sheet.name}.${column.name}` : column.name;
  return parameter.kind === 'range' ? undefined : book.names.get(nameKey(parameter.name))?.name;
}

/** A value that the function is at home with. */
function standIn({ typical }: AnyDefinition, parameter: Parameter, at: number): string | undefined {
  const value = typical[at];
  if (parameter.kind === 'range') return undefined;
  if (typeof value === 'number') return numberText(value);
  return typeof value === 'string' ? quoted(value) : undefined;
}

import type { AnyDefinition } from '../../../functions/core/define.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import type { Parameter } from '../../../functions/core/parameter.ts';
import { isMatrix, type Matrix, type Value } from '../../../functions/core/value.ts';
import { registry } from '../../../functions/registry.ts';
import { sheetOf } from '../../book/book.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { cellInRole } from '../../book/roles/cell-in-role.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import type { Place } from '../../calc/api.ts';
import { numberText, quoted } from '../../calc/language/index.ts';
import { centimetres, degrees } from '../figure/drawing/drawing-words.ts';
import { titleOf } from '../figure/figure-lifter.ts';
import { MEASURING_ERROR } from '../measuring-error.ts';
import type { ReadContext } from '../open-book.ts';
import { shownWith, wayOf } from '../text/display.ts';
import { outcomeText } from '../text/shown.ts';
import { filledExample } from './filled-example.ts';

/** A function applied to a row that is at hand. */
export interface LiveExample {
  readonly formula: string;
  /** The result with its unit, lengths and angles as fine as they can be measured, or the sentence of an error. */
  readonly result: string;
  readonly error: boolean;
  /** Whose row it is; empty where the example reads nothing of it. */
  readonly title: string;
  /** Parameters that the row has nothing for; a plain value stands in for each. */
  readonly standIns: readonly string[];
}

/** A column that says nothing of its numbers. */
const anyNumber: Column = { id: '', name: '', label: '', kind: 'number', width: 0 };

/** What an example of a built-in function gives for a row; null where the sheet has not what it needs. */
export function builtInExample(
  context: ReadContext,
  example: string,
  place: Required<Place>,
): LiveExample | null {
  const sheet = sheetOf(context.book, place.sheet);
  if (place.row < 0 || place.row >= sheet.rows) return null;
  const formula = filledExample(context, example, sheet, place);
  if (formula === null) return null;
  const { calculation, locale } = context;
  const value = calculation.evaluate(formula, place);
  const meaning = calculation.check(formula, place).meaning;
  const unit = meaning?.is === 'quantity' ? meaning.unit : '';
  const result = isIssue(value)
    ? calculation.sentence(value)
    : meaning === undefined || isMatrix(value) || value === null || unit === 'deg' || unit === 'cm'
      ? textOf(value, unit, context)
      : shownWith(value, wayOf(anyNumber, meaning), locale);
  const title = formula === example ? '' : titleOf(context, sheet, place.row);
  return { formula, result, error: isIssue(value), title, standIns: [] };
}

/** What a function gives for a row: its parameters filled from columns and named cells of their names. Null when none is. */
export function liveExample(context: ReadContext, name: string, place: Required<Place>): LiveExample | null {
  const definition = registry.get(name);
  const sheet = sheetOf(context.book, place.sheet);
  if (!definition || place.row < 0 || place.row >= sheet.rows) return null;
  const standIns: string[] = [];
  const args: string[] = [];
  for (const [i, parameter] of definition.parameters.entries()) {
    if (parameter.optional) break;
    const known = fromBook(context, sheet, parameter);
    const text = known ?? standIn(definition, parameter, i);
    if (text === undefined) return null;
    if (known === undefined) standIns.push(parameter.name);
    args.push(text);
  }
  if (standIns.length === args.length) return null;
  const formula = `${name}(${args.join(', ')})`;
  const result = context.calculation.evaluate(formula, place);
  return {
    formula,
    result: isIssue(result)
      ? context.calculation.sentence(result)
      : `${textOf(result, definition.result.unit, context)}${errorOf(context, name, args, place)}`,
    error: isIssue(result),
    title: titleOf(context, sheet, place.row),
    standIns,
  };
}

function textOf(result: Value | Matrix, unit: string, { locale }: ReadContext): string {
  if (unit === 'deg' && typeof result === 'number') return degrees(result);
  if (unit === 'cm' && typeof result === 'number') return centimetres(result);
  return outcomeText(result, unit, locale).replace(/^"(.*)"$/, '$1');
}

/** How far a lean at parallel can be trusted: what the usual errors of measuring make of it. */
function errorOf(
  { calculation }: ReadContext,
  name: string,
  args: readonly string[],
  place: Required<Place>,
): string {
  if (name !== 'LEAN.PARALLEL') return '';
  const { length, ankle } = MEASURING_ERROR;
  const error = calculation.evaluate(`LEAN.ERROR(${[length, ankle, ...args].join(', ')})`, place);
  return typeof error === 'number' ? ` ± ${degrees(Math.max(1, error))}` : '';
}

function fromBook({ book }: ReadContext, sheet: Sheet, parameter: Parameter): string | undefined {
  const column = columnInRole(sheet, parameter.name);
  if (column) return parameter.kind === 'range' ? `${sheet.name}.${column.name}` : column.name;
  return parameter.kind === 'range' ? undefined : cellInRole(book, nameKey(parameter.name))?.name;
}

/** A value that the function is at home with. */
function standIn({ typical }: AnyDefinition, parameter: Parameter, at: number): string | undefined {
  const value = typical[at];
  if (parameter.kind === 'range') return undefined;
  if (typeof value === 'number') return numberText(value);
  return typeof value === 'string' ? quoted(value) : undefined;
}

import type { Step } from '../../../functions/core/define.ts';
import { isIssue } from '../../../functions/core/issue.ts';
import type { Constant, Source } from '../../../functions/core/source.ts';
import { columnNamed, columnOf, sheetOf } from '../../book/book.ts';
import type { Column } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import type { Place } from '../../calc/api.ts';
import { type Mention, rewrite, shiftRelative } from '../../calc/language/index.ts';
import { signOf } from '../../units/sign.ts';
import { displayUnitOf } from '../../units/unit.ts';
import { doubtsOf } from '../checks/doubts.ts';
import { explainedRow } from '../figure/explained.ts';
import { knownOf } from '../figure/figure-lifter.ts';
import type { ReadContext } from '../open-book.ts';
import type { CellInfo } from '../sheet/sheet-answers.ts';
import { cellInfoOf } from '../sheet/views.ts';
import { countText, figureText, outcomeText, valueText } from '../text/shown.ts';
import type { Relative, Working, WorkingCall, WorkingConstant, WorkingStep } from './working-answers.ts';
import { type Call, callsIn } from './working-calls.ts';
import { workingText } from './working-text.ts';

/** A formula that reads a long range tells this many of its cells. */
const RELATIVES = 60;

/** How a cell came about. @throws Refusal for a place that is not there */
export function workingOf(context: ReadContext, place: Required<Place>): Working {
  const info = cellInfoOf(context, place);
  const sheet = sheetOf(context.book, place.sheet);
  const column = columnOf(sheet, place.column);
  const written =
    info.from === 'column formula'
      ? column.formula
      : info.from === 'own formula'
        ? info.editText.replace(/^=/, '')
        : undefined;
  const here =
    written !== undefined && info.from === 'column formula' ? shiftRelative(written, place.row, 0) : written;
  const value = context.calculation.value(place.sheet, place.column, place.row);
  const stopped = isIssue(value) && (value.reason === 'hung' || value.reason === 'cycle');
  const calls = here === undefined || stopped ? [] : callsIn(context, here, place);
  const definitions = [...new Set(calls.map(({ definition }) => definition))];
  const parted =
    columnInRole(sheet, 'observed_lean') === column ||
    definitions.some(({ name }) => name === 'LEAN.EXPLAIN');
  const explained = parted ? explainedRow(context, knownOf(context, sheet, place.row, {})) : null;
  const told = {
    place,
    title: `${column.label}, row ${place.row + 1}`,
    display: info.display,
    unit: signOf(column),
    from: info.from,
    override: info.override,
    ...(info.name === undefined ? {} : { name: info.name }),
    ...(info.sentence === undefined ? {} : { sentence: info.sentence }),
    ...(info.marked === undefined ? {} : { marked: info.marked }),
    ...(written === undefined ? {} : { formula: written, filled: filledIn(context, here!, place) }),
    ...(info.override && column.formula !== undefined ? { columnFormula: column.formula } : {}),
    calls: calls.map((call) => callOf(context, call, place)),
    ...(explained ? { explained } : {}),
    constants: constantsOf(context, calls),
    sources: byCitation(definitions.flatMap(({ sources }) => sources)),
    cautions: [...new Set(definitions.flatMap(({ cautions = [] }) => cautions))],
    doubts: doubtsOf(context)
      .filter((doubt) => !doubt.accepted && isAt(doubt.place, place))
      .map(({ sentence }) => sentence),
    cameFrom: relatives(context, context.calculation.precedents(place), place),
    usedBy: relatives(context, context.calculation.dependents(place), place),
  };
  return { ...told, text: workingText(told) };
}

const isAt = (of: Place, place: Required<Place>): boolean =>
  of.sheet === place.sheet && of.column === place.column && (of.row === undefined || of.row === place.row);

function callOf(
  context: ReadContext,
  { definition, text, result, steps }: Call,
  place: Required<Place>,
): WorkingCall {
  return {
    function: definition.name,
    summary: definition.summary,
    formula: text,
    filled: filledIn(context, text, place),
    result: outcomeText(result, definition.result.unit, context.locale),
    ...(isIssue(result) ? { sentence: context.calculation.sentence(result) } : {}),
    rule: definition.rule,
    steps: steps.map((step) => stepOf(context, step)),
  };
}

function stepOf(
  { locale }: ReadContext,
  { name, symbol, rule, value, unit, constants = [] }: Step,
): WorkingStep {
  return {
    name,
    ...(symbol ? { symbol } : {}),
    ...(rule ? { rule } : {}),
    value,
    unit,
    text: typeof value === 'number' ? figureText(value, unit, locale) : value,
    constants: constants.map((constant) => constant.name),
  };
}

/** Every constant of the steps once; of a function that tells no steps, all it declares. */
function constantsOf({ locale }: ReadContext, calls: readonly Call[]): readonly WorkingConstant[] {
  const all = new Map<string, Constant>();
  for (const { definition, steps } of calls) {
    const used = steps.flatMap(({ constants = [] }) => constants);
    for (const one of used.length ? used : (definition.constants ?? [])) all.set(one.name, one);
  }
  return [...all.values()].map(({ name, value, unit, source }) => ({
    name,
    text: figureText(value, unit, locale),
    source,
  }));
}

const byCitation = (sources: readonly Source[]): readonly Source[] => [
  ...new Map(sources.map((source) => [source.citation, source])).values(),
];

/** The formula with every name and address replaced by what stands there. */
function filledIn(context: ReadContext, formula: string, place: Required<Place>): string {
  return rewrite(formula, (mention) => ({ ...mention.span, text: meaning(context, mention, place) }));
}

function meaning(context: ReadContext, mention: Mention, place: Required<Place>): string {
  const { book, calculation, locale } = context;
  const home = sheetOf(book, place.sheet);
  const other = (name: string) => book.sheets.find((one) => nameKey(one.name) === nameKey(name));
  const at = (sheet: string, column: Column, row: number): string =>
    valueText(calculation.value(sheet, column.id, row), column, locale);
  switch (mention.type) {
    case 'name': {
      const column = columnNamed(home, mention.name);
      if (column) return at(home.id, column, place.row);
      const named = book.names.get(nameKey(mention.name));
      return named
        ? at(named.sheet, columnOf(sheetOf(book, named.sheet), named.column), named.row)
        : mention.name;
    }
    case 'qualified': {
      const sheet = other(mention.sheet);
      const column = sheet && columnNamed(sheet, mention.name);
      return column
        ? `${mention.sheet}.${mention.name} [${countText(calculation.column(sheet.id, column.id))}]`
        : `${mention.sheet}.${mention.name}`;
    }
    case 'cell': {
      const sheet = mention.sheet === undefined ? home : other(mention.sheet);
      const column = sheet?.columns[mention.at.column];
      return sheet && column ? at(sheet.id, column, mention.at.row) : '#REF!';
    }
    case 'cells': {
      const rows = mention.to.row - mention.from.row + 1;
      return `[${rows * (mention.to.column - mention.from.column + 1)} cells]`;
    }
  }
}

function relatives(context: ReadContext, places: readonly Place[], of: Place): readonly Relative[] {
  const { book, calculation, locale } = context;
  return places.slice(0, RELATIVES).map((place) => {
    const sheet = sheetOf(book, place.sheet);
    const column = columnOf(sheet, place.column);
    const where = place.row === undefined ? 'whole column' : `row ${place.row + 1}`;
    const at = `${sheet.id === of.sheet ? '' : `${sheet.label}: `}${column.label}, ${where}`;
    const named = [...book.names.values()].find(
      (one) => one.sheet === place.sheet && one.column === place.column && one.row === place.row,
    );
    return {
      place,
      label: named ? `${named.name} (${at})` : at,
      text:
        place.row === undefined
          ? countText(calculation.column(sheet.id, column.id))
          : valueText(calculation.value(sheet.id, column.id, place.row), column, locale).replaceAll('"', ''),
    };
  });
}

import { isIssue } from '../../../functions/core/issue.ts';
import * as say from '../../../functions/tables/sources.ts';
import { columnNamed } from '../../book/book.ts';
import type { Sheet } from '../../book/model.ts';
import { columnInRole, roleOf } from '../../book/roles.ts';
import { writeDate } from '../../units/date.ts';
import type { Figure } from '../api.ts';
import { figureOf } from '../figure.ts';
import type { Viewed } from '../views.ts';
import { usualNumberLines } from './numbers.ts';
import { usualRetestWeeks } from './rules.ts';
import { type HandoutPart, type HandoutRule, type HandoutSettings, handoutParts } from './settings.ts';
import { errorWords, filled, numberIn, readable, unknownPlaces, valueIn } from './texts.ts';
import { usualRulesFor } from './usual-rules.ts';

/** What every handout says, whatever its settings. */
export const handoutCautions: readonly string[] = [
  'Leans are in whole degrees: ±1 cm and ±2° of measuring error are ±2–3° of lean.',
  say.modelCaution,
  say.liftCaution,
  say.painCaution,
  say.loadCaution,
];

/** One athlete's page as data. */
export interface Handout {
  readonly book: string;
  readonly row: number;
  readonly athlete: string;
  readonly parts: readonly HandoutPart[];
  readonly tested: string | null;
  readonly figure: Figure;
  readonly numbers: readonly { readonly label: string; readonly value: string; readonly error: string }[];
  readonly findings: readonly string[];
  readonly toTry: readonly string[];
  readonly retest: string | null;
  readonly contact: string | null;
  readonly cautions: readonly string[];
}

/** How the handouts of a sheet are made: its settings with everything usual filled in, and what is wrong with them. */
export interface Recipe {
  readonly sheet: Sheet;
  readonly settings: HandoutSettings;
  readonly rules: readonly HandoutRule[];
  /** A sentence for each rule that cannot be used. */
  readonly notes: readonly string[];
}

/** Sorts out which rules can be used on a sheet. The usual ones are left out quietly, the book's own with a sentence. */
export function recipeFor(viewed: Viewed, sheet: Sheet, settings: HandoutSettings): Recipe {
  const own = settings.rules;
  const notes: string[] = [];
  const rules = (own ?? usualRulesFor(viewed.book, sheet)).filter((rule, index) => {
    const problem = problemOf(viewed, rule, sheet);
    if (problem !== null && own) notes.push(`Rule ${index + 1} of the handouts is left out: ${problem}`);
    return problem === null;
  });
  return { sheet, settings, rules, notes };
}

/** Why a rule can be said of nobody; null when it can. */
export function problemOf(viewed: Viewed, { when, say }: HandoutRule, sheet: Sheet): string | null {
  const place = { sheet: sheet.id, column: sheet.columns[0]!.id, row: 0 };
  const [problem] = viewed.calculation.check(when, place).problems;
  if (problem) return problem.sentence;
  const [unknown] = unknownPlaces(viewed, say, sheet);
  return unknown === undefined
    ? null
    : `its sentence has a place {${unknown}}, which is neither a column of ${sheet.label} nor a named cell.`;
}

export function handoutOf(viewed: Viewed, recipe: Recipe, row: number): Handout {
  const { sheet, settings } = recipe;
  const figure = figureOf(viewed, sheet.id, row);
  const said = (part: HandoutRule['part']): string[] =>
    recipe.rules
      .filter((rule) => rule.part === part && valueIn(viewed, rule.when, sheet, row) === true)
      .flatMap((rule) => filled(viewed, rule.say, sheet, row) ?? []);
  const tested = dateIn(viewed, sheet, row, settings.tested);
  return {
    book: viewed.book.title,
    row,
    athlete: figure.title,
    parts: settings.parts ?? handoutParts,
    tested: tested === null ? null : writeDate(tested, viewed.locale),
    figure,
    numbers: numbersOf(viewed, recipe, figure, row),
    findings: said('finding'),
    toTry: said('try'),
    retest: retestWords(viewed, tested, settings.retestWeeks ?? usualRetestWeeks),
    contact: settings.contact ?? null,
    cautions: handoutCautions,
  };
}

function numbersOf(
  viewed: Viewed,
  { sheet, settings }: Recipe,
  figure: Figure,
  row: number,
): Handout['numbers'] {
  return (settings.numbers ?? usualNumberLines(viewed.book, sheet)).flatMap(({ column: name, error }) => {
    const column = columnNamed(sheet, name);
    if (!column) return [];
    const value = viewed.calculation.value(sheet.id, column.id, row);
    const text = isIssue(value)
      ? `none: ${viewed.calculation.sentence(value)}`
      : readable(value, column, viewed);
    if (text === null) return [];
    const isLean = roleOf(column) === 'lean' || roleOf(column) === 'lean_lifted';
    const off =
      error === undefined ? (isLean ? figure.leanError : null) : numberIn(viewed, error, sheet, row);
    return [
      { label: column.label, value: text, error: isIssue(value) ? '' : errorWords(off, column, viewed) },
    ];
  });
}

function dateIn(viewed: Viewed, sheet: Sheet, row: number, name: string | undefined): number | null {
  const column = name === undefined ? columnInRole(sheet, 'tested') : columnNamed(sheet, name);
  if (column?.kind !== 'date') return null;
  const value = viewed.calculation.value(sheet.id, column.id, row);
  return typeof value === 'number' ? value : null;
}

function retestWords(viewed: Viewed, tested: number | null, weeks: number): string | null {
  if (weeks === 0) return null;
  if (tested === null) return `Test again in ${weeks} ${weeks === 1 ? 'week' : 'weeks'}.`;
  return `Test again from ${writeDate(tested + Math.round(weeks * 7), viewed.locale)} on, the same way and at the same time of day.`;
}

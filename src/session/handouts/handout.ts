import { isIssue } from '../../../functions/core/issue.ts';
import * as say from '../../../functions/tables/sources.ts';
import { columnNamed } from '../../book/book.ts';
import type { Sheet } from '../../book/model.ts';
import { columnInRole, roleIn } from '../../book/roles/column-in-role.ts';
import { writeDate } from '../../units/date.ts';
import { figureOf } from '../figure/figure.ts';
import type { Figure } from '../figure/figure-answers.ts';
import type { ReadContext } from '../open-book.ts';
import { headingUnit } from '../text/column-unit.ts';
import { decide } from './decide.ts';
import { usualNumberLines } from './handout-numbers.ts';
import { usualRetestWeeks } from './handout-rules.ts';
import {
  type HandoutPart,
  type HandoutRule,
  type HandoutSettings,
  handoutParts,
} from './handout-settings.ts';
import { errorWords, numberIn, readable, unknownPlaces } from './texts.ts';
import { usualRulesFor } from './usual-rules.ts';

/** What every handout says, whatever its settings. */
export const handoutCautions: readonly string[] = [
  'Leans are in whole degrees. Together, errors of ±1 cm and ±2° shift the lean by about 2–4°.',
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
  /** Sentences that could not be decided, each with the reason; a part of which one is open is never called empty. */
  readonly open: readonly Open[];
  readonly retest: string | null;
  readonly contact: string | null;
  readonly cautions: readonly string[];
}

/** A sentence of which it is not known whether it holds. `rule` counts from 1. */
export interface Open {
  readonly rule: number;
  readonly part: HandoutRule['part'];
  readonly reason: string;
}

/** How the handouts of a sheet are made: its settings with everything usual filled in, and what is wrong with them. */
export interface Recipe {
  readonly sheet: Sheet;
  readonly settings: HandoutSettings;
  /** All rules, in the order in which the book has them. */
  readonly rules: readonly HandoutRule[];
  /** Rules that can be said of nobody: what is wrong with each. */
  readonly unusable: readonly Open[];
}

/** Sorts out which rules can be used on a sheet. */
export function recipeFor(context: ReadContext, sheet: Sheet, settings: HandoutSettings): Recipe {
  const rules = settings.rules ?? usualRulesFor(context.book, sheet);
  const unusable = rules.flatMap((rule, index): Open[] => {
    const reason = problemOf(context, rule, sheet);
    return reason === null ? [] : [{ rule: index + 1, part: rule.part, reason }];
  });
  return { sheet, settings, rules, unusable };
}

/** Why a rule can be said of nobody; null when it can. */
export function problemOf(context: ReadContext, { when, say }: HandoutRule, sheet: Sheet): string | null {
  const place = { sheet: sheet.id, column: sheet.columns[0]!.id, row: 0 };
  const [problem] = context.calculation.check(when, place).problems;
  if (problem) return problem.sentence;
  const [unknown] = unknownPlaces(context, say, sheet);
  return unknown === undefined
    ? null
    : `its sentence has a place {${unknown}}, which is neither a column of ${sheet.label} nor a setting.`;
}

export function handoutOf(context: ReadContext, recipe: Recipe, row: number): Handout {
  const { sheet, settings } = recipe;
  const figure = figureOf(context, sheet.id, row);
  const open: Open[] = [...recipe.unusable];
  const texts: Record<HandoutRule['part'], string[]> = { finding: [], try: [] };
  recipe.rules.forEach((rule, index) => {
    if (recipe.unusable.some((one) => one.rule === index + 1)) return;
    const decided = decide(context, rule, sheet, row);
    if (decided.is === 'said') texts[rule.part].push(decided.text);
    if (decided.is === 'open') open.push({ rule: index + 1, part: rule.part, reason: decided.reason });
  });
  const tested = dateIn(context, sheet, row, settings.tested);
  return {
    book: context.book.title,
    row,
    athlete: figure.title,
    parts: settings.parts ?? handoutParts,
    tested: tested === null ? null : writeDate(tested),
    figure,
    numbers: numbersOf(context, recipe, figure, row),
    findings: texts.finding,
    toTry: texts.try,
    open,
    retest: retestWords(tested, settings.retestWeeks ?? usualRetestWeeks),
    contact: settings.contact ?? null,
    cautions: handoutCautions,
  };
}

function numbersOf(
  context: ReadContext,
  { sheet, settings }: Recipe,
  figure: Figure,
  row: number,
): Handout['numbers'] {
  return (settings.numbers ?? usualNumberLines(context.book, sheet)).flatMap(({ column: name, error }) => {
    const column = columnNamed(sheet, name);
    if (!column) return [];
    const value = context.calculation.value(sheet.id, column.id, row);
    const text = isIssue(value)
      ? `none: ${context.calculation.sentence(value)}`
      : readable(value, column, context, headingUnit(context, sheet.id, column));
    if (text === null) return [];
    const isLean = ['lean', 'lean_used', 'lean_lifted'].includes(roleIn(sheet, column) ?? '');
    const off =
      error === undefined ? (isLean ? figure.leanError : null) : numberIn(context, error, sheet, row);
    return [
      { label: column.label, value: text, error: isIssue(value) ? '' : errorWords(off, column, context) },
    ];
  });
}

function dateIn(context: ReadContext, sheet: Sheet, row: number, name: string | undefined): number | null {
  const column = name === undefined ? columnInRole(sheet, 'tested') : columnNamed(sheet, name);
  if (column?.kind !== 'date') return null;
  const value = context.calculation.value(sheet.id, column.id, row);
  return typeof value === 'number' ? value : null;
}

function retestWords(tested: number | null, weeks: number): string | null {
  if (weeks === 0) return null;
  if (tested === null) return `Test again in ${weeks} ${weeks === 1 ? 'week' : 'weeks'}.`;
  return `Test again from ${writeDate(tested + Math.round(weeks * 7))} on, the same way and at the same time of day.`;
}

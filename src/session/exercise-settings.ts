/** Settings that name an exercise, and the exercises that the log has: one that no row has computes nothing. */
import { Kind, type Range } from '../../functions/core/value.ts';
import type { Book, Column, NamedCell, Sheet } from '../book/model.ts';
import { nameKey } from '../book/names.ts';
import type { Calculation } from '../calc/api.ts';
import { headingKey, synonymIndex, synonyms } from '../intake/detect/api.ts';

const lines = synonymIndex(synonyms);
const isExercise = ({ kind, name, label, role = '' }: Column): boolean =>
  (kind === 'text' || kind === 'choice') &&
  [name, label, role].some((text) => lines.get(headingKey(text)) === lines.get('exercise'));

/** Exercises that are offered, at most. */
export const MOST_EXERCISES = 8;

/** What is asked of a book here. */
export interface Asked {
  readonly book: Book;
  readonly calculation: Pick<Calculation, 'column'>;
}

/** What a setting that names an exercise offers. */
export interface OfferedExercises {
  readonly row: number;
  /** Id. */
  readonly column: string;
  /** The exercises that the log has, the most frequent first. */
  readonly choices: readonly string[];
  /** No row has what the setting says: why, and what was found. */
  readonly sentence?: string;
}

/** The settings on a sheet that name an exercise, where the log has any. */
export function offeredExercises(asked: Asked, sheet: string): readonly OfferedExercises[] {
  if (asked.book.names.size === 0) return [];
  return exerciseSettings(asked.book, (setting) => setting.sheet === sheet).flatMap((one) => {
    const { choices, sentence } = stateOfSetting(asked, one);
    const { row, column } = one.setting;
    return choices.length === 0
      ? []
      : [{ row, column, choices, ...(sentence === undefined ? {} : { sentence }) }];
  });
}

/** What a setting says, what its log has, and why the two do not meet. */
export function stateOfSetting(
  { book, calculation }: Asked,
  { setting, sheet, column }: ExerciseSetting,
): { readonly choices: readonly string[]; readonly text: string; readonly sentence?: string } {
  const said = textOf(book, setting);
  const found = exercisesIn(calculation.column(sheet.id, column.id));
  const offered = [...found.values()].sort((a, b) => b.rows - a.rows);
  const choices = offered.map(({ text }) => text);
  const text = said?.trim() ?? '';
  if (said === undefined || found.size === 0 || found.has(text.toLowerCase())) return { choices, text };
  const label = setting.name.replaceAll('_', ' ');
  const has = offered
    .slice(0, MOST_EXERCISES)
    .map(({ text: one, rows }) => `${one} (${rows} ${rows === 1 ? 'row' : 'rows'})`);
  return {
    choices,
    text,
    sentence: `The setting “${label}” is ${text === '' ? 'blank' : `“${text}”`}, and no row of ${sheet.label} has that exercise. Found: ${has.join(', ')}.`,
  };
}

export interface ExerciseSetting {
  readonly setting: NamedCell;
  readonly sheet: Sheet;
  readonly column: Column;
}

/** Named cells beside which a formula has a column of exercises: `exercise = main_lift`, `COUNTIFS(log.exercise, main_lift)`. */
export function exerciseSettings(
  book: Book,
  wanted: (setting: NamedCell) => boolean = () => true,
): readonly ExerciseSetting[] {
  const { sheets, names } = book;
  const settings = [...names.values()].filter(
    (setting) => wanted(setting) && textOf(book, setting) !== undefined,
  );
  if (settings.length === 0) return [];
  const formulas = sheets.flatMap((home) => [
    ...home.columns.flatMap(({ formula }) => (formula === undefined ? [] : [{ home, formula }])),
    ...[...home.cells.values()].flatMap((cells) =>
      [...cells.formulas.values()].map((formula) => ({ home, formula })),
    ),
  ]);
  return settings.flatMap((setting): ExerciseSetting[] => {
    const beside = new RegExp(`(?:([\\w]+)\\s*\\.\\s*)?([\\w]+)\\s*(?:=|<>|,)\\s*${setting.name}\\b`, 'gi');
    for (const { home, formula } of formulas)
      for (const [, of, name] of formula.matchAll(beside)) {
        const sheet = of === undefined ? home : sheets.find((one) => nameKey(one.name) === nameKey(of));
        const column = sheet?.columns.find((one) => nameKey(one.name) === nameKey(name!));
        if (sheet && column && isExercise(column)) return [{ setting, sheet, column }];
      }
    return [];
  });
}

/** What a text cell says; undefined for other kinds. */
function textOf({ sheets }: Book, { sheet: id, column, row }: NamedCell): string | undefined {
  const cell = sheets
    .find((one) => one.id === id)
    ?.cells.get(column)
    ?.get(row);
  return cell === null || cell === undefined ? '' : typeof cell === 'string' ? cell : undefined;
}

interface Exercise {
  readonly text: string;
  readonly rows: number;
}
const counted = new WeakMap<Range, ReadonlyMap<string, Exercise>>();

/** The exercises of a column by their text in lower case, with the rows of each. */
function exercisesIn(range: Range): ReadonlyMap<string, Exercise> {
  const known = counted.get(range);
  if (known) return known;
  const found = new Map<string, Exercise>();
  for (let row = 0; row < range.kinds.length; row++) {
    if (range.kinds[row] !== Kind.text) continue;
    const text = (range.texts?.[row] ?? '').trim();
    if (text === '') continue;
    const key = text.toLowerCase();
    const before = found.get(key);
    found.set(key, { text: before?.text ?? text, rows: (before?.rows ?? 0) + 1 });
  }
  counted.set(range, found);
  return found;
}

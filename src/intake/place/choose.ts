import { limits } from '../../book/file-frame.ts';
import type { Column, Sheet } from '../../book/model.ts';
import { nameKey, properName } from '../../book/names.ts';
import { dimensions } from '../../units/dimension.ts';
import { unitFromWord } from '../../units/unit.ts';
import type { ColumnChoice, ColumnFinding, Findings, Target } from '../api.ts';
import { asInLog, countsSets, headingKey, readHeading } from '../detect/index.ts';
import type { Recipe, RecipeColumn } from '../import-settings/index.ts';
import { listed } from '../listed.ts';
import type { ImportOptions } from '../options.ts';
import { IntakeRefusal, note } from '../sentences/index.ts';
import { declareRoles } from './declare-roles.ts';
import { type Mapping, type Match, mapByHeadings, mapByPosition, mapByRecipe } from './map.ts';
import { tonnageColumn } from './tonnage.ts';

/** Which column of the file goes where. */
export interface Chosen extends Mapping {
  /** Columns that the sheet does not have yet. */
  readonly newColumns: readonly Column[];
  /** Those of them that no column of the file feeds: they compute. */
  readonly computing: readonly Column[];
  /** Ids of the new columns. */
  readonly isNew: ReadonlySet<string>;
  /** Matches that were not taken because the sheet computes that column. */
  readonly computed: readonly Match[];
  readonly leftOut: readonly ColumnFinding[];
  /** Columns that only give the units of others. */
  readonly units: readonly ColumnFinding[];
}

/**
 * Finds the column that each column of the file feeds, and makes the columns that are new.
 * @throws IntakeRefusal when the file does not fit the sheet or the recipe
 */
export function chooseColumns(
  sheet: Sheet,
  target: Target,
  findings: Findings,
  recipe: Recipe | null,
  options: ImportOptions,
): Chosen {
  const choices = options.choices?.columns ?? {};
  const all = asInLog(
    findings.columns.filter((c) => c.heading !== '' || c.filled > 0),
    sheet.columns.map(({ label }) => label),
  );
  const isUnits = (c: ColumnFinding): boolean =>
    (c.unitsOf?.value.length ?? 0) > 0 &&
    choices[c.index]?.feeds === undefined &&
    !recipe?.columns.some(({ heading }) => headingKey(heading) === headingKey(c.heading));
  const units = all.filter(isUnits);
  const sources = all.filter((c) => !isUnits(c));
  const mapping = decided(
    recipe
      ? mapByRecipe(all, sheet.columns, recipe, findings.name)
      : (findings.headingLines.value === 0 && target.sheet && mapByPosition(sources, sheet.columns)) ||
          mapByHeadings(sources, sheet.columns, options.synonyms ? { synonyms: options.synonyms } : {}),
    sheet,
    choices,
  );
  // A computed column keeps its formula unless a recipe says that the file goes over it.
  const computed = mapping.matches.filter(
    (m) => m.column.formula !== undefined && m.by !== 'recipe' && m.by !== 'choice',
  );
  const matches = mapping.matches.filter((m) => !computed.includes(m));
  const rest = recipe ? (recipe.rest ?? 'ignore') : (options.rest ?? 'add');
  if (matches.length === 0 && target.sheet && sheet.columns.length > 0 && options.rest !== 'add')
    throw new IntakeRefusal('no-matching-column', {
      name: findings.name,
      count: sources.length,
      headings: listed(sources.map((s) => s.heading || s.label)),
      sheet: sheet.name,
      columns: listed(sheet.columns.map((c) => c.name)),
    });
  const taken = new Set(sheet.columns.map((c) => nameKey(c.name)));
  const ids = new Set(sheet.columns.map((c) => c.id));
  const isTaken = (name: string): boolean =>
    taken.has(nameKey(name)) || ids.has(name) || (options.reserved?.(name) ?? false);
  const leftOut = (source: ColumnFinding): boolean => rest !== 'add' || choices[source.index]?.feeds === null;
  const unmatched = mapping.unmatched.filter((source) => !units.includes(source));
  const made = unmatched
    .filter((source) => !leftOut(source))
    .map((source): Match => {
      const column = newColumn(source, isTaken);
      taken.add(nameKey(column.name));
      return { source, column, by: 'name', how: howOf(source, column, null, choices[source.index]) };
    });
  if (findings.rowIsSet?.value) {
    const one = oneSet(sheet, findings, [...matches, ...made], isTaken);
    if (one) (one.isNew ? made : matches).push(one.match);
  }
  const fresh = made.filter(({ column }) => !sheet.columns.includes(column));
  const declared = declareRoles(
    fresh.map(({ column }) => column),
    sheet,
  );
  for (const [at, match] of fresh.entries())
    made.splice(made.indexOf(match), 1, { ...match, column: declared[at]! });
  const tonnage = sheet.columns.length === 0 ? tonnageColumn(made, isTaken) : null;
  const computing = tonnage ? [tonnage] : [];
  const newColumns = [...made.map((m) => m.column), ...computing];
  const columns = sheet.columns.length + newColumns.length;
  if (columns > limits.columns)
    throw new IntakeRefusal('too-many-columns', {
      name: findings.name,
      sheet: sheet.name,
      columns,
      most: limits.columns,
    });
  return {
    matches: [...matches, ...made].sort((a, b) => placeOf(a) - placeOf(b)),
    unmatched,
    proposals: mapping.proposals,
    units,
    newColumns,
    computing,
    isNew: new Set(newColumns.map(({ id }) => id)),
    computed,
    leftOut: unmatched.filter(leftOut),
  };
}

/** Position of what no column of the file gives; such columns come last. */
export const NOWHERE = -1;

const placeOf = ({ source }: Match): number =>
  source.index === NOWHERE ? Number.POSITIVE_INFINITY : source.index;

/** The column that counts sets gets 1 in each row; null where something else feeds it, or a formula does. */
function oneSet(
  sheet: Sheet,
  findings: Findings,
  matches: readonly Match[],
  taken: (name: string) => boolean,
): { match: Match; isNew: boolean } | null {
  const there = sheet.columns.find(({ name, label }) => countsSets(name) || countsSets(label));
  if (there && (there.formula !== undefined || matches.some(({ column }) => column.id === there.id)))
    return null;
  const like = findings.columns[0]!;
  const source: ColumnFinding = {
    ...like,
    index: NOWHERE,
    heading: '',
    label: 'Sets',
    kind: { value: 'number', certainty: 'sure', because: note('chosen') },
    unit: { value: null, certainty: 'sure', because: note('chosen') },
    dimension: null,
    unitsAt: null,
    unitsOf: null,
    examples: [],
  };
  return {
    match: { source, column: there ?? newColumn(source, taken), by: 'choice', how: null },
    isNew: there === undefined,
  };
}

/** The mapping with what the user decided about single columns put over it. */
function decided(mapping: Mapping, sheet: Sheet, choices: Readonly<Record<number, ColumnChoice>>): Mapping {
  const feeds = (source: ColumnFinding): string | null | undefined => choices[source.index]?.feeds;
  const all = [...mapping.matches.map((m) => m.source), ...mapping.unmatched];
  const chosen = all.flatMap((source): Match[] => {
    const name = feeds(source);
    const column = name ? sheet.columns.find((c) => nameKey(c.name) === nameKey(name)) : undefined;
    return column ? [{ source, column, by: 'choice', how: null }] : [];
  });
  const taken = new Set(chosen.map((m) => m.column.id));
  const kept = mapping.matches.filter((m) => feeds(m.source) === undefined && !taken.has(m.column.id));
  const matches = [...chosen, ...kept].map((m) => ({
    ...m,
    how: howOf(m.source, m.column, m.how, choices[m.source.index]),
  }));
  const used = new Set(matches.map((m) => m.source.index));
  return {
    matches,
    unmatched: all.filter((source) => !used.has(source.index)),
    proposals: mapping.proposals.filter((p) => !used.has(p.source.index)),
  };
}

/** What a recipe says about a column, with the user's choices over it. */
function howOf(
  source: ColumnFinding,
  column: Column,
  how: RecipeColumn | null,
  choice: ColumnChoice | undefined,
): RecipeColumn | null {
  if (!choice) return how;
  const {
    kind: _kind,
    label: _label,
    feeds: _feeds,
    unitsOf: _of,
    unit,
    missing,
    yes,
    no,
    readAs,
    ...rest
  } = choice;
  return {
    heading: source.heading || source.label,
    column: column.name,
    ...how,
    ...Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined)),
    ...(unit ? { unit } : {}),
    ...(readAs ? { readAs: { ...how?.readAs, ...readAs } } : {}),
    ...(missing ? { missing: [...missing] } : {}),
    ...(yes ? { yes: [...yes] } : {}),
    ...(no ? { no: [...no] } : {}),
  };
}

/** What the book's file accepts. */
const LONGEST_LABEL = 300;

/** A label as long as a book takes one; a heading that is longer stands whole in the column's note. */
const clipped = (label: string): string =>
  label.length > LONGEST_LABEL ? `${label.slice(0, LONGEST_LABEL - 1)}…` : label;

function newColumn(source: ColumnFinding, taken: (name: string) => boolean): Column {
  const name = properName(source.label, taken);
  const kind = source.kind.value;
  const unit = source.unit.value === null ? undefined : unitFromWord(source.unit.value);
  const dimension = kind === 'number' ? (source.dimension ?? undefined) : undefined;
  const label = clipped(source.label);
  const per = kind === 'number' ? readHeading(source.heading).per : null;
  return {
    id: name,
    name,
    label,
    ...(label === source.label ? {} : { note: source.heading.slice(0, limits.text) }),
    kind,
    ...(dimension ? { dimension, unit: hoursOf(source) ?? unit?.unit ?? dimensions[dimension] } : {}),
    ...(per ? { per } : {}),
  };
}

/** Times of hours and minutes are shown in hours, as they came, unless the heading says minutes. */
const hoursOf = ({ timesOnly, clock, label }: ColumnFinding): string | undefined =>
  timesOnly && clock?.value === 'h:mm' && !/min/i.test(label) ? 'h' : undefined;

export function newSheet(target: Target, findings: Findings): Sheet {
  const stem = findings.name.replace(/^.*[\\/]/, '').replace(/\.[^.]{1,5}$/, '');
  const label = clipped(target.label ?? (stem || 'Sheet'));
  const name = properName(
    label,
    (n) => target.book?.sheets.some((s) => nameKey(s.name) === nameKey(n) || s.id === n) ?? false,
  );
  return { id: name, name, label, purpose: 'gathered', columns: [], rows: 0, cells: new Map() };
}

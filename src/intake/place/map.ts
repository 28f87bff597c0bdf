/** Finds for each heading of a file the column of the sheet that it is meant for. */
import { closest, distance } from 'fastest-levenshtein';
import type { Column } from '../../book/model.ts';
import { goneName } from '../../book/references/gone.ts';
import { roles } from '../../book/roles/list.ts';
import type { ColumnFinding } from '../api.ts';
import { headingKey, readHeading, synonymIndex, synonyms } from '../detect/index.ts';
import type { Recipe, RecipeColumn } from '../import-settings/index.ts';
import { listed } from '../listed.ts';
import { IntakeRefusal } from '../sentences/index.ts';

export type MatchedBy = 'choice' | 'position' | 'recipe' | 'name' | 'label' | 'synonym' | 'spelling';

/** A column of the file and the column of the sheet that it feeds. */
export interface Match {
  readonly source: ColumnFinding;
  readonly column: Column;
  readonly by: MatchedBy;
  /** From the recipe, when there is one. */
  readonly how: RecipeColumn | null;
}

export interface Mapping {
  readonly matches: readonly Match[];
  /** Columns of the file that feed nothing yet. */
  readonly unmatched: readonly ColumnFinding[];
  /** Close spellings, and columns that are alone of their kind: proposed, never taken without being asked for. */
  readonly proposals: readonly Proposal[];
}

export interface Proposal {
  readonly source: ColumnFinding;
  readonly column: Column;
  readonly by: 'spelling' | 'content';
}

export interface MapOptions {
  /** Further lines of synonyms; they go before ours. */
  readonly synonyms?: readonly (readonly string[])[];
}

const sameHeading = (a: string, b: string): boolean =>
  a.trim().toLowerCase().replace(/\s+/g, ' ') === b.trim().toLowerCase().replace(/\s+/g, ' ');

/** Finds for each column of the file the column of the sheet that it feeds; each column is fed once. */
export function mapByHeadings(
  sources: readonly ColumnFinding[],
  columns: readonly Column[],
  options: MapOptions = {},
): Mapping {
  const lines = synonymIndex([...(options.synonyms ?? []).map((line) => line.map(headingKey)), ...synonyms]);
  const matches: Match[] = [];
  const fed = new Set<string>();
  const used = new Set<number>();
  const take = (by: MatchedBy, fits: (source: ColumnFinding, column: Column) => boolean): void => {
    for (const source of sources) {
      if (used.has(source.index) || source.heading === '') continue;
      const column = columns.find((c) => !fed.has(c.id) && fits(source, c));
      if (!column) continue;
      fed.add(column.id);
      used.add(source.index);
      matches.push({ source, column, by, how: null });
    }
  };
  take('name', (s, c) => sameHeading(s.heading, c.name) || sameHeading(s.label, c.name));
  take('label', (s, c) => sameHeading(s.heading, c.label) || sameHeading(s.label, c.label));
  take(
    'label',
    (s, c) => keysOf(c).includes(headingKey(s.label)) || keysOf(c).includes(headingKey(s.heading)),
  );
  take('synonym', (s, c) => {
    const line = lines.get(headingKey(s.label)) ?? lines.get(headingKey(s.heading));
    return line !== undefined && keysOf(c).some((key) => lines.get(key) === line) && fitsDimension(s, c);
  });
  const unmatched = sources.filter((s) => !used.has(s.index));
  const free = columns.filter((c) => !fed.has(c.id) && c.formula === undefined);
  const proposals = unmatched.flatMap((source): Proposal[] => {
    const spelled = closestColumn(source, free);
    if (spelled) return [{ source, column: spelled, by: 'spelling' }];
    const only = onlyOfItsKind(source, unmatched, free);
    return only ? [{ source, column: only, by: 'content' }] : [];
  });
  return { matches: inFileOrder(matches), unmatched, proposals };
}

/** Name and label of a column as they are compared; the label without its unit, too. */
const keysOf = (column: Column): readonly string[] => [
  headingKey(column.name),
  headingKey(column.label),
  headingKey(readHeading(column.label).label),
  ...(column.role === undefined ? [] : roleKeys(column.role)),
];

/** A column that says what it is is found by that, whatever it is called. */
const roleKeys = (role: string): readonly string[] => {
  const known = roles.get(role);
  return known ? [headingKey(role), headingKey(known.label)] : [];
};

/** A synonym with a unit of another dimension means something else: "bar (kg)" feeds no length. */
const fitsDimension = (source: ColumnFinding, column: Column): boolean =>
  source.dimension === null || column.dimension === undefined || source.dimension === column.dimension;

/** What a column holds, as far as that can tell it from others: dates, yes/no, numbers of one dimension. */
const contentOf = (kind: Column['kind'], dimension: string | null | undefined): string | null =>
  kind === 'date' || kind === 'yes-no' ? kind : kind === 'number' && dimension ? dimension : null;

/** The one free column that holds what this one holds, when the file has only this one of the kind, too. */
function onlyOfItsKind(
  source: ColumnFinding,
  sources: readonly ColumnFinding[],
  free: readonly Column[],
): Column | undefined {
  const content = contentOf(source.kind.value, source.dimension);
  if (content === null || sources.filter((s) => contentOf(s.kind.value, s.dimension) === content).length > 1)
    return undefined;
  const columns = free.filter((c) => contentOf(c.kind, c.dimension) === content);
  return columns.length === 1 ? columns[0] : undefined;
}

/**
 * Rows without headings go to the columns in order, when there are as many of each and every one holds what its column
 * holds; null when they don't.
 */
export function mapByPosition(sources: readonly ColumnFinding[], columns: readonly Column[]): Mapping | null {
  const fed = columns.filter((c) => c.formula === undefined);
  if (sources.length === 0 || sources.length > fed.length) return null;
  const fits = (source: ColumnFinding, { kind }: Column): boolean =>
    source.filled === 0 || kind === 'text' || kind === 'choice' || source.kind.value === kind;
  if (!sources.every((source, i) => fits(source, fed[i]!))) return null;
  const matches = sources.map((source, i): Match => ({ source, column: fed[i]!, by: 'position', how: null }));
  return { matches, unmatched: [], proposals: [] };
}

/** The column whose key is nearest in spelling, if it is near: a letter in four may differ. */
function closestColumn(source: ColumnFinding, columns: readonly Column[]): Column | undefined {
  const key = headingKey(source.label);
  if (key.length < 4 || columns.length === 0) return undefined;
  const best = closest(key, columns.flatMap(keysOf));
  if (distance(key, best) > Math.floor(Math.max(key.length, best.length) / 4)) return undefined;
  return columns.find((column) => keysOf(column).includes(best) && fitsDimension(source, column));
}

/**
 * The same by a recipe.
 * @throws IntakeRefusal when the file lacks a heading or the sheet a column that the recipe needs
 */
export function mapByRecipe(
  sources: readonly ColumnFinding[],
  columns: readonly Column[],
  recipe: Recipe,
  file: string,
): Mapping {
  const matches: Match[] = [];
  const used = new Set<number>();
  for (const how of recipe.columns) {
    const column = columns.find((c) => c.name.toLowerCase() === how.column.toLowerCase());
    if (!column)
      throw new IntakeRefusal('recipe-column-unknown', {
        recipe: recipe.title,
        column: goneName(how.column),
        sheet: recipe.sheet,
        columns: listed(columns.map((c) => c.name)),
      });
    const found = sourceFor(sources, how);
    const source = found && withUnitsOf(found, how, sources, recipe, file);
    if (source) {
      used.add(source.index);
      matches.push({ source, column, by: 'recipe', how });
    } else if (!how.optional)
      throw new IntakeRefusal('recipe-misses', {
        name: file,
        heading: how.heading,
        recipe: recipe.title,
        column: how.column,
        headings: listed(sources.map((s) => s.heading)),
      });
  }
  const left = sources.filter((s) => !used.has(s.index));
  if ((recipe.rest ?? 'ignore') === 'ignore')
    return { matches: inFileOrder(matches), unmatched: left, proposals: [] };
  const fed = new Set(matches.map((m) => m.column.id));
  const rest = mapByHeadings(
    left,
    columns.filter((c) => !fed.has(c.id)),
  );
  return { ...rest, matches: inFileOrder([...matches, ...rest.matches]) };
}

/** The column that gives each row's unit, as the settings say; where they name it for others, nothing is guessed. */
function withUnitsOf(
  source: ColumnFinding,
  how: RecipeColumn,
  sources: readonly ColumnFinding[],
  recipe: Recipe,
  file: string,
): ColumnFinding {
  const { unitsIn } = how;
  if (unitsIn === undefined) {
    const at = sources.find(({ index }) => index === source.unitsAt);
    const isForOthers = at && recipe.columns.some((c) => c.unitsIn && sameHeading(c.unitsIn, at.heading));
    return isForOthers ? { ...source, unitsAt: null, unit: { ...source.unit, value: null } } : source;
  }
  const units = sources.find(({ heading }) => sameHeading(heading, unitsIn));
  if (!units)
    throw new IntakeRefusal('recipe-misses', {
      name: file,
      heading: unitsIn,
      recipe: recipe.title,
      column: how.column,
      headings: listed(sources.map((s) => s.heading)),
    });
  return { ...source, unitsAt: units.index };
}

function sourceFor(sources: readonly ColumnFinding[], how: RecipeColumn): ColumnFinding | undefined {
  for (const heading of [how.heading, ...(how.or ?? [])]) {
    const exact = sources.find((s) => sameHeading(s.heading, heading));
    if (exact) return exact;
  }
  const keys = [how.heading, ...(how.or ?? [])].map(headingKey);
  return sources.find((s) => keys.includes(headingKey(s.heading)));
}

/** How many of a recipe's headings a file has, 0 to 1; a file is recognised from 1 on, or proposed from 0.8. */
export function recipeFits(recipe: Recipe, ...headings: readonly (readonly string[])[]): number {
  const keys = new Set(headings.flat().map(headingKey));
  const needed = recipe.columns.filter((c) => !c.optional);
  const found = needed.filter((c) => [c.heading, ...(c.or ?? [])].some((h) => keys.has(headingKey(h))));
  return needed.length === 0 ? 0 : found.length / needed.length;
}

/** How many of a file's headings the import settings name. */
export function recipeCovers(recipe: Recipe, headings: readonly string[]): number {
  const named = new Set(recipe.columns.flatMap((c) => [c.heading, ...(c.or ?? [])]).map(headingKey));
  return headings.filter((heading) => named.has(headingKey(heading))).length;
}

const inFileOrder = (matches: readonly Match[]): Match[] =>
  [...matches].sort((a, b) => a.source.index - b.source.index);

/** Which sheet a file goes to, and by which import settings; what is left open is asked. */
import type { Book, Sheet } from '../../book/model.ts';
import { nameKey } from '../../book/names.ts';
import { recipe as recipeShape } from '../../intake/import-settings/api.ts';
import { type Findings, type Recipe, recipeCovers, recipeFits } from '../../intake/index.ts';
import { mapByHeadings } from '../../intake/place/index.ts';
import type { FileDecisions, SettingsChoice } from './file-reading.ts';

/** Share of the settings' headings from which a file is taken for their next one. */
const KNOWN = 0.8;
/** Share of a file's headings that must fit the sheet on screen for it to go there. */
const FITS = 0.6;

export interface Home {
  /** Id; null makes a new sheet. */
  readonly sheet: string | null;
  /** Key of the import settings; null for none; left out, those of the sheet that fit. */
  readonly recipe?: string | null;
  /** What the file fits equally well; nothing where it is clear. */
  readonly asked: readonly SettingsChoice[];
}

interface Candidate {
  readonly key: string;
  readonly recipe: Recipe;
  readonly sheet: Sheet;
  readonly fits: number;
  /** Headings of the file that the settings name. */
  readonly covers: number;
}

/**
 * The sheet on screen wins where the file fits it, by its import settings or by its columns; else the sheet whose settings
 * the headings call for; else a new one. Settings that fit equally well are asked about.
 */
export function homeOf(book: Book, columns: Findings['columns'], decisions: FileDecisions): Home {
  const { sheet: wanted, near, recipe } = decisions;
  if (recipe !== undefined && wanted !== undefined) return { sheet: wanted, recipe, asked: [] };
  const known = candidates(
    book,
    columns.map(({ heading }) => heading),
  );
  const inSheet = (id: string) => known.filter(({ sheet }) => sheet.id === id);
  if (wanted !== undefined) return { sheet: wanted, ...settled(wanted === null ? [] : inSheet(wanted)) };
  const shown = book.sheets.find(({ id, purpose }) => id === near && purpose === 'gathered');
  if (shown) {
    const own = inSheet(shown.id);
    if (own.length > 0) return { sheet: shown.id, ...settled(own) };
    const share = shareFitting(shown, columns);
    if (share === 1) return { sheet: shown.id, asked: [] };
    if (share >= FITS) {
      const others = best(known.filter(({ fits }) => fits === 1));
      const asked = [
        { sheet: shown.id, label: shown.label, recipe: null, title: null },
        ...others.map(choiceOf),
      ];
      return { sheet: shown.id, asked: others.length === 0 ? [] : asked };
    }
  }
  const found = settled(known);
  const first = best(known)[0];
  // Settings decide the rows of their own sheet only; the key goes along where several sheets could be meant.
  return first ? { sheet: first.sheet.id, ...found } : { sheet: null, asked: [] };
}

/** Sheet and settings follow from what was decided alone. */
export const isDecided = (book: Book, { sheet, recipe }: FileDecisions): boolean =>
  sheet !== undefined &&
  (sheet === null || recipe !== undefined || !readable(book).some((one) => one.sheet.id === sheet));

/** Import settings of the book that may be used for a file in place of those that failed. */
export const otherSettings = (book: Book): SettingsChoice[] => readable(book).map(choiceOf);

const choiceOf = ({ key, recipe, sheet }: Pick<Candidate, 'key' | 'recipe' | 'sheet'>): SettingsChoice => ({
  sheet: sheet.id,
  label: sheet.label,
  recipe: key,
  title: recipe.title,
});

function readable(book: Book): Pick<Candidate, 'key' | 'recipe' | 'sheet'>[] {
  return [...book.parts.recipes].flatMap(([key, json]) => {
    const recipe = recipeShape.safeParse(json).data;
    const sheet = recipe && book.sheets.find(({ name }) => nameKey(name) === nameKey(recipe.sheet));
    return recipe && sheet ? [{ key, recipe, sheet }] : [];
  });
}

const candidates = (book: Book, headings: readonly string[]): Candidate[] =>
  readable(book)
    .map((one) => ({
      ...one,
      fits: recipeFits(one.recipe, headings),
      covers: recipeCovers(one.recipe, headings),
    }))
    .filter(({ fits }) => fits >= KNOWN);

/** Those that fit best: all of their headings there, and most of the file's named. */
function best(known: readonly Candidate[]): Candidate[] {
  const better = (a: Candidate, b: Candidate): number => b.fits - a.fits || b.covers - a.covers;
  const sorted = [...known].sort(better);
  return sorted.filter((one) => better(sorted[0]!, one) === 0);
}

/** One answer, or the question; settings that say the same but for their title are one. */
function settled(known: readonly Candidate[]): Pick<Home, 'recipe' | 'asked'> {
  const different = best(known).filter(
    (one, i, all) => all.findIndex((other) => content(other.recipe) === content(one.recipe)) === i,
  );
  const [first] = different;
  if (!first) return { asked: [] };
  return { recipe: first.key, asked: different.length > 1 ? different.map(choiceOf) : [] };
}

const content = ({ title: _, ...rest }: Recipe): string => JSON.stringify(rest);

/** Share of the file's headings that the sheet has a column for; a sheet without columns takes any file. */
function shareFitting(sheet: Sheet, columns: Findings['columns']): number {
  if (sheet.columns.length === 0) return 1;
  const named = columns.filter(({ heading }) => heading !== '');
  return named.length === 0 ? 0 : mapByHeadings(named, sheet.columns).matches.length / named.length;
}

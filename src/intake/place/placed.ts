import type { Column } from '../../book/model.ts';
import { serialFromIso } from '../../units/date.ts';
import { type DisplayUnit, displayUnitOf, unitFromWord } from '../../units/unit.ts';
import type { PlausibleColumn } from '../api.ts';
import {
  type ColumnBuilder,
  ConstantColumnBuilder,
  DateColumnBuilder,
  NumberColumnBuilder,
  type NumberStyle,
  TextColumnBuilder,
  YesNoColumnBuilder,
} from '../cells/index.ts';
import type { Recipe } from '../import-settings/index.ts';
import { IntakeRefusal } from '../sentences/index.ts';
import { dateWords, missingWords, yesNoPairs } from '../words.ts';
import { NOWHERE } from './choose.ts';
import type { Match } from './map.ts';

/** One column of the file on its way into one of the sheet. */
export interface Placed {
  readonly match: Match;
  readonly builder: ColumnBuilder;
  /** What the cells are written in. */
  readonly unit: DisplayUnit | undefined;
  readonly factor: number;
  readonly bounds: PlausibleColumn | null;
}

export interface PlacingOptions {
  readonly recipe: Recipe | null;
  /** Now, ISO 8601. */
  readonly now: string;
  readonly boundsOf: (column: Column) => PlausibleColumn | null;
  /** Words for missing values that the user chose for this file. */
  readonly missing: readonly string[] | undefined;
  /** Name of the sheet. */
  readonly sheet: string;
  /** Rows that the sheet can take. */
  readonly room: number;
  /** Rows to expect. */
  readonly expected: number;
}

/** Makes the builder for a match: what the recipe says goes before what was found. */
export function placedBy(match: Match, options: PlacingOptions): Placed {
  const { source, column, how } = match;
  const { recipe, expected } = options;
  const chosen = how?.missing ?? recipe?.missing ?? options.missing;
  const missing = chosen ?? missingWords;
  const unit = column.kind === 'number' ? unitFor(match) : undefined;
  const factor = how?.factor ?? 1;
  const bounds = column.kind === 'number' ? options.boundsOf(column) : null;
  return { match, unit, factor, bounds, builder: builderFor() };

  function builderFor(): ColumnBuilder {
    if (source.index === NOWHERE) return new ConstantColumnBuilder(1, expected);
    if (column.kind === 'number')
      return new NumberColumnBuilder(
        {
          missing,
          style: styleFor(match, recipe),
          dimension: column.dimension,
          unit,
          unitsAt: source.unitsAt,
          factor,
          clock: how?.clock ?? source.clock?.value ?? 'h:mm',
          ownUnits: source.ownUnits,
          perCent: source.perCent,
          bounds: bounds ? { min: bounds.min ?? -Infinity, max: bounds.max ?? Infinity } : null,
        },
        expected,
      );
    if (column.kind === 'date') {
      const said = how?.dateOrder ?? recipe?.read?.dateOrder;
      return new DateColumnBuilder(
        {
          missing,
          order: said ?? source.dateOrder?.value ?? 'dmy',
          open: said === undefined && source.dateOrder?.certainty !== 'sure',
          compact: source.kind.value === 'date' || dateWords.test(source.label.toLowerCase()),
          latest: Math.floor(serialFromIso(options.now) ?? Infinity),
        },
        expected,
      );
    }
    if (column.kind === 'yes-no') {
      const [yes, no] = yesNoPairs[0]!;
      return new YesNoColumnBuilder(missing, how?.yes ?? [...yes, '1'], how?.no ?? [...no, '0'], expected);
    }
    return new TextColumnBuilder(
      column.kind === 'choice' ? (column.choices ?? null) : null,
      chosen ?? [],
      expected,
    );
  }
}

/** The marks of numbers; a mark that is decimal after all stands between no groups. */
function styleFor({ source, how }: Match, recipe: Recipe | null): NumberStyle {
  const decimal = how?.decimal ?? recipe?.read?.decimal ?? source.decimal.value;
  const { thousands } = source;
  return { decimal, thousands: thousands === decimal ? (decimal === '.' ? ',' : '.') : thousands };
}

/** The unit of cells: the recipe's, the file's, or the one the column is shown in. */
function unitFor({ source, column, how }: Match): DisplayUnit | undefined {
  if (!column.dimension && !how?.unit) return undefined;
  const word = (source.unitsAt === null ? how?.unit : undefined) ?? source.unit.value;
  if (word === null || word === undefined) return displayUnitOf(column);
  const unit = unitFromWord(word);
  if (!unit)
    throw new IntakeRefusal('unknown-unit', {
      column: column.name,
      unit: word,
      known: 'cm, mm, m, in, ft, kg, lb, …',
    });
  if (unit.dimension !== column.dimension) {
    if (how?.unit === undefined) return displayUnitOf(column);
    throw new IntakeRefusal('unit-of-other-dimension', {
      heading: source.heading,
      unit: unit.unit,
      found: unit.dimension,
      column: column.name,
      dimension: column.dimension ?? 'plain numbers',
    });
  }
  return unit;
}

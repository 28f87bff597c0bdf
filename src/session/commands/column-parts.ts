/** The fields of a column, for the commands that add and change one. */
import { columnSchema } from '../../book/file-frame.ts';
import type { Column } from '../../book/model.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import { unitOf, unitsOf } from '../../units/unit.ts';

const { name, label, kind, dimension, unit, per, choices, formula, note, width, format, hidden, role } =
  columnSchema.shape;

/** What can be said about a column when it is made or changed; null takes a part away. */
export const columnParts = z.strictObject({
  name,
  label: label.unwrap(),
  kind,
  dimension: dimension.nullable(),
  unit: unit.nullable(),
  per: per.nullable(),
  choices: choices.nullable(),
  formula: formula.nullable(),
  note: note.nullable(),
  width: width.nullable(),
  format: format.nullable(),
  hidden: hidden.nullable(),
  role: role.nullable(),
});

/** A column as it comes from a command: parts may be missing or taken away. */
export type Loose = {
  readonly [K in Exclude<keyof Column, 'format'>]?: Column[K] | null | undefined;
} & {
  readonly format?: { digits?: number | undefined; percent?: boolean | undefined } | null | undefined;
} & Pick<Column, 'id' | 'name' | 'label'>;

/** A column without the parts that are null, undefined or make no sense for its kind. */
export function tidyColumn(loose: Loose): Column {
  const parts: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(loose))
    if (value !== null && value !== undefined && value !== '' && value !== false) parts[key] = value;
  const kind = loose.kind ?? 'number';
  parts.kind = kind;
  if (kind !== 'number') for (const key of ['dimension', 'unit', 'per', 'format']) delete parts[key];
  if (kind !== 'choice') delete parts.choices;
  if (parts.dimension === undefined && typeof parts.unit === 'string') {
    // A unit says the dimension.
    const dimension = unitOf(parts.unit)?.dimension;
    if (dimension) parts.dimension = dimension;
    else refuse(`"${parts.unit}" is not a known unit.`);
  }
  const column = { ...parts, label: loose.label } as unknown as Column;
  if (column.dimension && column.unit !== undefined && unitOf(column.unit)?.dimension !== column.dimension)
    refuse(
      `"${column.unit}" is not a unit of ${column.dimension}. Accepted are ${unitsOf(column.dimension)
        .map((u) => u.unit)
        .join(', ')}.`,
    );
  return column;
}

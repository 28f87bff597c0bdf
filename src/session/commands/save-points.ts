/** The command that saves the points placed on a picture in their row. */
import { sheetOf } from '../../book/book.ts';
import type { Cell } from '../../book/cell.ts';
import { limits } from '../../book/file-frame.ts';
import { refuse } from '../../book/refusal.ts';
import { columnInRole } from '../../book/roles/column-in-role.ts';
import { z } from '../../book/zod.ts';
import { type Observation, POINTS } from '../picture/points.ts';
import { missingColumns, STORED } from '../picture/stored-columns.ts';
import { defineCommand } from './define.ts';
import { row, sheetId, together } from './shared.ts';

const spot = z.strictObject({ x: z.number(), y: z.number() });
const names = POINTS.map(({ id }) => id);

const observation: z.ZodType<Observation> = z.strictObject({
  points: z.partialRecord(z.enum(names), spot),
  facing: z.enum(['right', 'left']),
  line: z.enum(['floor', 'plumb']),
  length: z.number().gt(0).max(500),
  camera: z.number().min(50).max(5000).nullable(),
  nearer: z.number().min(-300).max(300),
  file: z.string().max(300),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  time: z.number().min(0).nullable(),
}) as z.ZodType<Observation>;

/**
 * Writes what was digitised on a picture into the columns of a row that store it. With `like`, the row is a new one at the
 * end: it takes what was entered in that row for everything else, so that each frame of a film has its own.
 */
export const savePoints = defineCommand({
  id: 'save-points',
  schema: z.strictObject({ sheet: sheetId, row, like: row.optional(), seen: observation }),
  plan(state, { sheet: id, row: at, like, seen }) {
    const sheet = sheetOf(state.book, id);
    const missing = missingColumns(sheet);
    if (missing.length > 0)
      refuse(
        `${sheet.label} has no columns for a picture’s points. Add a sheet for observed squats, or these columns: ${missing.join(', ')}.`,
      );
    const target = like === undefined ? at : sheet.rows;
    if (target >= limits.rows) refuse(`A sheet has at most ${limits.rows} rows.`);
    const stored = STORED.flatMap(({ name, of }) => {
      const column = columnInRole(sheet, name);
      return column ? [{ column: column.id, cell: of(seen) as Cell }] : [];
    });
    const own = new Set(stored.map(({ column }) => column));
    const copied =
      like === undefined || like >= sheet.rows
        ? []
        : sheet.columns
            .filter((column) => !own.has(column.id) && column.formula === undefined)
            .map((column) => ({ column: column.id, cell: sheet.cells.get(column.id)!.get(like) }));
    const all = [...stored, ...copied];
    return {
      edit: together([
        ...(target >= sheet.rows
          ? [{ do: 'add-rows' as const, sheet: id, row: sheet.rows, count: target + 1 - sheet.rows }]
          : []),
        {
          do: 'put-cells',
          sheet: id,
          row: target,
          columns: all.map(({ column }) => column),
          cells: all.map(({ cell }) => [cell]),
        },
      ]),
      words: `Save the points of row ${target + 1}`,
    };
  },
});

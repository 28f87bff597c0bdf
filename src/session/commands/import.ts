import type { Edit } from '../../book/edit.ts';
import type { Json } from '../../book/model.ts';
import { z } from '../../book/zod.ts';
import { defineCommand } from './define.ts';
import { together } from './shared.ts';

/**
 * Brings in what the intake made of a file: its edits, the record of where they come from and, if it is to be kept, the
 * recipe. One undo takes all of it back. Formulas are left alone: a sheet whose rows are replaced keeps its addresses.
 */
export const importRows = defineCommand({
  id: 'import',
  schema: z.strictObject({
    file: z.string(),
    edits: z.custom<readonly Edit[]>(Array.isArray),
    provenance: z.custom<Json>(() => true).optional(),
    recipe: z.strictObject({ key: z.string(), value: z.custom<Json>(() => true) }).optional(),
  }),
  plan(state, { file, edits, provenance, recipe }) {
    const all: Edit[] = [...edits];
    if (provenance !== undefined)
      all.push({
        do: 'set-part',
        part: 'provenance',
        key: provenanceKey(state.book.parts.provenance),
        value: provenance,
      });
    if (recipe) all.push({ do: 'set-part', part: 'recipes', key: recipe.key, value: recipe.value });
    return { edit: together(all), words: `Import ${file}` };
  },
});

/** Imports count up, so that their records stay in the order they came in: `0001`, `0002`, … */
function provenanceKey(records: ReadonlyMap<string, Json>): string {
  const last = Math.max(0, ...[...records.keys()].map(Number).filter(Number.isFinite));
  return String(last + 1).padStart(4, '0');
}

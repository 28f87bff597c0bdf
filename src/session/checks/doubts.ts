/** Everything in a book that needs a look. */
import { definePart, pointsAtNothing } from '../../book/references/part.ts';
import { z } from '../../book/zod.ts';
import { titleOf } from '../figure/figure-lifter.ts';
import type { ReadContext } from '../open-book.ts';
import type { Acceptance, Doubt } from './doubt.ts';
import { keyOf, nameless } from './doubt-key.ts';
import { dataDoubts } from './doubts-data.ts';

type About = Doubt['about'];

/** What can be done about a doubt of the calculation or of a held value. */
const REMEDIES: Readonly<Record<Exclude<About, 'length' | 'ankle' | 'old test' | 'setting'>, string>> = {
  held: 'Correct the value in its cell, or change the kind, unit or choices of its column. Formulas that use the cell show errors until then.',
  dimension:
    'Check what the formula adds or compares. Set what the column measures, or convert one side to the other’s unit.',
  blank:
    'Enter the value, or test for the blank first, as in IF(ISBLANK(weight), "", weight * 2). Type 0 where 0 is meant.',
  slow: 'The values are right. If computing takes too long, give the functions whole columns by name, or split the formula.',
  cycle: 'Remove one of the columns from the other’s formula.',
  hung: 'Simplify or change the formula. Until then it is not computed.',
  error: 'Open the cell’s working to see the values that each function received.',
  pending: 'Measure it and enter the value. Nothing is wrong: the results appear by themselves.',
};

/** How many held values are listed one by one; a page cannot show more, the count is always whole. */
const HELD_LISTED = 2_000;

/**
 * Everything that the book doubts: held values in the order of sheets, columns and rows, then the measures, then the
 * formulas. What was accepted says so.
 */
export function doubtsOf(context: ReadContext): readonly Doubt[] {
  const all = [...heldDoubts(context), ...dataDoubts(context), ...formulaDoubts(context)];
  const accepted = context.book.parts.accepted;
  if (accepted.size === 0) return all;
  return all.map((doubt) => {
    const acceptance = acceptanceOf(accepted.get(doubt.key));
    return acceptance ? { ...doubt, accepted: acceptance } : doubt;
  });
}

/** How many doubts wait to be looked at. */
export function doubtCount(context: ReadContext): number {
  const { book, calculation } = context;
  let held = 0;
  for (const sheet of book.sheets) for (const cells of sheet.cells.values()) held += cells.held.size;
  if (book.parts.accepted.size === 0) return held + dataDoubts(context).length + calculation.doubts().length;
  const listed = doubtsOf(context);
  const waiting = listed.filter(({ accepted }) => !accepted).length;
  return waiting + Math.max(0, held - HELD_LISTED);
}

const acceptance = z.object({ reason: z.string().min(1), on: z.string().optional() });

/** An acceptance has a key that is made from ids and from what was found: nothing in it can be followed. */
export const acceptedPart = definePart({
  word: 'accepted check',
  part: 'accepted',
  schema: acceptance,
  references: pointsAtNothing,
});

function acceptanceOf(value: unknown): Acceptance | undefined {
  const read = acceptance.safeParse(value);
  if (!read.success) return undefined;
  const { reason, on } = read.data;
  return { reason, ...(on === undefined ? {} : { on }) };
}

function heldDoubts(context: ReadContext): readonly Doubt[] {
  const found: Doubt[] = [];
  for (const sheet of context.book.sheets)
    for (const column of sheet.columns)
      for (const [row, { held, reason }] of sheet.cells.get(column.id)!.held) {
        if (found.length >= HELD_LISTED) return found;
        found.push({
          place: { sheet: sheet.id, column: column.id, row },
          about: 'held',
          sentence: reason,
          remedy: REMEDIES.held,
          key: keyOf('held', sheet.id, column.id, held, titleOf(context, sheet, row)),
        });
      }
  return found;
}

function formulaDoubts(context: ReadContext): readonly Doubt[] {
  const { book, calculation } = context;
  return calculation.doubts().map(({ place, about, sentence, results }) => {
    const said = results === undefined ? {} : { results };
    const { sheet, column, row } = place;
    const at = row === undefined ? undefined : book.sheets.find(({ id }) => id === sheet);
    // How many wait for a measure changes with every formula; whose measure it is does not.
    if (about === 'pending' && at) {
      const title = titleOf(context, at, row!);
      const key = keyOf(about, sheet, column, title);
      return { place, about, sentence: `${title}: ${sentence}`, remedy: REMEDIES[about], key, ...said };
    }
    const key = keyOf(about, sheet, column, nameless(sentence, book, sheet));
    return { place, about, sentence, remedy: REMEDIES[about], key, ...said };
  });
}

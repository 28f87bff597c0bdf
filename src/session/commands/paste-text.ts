/** The command that pastes a text with tabs and line ends. */
import { sheetOf } from '../../book/book.ts';
import type { Edit } from '../../book/edit.ts';
import { limits } from '../../book/file-frame.ts';
import { refuse } from '../../book/refusal.ts';
import { z } from '../../book/zod.ts';
import type { Progress } from '../../calc/api.ts';
import { toEnd } from '../drive.ts';
import { spread, widthOf } from '../text/block.ts';
import { parseTsv } from '../text/tsv.ts';
import { defineCommand, type Planned, type State } from './define.ts';
import { heldInWords, puttingTexts } from './put-texts.ts';
import { cellsInWords, columnId, columnsById, count, row, sheetId, together } from './shared.ts';

const schema = z.strictObject({
  sheet: sheetId,
  text: z.string().min(1).max(limits.characters),
  /** The columns that it may go to, from the first chosen one on. */
  columns: z.array(columnId).min(1),
  /** The rows that its lines go to, in this order; there may be more than it has lines. */
  runs: z.array(z.strictObject({ row, count })).min(1),
  /** How many rows and columns are chosen. */
  over: z.strictObject({ rows: count, columns: count }),
});

/** What is to be pasted, and where. */
export type Paste = z.infer<typeof schema>;

/**
 * Puts a text from the clipboard into a sheet: a table with tabs between its fields, laid into what is chosen. The text
 * is read here and not where it was pasted, so that a large one keeps nobody waiting.
 */
export const pasteText = defineCommand({
  id: 'paste-text',
  schema,
  plan: (state, paste) => toEnd(pasting(state, paste)),
});

/** What a pasted text comes to. */
export interface Pasted extends Planned {
  /** The size of the block that it fills. */
  readonly lines: number;
  readonly width: number;
}

/** Reads a pasted text bit by bit. @throws Refusal */
export function* pasting(
  state: State,
  { sheet: id, text, columns: ids, runs, over }: Paste,
): Generator<Progress, Pasted> {
  const block = spread(parseTsv(text), over.rows, over.columns);
  const width = widthOf(block);
  if (ids.length < width)
    refuse(
      `The block is ${width} columns wide; from here to the end of the sheet there are ${ids.length}. Add columns first, or start further left.`,
    );
  if (block.some((line) => line.some((field) => field.length > limits.text)))
    refuse(
      `The block has a text longer than the ${limits.text} characters that a cell takes. Shorten it, or paste the block in parts.`,
    );
  const columns = columnsById(sheetOf(state.book, id), ids.slice(0, width));
  const edits: Edit[] = [];
  let held = 0;
  let line = 0;
  for (const { row, count } of runs) {
    const texts = block.slice(line, line + count);
    if (texts.length === 0) break;
    const before = line * width;
    const reading = puttingTexts(state, { sheet: id, row, columns, texts, formulas: false });
    let step = reading.next();
    for (; !step.done; step = reading.next())
      yield { about: 'Reading what was pasted', done: before + step.value, total: block.length * width };
    edits.push(...step.value.edits);
    held += step.value.held;
    line += texts.length;
  }
  if (line < block.length)
    refuse(
      `The block has ${block.length} lines, and ${line} rows to go to. Clear sort, filter and groups, then paste again.`,
    );
  return {
    edit: together(edits),
    words: runs.length > 1 ? 'Change cells' : `Change ${cellsInWords(columns, runs[0]!.row, block.length)}`,
    lines: block.length,
    width,
    ...heldInWords(held),
  };
}

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CellKind } from '../../src/book/cells.ts';
import { BookFileError, readBook } from '../../src/book/file.ts';
import { writeBook } from '../../src/book/file-write.ts';
import type { Book } from '../../src/book/model.ts';
import { Session } from '../../src/session/session.ts';
import { book } from '../book/random.ts';
import { SEED } from '../seed.ts';
import { type Chance, mutate, mutateJson, nasty } from './mutate.ts';
import { fuzz } from './run.ts';

const folder = join(import.meta.dirname, '..', '..', 'sample-books');
const samples = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => readFileSync(join(folder, name), 'utf8'));
const corpus = [...samples, ...fc.sample(book, { numRuns: 60, seed: SEED }).map(writeBook)];

const formulasIn = ({ sheets }: Book): number =>
  sheets.flatMap(({ cells }) => [...cells.values()]).reduce((sum, { formulas }) => sum + formulas.size, 0);

/** What arrived as the text of a file either makes a book that is itself, or is refused in a sentence. */
function open(text: string): Book | undefined {
  let made: Book;
  try {
    made = readBook(text);
  } catch (reason) {
    expect(reason).toBeInstanceOf(BookFileError);
    expect((reason as Error).message).toMatch(/\.$/);
    expect((reason as Error).message.length).toBeLessThan(1_000);
    return undefined;
  }
  const written = writeBook(made);
  expect(writeBook(readBook(written))).toBe(written);
  // Only what says that it is a formula is one.
  expect(formulasIn(made)).toBeLessThanOrEqual(text.split('"formula"').length - 1);
  for (const { cells } of made.sheets)
    for (const column of cells.values())
      column.texts?.forEach((value, row) => {
        if (value?.startsWith('=')) expect(column.kinds[row]).toBe(CellKind.text);
      });
  return made;
}

const jsonOf = (chance: Chance): string =>
  JSON.stringify(mutateJson(JSON.parse(chance.of(corpus)), chance, chance.of([30, 300, 3_000])));

describe('hostile book files', () => {
  test('as damaged text are opened as a book that comes back equal, or refused in a sentence', async () => {
    const { counts } = await fuzz('book files, text', 0.2, (chance) =>
      open(mutate(chance.of(corpus), corpus, chance)) ? 'opened' : 'refused',
    );
    expect(counts.refused).toBeGreaterThan(0);
  });

  test('with strange values in place of others are opened as a book that comes back equal, or refused in a sentence', async () => {
    const { counts } = await fuzz('book files, values', 0.2, (chance) =>
      open(jsonOf(chance)) ? 'opened' : 'refused',
    );
    expect(counts.refused).toBeGreaterThan(0);
  });

  test('that open can be calculated, looked at, written as CSV and changed, and nothing throws', async () => {
    await fuzz('book files, worked with', 0.05, (chance) => {
      const made = open(chance.n(2) ? jsonOf(chance) : mutate(chance.of(corpus), corpus, chance));
      if (!made) return 'refused';
      const session = Session.open(writeBook(made));
      for (const sheet of session.outline().sheets) {
        session.tile(sheet.id, 0, Math.min(sheet.rows, 20), 0, Math.min(sheet.columns.length, 10));
        if (sheet.rows < 5_000) session.toCsv(sheet.id);
        const [column] = sheet.columns;
        if (column && sheet.rows > 0)
          session.execute({
            do: 'set-cells',
            sheet: sheet.id,
            row: 0,
            columns: [column.id],
            texts: [[chance.of(nasty)]],
          });
      }
      session.doubts();
      session.undo();
      return 'worked with';
    });
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeBook } from '../../src/book/file-write.ts';
import { IntakeRefusal, importing, mendedRows } from '../../src/intake/index.ts';
import { importFile, inspect } from './at-once.ts';
import { addSheet, bring, bytesOf, column, newBook } from './help.ts';

describe('a long file', () => {
  const lines = Array.from(
    { length: 200_000 },
    (_, i) => `2026-01-0${(i % 9) + 1},Lifter ${i % 50},${80 + (i % 40)}`,
  );
  const bytes = bytesOf(`date,athlete,load (kg)\n${lines.join('\n')}\n`);

  test('tells how far it is, in many small steps, never going back', () => {
    const task = importing(bytes, { sheet: null });
    const placing: number[] = [];
    let step = task.next();
    for (; !step.done; step = task.next()) {
      expect(step.value.done).toBeLessThanOrEqual(step.value.total);
      if (step.value.about === 'placing rows') placing.push(step.value.done);
    }
    expect(placing.length).toBeGreaterThan(30);
    expect(placing).toEqual([...placing].sort((a, b) => a - b));
    expect(step.value.report.rows).toMatchObject({ in: 200_000, placed: 200_000 });
    expect(step.value.findings.partial).toBe(true);
  });

  test('can be stopped at any step, and nothing has happened', () => {
    const book = newBook();
    addSheet(book, 'log', [[{ name: 'date', kind: 'date' }], [{ name: 'athlete', kind: 'text' }]]);
    const before = writeBook(book);
    const task = importing(bytes, { sheet: book.sheets[0]!, book });
    for (let i = 0; i < 25; i++) expect(task.next().done).toBe(false);
    task.return(undefined as never);
    expect(task.next().done).toBe(true);
    expect(writeBook(book)).toBe(before);
  });

  test('proves its date order by its last rows, too', () => {
    // The first 190,000 days fit both orders; the last ones can only be day first.
    const open = Array.from(
      { length: 190_000 },
      (_, i) => `0${(i % 9) + 1}/02/2026,Lifter ${i % 50},${80 + (i % 40)} units of work`,
    );
    const sure = Array.from({ length: 10_000 }, () => '28/02/2026,Lifter 1,80 units of work');
    const mdyFirst = importFile(
      bytesOf(`date,athlete,load\n${[...open, ...sure].join('\n')}\n`),
      { sheet: null, label: 'log' },
      {},
    );
    expect(mdyFirst.findings.partial).toBe(true);
    expect(mdyFirst.findings.columns[0]!.dateOrder?.certainty).toBe('doubtful');
    expect(mdyFirst.report.cells.held).toBe(0);
    const american = sure.map((line) => line.replace('28/02', '02/28'));
    const imported = importFile(bytesOf(`date,athlete,load\n${[...open, ...american].join('\n')}\n`), {
      sheet: null,
      label: 'log',
    });
    expect(imported.report.cells.held).toBe(0);
    const [edit] = imported.edits.filter((e) => e.do === 'add-rows');
    const cells = edit!.cells![0] as { numbers: Float64Array };
    // 01/02/2026 is the 2nd of January once the column turns out to be month first.
    expect(cells.numbers[0]).toBe(Date.UTC(2026, 0, 2) / 86_400_000 + 25_569);
  });
});

describe('any bytes at all', () => {
  test('are imported or refused with a sentence', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.uint8Array({ maxLength: 400 }),
          fc.string({ unit: 'binary', maxLength: 400 }).map(bytesOf),
          fc.string({ unit: fc.constantFrom(...'ab1.,;\t\n\r"\'|=-: /%°'), maxLength: 300 }).map(bytesOf),
        ),
        (bytes) => {
          try {
            inspect(bytes);
            const { report } = importFile(bytes, { sheet: null });
            expect(report.rows.in).toBe(report.rows.placed + report.rows.held);
          } catch (error) {
            if (!(error instanceof IntakeRefusal)) throw error;
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  test('cells made to keep patterns busy cost in proportion to their length', () => {
    const busy = (long: number): Uint8Array<ArrayBuffer> => {
      const cells = [
        `1h${' '.repeat(long)}x`,
        '1'.repeat(long),
        `${'1 '.repeat(long)}x`,
        ' ('.repeat(long),
        'a'.repeat(long),
        `12${' de '.repeat(long)}`,
        '='.repeat(long),
        `'${"'".repeat(long)}x`,
      ];
      return bytesOf(
        `${cells.map((c, i) => `${c} ${i}`).join('\t')}\n${cells.join('\t')}\n${cells.join('\t')}\n`,
      );
    };
    /** Processor time, least of three runs: what else the machine does hardly counts. */
    const cost = (bytes: Uint8Array): number =>
      Math.min(
        ...[1, 2, 3].map(() => {
          const before = process.cpuUsage();
          const { report } = importFile(
            bytes,
            { sheet: null },
            { choices: { delimiter: '\t', quote: '', headingLines: 1 } },
          );
          expect(report.rows).toMatchObject({ in: 2, placed: 2 });
          const { user, system } = process.cpuUsage(before);
          return user + system;
        }),
      );
    const [short, long] = [busy(3000), busy(24_000)];
    cost(short);
    // Eight times as long: in proportion 8 times the cost, with a pattern that goes back over everything 64 times.
    expect(cost(long) / cost(short)).toBeLessThan(30);
  });
});

describe('held rows that were mended', () => {
  test('come in by the same recipe, read as the file was', () => {
    const book = newBook();
    addSheet(book, 'log', [
      [{ name: 'athlete', kind: 'text' }],
      [{ name: 'load', kind: 'number', dimension: 'mass', unit: 'kg' }],
      [{ name: 'note', kind: 'text' }],
    ]);
    const rows = Array.from({ length: 8 }, (_, i) => `Ada;${80 + i},5;ok`);
    const first = bring(book, 'log', `Athlete;Load (kg);Note\n${rows.join('\n')}\nBo;90,5;fine; thanks\n`);
    expect(first.heldRows.map((h) => h.raw)).toEqual(['Bo;90,5;fine; thanks']);
    const mended = mendedRows(['Bo;90,5;"fine; thanks"'], first.provenance);
    const again = importFile(
      mended.bytes,
      { sheet: book.sheets[0]!, book },
      { ...mended.options, recipe: first.recipe },
    );
    expect(again.report.rows).toMatchObject({ in: 1, placed: 1, held: 0 });
    expect(again.preview.first[0]!.cells).toEqual(['Bo', 90.5, 'fine; thanks']);
  });
});

describe('the preview', () => {
  test('shows the first rows and the doubtful ones with their lines', () => {
    const book = newBook();
    addSheet(book, 'log', [[{ name: 'load', kind: 'number' }]]);
    const rows = Array.from({ length: 40 }, (_, i) => (i === 33 ? 'heavy' : String(i)));
    const { preview } = bring(book, 'log', `load\n${rows.join('\n')}\n`);
    expect(preview.columns).toEqual(['load']);
    expect(preview.first).toHaveLength(20);
    expect(preview.first[0]).toEqual({ line: 2, cells: [0] });
    expect(preview.doubtful.map((r) => r.line)).toEqual([35]);
    expect(column(book, 'log', 'load')[33]).toMatchObject({ held: 'heavy' });
  });
});

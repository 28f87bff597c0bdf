import { readBook } from '../../src/book/file.ts';
import { writeBook } from '../../src/book/file-write.ts';
import { createCalculation } from '../../src/calc/index.ts';
import { computed, squad, summaries } from './book.ts';
import { type Bench, type Times, timed, took } from './measure.ts';

function exhaust<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Bytes that live, all garbage gone. */
function living(): number {
  globalThis.gc?.();
  globalThis.gc?.();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

/** With the computed ones, 20 columns. */
const INPUTS = 10;

export function bench(given: number | undefined): Bench {
  const rows = given ?? 100_000;
  const made = squad(rows, INPUTS);
  const text = writeBook(made);
  let checked = 0;
  let wrong = 0;
  const check = (right: boolean): void => {
    checked++;
    if (!right) wrong++;
  };
  let firstScreen = 0;
  const openAll = (): void => {
    const start = performance.now();
    const book = readBook(text);
    const calculation = createCalculation(book);
    exhaust(calculation.all());
    firstScreen = performance.now() - start;
    const squats = calculation.column('squad', 'squat').numbers;
    const masses = calculation.column('squad', 'mass').numbers;
    const relative = calculation.column('squad', 'relative').numbers;
    for (let i = 0; i < rows; i += 101) check(relative[i] === squats[i]! / masses[i]!);
    check(typeof calculation.value('figures', 'value', 0) === 'number');
  };
  let opened = readBook(text);
  const [open, first, parse, reading, calculating] = timed(
    8,
    { work: openAll },
    {
      work: () => {
        const calculation = createCalculation(readBook(text));
        check(calculation.value('squad', 'femur', rows - 1) !== null);
      },
    },
    { work: () => JSON.parse(text) },
    {
      work: () => {
        opened = readBook(text);
      },
    },
    { work: () => exhaust(createCalculation(opened).all()) },
  ) as [Times, Times, Times, Times, Times];

  const before = living();
  const book = readBook(text);
  const read = living();
  const calculation = createCalculation(book);
  const calculated = took(() => exhaust(calculation.all()));
  const after = living();
  check(calculation.column('squad', 'lean').rows === rows);
  const numericCells = rows * (INPUTS + computed.length) + summaries.length + 1;
  return {
    name: 'open',
    rows,
    lines: [
      {
        work: 'a saved book, until its first values can be read',
        ...first,
        against: [{ what: 'JSON.parse of the file', ...parse }],
        target: '≤ 2 s until first values are readable, ≤ 3 × JSON.parse',
        checked,
        wrong,
      },
      {
        work: `a saved book of ${INPUTS + computed.length} columns (${computed.length} computed), until every value is there`,
        ...open,
        against: [
          { what: 'JSON.parse of the file', ...parse },
          { what: 'reading and checking the file, a part of it', ...reading },
          { what: 'calculating everything, a part of it', ...calculating },
        ],
        checked,
        wrong,
      },
    ],
    notes: [
      `The file has ${(text.length / 1e6).toFixed(1)} MB; the last opening took ${firstScreen.toFixed(0)} ms, calculation alone ${calculated.toFixed(0)} ms.`,
      globalThis.gc
        ? `Memory: ${((read - before) / numericCells).toFixed(1)} bytes a numeric cell for the book, ${((after - read) / numericCells).toFixed(1)} more with all values (${numericCells.toLocaleString('en')} cells); target ≤ 16 above the file's own data.`
        : 'Memory was not measured.',
    ],
  };
}

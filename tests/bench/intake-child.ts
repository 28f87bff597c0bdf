import { existsSync, readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { invoke } from '../../functions/core/invoke.ts';
import type { Range } from '../../functions/core/value.ts';
import { registry } from '../../functions/registry.ts';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook } from '../../src/book/book.ts';
import { importing } from '../../src/intake/index.ts';

// One measurement in a process of its own, so that nothing else is in its memory: bare papaparse, or the intake.
const [, , what, path, on] = process.argv;
/** Peak of this process in bytes. Where the system tells it by itself: what getrusage says holds the parent's pages, too. */
function peakMemory(): number {
  const told = existsSync('/proc/self/status')
    ? /VmHWM:\s+(\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]
    : undefined;
  return (told === undefined ? process.resourceUsage().maxRSS : Number(told)) * 1024;
}

const say = (answer: Record<string, number | string>): void => {
  const peak = peakMemory();
  process.stdout.write(`${JSON.stringify({ ...answer, peak })}\n`);
};

if (what === 'papaparse') {
  const start = performance.now();
  const { data } = Papa.parse<string[]>(readFileSync(path!, 'utf8'));
  const ms = performance.now() - start;
  say({ ms, rows: data.filter((row) => row.length > 1).length - 1 });
} else {
  const start = performance.now();
  const bytes = readFileSync(path!);
  const task = importing(bytes, { sheet: null, label: 'log' }, { name: 'log.csv', now: '2030-01-01' });
  let longest = 0;
  let steps = 0;
  let step = task.next();
  for (let last = start; !step.done; steps++) {
    step = task.next();
    const now = performance.now();
    longest = Math.max(longest, now - last);
    last = now;
  }
  const imported = step.value;
  const book = createBook();
  applyEdit(book, { do: 'batch', edits: imported.edits });
  const placed = performance.now() - start;
  const sheet = book.sheets[0]!;
  const range = (name: string): Range => {
    const { kinds, numbers, texts } = sheet.cells.get(name)!.snapshot();
    return { rows: sheet.rows, columns: 1, kinds, numbers, texts, errors: null };
  };
  // The first question makes the indexes by athlete and by day that all later ones use.
  const week = invoke(registry.get('TRAIN.SUM')!, [
    range('date'),
    range('load'),
    Number(on),
    7,
    range('athlete'),
    'Lifter 7',
  ]);
  const ms = performance.now() - start;
  say({
    ms,
    placed,
    rows: sheet.rows,
    held: imported.report.rows.held + imported.report.cells.held,
    week: typeof week === 'number' ? week : -1,
    longest,
    steps,
  });
}

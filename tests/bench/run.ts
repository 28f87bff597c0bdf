import { parseArgs } from 'node:util';
import { type Bench, print } from './measure.ts';

type Make = (rows: number | undefined) => Bench | Promise<Bench>;
const benches: Readonly<Record<string, () => Promise<{ readonly bench: Make }>>> = {
  cohort: () => import('./cohort.ts'),
  columns: () => import('./columns.ts'),
  log: () => import('./log.ts'),
  edit: () => import('./edit.ts'),
  marks: () => import('./marks.ts'),
  open: () => import('./open.ts'),
  intake: () => import('./intake.ts'),
  page: () => import('./page.ts'),
  survey: () => import('./survey.ts'),
};

const { positionals, values } = parseArgs({
  allowPositionals: true,
  args: (process.env.LEVERBOOK_BENCH ?? '').split(' ').filter((word) => word !== ''),
  options: { rows: { type: 'string' } },
});
const rows = values.rows === undefined ? undefined : Number(values.rows);
const load = benches[positionals[0] ?? ''];
if (!load || (rows !== undefined && !(Number.isInteger(rows) && rows > 0))) {
  console.error(`Usage: npm run bench -- ${Object.keys(benches).join('|')} [--rows N]`);
  process.exitCode = 2;
} else {
  const bench = await (await load()).bench(rows);
  print(bench);
  if (bench.lines.some((line) => line.wrong > 0)) process.exitCode = 1;
}

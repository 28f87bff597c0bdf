import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { type Bench, median } from './measure.ts';
import { type Ran, ran } from './ran.ts';

/** npm runs scripts in the package's folder. */
const root = process.cwd();
const data = join(root, '..', 'shared', 'data');
const files = ['MALE', 'FEMALE'].map((sex) => join(data, `ANSUR_II_${sex}_Public.csv`));

const bare = `import Papa from 'papaparse';import {readFileSync} from 'node:fs';let n=0;for(const f of process.argv.slice(1))n+=Papa.parse(readFileSync(f,'latin1'),{skipEmptyLines:true}).data.length-1;console.log(n)`;

/** The survey command of the README, whole processes from start to files written, beside a bare papaparse read of the same files. */
export async function bench(): Promise<Bench> {
  if (!files.every((file) => existsSync(file)))
    throw new Error(`The survey's two files are not in ${data}; this benchmark reads them.`);
  await build({ root, configFile: join(root, 'vite.cli.config.ts'), logLevel: 'error' });
  const out = mkdtempSync(join(tmpdir(), 'leverbook-survey-'));
  const command = [
    'dist/cli/leverbook.js',
    'calc',
    'sample-books/survey-lengths.leverbook.json',
    `--import=men=${files[0]}`,
    `--import=women=${files[1]}`,
    '--out',
    out,
  ];
  const ours: Ran[] = [];
  const theirs: Ran[] = [];
  for (let k = 0; k < 5; k++) {
    ours.push(ran(command));
    theirs.push(ran(['--input-type=module', '-e', bare, ...files]));
  }
  const rows = ['men', 'women'].map(
    (sheet) =>
      readFileSync(join(out, `${sheet}.csv`), 'utf8')
        .trimEnd()
        .split('\r\n').length - 1,
  );
  const right = [rows[0] === 4082, rows[1] === 1986, theirs.every(({ out: said }) => said.trim() === '6068')];
  const middle = (runs: readonly Ran[], of: 'ms' | 'megabytes') => median(runs.map((r) => r[of]));
  return {
    name: 'survey',
    rows: 6068,
    lines: [
      {
        work: 'the survey command, 6,068 × 108 in, computed, written',
        ms: middle(ours, 'ms'),
        against: [{ what: 'node and papaparse alone', ms: middle(theirs, 'ms') }],
        checked: right.length,
        wrong: right.filter((r) => !r).length,
      },
    ],
    notes: [
      `peak memory ${middle(ours, 'megabytes').toFixed(0)} MB, of papaparse alone ${middle(theirs, 'megabytes').toFixed(0)} MB`,
    ],
  };
}

import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Papa from 'papaparse';
import { beforeAll, describe, expect, test } from 'vitest';
import { prepare } from '../../src/intake/index.ts';
import { preparing } from '../../src/session/imports/prepare-import.ts';
import { Session } from '../../src/session/session.ts';
import { buildCommand, file, folder, leverbook, root } from './run.ts';

beforeAll(() => buildCommand());

const screening = 'sample-books/squat-screening.leverbook.json';
const surveyFolder = join(root, '..', 'shared', 'data');
const survey = existsSync(join(surveyFolder, 'ANSUR_II_MALE_Public.csv'));
if (!survey)
  console.warn('The survey files are not beside this clone; the tests that read them are skipped.');

const table = (folder: string, name: string): string[][] =>
  Papa.parse<string[]>(readFileSync(join(folder, `${name}.csv`), 'utf8'), { skipEmptyLines: true }).data;

describe.skipIf(!survey)('leverbook calc with the survey of 6,068 people', () => {
  const out = folder();
  let said = '';

  beforeAll(() => {
    const ran = leverbook([
      'calc',
      'sample-books/survey-lengths.leverbook.json',
      `--import=men=${join(surveyFolder, 'ANSUR_II_MALE_Public.csv')}`,
      `--import=women=${join(surveyFolder, 'ANSUR_II_FEMALE_Public.csv')}`,
      '--out',
      out,
    ]);
    said = ran.err;
    expect(ran.code, said).toBe(0);
  });

  test('places every row, and says so', () => {
    expect(said).toMatch(/MALE_Public\.csv: 4082 of 4082 rows imported, 0 not imported/);
    expect(said).toMatch(/FEMALE_Public\.csv: 1986 of 1986 rows imported, 0 not imported/);
  });

  // Gordon et al. 2014, NATICK/TR-15/007, public release: means and SD computed from its two files (cm, kg, ratios).
  test.each([
    ['Stature, cm', 4082, 175.621, 6.855, 1986, 162.847, 6.42],
    ['Cormic index', 4082, 52.31, 1.35, 1986, 52.62, 1.41],
    ['Femur, cm', 4082, 40.927, 2.842, 1986, 37.941, 2.405],
    ['Tibia, cm', 4082, 41.875, 2.457, 1986, 40.319, 2.591],
    ['Trunk, cm', 4082, 53.981, 3.34, 1986, 48.974, 2.934],
    ['Foot, cm', 4082, 27.118, 1.31, 1986, 24.629, 1.244],
    ['Femur / tibia', 4082, 0.9784, 0.0575, 1986, 0.9431, 0.0617],
    ['Trunk / femur', 4082, 1.3257, 0.127, 1986, 1.2956, 0.1085],
  ])('%s: n, mean and SD of men and women are those of the survey', (measure, ...expected) => {
    const [headings, ...rows] = table(out, 'summary');
    // Cells that measure different things have their units in a column beside them.
    const row = rows
      .find(([name]) => name === measure)!
      .filter((_, i) => i > 0 && !headings![i]!.endsWith(': unit'));
    for (const [i, value] of expected.entries()) {
      const digits = (String(value).split('.')[1] ?? '').length;
      expect(Number(row[i]), `${measure} ${i}`).toBeCloseTo(value, Math.min(digits, 3));
    }
  });

  test('reads the first man of the survey, and computes his lengths and ratios', () => {
    // Subject 10027 of the men's file: stature 1776, sitting 928, trochanterion 919, epicondyle 500, malleolus 77 mm.
    const [headings, first] = table(out, 'men') as [string[], string[]];
    const of = (label: RegExp) => Number(first[headings.findIndex((heading) => label.test(heading))]);
    expect(first[0]).toBe('10027');
    expect(of(/^Femur \(cm\)/)).toBeCloseTo(41.9, 9);
    expect(of(/^Tibia \(cm\)/)).toBeCloseTo(42.3, 9);
    expect(of(/^Femur \/ tibia/)).toBeCloseTo(0.9905, 4);
    expect(of(/^Cormic/)).toBeCloseTo(52.25, 2);
    expect(of(/^Body mass/)).toBeCloseTo(81.5, 9);
  });

  test('relates lengths to stature as the survey does', () => {
    // Computed from the same files: r of stature and sitting knee height .8911 (men); tibia on stature −98.125 + .29431 H, SEE 14.02 (mm).
    const rows = table(out, 'relations');
    const numbers = rows.flatMap((row) => row.map(Number)).filter((n) => Number.isFinite(n) && n !== 0);
    const has = (value: number, digits: number) =>
      expect(
        numbers.some((n) => Math.abs(n - value) < 0.5 * 10 ** -digits),
        `${value} among ${numbers}`,
      ).toBe(true);
    has(0.8911, 4);
    has(-9.8125, 4);
    has(0.29431, 5);
    has(1.402, 3);
  });
});

describe('leverbook calc', () => {
  test('writes a CSV file for each sheet of the sample book, all of its formulas computed', () => {
    const out = folder();
    const { code, err } = leverbook(['calc', screening, '--out', out]);
    expect(code, err).toBe(0);
    expect(readdirSync(out).sort()).toEqual([
      'assumptions.csv',
      'heights.csv',
      'monitoring.csv',
      'notes.csv',
      'observed.csv',
      'retest.csv',
      'roster.csv',
      'sessions.csv',
      'summary.csv',
    ]);
    expect(table(out, 'roster')).toHaveLength(25);
    expect(readFileSync(join(out, 'summary.csv'), 'utf8')).not.toMatch(/#(NAME|REF|ERROR|VALUE|DIV)/);
  });

  test('writes one sheet as JSON lines with --json --sheet', () => {
    const { code, out } = leverbook(['calc', screening, '--json', '--sheet', 'roster']);
    const lines = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(code).toBe(0);
    expect(lines).toHaveLength(24);
    expect(lines[0]).toMatchObject({
      sheet: 'roster',
      row: 1,
      values: { tested: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) },
    });
  });

  test('saves what came in as a new book, and replaces nothing unasked', () => {
    const csv = file('more.csv', 'Athlete;Femur (mm);Tibia (mm);Trunk (mm)\nNora Quill;402;397,5;511\n');
    const saved = join(folder(), 'new.leverbook.json');
    const first = leverbook(['calc', screening, `--import=roster=${csv}`, '--save', saved]);
    expect(first.code, first.err).toBe(0);
    expect(first.err).toMatch(/1 of 1 rows imported, 0 not imported/);
    const again = leverbook(['calc', saved, '--json', '--sheet=roster']);
    const last = JSON.parse(again.out.trimEnd().split('\n').at(-1)!);
    expect(last.values).toMatchObject({ femur: 40.2, tibia: 39.75, trunk: 51.1 });
    const before = readFileSync(saved, 'utf8');
    expect(leverbook(['calc', screening, '--save', saved])).toMatchObject({
      code: 2,
      err: expect.stringMatching(/exists.*--replace/),
    });
    expect(readFileSync(saved, 'utf8')).toBe(before);
  });

  test('writes the whole book as an XLSX file that comes back in, and replaces none unasked', async () => {
    const path = join(folder(), 'screening.xlsx');
    const args = ['calc', screening, '--xlsx', path];
    expect(leverbook(args)).toMatchObject({
      code: 0,
      out: '',
      err: expect.stringContaining(`wrote ${path}`),
    });
    const { bytes } = await prepare(readFileSync(path), { name: path, table: 'Roster' });
    const [headings, first] = Papa.parse<string[]>(new TextDecoder().decode(bytes)).data;
    expect(headings).toContain('Femur (cm)');
    expect(first![headings!.indexOf('Athlete')]).toBe('Bram Oduya');
    expect(leverbook(args)).toMatchObject({ code: 2, out: '', err: expect.stringMatching(/--replace/) });
    expect(leverbook([...args, '--replace']).code).toBe(0);
    // What it holds is said as of any file, by its tables.
    const { code, out } = leverbook(['check', path]);
    expect(code).toBe(0);
    expect(out).toMatch(/table +Roster, of the tables Roster, .*About/);
    expect(out).toMatch(/Femur \(cm\): number, cm; 24 filled/);
    expect(out).not.toMatch(/encoding|delimiter/);
  });

  test('takes rough cells as they come: units, decimal commas, NaN and formula-like text are read, unreadable or text', () => {
    const csv = file(
      'rough.csv',
      'Athlete;Femur (cm);Tibia (cm)\n=1+1;44 cm;39,5\nB;NaN;40\nC;43,5;41,2\nC2;42;x\nD;41;40;9;9\n',
    );
    const { code, out, err } = leverbook([
      'calc',
      screening,
      `--import=roster=${csv}`,
      '--json',
      '--sheet=roster',
    ]);
    expect(code, err).toBe(0);
    const rows = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).values)
      .slice(24);
    expect(rows[0]).toMatchObject({ athlete: '=1+1', femur: 44, tibia: 39.5 });
    expect(rows[2]).toMatchObject({ femur: 43.5, tibia: 41.2 });
    expect(err).toMatch(/4 of 5 rows imported, 1 not imported/);
  });

  describe('asks what the page asks', () => {
    const head = 'Name,Stature (cm),Mass (kg)';
    const bookWith = (...changes: readonly object[]): string => {
      const session = Session.create();
      const work = preparing(session, {
        bytes: new TextEncoder().encode(`${head}\nAdam Berg,180,80\nBo Lind,175,75\n`),
        name: 'men.csv',
        sheet: null,
        now: '2026-03-01T10:00:00.000Z',
      });
      for (let step = work.next(); ; step = work.next())
        if (step.done) {
          expect(session.writePlanned(step.value).ok).toBe(true);
          break;
        }
      const [[key, settings]] = [...session.current.parts.recipes] as [[string, object]];
      changes.forEach((change, i) => {
        const value = { ...settings, ...change };
        const other = i === 0 ? key : `${key}_${i}`;
        expect(
          session.execute({ do: 'set-part', part: 'recipes', key: other, value, words: 'Change settings' }),
        ).toMatchObject({ ok: true });
      });
      return file('men.leverbook.json', session.save());
    };
    const next = () => file('next.csv', `${head}\nCy Dahl,170,70\n`);

    test('before rows of another file are replaced', () => {
      const book = bookWith({ mode: 'replace' });
      const args = ['calc', book, `--import=men=${next()}`, '--json', '--sheet=men'];
      const asked = leverbook(args);
      expect(asked).toMatchObject({ code: 2, out: '' });
      expect(asked.err).toMatch(
        /2 rows of men would be replaced, and they came from men\.csv\. No file was written\. .*--on-conflict overwrite/,
      );
      const done = leverbook([...args, '--on-conflict=overwrite']);
      expect(done.code, done.err).toBe(0);
      expect(done.out.trim().split('\n')).toHaveLength(1);
    });

    test('which of two import settings that fit equally well is meant', () => {
      const book = bookWith({}, { title: 'Another device', mode: 'replace' });
      const asked = leverbook(['calc', book, `--import=men=${next()}`, '--json']);
      expect(asked).toMatchObject({ code: 2, out: '' });
      expect(asked.err).toMatch(/fit equally well: “men: men\.csv”, “Another device”/);
    });
  });

  test('doubles nobody: rows that differ from those there are refused until it is said what becomes of them', () => {
    // The sample's own roster file with two people changed; two cells that cannot be read
    // were mended in the book, so four rows differ.
    const text = readFileSync(join(root, 'sample-books/squat-screening/roster.csv'), 'utf8')
      .replace('Bram Oduya,M,2025-09-08,163,43,', 'Bram Oduya,M,2025-09-08,163,44,')
      .replace(/^(Dario Welk,.*),[\d.]+$/m, '$1,79.9');
    const csv = file('roster.csv', text);
    const rows = (args: readonly string[]) => {
      const { code, out, err } = leverbook(['calc', screening, `--import=roster=${csv}`, ...args]);
      const values = out.split('\n').flatMap((line) => (line ? [JSON.parse(line).values] : []));
      return { code, err, values };
    };
    const asked = rows(['--json', '--sheet=roster']);
    expect(asked).toMatchObject({ code: 2, values: [] });
    expect(asked.err).toMatch(
      /4 rows are in the sheet already, by athlete, with other values: Bram Oduya \(line 4\): Femur 43 cm there, 44 cm in the file; Dario Welk .*79\.9 kg in the file; .*No file was written\. .*--on-conflict: keep/,
    );
    const left = rows(['--json', '--sheet=roster', '--on-conflict=keep']);
    expect(left.err).toMatch(/24 of 24 rows imported \(4 keep sheet values\), 0 not imported/);
    expect(left.values).toHaveLength(24);
    expect(left.values[0]).toMatchObject({ athlete: 'Bram Oduya', femur: 43 });
    const taken = rows(['--json', '--sheet=roster', '--on-conflict=overwrite']);
    expect(taken.values).toHaveLength(24);
    expect(taken.values[0]).toMatchObject({ athlete: 'Bram Oduya', femur: 44 });
    const added = rows(['--json', '--sheet=roster', '--on-conflict=append']);
    expect(added.values.map(({ athlete }) => athlete).slice(24)).toEqual([
      'Bram Oduya',
      'Dario Welk',
      'Ines Kovar',
      'Tariq Holm',
    ]);
    expect(rows(['--on-conflict=drop'])).toMatchObject({
      code: 2,
      err: expect.stringMatching(/drop.*keep, overwrite, append/),
    });
    // The former name and its words are read, and not offered.
    for (const former of ['--differing=take', '--differing=overwrite', '--on-conflict=take'])
      expect(rows(['--json', '--sheet=roster', former]).values[0], former).toMatchObject({ femur: 44 });
    expect(rows(['--json', '--on-conflict=keep', '--differing=take'])).toMatchObject({
      code: 2,
      err: expect.stringMatching(/former name of --on-conflict/),
    });
    expect(leverbook(['calc', '--help']).out).not.toContain('--differing');
  });

  const book = (text: string) => file('x.leverbook.json', text);
  test.each([
    ['a missing book', () => ['calc', '/nowhere.leverbook.json'], /There is no file/],
    ['a folder for a book', () => ['calc', folder()], /is a folder/],
    ['an empty book', () => ['calc', book('')], /is empty/],
    ['a broken book', () => ['calc', book('{"leverbook": ')], /JSON/],
    ['a file that is no book', () => ['calc', book('{"a":1}')], /Leverbook/],
    [
      'a book of a newer version',
      () => [
        'calc',
        book(readFileSync(join(root, screening), 'utf8').replace(/"leverbook":\s*1/, '"leverbook": 99')),
      ],
      /newer/,
    ],
    ['a missing CSV file', () => ['calc', screening, '--import=roster=/nowhere.csv'], /There is no file/],
    ['a folder for a CSV file', () => ['calc', screening, `--import=roster=${folder()}`], /is a folder/],
    ['an empty CSV file', () => ['calc', screening, `--import=roster=${file('e.csv', '')}`], /empty/],
    [
      'only headings',
      () => ['calc', screening, `--import=roster=${file('h.csv', 'Athlete,Femur\n')}`],
      /headings/,
    ],
    ['a sheet that is not there', () => ['calc', screening, '--import=rooster=x.csv'], /Did you mean roster/],
    ['an import without a sheet', () => ['calc', screening, '--import=x.csv'], /SHEET=FILE/],
    ['two ways out at once', () => ['calc', screening, '--json', '--out', 'x'], /--out|--json/],
  ])('refuses %s with one message, exit code 2, and writes nothing', (_, args, message) => {
    const out = join(folder(), 'out');
    const given = args();
    const ran = leverbook(given.includes('--json') ? given : [...given, '--out', out]);
    expect(ran, ran.err).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toMatch(message);
    expect(existsSync(out)).toBe(false);
  });
});

describe('leverbook check', () => {
  test('says what it sees in a file, with the evidence', () => {
    const csv = file(
      'club.csv',
      Uint8Array.from(
        Buffer.from('Name;Größe (cm);Date\nZoé;171,5;03.04.2025\nAbe;168,0;17.04.2025\n', 'latin1'),
      ),
    );
    const { code, out } = leverbook(['check', csv]);
    expect(code).toBe(0);
    for (const seen of [/windows-1252|iso-8859-1/i, /semicolon/, /Größe/, /date/]) expect(out).toMatch(seen);
    expect(JSON.parse(leverbook(['check', csv, '--json']).out)).toMatchObject({
      rows: 2,
      columns: [{}, { kind: { value: 'number' } }, { kind: { value: 'date' } }],
    });
  });

  test.each([
    ['nothing there', '/nowhere.csv', /There is no file/],
    ['an empty file', file('e.csv', ''), /empty/],
    [
      'bytes that are no text',
      file(
        'b.csv',
        Uint8Array.from({ length: 600 }, (_, i) => (i * 7919) % 256),
      ),
      /table|text/,
    ],
  ])('refuses %s', (_, path, message) => {
    expect(leverbook(['check', path])).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringMatching(message),
    });
  });
});

test('runs from an installed package: everything it needs is packed or a dependency', async () => {
  await buildCommand(join(root, 'dist', 'cli'));
  const home = folder();
  const [packed] = JSON.parse(
    execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', home], {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }),
  ) as [{ filename: string }];
  const modules = join(home, 'node_modules');
  mkdirSync(modules);
  execFileSync('tar', ['-xzf', join(home, packed.filename), '-C', modules]);
  const { dependencies } = JSON.parse(readFileSync(join(modules, 'package', 'package.json'), 'utf8')) as {
    dependencies: Record<string, string>;
  };
  for (const name of Object.keys(dependencies)) {
    mkdirSync(dirname(join(modules, name)), { recursive: true });
    symlinkSync(join(root, 'node_modules', name), join(modules, name));
  }
  const bin = join(modules, 'package', 'dist/cli/leverbook.js');
  const run = (args: string[]) =>
    execFileSync(process.execPath, [bin, ...args], { cwd: home, encoding: 'utf8' });
  expect(run(['eval', '1+1'])).toBe('2\n');
  expect(
    run(['calc', join(modules, 'package', screening), '--json', '--sheet=roster']).split('\n'),
  ).toHaveLength(25);
});

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Json } from '../../../src/book/model.ts';
import { type CohortReport, reportOf } from '../../../src/session/report/report.ts';
import { reportDocument } from '../../../src/session/report/report-document.ts';
import { Session } from '../../../src/session/session.ts';
import { squadFile } from '../charts/squad.ts';

const made = { version: '1.2.3', on: '2025-03-04' };
const reportIn = (session: Session): CohortReport => session.ask((context) => reportOf(context, made));

/** A book with a table of tests/reference and a report that takes some of its columns as trials. */
function bookOf(name: string, columns: readonly string[], report: Record<string, Json>): Session {
  const [first, ...lines] = readFileSync(`tests/reference/${name}.csv`, 'utf8').trim().split(/\r?\n/);
  const headings = first!.split(',');
  const at = columns.map((column) => headings.indexOf(column));
  const names = columns.map((_, index) => `trial_${index + 1}`);
  const session = Session.create();
  session.execute({
    do: 'add-sheet',
    name: 'data',
    columns: names.map((one) => ({ name: one, kind: 'number' as const })),
  });
  session.execute({
    do: 'set-cells',
    sheet: 'data',
    row: 0,
    columns: names,
    texts: lines.map((line) => at.map((index) => line.split(',')[index]!)),
  });
  const trials = [{ sheet: 'data', columns: names, ...report }];
  session.execute({ do: 'set-part', part: 'handouts', key: 'report', value: { trials } });
  return session;
}
/** Gives a cell a name, beside the table, as the books' settings have it. */
function setting(session: Session, name: string, text: string): void {
  const sheet = `of_${name}`;
  session.execute({ do: 'add-sheet', name: sheet, columns: [{ name: 'is', kind: 'text' }] });
  if (text !== '' && !Number.isNaN(Number(text)))
    session.execute({ do: 'change-column', sheet, column: 'is', change: { kind: 'number' } });
  session.execute({ do: 'set-cells', sheet, row: 0, columns: ['is'], texts: [[text]] });
  const named = session.execute({ do: 'name-cell', name, sheet, column: 'is', row: 0 });
  if (!named.ok) throw new Error(named.sentence);
}
const number = (text: string): number => Number(text.replace('−', '-'));

describe('the reliability table', () => {
  // Shrout & Fleiss 1979, Psychol Bull 86:420–428, Table 4: 6 targets, 4 judges; residual mean square 1.02 (Table 3).
  // Limits of ICC(2,1), .02 and .76: McGraw & Wong 1996, as reproduced from the same table (tests/reference/statistics.csv).
  // SEM from the ICC, SD · √(1 − ICC): tests/reference/sem-by-icc.py; single forms with the SD of the 24 scores (2.7104),
  // k-forms with that of the 6 means (1.6764).
  test.each([
    ['1,1', 0.17, 2.4756],
    ['2,1', 0.29, 2.2842],
    ['3,1', 0.71, 1.4473],
    ['1,k', 0.44, 1.2514],
    ['2,k', 0.62, 1.0334],
    ['3,k', 0.91, 0.5048],
  ])(
    'prints ICC(%s) = %f of Shrout & Fleiss 1979, the error of their residual mean square, and the one from the ICC',
    (form, icc, sem) => {
      const report = reportIn(bookOf('shrout_fleiss_1979', ['J1', 'J2', 'J3', 'J4'], { form }));
      const [row] = report.reliability;
      expect(number(row!.icc)).toBeCloseTo(icc, 2);
      expect(report.chosen.form).toBe(form);
      expect(row!.n).toBe(6);
      expect(number(row!.consistency.sem)).toBeCloseTo(Math.sqrt(1.02), 2);
      expect(number(row!.byIcc.sem)).toBeCloseTo(sem, 2);
      const page = reportDocument(report, 'a4');
      expect(page.includes('>SEM, consistency</th>')).toBe(true);
      expect(page.includes('>SEM, agreement</th>')).toBe(!form.startsWith('3'));
      expect(page.includes('the SD of the row means')).toBe(form.endsWith('k'));
      if (form === '2,1') expect(row!.interval).toBe('0.02 to 0.76');
      // Four trials have no single bias.
      expect([row!.bias, row!.limits, row!.cv]).toEqual(['–', '–', '–']);
    },
  );

  test('prints the standard error and the minimal detectable change of data set A of Weir 2005', () => {
    const [row] = reportIn(bookOf('weir_2005_set_a', ['A1', 'A2'], { form: '2,1' })).reliability;
    // Weir 2005, J Strength Cond Res 19:231–240: ICC .95, SEM 7.6; MDC there 1.96 · √2 · SEM.
    expect(number(row!.icc)).toBeCloseTo(0.95, 2);
    expect(number(row!.consistency.sem)).toBeCloseTo(7.6, 1);
    expect(number(row!.consistency.mdc)).toBeCloseTo(1.96 * Math.SQRT2 * 7.557, 1);
    // SD of the 16 scores 31.749, ICC(2,1) .949975: 7.101; MDC 19.683 (tests/reference/sem-by-icc.py).
    expect(number(row!.byIcc.sem)).toBeCloseTo(7.101, 2);
    expect(number(row!.byIcc.mdc)).toBeCloseTo(19.683, 2);
  });

  test('takes the form and the confidence level of the book’s settings for all of its tables', () => {
    const session = bookOf('weir_2005_set_a', ['A1', 'A2'], { form: '2,1' });
    setting(session, 'icc_form', '2,k');
    setting(session, 'confidence_level', '0.9');
    const report = reportIn(session);
    const [row] = report.reliability;
    expect(report.chosen).toMatchObject({ form: '2,k', formFrom: 'icc_form', confidence: 0.9 });
    // SD of the 8 means 32.392, ICC(2,k) .974346: 5.188; its MDC at 90 % 12.069 (tests/reference/sem-by-icc.py).
    expect(number(row!.icc)).toBeCloseTo(0.974, 2);
    expect(number(row!.byIcc.sem)).toBeCloseTo(5.188, 2);
    expect(number(row!.byIcc.mdc)).toBeCloseTo(12.069, 2);
    // Limits of agreement at 90 %: ± 1.644854 · SD of the differences, which is √2 · 7.556927.
    const [low, high] = row!.limits.split(' to ').map(number);
    expect((high! - low!) / 2).toBeCloseTo(1.644854 * Math.SQRT2 * 7.556927, 1);
    const page = reportDocument(report, 'a4');
    expect(page.includes('90 % (the book’s setting confidence_level)')).toBe(true);
    expect(page.includes('95 % interval')).toBe(false);
  });

  test('blank settings give the defaults, and what cannot be used is told', () => {
    const session = bookOf('weir_2005_set_a', ['A1', 'A2'], {});
    setting(session, 'icc_form', '');
    expect(reportIn(session)).toMatchObject({ problems: [], chosen: { form: '2,1', confidence: 0.95 } });
    session.execute({ do: 'set-cells', sheet: 'of_icc_form', row: 0, columns: ['is'], texts: [['4,1']] });
    setting(session, 'confidence_level', '95');
    const { problems, chosen } = reportIn(session);
    expect(chosen).toMatchObject({ form: '2,1', formFrom: null, confidence: 0.95, confidenceFrom: null });
    expect(problems).toEqual([
      expect.stringContaining('"4,1", which is not a form of the ICC. Use one of 1,1 2,1 3,1'),
      expect.stringContaining('confidence_level is 95, which is not between 0 and 1. For 95 % type 0.95.'),
    ]);
  });

  test('has the unit in every table', () => {
    const screening = readFileSync('sample-books/squat-screening.leverbook.json', 'utf8');
    const session = Session.open(screening);
    const trials = [{ sheet: 'roster', columns: ['wall_left', 'wall_right'] }];
    session.execute({ do: 'set-part', part: 'handouts', key: 'report', value: { trials } });
    const report = reportIn(session);
    expect(report.reliability[0]).toMatchObject({
      unit: 'cm',
      trials: [{ label: 'Knee to wall, left (cm)' }, { label: 'Knee to wall, right (cm)' }],
    });
    const units = Object.fromEntries(report.named.map(({ name, unit }) => [name, unit]));
    expect(units).toMatchObject({ target_lean: '°', tape_error: 'cm', ankle_error: '°', wall_sem: 'cm' });
  });

  test('prints bias and limits of agreement of Bland & Altman 1986', () => {
    const [row] = reportIn(bookOf('bland_altman_1986_pefr', ['wright1', 'mini1'], {})).reliability;
    // Bland & Altman 1986, Lancet 1:307–310: mean difference −2.1 l/min, SD 38.8; limits ±1.96 SD: −78.1 and 73.9 (±2 SD
    // there: −79.7 and 75.5).
    expect(number(row!.bias)).toBeCloseTo(-2.1, 1);
    const [low, high] = row!.limits.split(' to ').map(number);
    expect((high! - low!) / 2 / 1.959964).toBeCloseTo(38.8, 1);
    expect(row!.n).toBe(17);
  });

  test('leaves rows out in which a trial is missing, and says so', () => {
    const session = bookOf('weir_2005_set_a', ['A1', 'A2'], {});
    session.execute({ do: 'set-cells', sheet: 'data', row: 0, columns: ['trial_2'], texts: [['']] });
    const report = reportIn(session);
    const [row] = report.reliability;
    expect([row!.n, row!.left]).toEqual([7, 1]);
    // The SD is of the same 7 rows: 33.733, ICC(2,1) .951932: 7.396 (tests/reference/sem-by-icc.py).
    expect(number(row!.byIcc.sem)).toBeCloseTo(7.396, 2);
    expect(number(row!.consistency.sem)).toBeCloseTo(8.101, 2);
    expect(reportDocument(report, 'a4').includes('1 row of data left out, a trial is missing.')).toBe(true);
  });

  test('a column that is gone is told and costs only its own line', () => {
    const session = bookOf('weir_2005_set_a', ['A1', 'A2'], {});
    session.execute({ do: 'remove-column', sheet: 'data', column: 'trial_2' });
    const report = reportIn(session);
    expect(report.reliability).toEqual([]);
    expect(report.problems.join()).toContain('"trial_2"');
    expect(reportDocument(report, 'a4').includes('Not included')).toBe(true);
  });
});

describe('the groups', () => {
  // Student's sleep data: Student 1908, Biometrika 6:1–25: mean extra sleep .75 h and 2.33 h, SD 1.79 and 2.00.
  test('print the means and SDs of Student’s two drugs', () => {
    const [, ...lines] = readFileSync('tests/reference/student_sleep.csv', 'utf8').trim().split(/\r?\n/);
    const session = Session.create();
    session.execute({
      do: 'add-sheet',
      name: 'sleep',
      columns: [
        { name: 'drug', kind: 'text' },
        { name: 'extra', label: 'Extra sleep', kind: 'number' },
      ],
    });
    const texts = lines.flatMap((line) => {
      const cells = line.split(',');
      const [one, two] = cells.slice(-2);
      return [
        ['1', one!],
        ['2', two!],
      ];
    });
    session.execute({ do: 'set-cells', sheet: 'sleep', row: 0, columns: ['drug', 'extra'], texts });
    const groups = [{ sheet: 'sleep', columns: ['extra'], by: 'drug' }];
    session.execute({ do: 'set-part', part: 'handouts', key: 'report', value: { groups } });
    const [measure] = reportIn(session).described[0]!.measures;
    expect(measure!.label).toBe('Extra sleep');
    expect(measure!.groups.map(({ name }) => name)).toEqual(['all', '1', '2']);
    const [, first, second] = measure!.groups.map(({ cells }) => cells.map(number));
    expect(first![0]).toBe(10);
    expect([first![1], first![2]]).toEqual([expect.closeTo(0.75, 2), expect.closeTo(1.79, 2)]);
    expect([second![1], second![2]]).toEqual([expect.closeTo(2.33, 2), expect.closeTo(2.0, 2)]);
  });
});

describe('the whole report', () => {
  const session = Session.open(squadFile());
  const report = reportIn(session);
  const text = reportDocument(report, 'letter');

  test('says with what, from what and when it was made', () => {
    expect(text.includes('Leverbook 1.2.3')).toBe(true);
    expect(text.includes('2025-03-04')).toBe(true);
    expect(text.includes('Winter squad, a year')).toBe(true);
    expect(report.sheets.map(({ label, rows }) => [label, rows])).toContainEqual(['Roster', 20]);
  });

  test('keeps the day of a file that came in on one line', () => {
    const screening = readFileSync('sample-books/squat-screening.leverbook.json', 'utf8');
    const html = reportDocument(reportIn(Session.open(screening)), 'letter');
    // A browser may break a line after each hyphen (Unicode Standard Annex 14, class HY).
    expect(html).toContain('<td class="report-date">2025-11-15</td>');
    expect(html).toMatch(/\.report-date\)\{white-space:nowrap\}/);
  });

  test('tells every formula, and every function in use with rule, sources and how well each is known', () => {
    expect(report.formulas.map(({ formula }) => formula)).toContain(
      '=LEAN.PARALLEL(femur, tibia, trunk, ankle)',
    );
    const used = report.functions.map(({ help }) => help.name);
    for (const name of [
      'LEAN.PARALLEL',
      'TRAIN.SESSION',
      'COHORT.R',
      'COHORT.FIT',
      'TEST.ICC',
      'TRAIN.MONOTONY',
    ])
      expect(used).toContain(name);
    expect(used).not.toContain('STRENGTH.WILKS');
    expect(text.includes('Foster et al. 2001')).toBe(true);
    expect(text.includes('[working assumption]')).toBe(true);
  });

  test('shows the worked sheets, every chart of the book as a numbered figure, cautions and what sources differ on', () => {
    expect(report.results.map(({ title }) => title)).toEqual(['Lean and what goes with it']);
    for (let n = 1; n <= 8; n++) expect(text.includes(`<strong>Figure ${n} </strong>`)).toBe(true);
    expect(text.includes('see a licensed clinician')).toBe(true);
    expect(text.includes('Where sources differ')).toBe(true);
    expect(text.includes('Known limits')).toBe(true);
    // Of the strength estimates, which this book does not use, nothing is said.
    expect(text.includes('<h3>Strength estimates</h3>')).toBe(false);
    expect(text.includes('size:letter')).toBe(true);
  });

  test('counts the rows that the filter shows, and says which it counts', () => {
    const filtered = Session.open(squadFile());
    const where = [{ column: 'team', is: 'one of', texts: ['morning'] }];
    filtered.execute({ do: 'set-part', part: 'views', key: 'roster', value: { rows: { where } } });
    const part = reportIn(filtered);
    expect(part.sheets.find(({ label }) => label === 'Roster')).toMatchObject({ rows: 20, shown: 10 });
    expect(reportDocument(part, 'a4').includes('Rows that a sheet’s filter hides are not counted')).toBe(
      true,
    );
  });

  test('loads nothing, runs nothing, and texts of the book stay texts', () => {
    const evil = '</p><script>alert(1)</script><img src=x onerror=alert(1)>';
    const hostile = Session.open(squadFile());
    hostile.execute({ do: 'set-title', title: evil });
    hostile.execute({ do: 'change-sheet', sheet: 'roster', change: { label: evil } });
    hostile.execute({
      do: 'set-part',
      part: 'handouts',
      key: 'report',
      value: { methods: evil, authors: evil, title: evil },
    });
    const written = reportDocument(reportIn(hostile), 'a4');
    expect(/<script|<img|<iframe|<link/.test(written)).toBe(false);
    expect(written.includes("default-src 'none'")).toBe(true);
    expect(written.includes('&lt;script&gt;')).toBe(true);
  });

  test('refuses settings that cannot be read, with the place', () => {
    const broken = Session.create();
    broken.execute({ do: 'set-part', part: 'handouts', key: 'report', value: { trials: 7 } });
    expect(() => reportIn(broken)).toThrow(/report cannot be read at "trials"/);
  });

  test('of an empty book says what is missing', () => {
    const empty = reportDocument(reportIn(Session.create()), 'a4');
    expect(empty.includes('No columns are set as trials')).toBe(true);
  });
});

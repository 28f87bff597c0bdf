import { beforeAll, describe, expect, test } from 'vitest';
import { buildCommand, file, folder, leverbook } from './run.ts';

beforeAll(() => buildCommand());

interface Answer {
  readonly formula: string;
  readonly value?: unknown;
  readonly error?: string;
  readonly message?: string;
}

/** Formulas in, a JSON line out for each, from one process. */
function check(formulas: readonly string[]): Answer[] {
  const { code, out, err } = leverbook(['eval', '--json', ...formulas]);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Answer);
}

const deg = 180 / Math.PI;

/** Trunk lean by the bar rule at parallel on flat shoes, high bar, default foot: the closed form, written out by hand. */
function leanAtParallel(femur: number, tibia: number, trunk: number, ankle: number): number {
  const foot = (0.152 / 0.779) * (femur + tibia + trunk);
  const hip = 0.25 * foot - 0.5 * foot + tibia * Math.sin(ankle / deg) - femur;
  const along = 1.0 * trunk;
  const behind = -0.09 * trunk;
  return Math.asin(-hip / Math.hypot(along, behind)) * deg - Math.atan2(behind, along) * deg;
}

describe('leverbook eval', () => {
  test('computes the lean at parallel as the closed form of the bar rule (statics) gives it', () => {
    const builds: [number, number, number, number][] = [
      [43, 42, 50, 38],
      [47.5, 38, 48, 25],
      [38.2, 41, 55.5, 44],
    ];
    const answers = check(builds.map((build) => `=LEAN.PARALLEL(${build.join(', ')})`));
    for (const [i, build] of builds.entries())
      expect(answers[i]?.value).toBeCloseTo(leanAtParallel(...build), 9);
  });

  test('answers a formula with its value, an array by rows', () => {
    const values: readonly [string, unknown][] = [
      // Operators and their order: OpenFormula (ISO/IEC 26300-2), 5.5 and 6.
      ['=1+2*3', 7],
      ['=-2^2', 4],
      ['=50%', 0.5],
      ['="a"&1', 'a1'],
      ['=2<=2', true],
      [
        '={1,2;3,4}',
        [
          [1, 2],
          [3, 4],
        ],
      ],
      ['=SUM({1,2;3,4})', 10],
      // International yard and pound agreement, 1959.
      ['=IN(1)', 2.54],
      ['=LB(1)', 0.45359237],
    ];
    expect(check(values.map(([formula]) => formula))).toEqual(
      values.map(([formula, value]) => ({ formula, value })),
    );
  });

  test('answers an error with its sentence, and that is no failure', () => {
    const errors: readonly [string, string, RegExp][] = [
      ['=1/0', '#DIV/0!', /divided by 0/],
      ['=LEAN.PARALLEL(430, 42, 50, 38)', '#NUM!', /"femur".*430 cm.*15 to 80/],
      ['=LEAN.PARALLEL(43, 42, , 38)', '#N/A', /"trunk".*blank/],
      ['=LEAN.PARALLEL("x", 42, 50, 38)', '#VALUE!', /"femur".*"x".*number/],
      ['=LEAN.PARALEL(43, 42, 50, 38)', '#NAME?', /LEAN\.PARALLEL/],
      ['=1+', '#ERROR!', /ends where/],
    ];
    const answers = check(errors.map(([formula]) => formula));
    for (const [i, [formula, error, message]] of errors.entries()) {
      expect(answers[i]).toMatchObject({ formula, error });
      expect(answers[i]?.message).toMatch(message);
    }
  });

  test('takes several formulas, a file, or standard input, one a line', () => {
    expect(leverbook(['eval', '1+1', '=2+2'])).toEqual({ code: 0, out: '2\n4\n', err: '' });
    expect(leverbook(['eval', '--file', file('f.txt', '\uFEFF=1+1\r\n\r\n="x"\r\n')]).out).toBe('2\nx\n');
    expect(leverbook(['eval'], '=3*3\n').out).toBe('9\n');
    expect(leverbook(['eval', '{1,2;3,4}']).out).toBe('1\t2\n3\t4\n');
  });

  test.each([
    [['eval', '--file', '/nowhere/f.txt'], /There is no file at \/nowhere\/f\.txt/],
    [['eval', '--file', folder()], /is a folder/],
    [['eval', '--file', file('empty.txt', '')], /is empty/],
    [['eval', '--file', file('bytes.txt', Uint8Array.of(0xff, 0xfe, 0x80))], /not UTF-8/],
    [['eval', '1', '--file', 'x'], /both/],
    [['eval', '--jsn', '1'], /--json/],
    [['evil'], /eval/],
    [['functions', 'LEAN.PARALEL'], /Did you mean LEAN\.PARALLEL/],
  ])('refuses %j with one message and exit code 2', (args, message) => {
    const { code, out, err } = leverbook(args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
  });
});

describe('leverbook functions', () => {
  test('lists every function with its signature, and shows one whole', () => {
    expect(leverbook(['functions']).out).toContain(
      'LEAN.PARALLEL(femur, tibia, trunk, ankle, [lift=0], [placement="high-bar"], [foot], [stance=0])',
    );
    const one = leverbook(['functions', 'lean.parallel']).out;
    for (const title of ['Arguments', 'Result', 'Rule', 'Sources', 'Examples'])
      expect(one).toContain(`\n${title}\n`);
    expect(JSON.parse(leverbook(['functions', 'SEG.RATIO', '--json']).out)).toMatchObject({
      name: 'SEG.RATIO',
      family: 'segments',
    });
  });

  test('explains standard functions too, by any of their names, and says which was meant', () => {
    expect(leverbook(['functions', 'sum']).out).toContain('SUM(numbers, …)\nThe sum.');
    expect(leverbook(['functions', 'STDEV.S']).out).toContain('STDEV(numbers, …)');
    expect(leverbook(['functions', 'XLOKUP']).err).toMatch(/Did you mean XLOOKUP\?/);
    expect(leverbook(['functions', 'LEAN.PARALEL']).err).toMatch(/Did you mean LEAN\.PARALLEL\?/);
  });

  test('explains itself with --help and --version', () => {
    for (const args of [
      ['--help'],
      ['eval', '--help'],
      ['calc', '--help'],
      ['check', '--help'],
      ['functions', '--help'],
    ]) {
      const { code, out } = leverbook(args);
      expect(code).toBe(0);
      expect(out).toMatch(/Usage: leverbook/);
      expect(out).not.toContain('(default: [])');
    }
    expect(leverbook(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

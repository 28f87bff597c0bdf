import { execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildCommand, command, file, folder, leverbook, root } from './run.ts';

beforeAll(() => buildCommand());

const screening = 'sample-books/squat-screening.leverbook.json';

describe('where files cannot all be written, none is, and the message says so', () => {
  const refused = (args: readonly string[], says: RegExp) => {
    const ran = leverbook(['calc', screening, ...args]);
    expect(ran, ran.err).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toMatch(says);
  };

  test('a folder where the third of eight files would be', () => {
    const out = folder();
    mkdirSync(join(out, 'sessions.csv'));
    refused(['--out', out, '--replace'], /--out names .*sessions\.csv, which is a folder/);
    expect(readdirSync(out)).toEqual(['sessions.csv']);
  });

  test('a file that exists, unless --replace is given', () => {
    const out = folder();
    writeFileSync(join(out, 'heights.csv'), 'mine');
    refused(['--out', out], /heights\.csv exists.*--replace/);
    expect(readdirSync(out)).toEqual(['heights.csv']);
    expect(readFileSync(join(out, 'heights.csv'), 'utf8')).toBe('mine');
    expect(leverbook(['calc', screening, '--out', out, '--replace']).code).toBe(0);
    expect(readFileSync(join(out, 'heights.csv'), 'utf8')).not.toBe('mine');
    expect(readdirSync(out).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  test('two options that name one file, also by way of a linked folder', () => {
    const out = folder();
    symlinkSync(out, join(out, 'again'));
    refused(['--xlsx', join(out, 'a'), '--save', join(out, 'a')], /--save and --xlsx name the same file/);
    refused(['--xlsx', join(out, 'a'), '--save', join(out, 'again', 'a')], /name the same file/);
    refused(['--out', join(out, 'x'), '--save', join(out, 'x', 'roster.csv')], /name the same file/);
    refused(['--out', join(out, 'x'), '--save', join(out, 'x')], /needs a folder of that name/);
    expect(readdirSync(out)).toEqual(['again']);
  });

  test('devices, pipes and links, even with --replace', () => {
    const out = folder();
    const [pipe, link, aim] = ['pipe', 'link', 'aim'].map((name) => join(out, name)) as [
      string,
      string,
      string,
    ];
    execFileSync('mkfifo', [pipe]);
    writeFileSync(aim, 'mine');
    symlinkSync(aim, link);
    refused(['--save', '/dev/null', '--replace'], /\/dev\/null, which is a device/);
    refused(['--save', pipe, '--replace'], /pipe, which is a pipe/);
    refused(['--save', link, '--replace'], /link, which is a link/);
    expect(readFileSync(aim, 'utf8')).toBe('mine');
  });

  test('a file that is read, and the book unless it is saved', () => {
    const csv = file('roster.csv', 'Athlete,Femur (cm)\nNora Quill,40\n');
    refused([`--import=roster=${csv}`, '--save', csv, '--replace'], /which this command reads/);
    const own = file('own.leverbook.json', readFileSync(join(root, screening), 'utf8'));
    expect(leverbook(['calc', own, '--xlsx', own, '--replace'])).toMatchObject({
      code: 2,
      err: expect.stringMatching(/which this command reads/),
    });
    expect(leverbook(['calc', own, '--save', own, '--replace']).code).toBe(0);
  });

  test('a path that runs through a file', () => {
    const plain = file('plain', 'mine');
    refused(['--save', join(plain, 'sub', 'new')], /where a folder is needed/);
    expect(readFileSync(plain, 'utf8')).toBe('mine');
  });

  test('handouts and the report replace nothing unasked either', () => {
    const out = folder();
    writeFileSync(join(out, 'report.html'), 'mine');
    const args = ['report', 'sample-books/wall-test-reliability.leverbook.json', '--out', out];
    expect(leverbook(args, undefined, { LEVERBOOK_CHROMIUM: 'off' })).toMatchObject({
      code: 2,
      err: expect.stringMatching(/report\.html exists.*--replace/),
    });
    expect(leverbook([...args, '--replace'], undefined, { LEVERBOOK_CHROMIUM: 'off' }).code).toBe(0);
  });
});

/**
 * 480 products of matrices of 100 × 100, no two alike: every one is quick, and all of them together take longer than
 * the tests wait on any machine. As many as the length of a formula allows.
 */
const products = (from: number): string =>
  Array.from({ length: 80 }, (_, i) => `MMULT(m,m*${from + i})`).join('+');
const slowest = `LET(m,SEQUENCE(100,100),${Array.from({ length: 6 }, (_, k) => `SUM(${products(100 + 80 * k)})`).join('+')})`;
const named = slowest.slice(0, 200);

/** A book with a column that takes longer than the test waits, and the folder it would be written to. */
function endless() {
  const product = 'SUM(MMULT(SEQUENCE(100,100,n),SEQUENCE(100,100)))';
  const text = JSON.stringify({
    leverbook: 1,
    title: 'Endless',
    sheets: [
      {
        name: 'steps',
        purpose: 'worked',
        rows: 40_000,
        columns: [
          { name: 'n', kind: 'number', formula: 'ROW()' },
          { name: 'slow', kind: 'number', label: 'Slow one', formula: product },
        ],
      },
    ],
  });
  return { book: file('endless.leverbook.json', text), out: join(folder(), 'out') };
}

describe('work that takes too long can be ended', () => {
  test('by an interrupt in the middle of a formula: nothing is written, and the formula is named', async () => {
    const child = spawn(process.execPath, [command(), 'eval', '--timeout', '0', '1+1', 'endless()', slowest]);
    let said = '';
    child.stderr.on('data', (text) => {
      said += text;
    });
    // The second answer is out, so the third formula is being worked out.
    await new Promise<void>((resolve) => {
      let heard = '';
      child.stdout.on('data', (text) => {
        heard += text;
        if (heard.includes('#NAME?')) resolve();
      });
    });
    // On a busy machine the thread that computes may get its turn after this one.
    await new Promise((resolve) => setTimeout(resolve, 500));
    child.kill('SIGINT');
    const code = await new Promise((resolve) => child.on('exit', resolve));
    expect({ code, said }).toMatchObject({ code: 130 });
    expect(said).toContain(`leverbook: interrupted while calculating ${named}`);
    expect(said).toMatch(/; no file was written\.\n$/);
  });

  test('by --timeout: what was answered before is out, and the formula is named', () => {
    const ran = leverbook(['eval', '--timeout', '1.5', '1+1', slowest, '2+2']);
    expect(ran).toMatchObject({ code: 124, out: '2\n' });
    expect(ran.err).toContain(`1.5 s were not enough while calculating ${named}`);
  });

  test('in calc too, by the name of the column and its formula, and no file is written', () => {
    const { book, out } = endless();
    const ran = leverbook(['calc', book, '--timeout', '2', '--out', out]);
    expect(ran, ran.err).toMatchObject({ code: 124, out: '' });
    expect(ran.err).toMatch(/2 s were not enough while calculating Slow one of steps: =SUM\(MMULT\(SEQ/);
    expect(existsSync(out)).toBe(false);
  });

  test.each(['soon', '-1', '', '1e9'])('--timeout refuses "%s"', (given) => {
    expect(leverbook(['eval', `--timeout=${given}`, '1'])).toMatchObject({
      code: 2,
      err: expect.stringMatching(/--timeout got .*seconds, such as 60/),
    });
  });
});

describe('characters that a terminal obeys are shown, not sent', () => {
  const hostile = 'a\u001b[2J\u0007\u009b31m\u202eb';
  const shown = 'a\\u001B[2J\\u0007\\u009B31m\\u202Eb';
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the characters that must not come
  const obeyed = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/;

  test('in results of eval, each on one line, and JSON reads as it was', () => {
    expect(leverbook(['eval', `"${hostile}"`, `"x\ny"&"\tz"`])).toMatchObject({
      code: 0,
      out: `${shown}\nx\\u000Ay\\u0009z\n`,
    });
    const { out } = leverbook(['eval', '--json', `"${hostile}"`]);
    expect(out).not.toMatch(obeyed);
    expect(JSON.parse(out).value).toBe(hostile);
  });

  test('in what check says of a file, in JSON lines, and in messages', () => {
    const csv = file('c.csv', `Name,Note\n${hostile},1\n${'plain,2\n'.repeat(200)}`);
    const checked = leverbook(['check', csv]);
    expect(checked.code, checked.err).toBe(0);
    expect(checked.out).toContain(shown);
    const messages = [
      checked,
      leverbook(['check', '--json', csv]),
      leverbook(['check', `/nowhere${hostile}`]),
      leverbook(['functions', hostile]),
      leverbook(['calc', screening, '--sheet', hostile]),
      leverbook([hostile]),
      leverbook(['eval', `--${hostile}`]),
      leverbook(['calc', screening, `--import=roster=${csv}`, '--json']),
    ];
    for (const { out, err } of messages) {
      expect(out).not.toMatch(obeyed);
      expect(err).not.toMatch(obeyed);
    }
  });
});

describe('check reads regular files alone', () => {
  test('a device and a pipe are said to be such', () => {
    const pipe = join(folder(), 'pipe');
    execFileSync('mkfifo', [pipe]);
    expect(leverbook(['check', '/dev/zero'])).toMatchObject({
      code: 2,
      err: expect.stringMatching(/\/dev\/zero is a device; a CSV/),
    });
    expect(leverbook(['check', pipe])).toMatchObject({
      code: 2,
      err: expect.stringMatching(/pipe is a pipe; a CSV.*Save its content as a file first/),
    });
  });
});

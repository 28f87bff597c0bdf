import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { executable } from '../browser/browser.ts';
import { squadFile } from '../session/charts/squad.ts';
import { buildCommand, file, folder, leverbook } from './run.ts';

const report = (chromium: string, ...args: readonly string[]) => {
  process.env.LEVERBOOK_CHROMIUM = chromium;
  try {
    return leverbook(['report', ...args]);
  } finally {
    delete process.env.LEVERBOOK_CHROMIUM;
  }
};

describe('leverbook report', () => {
  let book: string;
  beforeAll(() => {
    book = file('squad.leverbook.json', squadFile());
    return buildCommand();
  });

  test('writes the report as HTML with its figures, and with this version', () => {
    const out = folder();
    const ran = report('off', book, '--out', out);
    expect([ran.code, ran.err.includes('No PDF')]).toEqual([0, true]);
    expect(readdirSync(out)).toEqual(['report.html']);
    const text = readFileSync(join(out, 'report.html'), 'utf8');
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect(text.includes(`Leverbook ${version}`)).toBe(true);
    expect(text.match(/<figure/g)).toHaveLength(8);
    expect(text.includes('<script')).toBe(false);
  });

  test('prints it as PDF of the paper asked for', async () => {
    const out = folder();
    const ran = report(await executable(), book, '--out', out, '--paper', 'letter');
    expect(ran.err).toContain('report.pdf');
    const pdf = readFileSync(join(out, 'report.pdf'), 'latin1');
    expect(pdf.startsWith('%PDF-')).toBe(true);
    // US Letter is 8.5 × 11 in (ANSI/ASME Y14.1, size A); a point is 1/72 in.
    const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!;
    expect(Math.abs(Number(box[1]) - 8.5 * 72)).toBeLessThan(1);
    expect(Math.abs(Number(box[2]) - 11 * 72)).toBeLessThan(1);
  });

  test.each([
    ['a file that is not there', ['nowhere.leverbook.json'], /no file at nowhere/],
    ['a paper that is none', ['BOOK', '--paper', 'a3'], /a4, letter/],
  ])('refuses %s and writes nothing', (_, args, says) => {
    const out = folder();
    const ran = report('off', ...args.map((arg) => (arg === 'BOOK' ? book : arg)), '--out', out);
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(says);
    expect(readdirSync(out)).toEqual([]);
  });

  test('refuses settings that cannot be read', () => {
    const broken = JSON.parse(squadFile());
    broken.parts.handouts.report = { trials: 7 };
    const out = folder();
    const ran = report('off', file('broken.leverbook.json', JSON.stringify(broken)), '--out', out);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('report cannot be read at "trials"');
    expect(readdirSync(out)).toEqual([]);
  });
});

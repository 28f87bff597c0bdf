import { chmodSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { fileNames } from '../../src/cli/handout.ts';
import { executable } from '../browser/browser.ts';
import { buildCommand, file, folder, leverbook } from './run.ts';

const book = 'sample-books/squat-screening.leverbook.json';
const handout = (chromium: string, ...args: readonly string[]) => {
  process.env.LEVERBOOK_CHROMIUM = chromium;
  try {
    return leverbook(['handout', ...args]);
  } finally {
    delete process.env.LEVERBOOK_CHROMIUM;
  }
};

describe('leverbook handout', () => {
  beforeAll(() => buildCommand(), 120_000);

  test('writes a page for each athlete as HTML where no Chromium is wanted', () => {
    const out = folder();
    const ran = handout('off', book, '--out', out);
    expect(ran.err).toContain('No PDF');
    expect(ran.code).toBe(0);
    const files = readdirSync(out);
    expect(files).toHaveLength(24);
    expect(files).toContain('bram-oduya.html');
    const text = readFileSync(join(out, 'bram-oduya.html'), 'utf8');
    expect(text).toMatch(/^<!doctype html>/);
    expect(text).toContain('<h1>Bram Oduya</h1>');
    expect(text).not.toContain('<script');
  });

  // ISO 216: A4 is 210 × 297 mm; US Letter is 8.5 × 11 in (ANSI/ASME Y14.1, size A); a point is 1/72 in.
  test.each([
    ['a4', (210 / 25.4) * 72, (297 / 25.4) * 72],
    ['letter', 8.5 * 72, 11 * 72],
  ])('prints one page of the size %s as PDF', async (paper, width, height) => {
    const out = folder();
    const ran = handout(await executable(), book, '--out', out, '--paper', paper, '--athlete', 'dario welk');
    expect(ran.err).toContain('dario-welk.pdf');
    expect(ran.code).toBe(0);
    const pdf = readFileSync(join(out, 'dario-welk.pdf'), 'latin1');
    expect(pdf.startsWith('%PDF-')).toBe(true);
    expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(1);
    const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!;
    expect(Math.abs(Number(box[1]) - width)).toBeLessThan(1);
    expect(Math.abs(Number(box[2]) - height)).toBeLessThan(1);
  });

  test('every page of the sample holds on one sheet of the shorter paper', async () => {
    const out = folder();
    const ran = handout(await executable(), book, '--out', out, '--paper', 'letter');
    expect(ran.code).toBe(0);
    const athletes = readdirSync(out).filter((name) => name.endsWith('.pdf'));
    expect(athletes).toHaveLength(24);
    for (const name of athletes) {
      // The document has an article for each page: one, and a second for whoever has an observed squat.
      const articles = readFileSync(join(out, name.replace('.pdf', '.html')), 'utf8').match(
        /<article /g,
      )!.length;
      const pages = readFileSync(join(out, name), 'latin1').match(/\/Type \/Page\b/g);
      expect([1, 2]).toContain(articles);
      expect(pages, name).toHaveLength(articles);
    }
  });

  test.each([
    ['an athlete who is not there', [book, '--athlete', 'Greta Solas'], /Greta Solas.*Greta Solis/],
    ['a sheet that is not there', [book, '--sheet', 'rooster'], /rooster.*roster/],
    ['a file that is not there', ['nowhere.leverbook.json'], /no file at nowhere/],
    ['a file that is no book', [file('x.leverbook.json', '{}')], /x\.leverbook\.json/],
    ['a paper that is none', [book, '--paper', 'a3'], /a4, letter/],
  ])('refuses %s and writes nothing', (_, args, says) => {
    const out = folder();
    const ran = handout('off', ...args, '--out', out);
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(says);
    expect(readdirSync(out)).toEqual([]);
  });

  test('refuses a Chromium that is none, and one that makes no PDF, and writes nothing', () => {
    const out = folder();
    const none = handout('/nowhere/chromium', book, '--out', out);
    expect([none.code, none.err]).toEqual([2, expect.stringContaining('LEVERBOOK_CHROMIUM')]);
    const path = file('chromium', '#!/bin/sh\nexit 3\n');
    chmodSync(path, 0o755);
    const broken = handout(path, book, '--out', out);
    expect([broken.code, broken.err]).toEqual([2, expect.stringContaining('made no PDF')]);
    expect(readdirSync(out)).toEqual([]);
  });

  test('names no two files the same, and none outside the folder', () => {
    expect(fileNames(['Ada B.', 'ada b', '../../etc/passwd', '', '???'])).toEqual([
      'ada-b',
      'ada-b-2',
      'etc-passwd',
      'athlete',
      'athlete-2',
    ]);
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Zippable, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook } from '../../src/book/book.ts';
import type { Cell } from '../../src/book/cells.ts';
import { IntakeRefusal, type PrepareOptions, prepare } from '../../src/intake/index.ts';
import { textOfNumber, useOfCode } from '../../src/intake/read/workbook/formats.ts';
import { isoFromSerial } from '../../src/units/date.ts';
import { importFile } from './at-once.ts';
import { bytesOf, wordsOf } from './help.ts';

const file = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(join(import.meta.dirname, 'workbooks', name)));

async function open(name: string, options: PrepareOptions = {}) {
  const { bytes, options: given } = await prepare(file(name), { name, ...options });
  const imported = importFile(bytes, { sheet: null, label: 'table' }, { name, now: '2026-06-30', ...given });
  const book = createBook();
  applyEdit(book, { do: 'batch', edits: imported.edits });
  const sheet = book.sheets[0]!;
  const shown = (cell: Cell): unknown =>
    cell !== null && typeof cell === 'object' ? ('date' in cell ? isoFromSerial(cell.date) : cell) : cell;
  const column = (column: string): unknown[] =>
    Array.from({ length: sheet.rows }, (_, row) => shown(sheet.cells.get(column)!.get(row)));
  return { imported, sheet, column };
}

async function refusal(bytes: Uint8Array, options: PrepareOptions = {}): Promise<string> {
  try {
    await prepare(bytes, { name: 'x.xlsx', ...options });
  } catch (error) {
    if (error instanceof IntakeRefusal) return error.message;
    throw error;
  }
  return 'imported';
}

/** The fewest files that make a workbook with one sheet. */
function workbook(sheet: Uint8Array | string): Uint8Array {
  const files: Zippable = {
    'xl/workbook.xml': bytesOf(
      '<workbook xmlns:r="r"><sheets><sheet name="One" sheetId="1" r:id="rId1"/></sheets></workbook>',
    ),
    'xl/_rels/workbook.xml.rels': bytesOf(
      '<Relationships><Relationship Id="rId1" Target="worksheets/sheet1.xml"/></Relationships>',
    ),
    'xl/worksheets/sheet1.xml': typeof sheet === 'string' ? bytesOf(sheet) : sheet,
  };
  return zipSync(files);
}

describe('a workbook (.xlsx)', () => {
  test('gives the first table with rows: texts, dates, numbers, per cent, durations, yes and no', async () => {
    const { imported, column, sheet } = await open('roster.xlsx');
    expect(imported.findings.workbook).toEqual({
      kind: 'xlsx',
      table: 'Roster',
      tables: ['Cover', 'Roster', 'Log'],
    });
    expect(imported.report.rows).toMatchObject({ in: 3, placed: 3, held: 0 });
    expect(column('athlete')).toEqual(['Mira Dahl', 'Jörg "Jo" Weil', 'Ola Åkesson']);
    expect(column('measured_on')).toEqual(['2026-03-04', '2026-03-05', '2025-12-31']);
    expect(column('femur').slice(0, 2)).toEqual([43.1, 44.65]);
    expect(column('femur')[2]).toMatchObject({ held: 'about 45' });
    expect(column('symmetry')).toEqual([96, 88.5, 91]);
    expect(column('barefoot')).toEqual([true, false, true]);
    expect(column('warm_up')).toEqual([12.5, 9, null]);
    expect(column('note')).toEqual(['line one\nline two', null, '=not a formula']);
    expect(sheet.columns.map((c) => c.dimension ?? '')).toEqual(['', '', 'length', '', '', 'duration', '']);
  });

  test('gives another table when asked, and says which there are when asked for one that is not there', async () => {
    const { column } = await open('roster.xlsx', { table: 'Log' });
    expect(column('date')).toEqual(['2026-03-04T18:30']);
    expect(await refusal(file('roster.xlsx'), { table: 'Diary' })).toMatch(
      /no table "Diary"\. Its tables: Cover, Roster, Log/,
    );
  });

  test('that counts days from 1904 gives the same dates', async () => {
    const { column } = await open('days-from-1904.xlsx');
    expect(column('date')).toEqual(['2026-03-04']);
  });

  test('gives the stored value of a formula; one whose value was not stored is held, not blank', async () => {
    const { column, imported } = await open('formulas.xlsx');
    expect(column('b')[0]).toBe(2);
    expect(column('b')[1]).toMatchObject({ held: '=B3+1' });
    expect(wordsOf(imported).join('\n')).toMatch(/1 cell unreadable, such as "=B3\+1"/);
  });

  test('keeps the fingerprint and the size of the file that arrived', async () => {
    const { createHash } = await import('node:crypto');
    const { imported } = await open('roster.xlsx');
    expect(imported.provenance.hash).toBe(createHash('sha256').update(file('roster.xlsx')).digest('hex'));
    expect(imported.provenance.size).toBe(file('roster.xlsx').length);
  });
});

describe('a workbook (.ods)', () => {
  test('gives typed values, not their shown texts; repeated cells and rows; no remarks', async () => {
    const { imported, column } = await open('roster.ods');
    expect(imported.findings.workbook).toEqual({ kind: 'ods', table: 'Roster', tables: ['Roster'] });
    expect(imported.report.rows).toMatchObject({ in: 3, placed: 3, held: 0 });
    expect(column('athlete')).toEqual(['Mira  Dahl', 'Same row\ntwice', 'Same row\ntwice']);
    expect(column('day')).toEqual(['2026-03-04', null, null]);
    expect(column('femur')).toEqual([43.1, 44, 44]);
    expect(column('symmetry')).toEqual([88.5, null, null]);
    expect(column('warm_up')).toEqual([12.5, null, null]);
    expect(column('set_2')).toEqual([5, null, null]);
  });
});

describe('a zipped file that is refused', () => {
  test('without a workbook in it', async () => {
    expect(await refusal(file('letters.zip'))).toMatch(
      /zipped file without a workbook in it.*Unpack it first/,
    );
  });

  test('cut off, or with bytes changed inside', async () => {
    const whole = file('roster.xlsx');
    expect(await refusal(whole.subarray(0, whole.length - 200))).toMatch(/damaged/);
    for (let at = 40; at < whole.length; at += 97) {
      const hurt = whole.slice();
      hurt[at] = hurt[at]! ^ 0xff;
      // Imported or refused with a sentence, never anything else.
      expect(typeof (await refusal(hurt))).toBe('string');
    }
  });

  test('locked with a password', async () => {
    const bytes = workbook('<worksheet/>');
    const at = bytes.findIndex(
      (_, i) => bytes[i] === 0x50 && bytes[i + 1] === 0x4b && bytes[i + 2] === 1 && bytes[i + 3] === 2,
    );
    bytes[at + 8] = bytes[at + 8]! | 1;
    expect(await refusal(bytes)).toMatch(/locked with a password/);
  });

  test('that unpacks to more than is allowed, whatever its header claims', async () => {
    const bomb = workbook(new Uint8Array(8_000_000).fill(32));
    expect(bomb.length).toBeLessThan(20_000);
    expect(await refusal(bomb, { largestUnpacked: 1_000_000 })).toMatch(/unpacks to more than 1 MB/);
    // The same with the claimed size set to 10 bytes, in both places where it stands.
    const lying = bomb.slice();
    const view = new DataView(lying.buffer);
    for (let i = 0; i + 4 <= lying.length; i++)
      if (view.getUint32(i, true) === 8_000_000) view.setUint32(i, 10, true);
    expect(await refusal(lying, { largestUnpacked: 1_000_000 })).toMatch(/unpacks to more than 1 MB/);
  });

  test('with entities that would unfold', async () => {
    const unfolding = `<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>&b;</t></is></c></row></sheetData></worksheet>`;
    expect(await refusal(workbook(unfolding))).toMatch(/damaged/);
    expect(await refusal(workbook(unfolding.replace('&b;</t>', 'b</t>')))).toBe('imported');
  });

  test('with more cells than a table of measures has', async () => {
    const sparse = '<worksheet><sheetData><row r="1"><c r="ZZZ1"><v>1</v></c></row></sheetData></worksheet>';
    expect(await refusal(workbook(sparse))).toMatch(/fills more than 30,000,000 cells/);
    const wide = '<worksheet><sheetData><row r="1"><c r="XFD1"><v>1</v></c></row></sheetData></worksheet>';
    expect(await refusal(workbook(wide))).toMatch(/a row with more than 4,000 cells/);
  });
});

describe('number formats', () => {
  // Codes as ECMA-376 part 1, 18.8.31 describes them.
  test.each([
    ['yyyy-mm-dd', 'date'],
    ['dd/mm/yy hh:mm', 'date'],
    ['[$-407]d. mmmm yyyy;@', 'date'],
    ['mmm-yy', 'date'],
    ['h:mm:ss', 'time'],
    ['[h]:mm', 'time'],
    ['mm:ss.0', 'time'],
    ['0.0%', 'percent'],
    ['0.00', 'number'],
    ['#,##0.00 "days"', 'number'],
    ['[Red]0.0', 'number'],
    ['General', 'number'],
  ])('%s is for a %s', (code, use) => {
    expect(useOfCode(code)).toBe(use);
  });

  test('the days before March 1900 are one off in the files, and come out right', () => {
    // 18.17.4.1: serial 1 is 1900-01-01, 59 is 1900-02-28, 61 is 1900-03-01.
    expect([1, 59, 61].map((n) => textOfNumber(n, 'date', false))).toEqual([
      '1900-01-01',
      '1900-02-28',
      '1900-03-01',
    ]);
  });
});

import { describe, expect, test } from 'vitest';
import type { FileDecisions } from '../../../src/session/imports/file-reading.ts';
import { type Read, readingFile } from '../../../src/session/imports/read-file.ts';
import { Session } from '../../../src/session/session.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

async function read(session: Session, name: string, text: string, decisions: FileDecisions): Promise<Read> {
  const work = await readingFile(session, bytesOf(text), name, decisions);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

async function importFile(session: Session, name: string, text: string, decisions: FileDecisions = {}) {
  const { prepared, reading: found } = await read(session, name, text, decisions);
  expect(session.writePlanned(prepared).ok).toBe(true);
  return found;
}

const sheetOf = (session: Session, label: string) =>
  session.outline().sheets.find((sheet) => sheet.label === label)!;

const men = 'Name,Stature (cm),Mass (kg)\nAdam Berg,180,80\nBo Lind,175,75\n';
const women = 'Name,Stature (cm),Mass (kg)\nAda Holm,168,62\nEva Moe,171,66\nIda Lund,165,60\n';

/** Two sheets with import settings that fit the same headings equally well. */
async function cohort(): Promise<Session> {
  const session = Session.create();
  await importFile(session, 'men.csv', men, { sheet: null });
  await importFile(session, 'women.csv', women, { sheet: null });
  return session;
}

describe('a file that fits the import settings of two sheets equally well', () => {
  test.each(['men', 'women'])('goes to the sheet on screen: %s', async (label) => {
    const session = await cohort();
    const near = sheetOf(session, label).id;
    const { reading: found } = await read(session, 'next.csv', 'Name,Stature (cm),Mass (kg)\nX Y,170,70\n', {
      near,
    });
    expect(found.sheet).toMatchObject({ id: near });
    expect(found.fits).toEqual([]);
  });

  test('is asked about where the sheet on screen is neither, and goes where the answer says', async () => {
    const session = await cohort();
    await importFile(session, 'log.csv', 'Day,Reps\n2026-03-02,5\n', { sheet: null });
    const near = sheetOf(session, 'log').id;
    const next = 'Name,Stature (cm),Mass (kg)\nX Y,170,70\n';
    const { reading: asked } = await read(session, 'next.csv', next, { near });
    expect(asked.fits.map(({ label }) => label).sort()).toEqual(['men', 'women']);
    const answer = asked.fits.find(({ label }) => label === 'women')!;
    const { reading: found } = await read(session, 'next.csv', next, {
      near,
      sheet: answer.sheet,
      recipe: answer.recipe,
    });
    expect(found).toMatchObject({ sheet: { label: 'women' }, fits: [], rows: { added: 1 } });
  });
});

describe('replacing', () => {
  test('rows that came from another file is asked about', async () => {
    const session = await cohort();
    const sheet = sheetOf(session, 'women').id;
    const { reading: asked } = await read(session, 'men.csv', men, { sheet, mode: 'replace' });
    expect(asked.replacing).toEqual({ rows: 3, files: ['women.csv'] });
    const { reading: sure } = await read(session, 'men.csv', men, { sheet, mode: 'replace', replace: true });
    expect(sure.replacing).toBeNull();
  });

  test('rows of the same file, exported again, is not asked about', async () => {
    const session = await cohort();
    const sheet = sheetOf(session, 'women').id;
    const { reading: found } = await read(session, 'women.csv', women, { sheet, mode: 'replace' });
    expect(found.replacing).toBeNull();
  });

  test('rows that were entered is asked about', async () => {
    const session = Session.create();
    await importFile(session, 'men.csv', men, { sheet: null });
    const { id } = sheetOf(session, 'men');
    await importFile(session, 'all.csv', men, { sheet: id, mode: 'replace', replace: true });
    const { reading: found } = await read(session, 'men.csv', men, { sheet: id, mode: 'replace' });
    // What a replacing file took the place of is gone: only its own rows are there.
    expect(found.replacing).toEqual({ rows: 2, files: ['all.csv'] });
  });
});

describe('a file that lacks a column its import settings need', () => {
  const short = 'Name,Stature (cm)\nX Y,170\nZ W,172\n';

  test('says so, and names what can be done instead', async () => {
    const session = await cohort();
    const { id } = sheetOf(session, 'men');
    const failed = read(session, 'short.csv', short, { near: id });
    await expect(failed).rejects.toMatchObject({
      stuck: { sheet: { id, label: 'men' }, title: 'men: men.csv', others: [{ label: 'women' }] },
    });
    await expect(failed).rejects.toThrow(/has no column "Mass \(kg\)"/);
  });

  test('can be matched by heading, or go to a new sheet', async () => {
    const session = await cohort();
    const { id } = sheetOf(session, 'men');
    const { reading: matched } = await read(session, 'short.csv', short, { sheet: id, recipe: null });
    expect(matched).toMatchObject({ sheet: { id }, rows: { in: 2, placed: 2, added: 2 } });
    const { reading: made } = await read(session, 'short.csv', short, { sheet: null });
    expect(made).toMatchObject({ sheet: { id: null }, rows: { in: 2, added: 2 } });
  });
});

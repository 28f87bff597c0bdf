import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { guides, pictureName, piecesOf, stepsOf } from '../../src/guides/index.ts';
import { Session } from '../../src/session/session.ts';

const at = (path: string): URL => new URL(`../../${path}`, import.meta.url);
const commandIds = readdirSync(at('src/app/commands')).flatMap((name) =>
  [...readFileSync(at(`src/app/commands/${name}`), 'utf8').matchAll(/\bid: '([a-z-]+)'/g)].map(
    ([, id]) => id,
  ),
);

describe.each(guides)('the guide $title', (guide) => {
  const steps = stepsOf(guide);
  const template = Session.open(
    readFileSync(at(`sample-books/templates/${guide.book}.leverbook.json`), 'utf8'),
  ).outline();
  const sheetNamed = (name: string) => template.sheets.find((sheet) => sheet.name === name);

  test('has each step once, and says what to do in each', () => {
    expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length);
    for (const { id, text } of steps) {
      expect(id).toMatch(/^[a-z-]+$/);
      expect(text).toMatch(/^[A-Z*].*[.:]$/);
    }
  });

  test('begins with a template, and leads to nothing that the book does not have', () => {
    expect(steps[0]!.show).toEqual({ template: guide.book });
    expect(existsSync(at(`sample-books/${guide.book}.leverbook.json`))).toBe(true);
    for (const { id, show } of steps) {
      if (!show) continue;
      if ('file' in show) {
        expect(guide.files, id).toHaveProperty([show.file]);
        expect(sheetNamed(show.into), id).toBeDefined();
      } else if ('sheet' in show) {
        const sheet = sheetNamed(show.sheet);
        expect(sheet, id).toBeDefined();
        if (show.column)
          expect(
            sheet!.columns.map(({ name }) => name),
            id,
          ).toContain(show.column);
      } else if ('chart' in show)
        expect(
          template.charts.map(({ key }) => key),
          id,
        ).toContain(show.chart);
      else if ('name' in show)
        expect(
          template.names.map(({ name }) => name),
          id,
        ).toContain(show.name);
      else if ('command' in show) expect(commandIds, id).toContain(show.command);
    }
  });

  test('offers files that are there, and names in its steps no other', () => {
    const named = steps.flatMap(({ text }) =>
      piecesOf(text).flatMap(({ as, text: piece }) => (as === 'type' && piece.endsWith('.csv') ? piece : [])),
    );
    expect(new Set(named)).toEqual(new Set(Object.keys(guide.files)));
    for (const name of Object.keys(guide.files))
      expect(existsSync(at(`sample-books/${guide.book}/${name}`)), name).toBe(true);
  });

  test('shows its pictures, and there are no others; otherwise run npm run pictures', () => {
    const wanted = steps.filter(({ picture }) => picture).map((step) => pictureName(guide, step));
    const there = readdirSync(at('docs/pictures')).filter((name) => name.startsWith(`guide-${guide.id}-`));
    expect(there.sort()).toEqual(wanted.sort());
  });

  test('says the cautions', () => {
    for (const words of ['not for diagnosis', 'licensed clinician', 'safety pins', 'minors'])
      expect(guide.cautions.join(' ')).toContain(words);
  });
});

test('pieces of a text are what is pressed, what is typed, and the words between', () => {
  expect(piecesOf('Press *Done*, type `30`.')).toEqual([
    { as: 'plain', text: 'Press ' },
    { as: 'press', text: 'Done' },
    { as: 'plain', text: ', type ' },
    { as: 'type', text: '30' },
    { as: 'plain', text: '.' },
  ]);
});

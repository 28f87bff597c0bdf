import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { madeFiles } from '../../sample-books/make/books.ts';
import { Session } from '../../src/session/session.ts';

const folder = new URL('../../sample-books/', import.meta.url);
const text = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
const templates = readdirSync(new URL('templates/', folder));

describe('the sample books', () => {
  test.each(madeFiles())('$path is what its generator makes; otherwise run npm run samples', (made) => {
    // Not compared whole: a difference is told by its line.
    const [written, again] = [text(made.path).split('\n'), made.text.split('\n')];
    const first = again.findIndex((line, i) => line !== written[i]);
    expect(first < 0 ? 'the same' : `line ${first + 1}: ${written[first]?.slice(0, 200)}`).toBe('the same');
    expect(written.length).toBe(again.length);
  });
});

describe.each(templates)('the template %s', (name) => {
  const template = Session.open(text(`templates/${name}`));
  const sample = Session.open(text(name));

  test('is written exactly as the program writes it', () => {
    expect(template.save()).toBe(text(`templates/${name}`));
  });

  test('holds nobody, doubts nothing, and shows no error before the rows are there', () => {
    for (const { id, name: sheet, rows, columns, purpose } of template.outline().sheets) {
      const { texts } = template.tile(id, 0, rows, 0, columns.length);
      expect(
        texts.filter((cell) => cell.startsWith('#')),
        sheet,
      ).toEqual([]);
      if (purpose === 'gathered' && columns.some((column) => /athlete|person|on_day/.test(column.name)))
        expect(sheet === 'assumptions' ? 0 : rows, sheet).toBe(0);
    }
    expect(template.doubts()).toEqual([]);
  });

  test('has the sheets, columns, formulas, names, charts and handouts of its sample', () => {
    const frame = (session: Session) => {
      const { sheets, names, charts } = session.outline();
      return {
        sheets: sheets.map(({ rows: _, ...sheet }) => sheet),
        names: names.map(({ display: _, ...named }) => named),
        charts,
        handouts: [...session.current.parts.handouts],
        marks: [...session.current.parts.marks],
      };
    };
    expect(frame(sample)).toEqual(frame(template));
  });

  test('says the cautions', () => {
    const notes = JSON.stringify([...template.records('notes')]);
    for (const words of ['not for diagnosis', 'licensed clinician', 'safety pins', 'minors'])
      expect(notes).toContain(words);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BookFileError, readBook } from '../../src/book/file.ts';
import { limits } from '../../src/book/file-frame.ts';
import { writeBook } from '../../src/book/file-write.ts';
import { book } from './random.ts';

const minimal = {
  leverbook: 1,
  title: 'T',
  sheets: [
    {
      name: 'roster',
      purpose: 'gathered',
      rows: 4,
      columns: [
        {
          name: 'femur',
          kind: 'number',
          dimension: 'length',
          unit: 'cm',
          cells: [41.2, null, { held: 'x', reason: 'no' }],
        },
        { name: 'born', kind: 'date', cells: ['2001-05-06', { text: 'soon' }, 7, { formula: 'TODAY()' }] },
      ],
    },
  ],
  names: [{ name: 'first', sheet: 'roster', column: 'femur', row: 1 }],
};
type Loose = Record<string, unknown>;
/** The minimal book with one place changed. */
function changed(path: readonly (string | number)[], value: unknown): string {
  const copy = structuredClone(minimal) as unknown as Loose;
  let at: Loose = copy;
  for (const step of path.slice(0, -1)) at = at[step] as Loose;
  at[path.at(-1)!] = value;
  return JSON.stringify(copy);
}

describe('a book’s file', () => {
  test('reads back as the same book, whatever is in it, and is written the same again', () => {
    fc.assert(
      fc.property(book, (made) => {
        const text = writeBook(made);
        const again = readBook(text);
        expect(writeBook(again)).toBe(text);
        for (const sheet of made.sheets)
          for (const [id, cells] of sheet.cells) {
            const other = again.sheets.find((s) => s.id === sheet.id)!.cells.get(id)!;
            for (let row = 0; row < sheet.rows; row++) expect(other.get(row)).toEqual(cells.get(row));
          }
        expect(again.names).toEqual(made.names);
        expect(again.parts.charts).toEqual(made.parts.charts);
      }),
      { numRuns: 300 },
    );
  });

  test('keeps each kind of cell', () => {
    const made = readBook(JSON.stringify(minimal));
    const [femur, born] = [...made.sheets[0]!.cells.values()];
    expect([0, 1, 2, 3].map((row) => femur!.get(row))).toEqual([
      41.2,
      null,
      { held: 'x', reason: 'no' },
      null,
    ]);
    expect([0, 1, 2, 3].map((row) => born!.get(row))).toEqual([
      { date: 37017 },
      'soon',
      7,
      { formula: 'TODAY()' },
    ]);
    expect(made.names.get('first')).toEqual({ name: 'first', sheet: 'roster', column: 'femur', row: 0 });
  });

  test('a text that begins with "=" stays a text', () => {
    const made = readBook(changed(['sheets', 0, 'columns', 0, 'cells', 0], '=1+1'));
    expect(made.sheets[0]!.cells.get('femur')!.get(0)).toBe('=1+1');
  });

  test('is written with its parts in one order, columns one after another, ten cells a line', () => {
    const made = readBook(changed(['sheets', 0, 'columns', 1, 'cells'], ['2001-05-06', { text: 'soon' }]));
    made.parts.settings.set('b', { x: 1 });
    made.parts.settings.set('a', [1, 2]);
    expect(writeBook(made)).toMatchInlineSnapshot(`
      "{
        "leverbook": 1,
        "title": "T",
        "sheets": [
          {
            "name": "roster", "purpose": "gathered", "rows": 4,
            "columns": [
              { "name": "femur", "kind": "number", "dimension": "length", "unit": "cm",
                "cells": [
                  41.2, null, { "held": "x", "reason": "no" }
                ] },
              { "name": "born", "kind": "date",
                "cells": [
                  "2001-05-06", { "text": "soon" }
                ] }
            ]
          }
        ],
        "names": [
          { "name": "first", "sheet": "roster", "column": "femur", "row": 1 }
        ],
        "parts": {
          "settings": {
            "a": [
              1,
              2
            ],
            "b": {
              "x": 1
            }
          }
        }
      }
      "
    `);
  });
});

describe('a file that is no book, or a damaged one', () => {
  const c = ['sheets', 0, 'columns', 0] as const;
  const deep = (levels: number): string => `${'['.repeat(levels)}${']'.repeat(levels)}`;
  const cases: readonly (readonly [string, string, RegExp])[] = [
    ['nothing', '', /file is empty/],
    ['no JSON', 'name,femur\n', /not JSON/],
    ['JSON cut in the middle', JSON.stringify(minimal).slice(0, 200), /not JSON/],
    ['other JSON', '{"a":1}', /not a Leverbook file/],
    ['a list', '[1]', /not a Leverbook file/],
    ['no format', '{"leverbook":"one"}', /does not say which format/],
    [
      'a newer format',
      changed(['leverbook'], 2),
      /written by a newer Leverbook \(format 2\); this one reads up to 1.*was not changed/,
    ],
    ['a missing title', changed(['title'], undefined), /damaged at title/],
    ['an unknown key', changed(['extra'], 1), /damaged.*extra/],
    ['an unknown kind', changed([...c, 'kind'], 'money'), /damaged at sheets\[0\]\.columns\[0\]\.kind/],
    [
      'a name with a blank',
      changed([...c, 'name'], 'my femur'),
      /columns\[0\]\.name: "my femur" cannot be a name.*Try "my_femur"/,
    ],
    [
      'a name like an address',
      changed([...c, 'name'], 'leg1'),
      /"leg1" reads as the address of a cell.*"leg_1"/,
    ],
    ['two columns of a name', changed([...c, 'name'], 'BORN'), /a second column "born"/],
    ['a unit of another dimension', changed([...c, 'unit'], 'kg'), /"kg", which is not a unit of length/],
    ['a dimension of texts', changed([...c, 'kind'], 'text'), /a dimension of a text column/],
    ['a list as a cell', changed([...c, 'cells', 1], [1]), /columns\[0\]\.cells\[1\]: a list/],
    ['an unknown object as a cell', changed([...c, 'cells', 1], { a: 1 }), /cells\[1\]: an object with a/],
    ['a held value without its reason', changed([...c, 'cells', 1], { held: 'x' }), /cells\[1\]/],
    ['a formula that is no text', changed([...c, 'cells', 1], { formula: 1 }), /cells\[1\]/],
    ['more cells than rows', changed([...c, 'cells'], [1, 2, 3, 4, 5]), /5 cells in a sheet of 4 rows/],
    [
      'a date that does not exist',
      changed(['sheets', 0, 'columns', 1, 'cells', 0], '2001-02-30'),
      /"2001-02-30", which is not a date/,
    ],
    ['a number beyond all bounds', JSON.stringify(minimal).replace('41.2', '1e999'), /too large/],
    ['cells that are no list', changed([...c, 'cells'], { length: 2 }), /a list of cells is expected/],
    ['more rows than a sheet has', changed(['sheets', 0, 'rows'], limits.rows + 1), /sheets\[0\]\.rows/],
    ['half a row', changed(['sheets', 0, 'rows'], 1.5), /sheets\[0\]\.rows/],
    ['a name for no sheet', changed(['names', 0, 'sheet'], 'x'), /"x", which is not a sheet/],
    ['a name for no row', changed(['names', 0, 'row'], 5), /row 5 of a sheet of 4 rows/],
    ['an unknown part', changed(['parts'], { tricks: {} }), /damaged at parts/],
    [
      'records too deep',
      changed(['parts'], 0).replace('"parts":0', `"parts":{"charts":{"a":${deep(40)}}}`),
      /more than 32 levels/,
    ],
    ['a text of 200,000 characters', changed([...c, 'cells', 1], 'x'.repeat(200_000)), /at most 100000/],
    [
      'a key __proto__ in a record',
      changed(['parts'], 0).replace('"parts":0', '"parts":{"charts":{"a":{"__proto__":{"x":1}}}}'),
      /__proto__/,
    ],
    [
      'a record called __proto__',
      changed(['parts'], 0).replace('"parts":0', '"parts":{"charts":{"__proto__":{"x":1}}}'),
      /__proto__/,
    ],
    [
      'a key __proto__ in the frame',
      JSON.stringify(minimal).replace('"title"', '"__proto__":{"x":1},"title"'),
      /__proto__/,
    ],
    ['a key __proto__ in a cell', JSON.stringify(minimal).replace('"held"', '"__proto__"'), /cells\[2\]/],
  ];
  test.each(cases)('%s is refused with one sentence', (_, text, sentence) => {
    expect(() => readBook(text)).toThrow(BookFileError);
    expect(() => readBook(text)).toThrow(sentence);
    expect(({} as Loose).x).toBeUndefined();
  });

  test('a file that promises more cells than memory has is refused before any is taken', () => {
    const column = (i: number) => ({ name: `c_${i}`, kind: 'number', cells: [1] });
    const sheet = {
      name: 's',
      purpose: 'gathered',
      rows: limits.rows,
      columns: Array.from({ length: 2000 }, (_, i) => column(i)),
    };
    const before = process.memoryUsage().arrayBuffers;
    expect(() => readBook(JSON.stringify({ leverbook: 1, title: '', sheets: [sheet] }))).toThrow(
      /4000000000 cells/,
    );
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(50e6);
  });

  test('lists nested a hundred thousand deep are refused, not a crash', () => {
    for (const place of ['"parts":{"charts":{"a":', '"sheets":', '"title":']) {
      const text = `{"leverbook":1,${place}${deep(100_000)}}}}`;
      expect(() => readBook(text)).toThrow(BookFileError);
    }
  });

  test('a random change anywhere in a file gives a book or one sentence, nothing else', () => {
    const text = writeBook(readBook(JSON.stringify(minimal)));
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(12), fc.string({ maxLength: 6 }), (at, cut, put) => {
        const mutated = text.slice(0, at) + put + text.slice(at + cut);
        try {
          const made = readBook(mutated);
          expect(writeBook(readBook(writeBook(made)))).toBe(writeBook(made));
        } catch (error) {
          expect(error).toBeInstanceOf(BookFileError);
          expect((error as Error).message).toMatch(/\.$/);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

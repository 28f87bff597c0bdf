import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook, type LiveBook } from '../../src/book/book.ts';
import { CellKind, Cells } from '../../src/book/cells.ts';
import type { Edit } from '../../src/book/edit.ts';
import { writeBook } from '../../src/book/file-write.ts';
import type { Json } from '../../src/book/model.ts';
import { Refusal } from '../../src/book/refusal.ts';
import { book, editFor, picks } from './random.ts';

describe('applyEdit(book, edit)', () => {
  test('an edit and its inverse leave the file as it was, byte for byte, and the inverse of the inverse does it again', () => {
    fc.assert(
      fc.property(book, picks, (made, pick) => {
        const before = writeBook(made);
        const { inverse } = applyEdit(made, editFor(made, pick));
        const after = writeBook(made);
        const again = applyEdit(made, inverse).inverse;
        expect(writeBook(made)).toBe(before);
        applyEdit(made, again);
        expect(writeBook(made)).toBe(after);
      }),
      { numRuns: 1000 },
    );
  });

  test('thirty edits in a row are taken back step by step, then done again step by step', () => {
    fc.assert(
      fc.property(book, fc.array(picks, { minLength: 30, maxLength: 30 }), (made, choices) => {
        const files = [writeBook(made)];
        const back: Edit[] = [];
        for (const pick of choices) {
          back.push(applyEdit(made, editFor(made, pick)).inverse);
          files.push(writeBook(made));
        }
        const forth: Edit[] = [];
        for (let i = back.length - 1; i >= 0; i--) {
          forth.unshift(applyEdit(made, back[i]!).inverse);
          expect(writeBook(made)).toBe(files[i]);
        }
        forth.forEach((edit, i) => {
          applyEdit(made, edit);
          expect(writeBook(made)).toBe(files[i + 1]);
        });
      }),
      { numRuns: 60 },
    );
  });

  test('what was read before an edit stays as it was read', () => {
    fc.assert(
      fc.property(book, fc.array(picks, { minLength: 5, maxLength: 5 }), (made, choices) => {
        const read = made.sheets.flatMap((sheet) =>
          [...sheet.cells.values()].map((cells) => {
            const { kinds, numbers, texts } = cells.snapshot();
            return { kinds, numbers, texts, copy: JSON.stringify([[...kinds], [...numbers], texts]) };
          }),
        );
        for (const pick of choices) applyEdit(made, editFor(made, pick));
        for (const { kinds, numbers, texts, copy } of read)
          expect(JSON.stringify([[...kinds], [...numbers], texts])).toBe(copy);
      }),
      { numRuns: 200 },
    );
  });

  test('an edit survives being posted or stored: its structured clone does the same', () => {
    fc.assert(
      fc.property(book, picks, (made, pick) => {
        const edit = structuredClone(editFor(made, pick));
        const before = writeBook(made);
        const { inverse } = applyEdit(made, edit);
        applyEdit(made, structuredClone(inverse));
        expect(writeBook(made)).toBe(before);
      }),
      { numRuns: 200 },
    );
  });

  test('a batch that cannot be done to its end changes nothing', () => {
    fc.assert(
      fc.property(book, fc.array(picks, { maxLength: 4 }), (made, choices) => {
        const before = writeBook(made);
        // The edits are planned on a copy, so that each fits the book that the one before it leaves.
        const edits: Edit[] = [];
        const undo: Edit[] = [];
        for (const pick of choices) {
          edits.push(editFor(made, pick));
          undo.push(applyEdit(made, edits.at(-1)!).inverse);
        }
        for (const inverse of undo.reverse()) applyEdit(made, inverse);
        const broken: Edit = {
          do: 'batch',
          edits: [...edits, { do: 'remove-sheet', sheet: 'no such sheet' }],
        };
        expect(() => applyEdit(made, broken)).toThrow(Refusal);
        expect(writeBook(made)).toBe(before);
      }),
      { numRuns: 100 },
    );
  });
});

const small = (): LiveBook => {
  const made = createBook('Small');
  const columns = ['a', 'b'].map((name) => ({
    column: { id: name, name, label: name, kind: 'number' as const },
    cells: [1, 2, 3],
  }));
  applyEdit(made, {
    do: 'add-sheet',
    index: 0,
    sheet: { id: 's', name: 's', label: 'S', purpose: 'gathered', rows: 3, columns },
  });
  return made;
};

describe('edits that cannot be done', () => {
  const column = { id: 'c', name: 'c', label: 'c', kind: 'number' } as const;
  const cases: readonly (readonly [string, Edit, RegExp])[] = [
    ['a sheet that is not there', { do: 'remove-sheet', sheet: 'x' }, /no sheet "x"/],
    ['a column that is not there', { do: 'remove-column', sheet: 's', column: 'x' }, /no column "x"/],
    ['rows past the end', { do: 'remove-rows', sheet: 's', row: 2, count: 2 }, /has 3 rows; rows 3 to 4/],
    [
      'cells past the end',
      { do: 'put-cells', sheet: 's', row: 2, columns: ['a'], cells: [[1, 2]] },
      /rows 3 to 4/,
    ],
    [
      'a negative row',
      { do: 'put-cells', sheet: 's', row: -1, columns: ['a'], cells: [[1]] },
      /not all there/,
    ],
    [
      'a column named twice',
      { do: 'put-cells', sheet: 's', row: 0, columns: ['a', 'a'], cells: [[1], [2]] },
      /twice/,
    ],
    [
      'a block without its cells',
      { do: 'put-cells', sheet: 's', row: 0, columns: ['a', 'b'], cells: [[1]] },
      /one run of cells/,
    ],
    ['an order that leaves a row out', { do: 'order-rows', sheet: 's', order: [0, 0, 2] }, /every row once/],
    [
      'an order of too few rows',
      { do: 'order-rows', sheet: 's', order: [0, 1] },
      /order of 2 rows was given for 3/,
    ],
    [
      'a second column of that name',
      { do: 'add-column', sheet: 's', index: 0, column: { ...column, name: 'A' } },
      /column "a".*already/,
    ],
    [
      'a second column of that id',
      { do: 'add-column', sheet: 's', index: 0, column: { ...column, id: 'a' } },
      /id "a"/,
    ],
    [
      'a column with too many cells',
      { do: 'add-column', sheet: 's', index: 0, column, cells: [1, 2, 3, 4] },
      /has 4 cells/,
    ],
    [
      'a place for a column that is not there',
      { do: 'add-column', sheet: 's', index: 5, column },
      /no column 6/,
    ],
    [
      'a name for a row that is not there',
      { do: 'set-name', name: 'n', target: { sheet: 's', column: 'a', row: 3 } },
      /no row 4/,
    ],
    [
      'a number that is not finite',
      { do: 'put-cells', sheet: 's', row: 0, columns: ['a'], cells: [[1, Number.NaN]] },
      /not a number/,
    ],
    [
      'a block with a number that is not finite',
      {
        do: 'add-rows',
        sheet: 's',
        row: 0,
        count: 1,
        cells: [{ ...Cells.from([1], 1).block(), numbers: Float64Array.of(Number.POSITIVE_INFINITY) }],
      },
      /not a number/,
    ],
  ];
  test.each(cases)('%s is refused and the book stays as it was', (_, edit, sentence) => {
    const made = small();
    const before = writeBook(made);
    expect(() => applyEdit(made, edit)).toThrow(Refusal);
    expect(() => applyEdit(made, edit)).toThrow(sentence);
    expect(writeBook(made)).toBe(before);
  });
});

describe('named cells', () => {
  const rowOf = (made: LiveBook) => made.names.get('target')?.row;
  const named = () => {
    const made = small();
    applyEdit(made, { do: 'set-name', name: 'target', target: { sheet: 's', column: 'a', row: 1 } });
    return made;
  };
  test('follow their cell when rows come, go or change places', () => {
    const made = named();
    applyEdit(made, { do: 'add-rows', sheet: 's', row: 0, count: 2 });
    expect(rowOf(made)).toBe(3);
    applyEdit(made, { do: 'remove-rows', sheet: 's', row: 1, count: 1 });
    expect(rowOf(made)).toBe(2);
    applyEdit(made, { do: 'order-rows', sheet: 's', order: [2, 0, 1, 3] });
    expect(rowOf(made)).toBe(0);
  });
  test('go with their row, column or sheet, and come back when that is undone', () => {
    const edits: readonly Edit[] = [
      { do: 'remove-rows', sheet: 's', row: 0, count: 2 },
      { do: 'remove-column', sheet: 's', column: 'a' },
      { do: 'remove-sheet', sheet: 's' },
    ];
    for (const edit of edits) {
      const made = named();
      const { inverse } = applyEdit(made, edit);
      expect(rowOf(made)).toBeUndefined();
      applyEdit(made, inverse);
      expect(rowOf(made)).toBe(1);
    }
  });
});

describe('the memory of a column', () => {
  test('blank columns share their zeros until one of them is written', () => {
    const [a, b] = [new Cells(1000), new Cells(1000)];
    expect(a.kinds.buffer).toBe(b.kinds.buffer);
    a.set(3, 41.2);
    expect(a.kinds.buffer).not.toBe(b.kinds.buffer);
    expect(b.get(3)).toBeNull();
    expect(b.kinds[3]).toBe(CellKind.blank);
  });
  test('a block is taken over without a copy, and copied only when it is written to', () => {
    const block = Cells.from([1, 2, 3], 3).block();
    const cells = new Cells(0);
    cells.insert(0, 3, block);
    expect(cells.numbers).toBe(block.numbers);
    cells.set(0, 9);
    expect(block.numbers[0]).toBe(1);
    expect(cells.get(0)).toBe(9);
  });
});

describe('an edit that would make a book whose file cannot be opened again is refused, and nothing is changed', () => {
  const long = 'x'.repeat(301);
  const endless = 'x'.repeat(100_001);
  const column = { id: 'c', name: 'c', label: 'c', kind: 'number' } as const;
  const sheet = { id: 't', name: 't', label: 't', purpose: 'worked', rows: 0, columns: [] } as const;
  let deep: Json = 1;
  for (let n = 0; n < 40; n++) deep = [deep];
  const cases: readonly (readonly [string, Edit, RegExp])[] = [
    ['a long title', { do: 'set-title', title: long }, /title has 301 characters; at most 300/],
    [
      'a long sheet label',
      { do: 'add-sheet', index: 0, sheet: { ...sheet, label: long } },
      /its label cannot be saved/,
    ],
    ['an endless sheet note', { do: 'add-sheet', index: 0, sheet: { ...sheet, note: endless } }, /its note/],
    ['too many rows', { do: 'add-sheet', index: 0, sheet: { ...sheet, rows: 2_000_001 } }, /its rows/],
    ['too many rows more', { do: 'add-rows', sheet: 's', row: 0, count: 2_000_000 }, /2000003 rows/],
    [
      'a long new label of a sheet',
      { do: 'change-sheet', sheet: 's', name: 's', label: long, purpose: 'notes' },
      /its label/,
    ],
    [
      'a long heading',
      { do: 'add-column', sheet: 's', index: 0, column: { ...column, label: long } },
      /its label/,
    ],
    [
      'a long unit',
      { do: 'add-column', sheet: 's', index: 0, column: { ...column, unit: long } },
      /its unit/,
    ],
    [
      'a width of nothing',
      { do: 'change-column', sheet: 's', column: { ...column, id: 'a', name: 'a', width: 0 } },
      /its width/,
    ],
    [
      'an endless text',
      { do: 'put-cells', sheet: 's', row: 0, columns: ['a'], cells: [[endless]] },
      /100001 char/,
    ],
    [
      'an endless text in a block',
      { do: 'put-cells', sheet: 's', row: 0, columns: ['a'], cells: [Cells.from([endless], 1)] },
      /100001 characters/,
    ],
    [
      'an endless held text',
      { do: 'put-cells', sheet: 's', row: 0, columns: ['a'], cells: [[{ held: endless, reason: 'r' }]] },
      /100001 characters/,
    ],
    [
      'an endless formula',
      { do: 'put-cells', sheet: 's', row: 0, columns: ['a'], cells: [[{ formula: endless }]] },
      /formula of 100001/,
    ],
    ['a record nested too deep', { do: 'set-part', part: 'charts', key: 'k', value: deep }, /32 levels/],
    [
      'a record called __proto__',
      { do: 'set-part', part: 'charts', key: '__proto__', value: 1 },
      /__proto__/,
    ],
    [
      'a long name of a cell',
      { do: 'set-name', name: long, target: { sheet: 's', column: 'a', row: 0 } },
      /301 characters/,
    ],
  ];
  test.each(cases)('%s', (_, edit, sentence) => {
    const made = small();
    const before = writeBook(made);
    expect(() => applyEdit(made, edit)).toThrow(sentence);
    expect(() => applyEdit(made, edit)).toThrow(Refusal);
    expect(writeBook(made)).toBe(before);
  });
});

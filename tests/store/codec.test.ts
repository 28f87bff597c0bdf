import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import { createBook } from '../../src/book/book.ts';
import { Cells } from '../../src/book/cells.ts';
import { writeBook } from '../../src/book/file-write.ts';
import { DecodeError, decode, encode } from '../../src/store/codec.ts';
import { contentOf, turnInto } from '../../src/store/content.ts';
import { book, editFor, picks } from '../book/random.ts';

/** Anything that an edit may carry. */
const plain: fc.Arbitrary<unknown> = fc.letrec((again) => ({
  value: fc.oneof(
    { maxDepth: 4 },
    fc.constantFrom(null, true, false, -0, NaN, Infinity, -Infinity, '', '$', '\ud800', '__proto__'),
    fc.double(),
    fc.string({ unit: 'binary' }),
    fc.float64Array({ maxLength: 9 }),
    fc.uint8Array({ maxLength: 9 }),
    fc.int32Array({ maxLength: 9 }),
    fc.array(again('value'), { maxLength: 5 }),
    fc.array(fc.option(fc.string(), { nil: undefined }), { maxLength: 6 }),
    fc.dictionary(fc.oneof(fc.string(), fc.constantFrom('$', '__proto__')), again('value'), { maxKeys: 4 }),
    fc
      .array(fc.tuple(fc.nat(9), again('value')), { maxLength: 4 })
      .map((pairs) => new Map(pairs as [number, unknown][])),
  ),
})).value;

describe('encode(value), decode(bytes)', () => {
  test('plain data with typed arrays, maps and gaps comes back as it was', () => {
    fc.assert(
      fc.property(plain, (value) => {
        expect(decode(encode(value))).toEqual(value);
      }),
      { numRuns: 500 },
    );
  });

  test('the same data gives the same bytes', () => {
    fc.assert(
      fc.property(plain, (value) => {
        expect(encode(structuredClone(value))).toEqual(encode(value));
      }),
      { numRuns: 200 },
    );
  });

  test('a window of a large buffer brings only its own cells, and zeros take no room', () => {
    const large = new Float64Array(1_000_000).fill(7);
    expect(encode({ cells: large.subarray(10, 20) }).length).toBeLessThan(200);
    expect(encode({ cells: new Float64Array(1_000_000) }).length).toBeLessThan(200);
    expect(decode(encode(large.subarray(10, 12)))).toEqual(Float64Array.of(7, 7));
  });

  test('cells of a column are written as their block', () => {
    const cells = Cells.from([1, 'two', { formula: 'A1' }, { held: 'x', reason: 'why' }, null], 5);
    expect(decode(encode(cells))).toEqual(cells.block());
  });

  test('what is no plain data is refused, not dropped', () => {
    for (const value of [() => 1, Symbol('s'), 1n, new BigInt64Array(1)])
      expect(() => encode({ value })).toThrow(TypeError);
  });

  test('damaged bytes end in a DecodeError or in data, never in another error or a hang', () => {
    fc.assert(
      fc.property(plain, fc.nat(), fc.nat(255), fc.nat(), (value, place, byte, cut) => {
        const bytes = encode(value);
        bytes[place % bytes.length] = byte;
        for (const damaged of [bytes, bytes.slice(0, cut % bytes.length)]) {
          try {
            decode(damaged);
          } catch (reason) {
            expect(reason).toBeInstanceOf(DecodeError);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });
});

describe('contentOf(book), turnInto(book, target)', () => {
  test('the content of a book, written and read, makes the same book byte for byte', () => {
    fc.assert(
      fc.property(book, fc.array(picks, { maxLength: 6 }), (made, choices) => {
        for (const pick of choices) applyEdit(made, editFor(made, pick));
        const again = createBook();
        applyEdit(again, decode(encode(contentOf(made))) as ReturnType<typeof contentOf>);
        expect(writeBook(again)).toBe(writeBook(made));
      }),
      { numRuns: 200 },
    );
  });

  test('one book is turned into another, and back by the inverse', () => {
    fc.assert(
      fc.property(book, book, (made, target) => {
        const before = writeBook(made);
        const { inverse } = applyEdit(made, turnInto(made, target));
        expect(writeBook(made)).toBe(writeBook(target));
        applyEdit(made, inverse);
        expect(writeBook(made)).toBe(before);
      }),
      { numRuns: 200 },
    );
  });

  test('an edit, written and read, does the same and is taken back by the same', () => {
    fc.assert(
      fc.property(book, picks, (made, pick) => {
        const copy = createBook();
        applyEdit(copy, contentOf(made));
        const edit = editFor(made, pick);
        applyEdit(copy, decode(encode(edit)) as typeof edit);
        applyEdit(made, edit);
        expect(writeBook(copy)).toBe(writeBook(made));
      }),
      { numRuns: 300 },
    );
  });
});

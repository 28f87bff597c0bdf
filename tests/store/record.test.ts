import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recordHead, recordOf, recordsIn, type Source } from '../../src/store/record.ts';

const sourceOf = (bytes: Uint8Array<ArrayBuffer>): Source => ({
  size: bytes.length,
  read: (at, length) => bytes.slice(at, at + length),
});

const body = (seed: number, length: number) => Uint8Array.from({ length }, (_, i) => (i * 31 + seed) % 256);
const written = [
  { head: { sequence: 1, words: 'Put 1' }, body: body(1, 0) },
  { head: { sequence: 2, words: 'Zwei „Kniebeugen“' }, body: body(2, 40) },
  { head: { sequence: 3, note: null }, body: body(3, 7) },
  { head: {}, body: body(4, 90) },
];
const parts = written.map(({ head, body }) => recordOf(head, body));
const ends = parts.map((_, i) => parts.slice(0, i + 1).reduce((sum, part) => sum + part.length, 0));
const journal = new Uint8Array(parts.flatMap((part) => [...part]));

/** What is read back, bodies and all. */
const read = (bytes: Uint8Array<ArrayBuffer>) =>
  [...recordsIn(sourceOf(bytes))].map(({ head, body: { at, length } }) => ({
    head,
    body: bytes.slice(at, at + length),
  }));

describe('records of a journal in a file', () => {
  test('come back as they were written', () => {
    expect(read(journal)).toEqual(written);
  });

  test('cut at any byte: every record before the cut comes back, and nothing else', () => {
    for (let cut = 0; cut <= journal.length; cut++)
      expect(read(journal.slice(0, cut))).toEqual(written.slice(0, ends.filter((end) => end <= cut).length));
  });

  test('any bit of any byte turned: all before it comes back, and no head is ever another one', () => {
    for (let at = 0; at < journal.length; at++)
      for (let bit = 0; bit < 8; bit++) {
        const flipped = journal.slice();
        flipped[at]! ^= 1 << bit;
        const before = ends.filter((end) => end <= at).length;
        const found = read(flipped);
        expect(found.slice(0, before)).toEqual(written.slice(0, before));
        // In a body nobody but its seal knows better; anywhere else the record and what follows is not there.
        const start = before === 0 ? 0 : ends[before - 1]!;
        const inBody = at >= start + parts[before]!.length - written[before]!.body.length;
        expect(found.length).toBe(inBody ? written.length : before);
        expect(found.map(({ head }) => head)).toEqual(written.slice(0, found.length).map(({ head }) => head));
      }
  });

  test('a front that promises more than is there, or a head beyond all measure, is no record', () => {
    expect(read(recordHead({ a: 1 }, 10) as Uint8Array<ArrayBuffer>)).toEqual([]);
    const huge = recordOf({ a: 1 });
    new DataView(huge.buffer).setUint32(4, 0xffffffff, true);
    expect(read(huge)).toEqual([]);
  });

  test('nothing that stands in a file makes reading throw', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.nat(journal.length), (rubbish, at) => {
        const bytes = new Uint8Array([...journal.slice(0, at), ...rubbish]);
        expect(read(bytes).length).toBeLessThanOrEqual(written.length);
      }),
      { numRuns: 300 },
    );
  });
});

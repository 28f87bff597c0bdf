import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Dialect, parseRows } from '../../src/intake/read/parse.ts';

const comma: Dialect = { delimiter: ',', quote: '"' };

interface Read {
  readonly rows: readonly (readonly string[])[];
  readonly lines: readonly number[];
  readonly raw: readonly string[];
  readonly damaged: readonly number[];
}

function read(pieces: Iterable<string>, dialect = comma): Read {
  const out = {
    rows: [] as (readonly string[])[],
    lines: [] as number[],
    raw: [] as string[],
    damaged: [] as number[],
  };
  for (const batch of parseRows(pieces, dialect))
    batch.rows.forEach((row, i) => {
      if (batch.damaged.has(i)) out.damaged.push(out.rows.length);
      out.rows.push(row);
      out.lines.push(batch.lineOf(i));
      out.raw.push(batch.rawOf(i));
    });
  return out;
}

function* cut(text: string, sizes: readonly number[]): Generator<string> {
  let from = 0;
  for (let i = 0; from < text.length; i++) {
    const size = sizes[i % sizes.length]!;
    yield text.slice(from, from + size);
    from += size;
  }
}

describe('parseRows', () => {
  test('gives the same rows, lines and raw texts however the text is cut into pieces, when no quote is astray', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', '7', ' ', '\r'), maxLength: 6 });
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 20 }),
        fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 5 }),
        (rows, sizes) => {
          const text = rows.map((r) => r.map((c) => `"${c.replaceAll('"', '""')}"`).join(',')).join('\n');
          const whole = read([text]);
          fc.pre(whole.damaged.length === 0);
          expect(read(cut(text, sizes))).toEqual(whole);
          // Line breaks inside cells come in as line feeds.
          const fed = (t: string): string => t.replace(/\r\n|\r/g, '\n');
          expect(whole.rows).toEqual(rows.map((r) => r.map(fed)));
          expect(whole.raw.join('\n')).toBe(fed(text));
        },
      ),
    );
  });

  test('says on which line each row begins and gives the row as it stands', () => {
    const { rows, lines, raw } = read(['a,b\r\n"x\r\ny",2\r\nlast,3']);
    expect(rows).toEqual([
      ['a', 'b'],
      ['x\ny', '2'],
      ['last', '3'],
    ]);
    expect(lines).toEqual([1, 2, 4]);
    expect(raw).toEqual(['a,b', '"x\ny",2', 'last,3']);
  });

  test('a quote that is never closed costs its own line only, also in a long file', () => {
    const lines = Array.from({ length: 20_000 }, (_, i) => (i === 700 ? `r${i},"oops,3` : `r${i},fine,3`));
    const { rows, damaged } = read(cut(lines.join('\n'), [9000]));
    expect(rows).toHaveLength(20_000);
    expect(damaged).toEqual([700]);
    expect(rows[701]).toEqual(['r701', 'fine', '3']);
  });

  test('thousands of astray quotes cost no more than their lines, and no line is lost', () => {
    const lines = Array.from({ length: 30_000 }, (_, i) => `r${i},"x${i},3`);
    const { rows, damaged, raw } = read(cut(lines.join('\n'), [1 << 17]));
    expect(rows).toHaveLength(30_000);
    expect(damaged).toHaveLength(30_000);
    expect(raw[12_345]).toBe('r12345,"x12345,3');
  });

  test('a line without an end, longer than any record, comes out whole', () => {
    const { raw } = read(cut(`a,b\n"${'x'.repeat(1_000_000)}`, [1 << 17]));
    expect(raw.join('\n').length).toBe(1_000_000 + 5);
  });
});

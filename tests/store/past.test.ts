import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../src/book/apply.ts';
import type { Edit } from '../../src/book/edit.ts';
import { isEdit } from '../../src/book/edit-shape.ts';
import { writeBook } from '../../src/book/file-write.ts';
import { History, type Past } from '../../src/book/history.ts';
import { Refusal } from '../../src/book/refusal.ts';
import { decode, encode } from '../../src/store/codec.ts';
import { contentOf } from '../../src/store/content.ts';
import { pastBytes, readPast } from '../../src/store/past.ts';
import { book, editFor, picks } from '../book/random.ts';

const words = (steps: Past['undo']): readonly string[] => steps.map((step) => step.words);
const titled = (title: string): Edit => ({ do: 'set-title', title });
const step = (name: string, length = 10) => ({ words: name, edit: titled('x'.repeat(length)) });

describe('a stored history', () => {
  test('takes every edit back and does it again, whatever they were', () => {
    fc.assert(
      fc.property(book, fc.array(picks, { maxLength: 12 }), fc.nat(12), (made, choices, back) => {
        const before = writeBook(made);
        const history = new History();
        for (const pick of choices) {
          const edit = editFor(made, pick);
          history.note(edit.do, applyEdit(made, edit).inverse);
        }
        const after = writeBook(made);
        const apply = (edit: Edit) => applyEdit(made, edit).inverse;
        for (let n = 0; n < Math.min(back, choices.length); n++) history.step('undo', apply);
        const again = new History(readPast(pastBytes(history.past)));
        while (again.redo !== null) again.step('redo', apply);
        expect(writeBook(made)).toBe(after);
        while (again.undo !== null) again.step('undo', apply);
        expect(writeBook(made)).toBe(before);
        expect(again.end).toBeUndefined();
      }),
      { numRuns: 60 },
    );
  });

  test('takes the nearest steps along as far as there is room, and names the one that was too large', () => {
    const past = {
      undo: [step('One'), step('Two', 4_000), step('Three'), step('Four')],
      redo: [step('Five')],
    };
    const read = readPast(pastBytes(past, 2_000));
    expect(words(read.undo)).toEqual(['Three', 'Four']);
    expect(words(read.redo)).toEqual([]);
    expect(new History(read).end).toBe(
      'Undo reaches back to “Three”: the change before it, “Two”, was too large to save.',
    );
    // And so it stays when it is stored once more.
    expect(readPast(pastBytes(read)).beyond).toEqual({ words: 'Two', why: 'large' });
    expect(readPast(pastBytes(past))).toEqual(past);
  });

  test('of a snapshot from before there were any has nothing to undo and says nothing', () => {
    const history = new History(readPast(undefined));
    expect([history.undo, history.redo, history.end]).toEqual([null, null, undefined]);
  });

  test('goes back to the first step that is no edit, and says so', () => {
    const good = (name: string) => ({ words: name, edit: encode(titled(name)) });
    const bad: readonly unknown[] = [
      new Uint8Array(5),
      encode({ do: 'remove-everything' }),
      encode({ do: 'constructor' }),
      encode({ do: 'put-cells', sheet: 's', row: 0, columns: null, cells: [] }),
      encode({ do: 'put-cells', sheet: 's', row: 0, columns: ['n'], cells: [{ length: 1e9 }] }),
      encode({ do: 'set-part', part: '__proto__', key: 'k', value: 1 }),
      encode({ do: 'batch', edits: [{ do: 'batch', edits: [{ do: 'set-title' }] }] }),
      'text',
      null,
    ];
    for (const edit of bad) {
      const read = readPast(
        encode({
          undo: [good('One'), { words: 'Two', edit }, good('Three')],
          redo: [{ words: 'Five', edit }],
        }),
      );
      expect(words(read.undo)).toEqual(['Three']);
      expect(words(read.redo)).toEqual([]);
      expect(new History(read).end).toBe(
        'Undo reaches back to “Three”: the saved change before it, “Two”, is unreadable.',
      );
    }
  });

  test('whatever is read as one, and damaged anywhere, makes a history without a throw', () => {
    const bytes = pastBytes({ undo: [step('One'), step('Two')], redo: [step('Three')] });
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (at, mask) => {
        const damaged = bytes.slice();
        damaged[at]! ^= mask;
        for (const { edit } of readPast(damaged).undo) expect(isEdit(edit)).toBe(true);
      }),
      { numRuns: 300 },
    );
    fc.assert(fc.property(fc.anything(), (what) => void new History(readPast(what)).end));
  });
});

describe('the shape of an edit', () => {
  test('is that of every edit, its inverse and the content of a book, also when they were stored', () => {
    fc.assert(
      fc.property(book, picks, (made, pick) => {
        const edit = editFor(made, pick);
        const content = contentOf(made);
        const { inverse } = applyEdit(made, edit);
        for (const one of [edit, inverse, content]) {
          expect(isEdit(one)).toBe(true);
          expect(isEdit(decode(encode(one)))).toBe(true);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('lets nothing through that breaks the book: it is applied, or refused and the book is as it was', () => {
    fc.assert(
      fc.property(book, picks, fc.string(), fc.anything(), (made, pick, field, value) => {
        const edit = editFor(made, pick) as unknown as Record<string, unknown>;
        const fields = Object.keys(edit);
        const changed = { ...edit, [fields[field.length % fields.length]!]: value };
        if (!isEdit(changed)) return;
        const before = writeBook(made);
        try {
          applyEdit(made, changed);
        } catch (reason) {
          expect(reason).toBeInstanceOf(Refusal);
          expect(writeBook(made)).toBe(before);
        }
      }),
      { numRuns: 400 },
    );
  });
});

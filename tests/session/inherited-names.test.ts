import { describe, expect, test } from 'vitest';
import { readBook } from '../../src/book/file.ts';
import { writeBook } from '../../src/book/file-write.ts';
import { Session } from '../../src/session/session.ts';
import { compareBooks } from '../../src/store/compare.ts';

/** Names that every object of the language has already: a table kept in an object by such a key finds what is not its own. */
const inherited = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'valueOf',
  'hasOwnProperty',
  '__defineGetter__',
] as const;

/** A book whose sheets, columns, ids, named cells, charts and marks are called so. A name that is refused is left out. */
function bookOf(name: string): string | null {
  const text = `{"leverbook":1,"title":"${name}","sheets":[{"name":"${name}","id":"${name}","purpose":"gathered","rows":2,"columns":[
    {"name":"${name}","id":"${name}","kind":"number","cells":[40,42]},
    {"name":"twice","kind":"number","formula":"${name} * 2"},
    {"name":"all","kind":"number","formula":"SUM(${name}.${name})"}]}]}`;
  try {
    return writeBook(readBook(text));
  } catch (reason) {
    expect((reason as Error).message).toContain(name);
    return null;
  }
}

const untouched = (): void => {
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  expect(Reflect.ownKeys(Function.prototype)).toContain('call');
};

describe.each(inherited)('%s', (name) => {
  test('as the name and id of a sheet and a column is refused in a sentence, or computed, summed up and shown like any other', () => {
    const text = bookOf(name);
    if (text !== null) {
      const session = Session.open(text);
      const { texts } = session.tile(name, 0, 2, 0, 3);
      expect(texts).toEqual(['40', '80', '82', '42', '84', '82']);
      expect(Object.getOwnPropertyDescriptor(session.summaries(name), name)?.value).toMatchObject({});
      expect(session.cellInfo({ sheet: name, column: name, row: 0 }).editText).toBe('40');
      session.working({ sheet: name, column: 'twice', row: 1 });
      expect(session.toCsv(name)).toContain('42');
      const book = readBook(session.save());
      expect(compareBooks(book, book).differences).toEqual([]);
      expect(session.undo().ok).toBe(false);
    }
    untouched();
  });

  test('as what a command calls things is refused in a sentence, or done and taken back', () => {
    const session = Session.create();
    session.execute({ do: 'add-sheet', label: 'S', rows: 2, columns: [{ label: 'a', kind: 'number' }] });
    const before = session.save();
    const commands = [
      { do: 'add-sheet', label: name, name, rows: 1 },
      { do: 'add-column', sheet: 's', column: { name, label: name, kind: 'number' } },
      { do: 'change-column', sheet: 's', column: 'a', change: { name } },
      { do: 'change-sheet', sheet: 's', change: { name } },
      { do: 'name-cell', sheet: 's', column: 'a', row: 0, name },
      { do: 'set-part', part: 'marks', key: name, value: JSON.parse('{"__proto__":{"polluted":1}}') },
      { do: 'set-part', part: 'charts', key: name, value: { title: name } },
      { do: 'set-part', part: name, key: name, value: 1 },
      { do: 'set-cells', sheet: name, row: 0, columns: [name], texts: [[name]] },
      { do: name },
    ];
    for (const command of commands) {
      const done = session.execute(command as never);
      if (done.ok) {
        expect(Session.open(session.save()).save()).toBe(session.save());
        session.undo();
      } else expect(done.sentence).toMatch(/\S/);
      expect(session.save()).toBe(before);
      untouched();
    }
  });

  test('as a function or a name in a formula is said to be unknown', () => {
    const session = Session.create();
    session.execute({ do: 'add-sheet', label: 'S', rows: 2, columns: [{ label: 'a', kind: 'number' }] });
    for (const formula of [`${name}(1)`, `${name} + 1`, `s.${name}`, `${name}.a`, `"${name}" & a.${name}`]) {
      const { problems } = session.check(formula, { sheet: 's', column: 'a' });
      expect(problems.length, formula).toBeGreaterThan(0);
      for (const { sentence } of problems) expect(sentence).toMatch(/\S/);
      const { error } = session.preview(formula, { sheet: 's', column: 'a', row: 0 });
      expect(error, formula).toBe(true);
    }
    untouched();
  });
});

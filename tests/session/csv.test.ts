import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { preparing } from '../../src/session/imports/prepare-import.ts';
import { Session } from '../../src/session/session.ts';
import { safe } from '../../src/session/text/csv.ts';

const columns = [
  { name: 'athlete', label: 'Athlete', kind: 'text' as const },
  { name: 'femur', label: 'Femur', dimension: 'length' as const, unit: 'in' },
  { name: 'mass', label: 'Body mass', dimension: 'mass' as const, unit: 'lb' },
  { name: 'score', label: 'Score' },
  { name: 'born', label: 'Born', kind: 'date' as const },
  { name: 'left_handed', label: 'Left-handed', kind: 'yes-no' as const },
];
const ids = columns.map((c) => c.name);
function book(texts: readonly (readonly string[])[] = []): Session {
  const session = Session.create();
  session.execute({ do: 'add-sheet', name: 'roster', columns: [...columns] });
  if (texts.length)
    session.execute({
      do: 'set-cells',
      sheet: 'roster',
      row: 0,
      columns: ids,
      texts: texts.map((t) => [...t]),
      formulas: false,
    });
  return session;
}
function importCsv(session: Session, csv: string): void {
  const bytes = new TextEncoder().encode(csv);
  const reading = preparing(session, {
    bytes,
    name: 'roster.csv',
    sheet: 'roster',
    now: '2030-01-01T00:00:00Z',
  });
  let step = reading.next();
  while (!step.done) step = reading.next();
  const done = session.writePlanned(step.value);
  if (!done.ok) throw new Error(done.sentence);
  for (const _ of session.recalculate());
}
const cells = (session: Session) => [...session.records('roster')].map((r) => r.values);

describe('a sheet as CSV', () => {
  test('has headings with units, dates by ISO 8601, lines that end in CRLF', () => {
    const session = book([['Ada, "the lever"', '17', '225 lb', '-1.5', '2001-05-06', 'yes']]);
    // RFC 4180: fields with a comma or a quote are quoted, quotes inside doubled, lines end in CRLF.
    expect(session.toCsv('roster')).toBe(
      'Athlete,Femur (in),Body mass (lb),Score,Born,Left-handed\r\n"Ada, ""the lever""",17,225,-1.5,2001-05-06,yes\r\n',
    );
  });

  test('takes another delimiter and decimal mark', () => {
    const session = book([['Ada; Bo', '16.5', '', '-0.5', '', 'no']]);
    expect(session.toCsv('roster', { delimiter: ';', decimal: ',' }).split('\r\n')[1]).toBe(
      '"Ada; Bo";16,5;;-0,5;;no',
    );
    expect(session.toCsv('roster', { decimal: ',' }).split('\r\n')[1]).toBe('"Ada; Bo","16,5",,"-0,5",,no');
  });

  test.each([
    ['=1+1', "'=1+1"],
    ['+49 30', "'+49 30"],
    ['-', '-'],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\tx', "'\tx"],
    ['＝1+1', "'＝1+1"],
    ["'=x", "''=x"],
    ["it's", "it's"],
    ["'quoted'", "'quoted'"],
    ['a=b', 'a=b'],
  ])('the text %j is made safe as %j (OWASP, CSV Injection)', (text, expected) =>
    expect(safe(text)).toBe(expected),
  );

  test('a field with a semicolon, a tab or a bar is quoted, so that no guess of the delimiter splits it', () => {
    const session = book([
      ['a;b', '', '', '', '', ''],
      ['a\tb', '', '', '', '', ''],
      ['a|b', '', '', '', '', ''],
    ]);
    for (const delimiter of [',', ';', '\t'] as const)
      expect(
        session
          .toCsv('roster', { delimiter })
          .split('\r\n')
          .slice(1, 4)
          .map((line) => line.slice(0, 5)),
      ).toEqual(['"a;b"', '"a\tb"', '"a|b"']);
  });

  test('a negative number stays a number, a text that looks dangerous does not become one', () => {
    const session = book([['-5', '-5', '', '-5', '', '']]);
    expect(session.toCsv('roster').split('\r\n')[1]).toBe("'-5,-5,,-5,,");
  });

  const text = fc.oneof(
    fc.constantFrom('=1+1', '-', '@x', "'=x", "''", 'a,b', 'a"b', 'line\nbreak', 'ü', 'Ada'),
    fc.stringMatching(/^[a-z=+@'", -]{1,8}$/),
  );
  const row = fc.tuple(
    fc.integer({ min: 1, max: 999 }),
    text,
    fc.integer({ min: 150, max: 320 }),
    fc.integer({ min: 900, max: 3000 }),
    fc.integer({ min: -9999, max: 9999 }),
    fc.integer({ min: 1, max: 28 }),
    fc.boolean(),
  );
  test('comes back equal when it is brought in again', () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
        const session = book(
          rows.map(([n, name, femur, mass, score, day, yes]) => [
            `athlete ${n} ${name}`,
            String(femur / 16),
            String(mass / 10),
            String(score / 100),
            `2001-05-${String(day).padStart(2, '0')}`,
            yes ? 'yes' : 'no',
          ]),
        );
        const again = book();
        importCsv(again, session.toCsv('roster'));
        expect(cells(again)).toEqual(cells(session));
      }),
      { numRuns: 100 },
    );
  });

  test('texts that were made safe come back as they were', () => {
    const names = ['=1+1', '+1', '-', '@x', "'=x", "''=x", "'a", '\tx', 'plain'];
    const session = book(names.map((name) => [name, '17', '200', '1', '2001-05-06', 'yes']));
    const again = book();
    importCsv(again, session.toCsv('roster'));
    expect(cells(again).map((v) => v.athlete)).toEqual(names);
  });
});

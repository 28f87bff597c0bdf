import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Json } from '../../../src/book/model.ts';
import { escaped, shapeText } from '../../../src/session/figure/drawing/svg-shape.ts';
import { handoutCautions } from '../../../src/session/handouts/handout.ts';
import { handoutDocument, handoutShapes } from '../../../src/session/handouts/handout-document.ts';
import { type HandoutRequest, handoutsOf } from '../../../src/session/handouts/handouts.ts';
import { triedRule } from '../../../src/session/handouts/tried-rule.ts';
import { Session } from '../../../src/session/session.ts';
import { leanOf } from '../posture.ts';

const screening = () => Session.open(readFileSync('sample-books/squat-screening.leverbook.json', 'utf8'));
const handoutsFor = (session: Session, request?: HandoutRequest) =>
  session.ask((context) => handoutsOf(context, request));

/** A roster of one lifter with names and measures of our choosing. */
function one(athlete: string, settings: Json = {}): Session {
  const session = Session.create();
  const numbers = ['femur', 'tibia', 'trunk', 'ankle', 'foot', 'lift'];
  session.execute({
    do: 'add-sheet',
    name: 'roster',
    columns: [
      { name: 'athlete', kind: 'text' },
      ...numbers.slice(0, 3).map((name) => ({ name, dimension: 'length', unit: 'cm' }) as const),
      { name: 'ankle', dimension: 'angle', unit: 'deg' },
      ...numbers.slice(4).map((name) => ({ name, dimension: 'length', unit: 'cm' }) as const),
    ],
  });
  session.execute({
    do: 'set-cells',
    sheet: 'roster',
    row: 0,
    columns: ['athlete', ...numbers],
    texts: [[athlete, '43', '40', '51', '32', '26', '2.5']],
  });
  session.execute({ do: 'set-part', part: 'handouts', key: 'settings', value: settings });
  return session;
}

describe('a handout', () => {
  test('shows the lean of the closed form in whole degrees, flat and lifted, beside its error', () => {
    const made = handoutsFor(one('Ada'));
    const text = shapeText(handoutShapes(made)[0]!);
    const build = { femur: 43, tibia: 40, trunk: 51, ankle: 32, foot: 26 };
    // The bar rule as a closed form, written for the tests apart from the program (tests/session/posture.ts).
    expect(text).toContain(`Flat: minimum lean ${Math.round(leanOf(build)!)}° ± `);
    expect(text).toContain(`Heel lift 2.5 cm: minimum lean ${Math.round(leanOf(build, 2.5)!)}° ± `);
  });

  test('always carries every caution, whatever its parts', () => {
    const made = handoutsFor(one('Ada', { parts: [] }));
    const text = shapeText(handoutShapes(made)[0]!);
    for (const caution of handoutCautions) expect(text).toContain(escaped(caution));
    for (const words of [
      'about 2–4°',
      'not for diagnosis',
      'from the hips and lower back to the knees',
      'licensed clinician',
      'safety pins or spotters',
      'minors',
    ])
      expect(handoutCautions.join(' ')).toContain(words);
    expect(text).not.toContain('<svg');
  });

  test('units stand behind values of columns and settings that were never told theirs', () => {
    const session = one('Ada', {
      numbers: [{ column: 'reach' }],
      rules: [{ part: 'finding', when: 'femur > 0', say: 'Reach {reach}, at most {limit}.' }],
    });
    const file = JSON.parse(session.save());
    file.sheets[0].columns.push({ name: 'reach', label: 'Reach', kind: 'number', formula: 'femur + tibia' });
    file.sheets.push({
      name: 'settings',
      purpose: 'gathered',
      rows: 1,
      columns: [{ name: 'value', kind: 'number' }],
    });
    const again = Session.open(JSON.stringify(file));
    again.execute({ do: 'name-cell', sheet: 'settings', column: 'value', row: 0, name: 'limit' });
    const texts = [['1.5 in']];
    again.execute({ do: 'set-cells', sheet: 'settings', row: 0, columns: ['value'], texts });
    for (const _ of again.recalculate());
    // 43 + 40 cm, and a limit in the unit it was typed in.
    const [handout] = handoutsFor(again, { sheet: 'roster' }).handouts;
    expect(handout!.findings).toEqual(['Reach 83 cm, at most 1.5 in.']);
    expect(handout!.numbers).toEqual([{ label: 'Reach', value: '83 cm', error: '' }]);
    expect(shapeText(handoutShapes(handoutsFor(again, { sheet: 'roster' }))[0]!)).toContain('83 cm');
  });

  test('says a rule where its formula is true, its places filled, and nothing where it is not', () => {
    const made = handoutsFor(
      one('Ada', {
        rules: [
          { part: 'finding', when: 'femur > tibia', say: 'Thigh {femur}, shank {tibia}, for {athlete}.' },
          { part: 'finding', when: 'femur < tibia', say: 'Never said.' },
          { part: 'try', when: 'ankle = 32', say: 'Ankle range {ankle}.' },
        ],
      }),
    );
    expect(made.handouts[0]!.findings).toEqual(['Thigh 43 cm, shank 40 cm, for Ada.']);
    expect(made.handouts[0]!.toTry).toEqual(['Ankle range 32°.']);
    expect(made.notes).toEqual([]);
  });

  test('leaves out a rule that cannot be read, and says which and why', () => {
    const made = handoutsFor(
      one('Ada', {
        rules: [
          { part: 'finding', when: 'femr > 1', say: 'x' },
          { part: 'finding', when: 'femur > 1', say: 'Speaks of {feemur}.' },
          { part: 'finding', when: 'femur > 1', say: 'Good.' },
        ],
      }),
    );
    expect(made.handouts[0]!.findings).toEqual(['Good.']);
    expect(made.notes).toHaveLength(2);
    expect(made.notes[0]).toContain('Sentence 1 not assessed for Ada');
    expect(made.notes[1]).toContain('{feemur}');
  });

  test('never sounds like a result where a value is missing: the page and the coach get the reason', () => {
    const session = one('Ada', {
      rules: [
        { part: 'finding', when: 'femur > tibia', say: 'Thigh {femur}.' },
        { part: 'try', when: 'ABS(lift - ankle) > 1', say: 'Never without an ankle.' },
      ],
    });
    session.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['ankle'], texts: [['']] });
    const made = handoutsFor(session);
    // A blank counts as 0 in arithmetic, so that 2.5 − blank would be "more than 1".
    expect(made.handouts[0]!.toTry).toEqual([]);
    expect(made.notes).toEqual(['Sentence 2 not assessed for Ada: ankle is empty.']);
    const text = shapeText(handoutShapes(made)[0]!);
    expect(text).toContain('Not assessed, because data are missing. ankle is empty.');
    expect(text).not.toMatch(/Nothing to change|No suggestion/);
  });

  test('gives an error in a formula as the reason, and a place without a value too', () => {
    const session = one('Ada', {
      rules: [
        { part: 'finding', when: '1 / (femur - 43) > 1', say: 'x' },
        { part: 'try', when: 'femur > 1', say: 'Lift {lift}.' },
        { part: 'try', when: 'IF(ISNUMBER(lift), lift > 0, FALSE)', say: 'Asks about the blank itself.' },
      ],
    });
    session.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['lift'], texts: [['']] });
    const { notes, handouts } = handoutsFor(session);
    expect(notes).toHaveLength(2);
    expect(notes[0]).toMatch(/^Sentence 1 not assessed for Ada: .*divided by 0/);
    expect(notes[1]).toBe('Sentence 2 not assessed for Ada: lift is empty.');
    expect(handouts[0]!.open.map(({ rule }) => rule)).toEqual([1, 2]);
  });

  test('an empty part says that there is nothing only where every sentence was decided', () => {
    const made = handoutsFor(one('Ada', { rules: [{ part: 'try', when: 'femur > 99', say: 'x' }] }));
    expect(shapeText(handoutShapes(made)[0]!)).toContain('No suggestion from these measurements.');
    expect(made.notes).toEqual([]);
  });

  test('the rules of a new book that ask for what it lacks are told to the coach, not passed over', () => {
    const { notes } = handoutsFor(one('Ada'));
    expect(notes.join(' ')).toContain('no column or setting called "lean"');
    expect(notes.join(' ')).toContain('no column or setting called "wall_left"');
  });

  test('says of a rule that is being written for how many rows it is true, or what is wrong with it', () => {
    const session = one('Ada');
    const id = session.outline().sheets[0]!.id;
    const tried = (when: string, say = 'x') =>
      session.ask((context) => triedRule(context, id, { part: 'finding', when, say }));
    expect(tried('femur > 1')).toEqual({ text: 'True in 1 of 1 row.' });
    expect(tried('femur > 500')).toEqual({ text: 'True in 0 of 1 row.' });
    expect(tried('femr > 1').sentence).toContain('femr');
    expect(tried('femur >').sentence).toBeTruthy();
    expect(tried('femur > 1', 'Speaks of {feemur}.').sentence).toMatch(
      /^Its sentence has a place \{feemur\}/,
    );
    expect(tried('femur + 1').sentence).toMatch(/returns numbers, not true or false/);
  });

  test('counts the weeks to the next test from the date of this one', () => {
    const session = screening();
    const [first] = handoutsFor(session, { rows: [0] }).handouts;
    // 2025-09-08 and eight weeks, by the calendar.
    expect(first!.tested).toBe('8 Sep 2025');
    expect(first!.retest).toContain('3 Nov 2025');
  });

  test('is made for all athletes of the sample book, each with a finding and a figure or its reason', () => {
    const { handouts, notes } = handoutsFor(screening());
    expect(notes).toEqual([]);
    expect(handouts).toHaveLength(24);
    for (const { findings, numbers } of handouts) {
      expect(findings.length).toBeGreaterThan(0);
      expect(numbers.length).toBeGreaterThan(8);
    }
    expect(new Set(handouts.map(({ athlete }) => athlete)).size).toBe(24);
  });

  test('is a document without script that loads nothing, and keeps hostile names as text', () => {
    const session = one('"><script>alert(1)</script><img src=x onerror=alert(2)>', {
      rules: [{ part: 'finding', when: 'TRUE', say: '</li><script>{athlete}</script>' }],
      contact: '</footer><iframe src="javascript:1">',
    });
    for (const paper of ['a4', 'letter'] as const) {
      const text = handoutDocument(handoutsFor(session), paper);
      expect(text).not.toMatch(/<script|<img|<iframe/i);
      // Quoted values hold nothing that ends them, so that what is left are the tags as a browser reads them.
      expect(text.replace(/"[^"]*"/g, '""')).not.toMatch(/<[^>]*\s(src|href|on\w+)=/i);
      expect(text).toContain("default-src 'none'");
      expect(text).toContain(`size:${paper === 'a4' ? 'A4' : 'letter'}`);
    }
  });

  test('is refused with a sentence for a sheet, a row or settings that cannot be', () => {
    expect(() => handoutsFor(one('Ada'), { sheet: 'nobody' })).toThrow(/no sheet "nobody".*roster/);
    expect(() => handoutsFor(one('Ada'), { rows: [7] })).toThrow(/has 1 rows; row 8/);
    expect(() => handoutsFor(one('Ada', { retestWeeks: -1 }))).toThrow(/retestWeeks/);
    expect(() => handoutsFor(Session.create())).toThrow(/femur, tibia and trunk/);
  });
});

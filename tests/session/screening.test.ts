import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';
import { ankleFromWall, leanOf } from './posture.ts';

const text = readFileSync(
  new URL('../../sample-books/squat-screening.leverbook.json', import.meta.url),
  'utf8',
);
let session: Session;
let rows: Readonly<Record<string, number>>[];
beforeAll(() => {
  session = Session.open(text);
  rows = [...session.records('roster')].map((r) => r.values as Record<string, number>);
});
const buildOf = (row: Readonly<Record<string, number>>) => ({
  femur: row.femur!,
  tibia: row.tibia!,
  trunk: row.trunk!,
  foot: row.foot!,
  ankle:
    (ankleFromWall(row.wall_left!, row.tibia!, row.foot!) +
      ankleFromWall(row.wall_right!, row.tibia!, row.foot!)) /
    2,
});

describe('the screening book', () => {
  test('holds 24 lifters of both sexes whose lengths belong to one body each', () => {
    expect(rows).toHaveLength(24);
    expect(new Set(rows.map((r) => r.sex))).toEqual(new Set(['female', 'male']));
    expect(rows.map((r) => r.lengths_check)).toEqual(rows.map(() => 'ok'));
    // Gordon et al. 2014 (ANSUR II): femur + tibia + trunk are .744–.810 of the stature in all 6,068 people; the bounds
    // of the check are .72–.84.
    for (const r of rows) {
      const share = (r.femur! + r.tibia! + r.trunk!) / r.stature!;
      expect(share).toBeGreaterThan(0.72);
      expect(share).toBeLessThan(0.84);
    }
  });

  test('computes ankle, lean and lean with the lift as the closed form does', () => {
    for (const r of rows) {
      const build = buildOf(r);
      expect(r.ankle).toBeCloseTo(build.ankle, 9);
      expect(r.lean).toBeCloseTo(leanOf(build)!, 9);
      expect(r.lean_lifted).toBeCloseTo(leanOf(build, r.lift)!, 9);
    }
  });

  test('picks the smallest lift on hand that brings the lean to the target, the highest where none does', () => {
    const heights = [...session.records('heights')]
      .map((r) => r.values.height as number)
      .sort((a, b) => a - b);
    for (const r of rows) {
      const enough = heights.find((height) => leanOf(buildOf(r), height)! <= 28 + 1e-9);
      expect(r.lift).toBe(enough ?? Math.max(...heights));
    }
  });

  test('the parts that are build and ankle add up to the difference from the reference lifter', () => {
    // Reference: the survey's shares of femur, tibia and trunk in their sum (ANSUR II, mean of the sexes), ankle 38°.
    for (const r of rows) {
      const sum = r.femur! + r.tibia! + r.trunk!;
      const reference = {
        femur: 0.2987 * sum,
        tibia: 0.3114 * sum,
        trunk: 0.3899 * sum,
        ankle: 38,
        foot: r.foot!,
      };
      expect(r.from_build! + r.from_ankle!).toBeCloseTo(r.lean! - leanOf(reference)!, 9);
    }
  });

  test('a changed target picks other lifts, a changed length leans the lifter otherwise, and undo takes both back', () => {
    const own = Session.open(text);
    const of = (row: number) => [...own.records('roster')][row]!.values as Record<string, number>;
    const before = own.save();
    own.execute({ do: 'set-cells', sheet: 'assumptions', row: 0, columns: ['amount'], texts: [['60']] });
    expect(of(0).lift).toBe(0);
    own.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['femur'], texts: [['17 in']] });
    expect(of(0).femur).toBe(43.18);
    expect(of(0).lean).toBeCloseTo(leanOf({ ...buildOf(rows[0]!), femur: 43.18 })!, 9);
    own.undo();
    own.undo();
    expect(own.save()).toBe(before);
    expect(of(0)).toEqual(rows[0]);
  });

  test('doubts only the lift that no height reaches, and no summary cell is an error', () => {
    const outline = session.outline();
    const summary = outline.sheets.find((s) => s.name === 'summary')!;
    const { texts } = session.tile('summary', 0, summary.rows, 0, summary.columns.length);
    expect(texts.filter((t) => t.startsWith('#'))).toEqual([]);
    // The model's own inverse says who they are: at the highest lift the lean is still above the target.
    const beyond = rows.flatMap((r, i) => (leanOf(buildOf(r), 3)! > 28 ? [i] : []));
    expect(beyond.length).toBeGreaterThan(0);
    expect(session.doubts().map((d) => [d.place.column, d.place.row])).toEqual(
      beyond.map((row) => ['lift_needed', row]),
    );
  });

  test('says the cautions', () => {
    const notes = JSON.stringify([...session.records('notes')]);
    for (const words of [
      '±2–3° of lean',
      'not for diagnosis',
      'toward the knee',
      'licensed clinician',
      'safety pins',
      'minors',
    ])
      expect(notes).toContain(words);
  });

  test('is written exactly as the program writes it', () => expect(session.save()).toBe(text));

  test('has no name that could not be given in the program', () => {
    for (const { id, name, columns } of session.outline().sheets) {
      const copy = Session.create();
      expect(
        copy.execute({ do: 'add-sheet', name, columns: columns.map((c) => ({ name: c.name })) }),
      ).toMatchObject({ ok: true });
      expect(id).toBe(name);
    }
  });
});

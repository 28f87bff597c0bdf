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
/** The choice of the sample's invented club. */
const target = 32;
const buildOf = (row: Readonly<Record<string, number>>) => ({
  femur: row.femur!,
  tibia: row.tibia!,
  trunk: row.trunk!,
  foot: row.foot!,
  ankle: Math.min(
    ankleFromWall(row.wall_left!, row.tibia!, row.foot!),
    ankleFromWall(row.wall_right!, row.tibia!, row.foot!),
  ),
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
      expect(r.lean_lifted).toBeCloseTo(leanOf(build, typeof r.lift === 'number' ? r.lift : 0)!, 9);
    }
  });

  test('shows both ankles, and the lean at three quarters of the smaller one beside the minimum', () => {
    for (const r of rows) {
      expect(r.ankle_left).toBeCloseTo(ankleFromWall(r.wall_left!, r.tibia!, r.foot!), 9);
      expect(r.ankle_right).toBeCloseTo(ankleFromWall(r.wall_right!, r.tibia!, r.foot!), 9);
      const build = buildOf(r);
      expect(r.lean_used).toBeCloseTo(leanOf({ ...build, ankle: 0.75 * build.ankle })!, 9);
    }
  });

  test('suggests a heel lift only beyond the error: the next lower height where it misses by less, else one that reaches', () => {
    const heights = [...session.records('heights')]
      .map((r) => r.values.height as number)
      .sort((a, b) => a - b);
    const seen = new Set<string>();
    for (const r of rows as (typeof rows)[number][]) {
      const lean = (height: number) => leanOf(buildOf(r), height)!;
      const texts = r as unknown as Readonly<Record<string, string>>;
      if (lean(0) <= target + r.lean_error!) {
        expect([r.lift_needed, r.lift, texts.lift_offer]).toEqual(new Array(3).fill('none needed'));
        seen.add('none needed');
        continue;
      }
      const reaching = heights.find((height) => lean(height) <= target);
      const below = heights.filter((height) => height < (reaching ?? Number.POSITIVE_INFINITY)).at(-1)!;
      const near = lean(below) <= target + r.lean_error!;
      const used = near ? below : (reaching ?? heights.at(-1)!);
      expect(r.lift).toBe(used);
      const offer = near
        ? `${used.toFixed(1)} cm: within error`
        : reaching
          ? `${used.toFixed(1)} cm`
          : 'target not reached';
      expect(texts.lift_offer).toBe(offer);
      if (lean(3) > target) expect(r.lift_needed).toBe('> 3 cm');
      else expect(leanOf(buildOf(r), r.lift_needed)!).toBeCloseTo(target, 4);
      seen.add(offer.replace(/^[\d.]+ cm/, 'height'));
    }
    expect(seen).toContain('none needed');
    expect(seen).toContain('height: within error');
  });

  test('without a target nothing is needed, above or suggested, and nothing is an error', () => {
    const own = Session.open(text);
    own.execute({ do: 'set-cells', sheet: 'assumptions', row: 0, columns: ['amount'], texts: [['']] });
    for (const { values } of own.records('roster'))
      expect([values.target_verdict, values.lift_needed, values.lift, values.lean_lifted]).toEqual(
        new Array(4).fill(''),
      );
    expect(own.doubts()).toEqual([]);
  });

  test('out of reach is a plain result', () => {
    const own = Session.open(text);
    own.execute({ do: 'set-cells', sheet: 'assumptions', row: 0, columns: ['amount'], texts: [['15']] });
    const offers = [...own.records('roster')].map(({ values }) => [values.lift_needed, values.lift_offer]);
    expect(offers).toContainEqual(['> 3 cm', 'target not reached']);
    expect(own.doubts()).toEqual([]);
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
    expect(of(0).lift).toBe('none needed');
    own.execute({ do: 'set-cells', sheet: 'roster', row: 0, columns: ['femur'], texts: [['17 in']] });
    expect(of(0).femur).toBe(43.18);
    expect(of(0).lean).toBeCloseTo(leanOf({ ...buildOf(rows[0]!), femur: 43.18 })!, 9);
    own.undo();
    own.undo();
    expect(own.save()).toBe(before);
    expect(of(0)).toEqual(rows[0]);
  });

  test('doubts nothing, and no summary cell is an error', () => {
    const outline = session.outline();
    const summary = outline.sheets.find((s) => s.name === 'summary')!;
    const { texts } = session.tile('summary', 0, summary.rows, 0, summary.columns.length);
    expect(texts.filter((t) => t.startsWith('#'))).toEqual([]);
    expect(session.doubts()).toEqual([]);
  });

  test('says the cautions', () => {
    const notes = JSON.stringify([...session.records('notes')]);
    for (const words of [
      'about 2–4°',
      'not for diagnosis',
      'to the knees',
      'non-slip',
      'stop if the knee hurts',
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

import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { Session } from '../../src/session/session.ts';
import type { Working } from '../../src/session/working/working-answers.ts';
import { ankleFromWall, type Build, leanOf } from './posture.ts';

const rad = (deg: number): number => (deg * Math.PI) / 180;

let session: Session;
let values: Readonly<Record<string, number>>;
/** The lifter of the third row. */
const row = 2;
beforeAll(() => {
  session = Session.open(
    readFileSync(new URL('../../sample-books/squat-screening.leverbook.json', import.meta.url), 'utf8'),
  );
  values = [...session.records('roster')][row]!.values as Record<string, number>;
});

const workingOf = (column: string, at = row) => session.working({ sheet: 'roster', column, row: at });
const step = ({ calls }: Working, name: RegExp, call = 0): number => {
  const found = calls[call]!.steps.find((one) => name.test(one.name));
  if (typeof found?.value !== 'number') throw new Error(`no step ${name}: ${JSON.stringify(calls[call])}`);
  return found.value;
};

describe('the working of a cell', () => {
  test('tells the leg, the demand and the lean of a lean cell as the closed form has them', () => {
    const { femur, tibia, trunk, foot, wall_left, wall_right } = values as Record<string, number>;
    // The stiffer ankle limits the squat: the smaller of the two sides.
    const ankle = Math.min(
      ankleFromWall(wall_left!, tibia!, foot!),
      ankleFromWall(wall_right!, tibia!, foot!),
    );
    const build: Build = { femur: femur!, tibia: tibia!, trunk: trunk!, foot: foot!, ankle };
    const working = workingOf('lean');
    // Plane geometry of the flat foot: ankle at .25, mid-foot at .50 of the foot; the thigh level.
    const ankleX = (0.25 - 0.5) * foot!;
    const kneeX = ankleX + tibia! * Math.sin(rad(ankle));
    const hipX = kneeX - femur!;
    expect(step(working, /^Shin angle/)).toBeCloseTo(ankle, 9);
    expect(step(working, /^Ankle joint/)).toBeCloseTo(ankleX, 9);
    expect(step(working, /^Knee ahead/)).toBeCloseTo(kneeX, 9);
    expect(step(working, /^Hip ahead/)).toBeCloseTo(hipX, 9);
    expect(step(working, /balance$/)).toBeCloseTo(-hipX, 9);
    expect(step(working, /^Trunk lean/)).toBeCloseTo(leanOf(build)!, 9);
    expect(working.calls.map((call) => call.function)).toEqual(['LEAN.PARALLEL']);
    expect(working.calls[0]!.result).toBe(`${Number(leanOf(build)!.toPrecision(5))}°`);
    expect(working.filled).toContain(`${femur} cm`);
    expect(working.filled).toContain(`${Number(ankle.toPrecision(5))}°`);
    expect(working.filled).toContain('"high-bar"');
    expect(working.filled).not.toContain('femur');
  });

  test('tells every call inside a formula, innermost first, with constants, sources and cautions', () => {
    const { tibia, foot, wall_left, wall_right } = values as Record<string, number>;
    const ankles = [wall_left!, wall_right!].map((wall) => ankleFromWall(wall, tibia!, foot!));
    const working = workingOf('ankle_left');
    expect(working.calls.map((call) => call.formula)).toEqual(['ANKLE.FROM.WALL(wall_left, tibia, foot)']);
    expect(working.calls[0]!.result).toBe(`${Number(ankles[0]!.toPrecision(5))}°`);
    // The retest's ankle is made of two calls in one formula.
    const { calls } = session.working({ sheet: 'retest', column: 'ankle_now', row });
    expect(calls.map((call) => call.formula)).toEqual([
      expect.stringMatching(/^ANKLE\.FROM\.WALL\(wall_left, /),
      expect.stringMatching(/^ANKLE\.FROM\.WALL\(wall_right, /),
    ]);
    const retest = [...session.records('retest')][row]!.values as Record<string, number>;
    expect(retest.athlete).toBe(values.athlete);
    expect(calls.map((call) => call.result)).toEqual(
      [retest.wall_left!, retest.wall_right!].map(
        (wall) => `${Number(ankleFromWall(wall, tibia!, foot!).toPrecision(5))}°`,
      ),
    );
    expect(working.constants.length).toBeGreaterThan(0);
    for (const { source } of working.constants) expect(source.status).not.toBe('');
    expect(working.sources.length).toBeGreaterThan(0);
    expect(workingOf('lean').cautions.length).toBeGreaterThan(0);
  });

  test('names what it came from and what uses it, each a place', () => {
    const { cameFrom, usedBy } = workingOf('lean');
    const columns = (of: Working['cameFrom']) => of.map(({ place }) => `${place.sheet}.${place.column}`);
    expect(columns(cameFrom)).toEqual(
      expect.arrayContaining(['roster.femur', 'roster.tibia', 'roster.trunk', 'roster.ankle', 'roster.foot']),
    );
    expect(cameFrom.find(({ place }) => place.column === 'femur')).toMatchObject({
      place: { row },
      label: `Femur, row ${row + 1}`,
      text: `${values.femur} cm`,
    });
    expect(columns(usedBy)).toContain('summary.mean_lean');
    expect(columns(workingOf('femur').usedBy)).toContain('roster.lean');
  });

  test('can be copied as text, and leaves the book as it is', () => {
    const before = session.save();
    const { text } = workingOf('lean');
    expect(text).toMatch(/^Minimum lean \(model\), row 3: \d+°\n/);
    expect(text).toContain('LEAN.PARALLEL(femur, tibia, trunk, ankle, 0, placement, foot)');
    expect(text).toContain('Hip ahead of mid-foot');
    expect(session.save()).toBe(before);
  });

  test('is told of typed, held, blank and failing cells, of own formulas, LET and the branch that IF takes', () => {
    const own = Session.create();
    own.execute({
      do: 'add-sheet',
      name: 's',
      rows: 2,
      columns: [
        { name: 'femur', dimension: 'length' },
        { name: 'tibia', dimension: 'length' },
        { name: 'x' },
      ],
    });
    own.execute({
      do: 'set-cells',
      sheet: 's',
      row: 0,
      columns: ['femur', 'tibia'],
      texts: [
        ['42', '40'],
        ['long', ''],
      ],
    });
    const at = (column: string, at = 0) => own.working({ sheet: 's', column, row: at });
    expect(at('femur')).toMatchObject({ from: 'value', display: '42', unit: 'cm', calls: [] });
    expect(at('femur', 1)).toMatchObject({ from: 'held', sentence: expect.stringMatching(/\.$/) });
    expect(at('femur', 1).doubts).toHaveLength(1);
    expect(at('tibia', 1)).toMatchObject({ from: 'blank', calls: [] });
    const formula = (text: string) =>
      own.execute({ do: 'set-formula', sheet: 's', column: 'x', row: 0, formula: text });
    formula('LET(a, femur + 1, IF(a > 100, SEG.RATIO(1, 2), SEG.RATIO(a, tibia)))');
    const [call, ...more] = at('x').calls;
    expect(more).toEqual([]);
    expect(call).toMatchObject({ formula: 'SEG.RATIO(a, tibia)', result: String(43 / 40) });
    formula('SEG.RATIO(femur, 0)');
    expect(at('x').calls[0]).toMatchObject({ steps: [], sentence: expect.stringMatching(/0/) });
    own.execute({ do: 'set-formula', sheet: 's', column: 'x', formula: 'SEG.RATIO(A1, B1)' });
    own.execute({ do: 'clear-cells', sheet: 's', row: 0, rows: 1, columns: ['x'] });
    expect(at('x').filled).toBe('SEG.RATIO(42 cm, 40 cm)');
    expect(at('x', 1).filled).toMatch(/blank/);
  });
});
